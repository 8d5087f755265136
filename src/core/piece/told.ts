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
  const points = pointCountOf(document);
  const elements = Object.keys(document.system.elements).length;
  return parts.length === 0
    ? say("piece.nothing", { points, elements })
    : say("piece.done", { points, elements, openings });
}

const pointCountOf = ({ system }: StillhotDocument): number => Object.keys(system.points).length;

/**
 * What holds of the piece as a whole: how to have a smaller one where it is most of the drawing, how it was held against
 * that, and what of the job it has no longer.
 */
export function checksTold(
  whole: StillhotDocument,
  { document, openings, compared, workPointsLeft, stepsLeft, scenarioLeft }: VerifiedCutting,
): Message[] {
  const [points, of] = [pointCountOf(document), pointCountOf(whole)];
  return [
    ...(openings > 0 && points > of / 2 ? [say("piece.most", { points, of, openings })] : []),
    say("piece.compared", { count: compared }),
    ...(workPointsLeft + stepsLeft > 0
      ? [say("piece.jobLeft", { workPoints: workPointsLeft, steps: stepsLeft })]
      : []),
    ...(scenarioLeft ? [say("piece.scenarioLeft")] : []),
  ];
}
