/** Ce qu'on dit d'un morceau découpé d'un dessin : ce qui reste, ce qui est retranché, pourquoi cela ne peut pas compter, et quand cela peut. */
export const piece = {
  "piece.nothing":
    "Rien n'est retranché : {points} points, {elements} éléments. Aucune partie alimentée ne tient qu'à un point et ne laisse tout ici tel quel.",
  "piece.done":
    "Le morceau : {points} points, {elements} éléments ; tout ce qui est près (points d'ouverture : {openings}), et tout ce qui pourrait encore l'alimenter",
  "piece.part":
    "Retranché au-delà de {place} : points : {points}, éléments : {elements}, clients : {customers} ; alimentation par {source} ; une source équivalente est à {place}",
  "piece.why":
    "Cela ne peut pas compter ici : tous ses conducteurs à {place} sont sous tension sur le dessin, quoi qu'il arrive au-delà ; ce qui l'amènerait ici doit se fermer dans le morceau.",
  "piece.can":
    "Cela peut compter dès qu'on manœuvre ou qu'on change quelque chose au-delà de {place} : le morceau le montre encore comme avant.",
  "piece.canOpen":
    "Cela peut compter dès qu'on manœuvre au-delà de {place}, comme ce qui y est ouvert ({count} : {names}). Le morceau le montre encore comme avant, et ce qui s'y ferme peut ajouter au courant dans les mises à la terre.",
  "piece.most":
    "C'est {points} des {of} points du dessin : peu de choses entre eux peuvent s'ouvrir. Moins de points d'ouverture que {openings} donnent un morceau plus petit.",
  "piece.compared":
    "Comparé au tout (points de travail : {count}) : verdict, marge, menaces, tensions et exposition sont les mêmes à 0,1 % près.",
  "piece.jobLeft":
    "Du travail, ce qui est au-delà est laissé de côté : points de travail {workPoints}, étapes {steps}.",
  "piece.scenarioLeft": "Le scénario parle du dessin entier et est laissé de côté.",
};
