import { elementName, listOf, pointName, type StillhotDocument } from "../document";
import { type Message, say } from "../terms";
import type { CutPart } from "./cutAround";
import type { VerifiedCutting } from "./likeTheWhole";

/** So many devices that stand open in a part are named; the others are counted. */
const MOST_NAMED = 3;

/** What was cut off, why it cannot matter in the piece, and when it can. */
export interface PartTold {
  readonly what: Message;
  readonly why: Message;
  readonly can: Message;
}

/** Tells of one part that was cut off a drawing. */
export function partTold(
  whole: StillhotDocument,
  { at, source, points, elements, customers, open }: CutPart,
): PartTold {
  const place = pointName(whole, at);
  const names = listOf(open.slice(0, MOST_NAMED).map((it) => elementName(whole, it)));
  return {
    what: say("piece.part", { place, points, elements, customers, source: elementName(whole, source) }),
    why: say("piece.why", { place }),
    can:
      open.length === 0
        ? say("piece.can", { place })
        : say("piece.canOpen", { place, count: open.length, names }),
  };
}

/** How much the piece of a drawing holds. */
export function pieceTold({ document, parts, openings }: VerifiedCutting): Message {
  const points = Object.keys(document.system.points).length;
  const elements = Object.keys(document.system.elements).length;
  return parts.length === 0
    ? say("piece.nothing", { points, elements })
    : say("piece.done", { points, elements, openings });
}

/** What holds of the piece as a whole: how it was held against the drawing, and what of the job it has no longer. */
export function checksTold({
  compared,
  workPointsLeft,
  stepsLeft,
  scenarioLeft,
}: VerifiedCutting): Message[] {
  return [
    say("piece.compared", { count: compared }),
    ...(workPointsLeft + stepsLeft > 0
      ? [say("piece.jobLeft", { workPoints: workPointsLeft, steps: stepsLeft })]
      : []),
    ...(scenarioLeft ? [say("piece.scenarioLeft")] : []),
  ];
}
