export const edits = {
  "removed.workPoint": "le point de travail {name} est parti avec",
  "removed.steps": "étapes retirées, car elles nommaient ce qui est parti : {count}",
  "removed.onIt": "Avec {name} part ce qui s'y trouve et la ligne qui y mène : {things}",
  "phase.joined":
    "ce qui suit {name} est aussi relié au reste par un autre chemin : enlevez-le d'abord, sinon chaque partie se change à part",
  "tidy.nothing": "Aucun point à disposer : rien n'est dessiné, ou tout est épinglé.",
  "stamp.nothing":
    "Sélectionnez au moins une ligne ou un appareil à deux bouts : un ensemble se raccorde par un point.",
  "stamp.noJoin": "Le point de raccordement ne fait pas partie de la sélection.",
  "stamp.apart": "Il est en morceaux : rien de sélectionné ne relie {name} au reste.",
  "stamp.alone": "Seul, ce n'est pas un dessin qui se lit : {problem}.",
  "stamp.unfit": "{name} demande ici les phases {phases}.",
  "stamp.unreadable": "Ce qui a été gardé ne se lit pas.",
  "stamp.placed": "Ajouter {name}",
} as const;
