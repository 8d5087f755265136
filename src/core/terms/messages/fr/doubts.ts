/** Ce qui peut être autrement que dessiné, tel que cela suit « si », et ce qui en viendrait. */
export const doubts = {
  "doubt.goes-on": "la ligne continue au-delà de {name} et qu'elle est alimentée",
  "doubt.goes-on.here": "la ligne continue au-delà et qu'elle est alimentée",
  "doubt.other-position": "{name} n'est pas dans la position dessinée",
  "doubt.other-position.closed": "l'on trouve {name} fermé{on} et non ouvert",
  "doubt.other-position.open": "l'on trouve {name} ouvert{on} et non fermé",
  "doubt.second-transformer": "un deuxième transformateur alimente le même secondaire que {name}",
  "doubt.other-connection": "{name} est couplé en {connection}",
  "doubt.swapped-labels": "{name} et {other} sont pris l'un pour l'autre",
  "doubt.swapped-phases": "les phases le long de {name} sont permutées autrement que dessiné",
  "doubt.machine": "{name} tourne et est deux fois plus gros que sur le dessin",
  "doubt.machine.undrawn": "une génératrice de secours tourne chez {name}",
  "doubt.machine.bridged": "{name} relie ses deux alimentations",
  "doubt.open-neutral": "le neutre de {name} est coupé",
  "doubt.no-rod": "la prise de terre de {name} manque",
  "doubt.no-rod.along": "aucune prise de terre n'existe le long de {name}",
  "doubt.no-pole-bond": "{name} n'est pas relié au poteau",
  "doubt.crossing": "un autre circuit croise {name}",
  "doubt.no-span": "{name} n'existe pas",
  "doubt.other-cable": "{name} et {other} ressortent chacun au bout de l'autre",
  "doubt.thin-ground": "le câble de {name} n'est que du {cable}",
  "lookFirst.line": "{place} : si {doubts}, {outcome}",
  "lookFirst.live": "le point de travail est sous tension à {volts} V",
  "lookFirst.liveUnknown": "le point de travail est sous tension",
  "lookFirst.unfed": "personne n'a dessiné ce qui alimente le point de travail",
  "lookFirst.strength.0": "le point de travail est à {volts} V",
  "lookFirst.strength.1": "une chose de plus qui tourne mal met le point de travail sous {volts} V",
  "lookFirst.strength.2": "deux choses de plus qui tournent mal mettent le point de travail sous {volts} V",
  "lookFirst.strength.3": "trois choses de plus qui tournent mal mettent le point de travail sous {volts} V",
  "lookFirst.feels": "{outcome} ; le monteur sent {exposure} V, au-dessus de la limite",
  "lookFirst.held": "{outcome} ; le monteur reste sous la limite",
  "lookFirst.settles": "{line}. Un seul coup d'œil à cet endroit lève {count} doutes de ce genre.",
  "lookFirst.settlesOne": "{line}.",
  "groundsWorth.all":
    "Ce que valent les mises à la terre : sans elles, {hurting} erreurs possibles du dessin mettraient ici le monteur au-dessus de la limite ; avec elles, aucune.",
  "groundsWorth.allOne":
    "Ce que valent les mises à la terre : sans elles, une erreur possible du dessin mettrait ici le monteur au-dessus de la limite ; avec elles, non.",
  "groundsWorth.some":
    "Ce que valent les mises à la terre : sans elles, {hurting} erreurs possibles du dessin mettraient ici le monteur au-dessus de la limite ; avec elles, encore {left}.",
  "groundsWorth.someOne":
    "Ce que valent les mises à la terre : sans elles, {hurting} erreurs possibles du dessin mettraient ici le monteur au-dessus de la limite ; avec elles, encore une.",
  "groundsWorth.none":
    "Les mises à la terre ne protègent pas des erreurs possibles du dessin ici : {left} mettraient le monteur au-dessus de la limite, avec elles comme sans elles.",
  "groundsWorth.noneOne":
    "Les mises à la terre ne protègent pas d'une erreur possible du dessin ici : elle mettrait le monteur au-dessus de la limite, avec elles comme sans elles.",
  "groundsWorth.cable": "{line} Avec du câble {cable} ou plus gros à chacune, aucune ne le ferait.",
  "groundsWorth.set": "{line} Avec une mise à la terre de 4/0 de plus à {at}, aucune ne le ferait.",
  "groundsWorth.cut": "{line} {count} autres doutes n'ont pas été examinés.",
  "ranges.line":
    "Si les nombres du plan sont faux, {name} peut être à {volts}, et le monteur peut sentir {exposure}.",
  "ranges.between": "{least} à {most} V",
  "ranges.one": "{most} V",
  "ranges.over":
    "{line} C'est au-dessus de la limite, alors que le dessin dit moins : seul un coup d'œil ou une mesure le dira.",
  "ranges.verdict": "{line} Le point de travail est alors : {verdict}.",
  "ranges.finding": "{line} Ceci est alors vrai aussi : {finding}",
  "ranges.cut": "{line} {count} autres nombres n'ont pas été examinés.",
} as const;
