import { type Edit, completePoint, edits, type StillhotDocument } from "../../core";
import { placeNext } from "./place";

/** Room beside a stamp for what hangs at its ends. */
const MARGIN = 40;

/** Puts an own arrangement at a point, turned to where there is room. */
export function placeOwn(stamp: edits.Stamp, document: StillhotDocument, at: string, phases: string): Edit {
  const { degrees, length, width } = shapeOf(stamp);
  const { direction } = placeNext(document, at, length, { width: width + MARGIN, isBranch: true });
  return edits.placeStamp(stamp, at, { phases, degrees: direction - degrees });
}

/** Which way a stamp goes from its joining point, to the nearest quarter turn, and how long and wide it is that way. */
function shapeOf({ piece, join }: edits.Stamp): { degrees: number; length: number; width: number } {
  const origin = completePoint(piece.points[join]!);
  const away = Object.values(piece.points).map((saved) => {
    const { x, y } = completePoint(saved);
    return { x: x - origin.x, y: y - origin.y };
  });
  const sum = away.reduce((all, it) => ({ x: all.x + it.x, y: all.y + it.y }), { x: 0, y: 0 });
  const degrees = Math.round((Math.atan2(sum.y, sum.x) * 2) / Math.PI) * 90;
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const along = away.map(({ x, y }) => x * cos + y * sin);
  const across = away.map(({ x, y }) => y * cos - x * sin);
  return {
    degrees,
    length: Math.max(...along),
    width: 2 * Math.max(...across.map(Math.abs)),
  };
}
