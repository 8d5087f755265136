import { describe, expect, test } from "vitest";
import {
  completePoint,
  conductorsOf,
  DEVICES,
  isRefusal,
  type PointId,
  readDocument,
  isUnreadable,
  type StillhotDocument,
  writeDocument,
} from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { PARTS, startWithSource } from "./parts";
import { placeOf } from "./point";

function start(): StillhotDocument {
  const begun = startWithSource(emptyDrawing);
  if (isRefusal(begun)) throw new Error("a source can always be drawn");
  return begun.after;
}

function grown(document: StillhotDocument, point: string, part: string, phases?: string) {
  const change = PARTS.find((it) => it.id === part)!.command(
    document,
    point,
    phases ?? placeOf(document, point).phases,
  )(document);
  if (isRefusal(change)) throw new Error(`${part}: ${change.refused.key}`);
  return change;
}

describe("Each part that fits a place can be put there, reads back, and covers nothing", () => {
  const primary = start();
  const [pole] = grown(primary, "p1", "span").made!;
  const onPole = grown(primary, "p1", "span").after;
  const tapped = grown(onPole, pole!, "tap", "A").after;
  const secondary = Object.keys(tapped.system.points).find((id) => placeOf(tapped, id).phases === "12")!;
  const places: readonly (readonly [string, StillhotDocument, string])[] = [
    ["a station", primary, "p1"],
    ["a pole", onPole, pole!],
    ["a secondary", tapped, secondary],
  ];
  for (const [name, document, point] of places)
    test.each(PARTS.filter((it) => it.fits(placeOf(document, point))).map((it) => it.id))(
      `${name}: %s`,
      (part) => {
        const { after } = grown(document, point, part);
        expect(isUnreadable(readDocument(writeDocument(after)))).toBe(false);
        const spots = (Object.keys(after.system.points) as PointId[]).map((id) =>
          completePoint(after.system.points[id]!),
        );
        for (const [k, a] of spots.entries())
          for (const b of spots.slice(k + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(24);
      },
    );
});

test("a tap with four houses is one edit, with a meter and a customer each", () => {
  const document = start();
  const { after } = grown(document, "p1", "tap4", "B");
  const kinds = Object.values(after.system.elements).map((it) => it.kind);
  expect(kinds.filter((it) => it === "meter").length).toBe(4);
  expect(kinds.filter((it) => it === "load").length).toBe(4);
  expect(conductorsOf(after.system).get("p2")).toEqual(["B", "N"]);
});

test("a line grown ten times goes straight on, and taps leave it sideways", () => {
  let document = start();
  let at = "p1";
  for (let n = 0; n < 10; n++) {
    const change = grown(document, at, "span");
    document = change.after;
    at = change.made!.find((id) => id.startsWith("p"))!;
  }
  const { y } = completePoint(document.system.points[at as PointId]!);
  expect(y).toBe(0);
  const change = grown(document, "p5", "cutout");
  const side = completePoint(change.after.system.points[change.made![0] as PointId]!);
  expect(side.y).not.toBe(0);
});

/** Drawn by other means than the list of what comes next: by the point's own buttons, and on the line that it stands beside. */
const DRAWN_OTHERWISE = ["ground", "nearby"];

test("every kind of device can be drawn from what comes next, or by a button of its own", () => {
  const document = start();
  const made = PARTS.flatMap((part) =>
    ["ABC", "12"].flatMap((phases) => {
      const change = part.command(document, "p1", phases)(document);
      return isRefusal(change) ? [] : Object.values(change.after.system.elements).map(({ kind }) => kind);
    }),
  );
  expect(
    Object.keys(DEVICES).filter((kind) => !DRAWN_OTHERWISE.includes(kind) && !made.includes(kind as never)),
  ).toEqual([]);
});
