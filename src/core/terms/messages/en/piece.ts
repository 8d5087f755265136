/** What is told of a piece that was cut out of a drawing: what stays, what was cut off, why it cannot matter, and when it can. */
export const piece = {
  "piece.nothing":
    "Nothing was cut: {points} points, {elements} elements. No part of it is fed, hangs on one point and leaves everything here as it is.",
  "piece.done":
    "The piece: {points} points, {elements} elements; all that is near (openings: {openings}), and all else that could feed it",
  "piece.part":
    "Cut off beyond {place}: points: {points}, elements: {elements}, customers: {customers}; fed from {source}; an equal source stands at {place}",
  "piece.why":
    "It cannot matter here: all its conductors at {place} are energized as drawn, whatever else goes wrong beyond; what could bring that here has to close in the piece.",
  "piece.can":
    "It can matter once something beyond {place} is switched, or built otherwise: the piece then still shows it as it was.",
  "piece.canOpen":
    "It can matter once something beyond {place} is switched, such as what stands open there ({count}: {names}). The piece then still shows it as it was, and what closes there can add to the current through grounds.",
  "piece.most":
    "That is {points} of the drawing's {of} points: little stands between them that can be opened. Fewer openings than {openings} give a smaller piece.",
  "piece.compared":
    "Held against the whole (work points: {count}): verdict, margin, threats, volts and exposure are the same within 0.1 %.",
  "piece.jobLeft": "Of the job, what lies beyond was left out: work points {workPoints}, steps {steps}.",
  "piece.scenarioLeft": "The scenario tells of the whole drawing and was left out.",
} as const;
