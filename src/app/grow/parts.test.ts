import { describe, expect, test } from "vitest";
import {
  complete,
  completePoint,
  conductorsOf,
  DEVICES,
  type ElementId,
  type ElementOfKind,
  isRefusal,
  type PointId,
  readDocument,
  isUnreadable,
  type StillhotDocument,
  writeDocument,
} from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { spell } from "../../../tests/support/words";
import { withoutUnit } from "./failedUnit";
import { lowVoltsAt } from "./growing";
import { type GrowPart, PARTS, startWithSource } from "./parts";
import { growingPointOf } from "./point";
import { type Answers, chipsFor, mustBeKnown } from "./sizes";

function start(): StillhotDocument {
  const begun = startWithSource(emptyDrawing);
  if (isRefusal(begun)) throw new Error("a source can always be drawn");
  return begun.after;
}

function grown(
  document: StillhotDocument,
  point: string,
  id: string,
  phases = growingPointOf(document, point).phases,
  answers: Answers = {},
) {
  const part = PARTS.find((it) => it.id === id)!;
  const change = part.edit(document, point, phases, { ...lettersOf(part, phases), ...answers })(document);
  if (isRefusal(change)) throw new Error(`${id}: ${spell(change.refused)}`);
  return change;
}

/** What nobody leaves unanswered: the first letters that are offered. */
const lettersOf = ({ asks = [] }: GrowPart, phases: string): Answers =>
  Object.fromEntries(
    asks.filter(mustBeKnown).flatMap((ask) =>
      chipsFor(ask, phases)
        .slice(0, 1)
        .map((chip) => [ask, chip]),
    ),
  );

describe("Each part that fits a place can be put there, reads back, and covers nothing", () => {
  const primary = start();
  const [pole] = grown(primary, "p1", "span").made!;
  const onPole = grown(primary, "p1", "span").after;
  const tapped = grown(onPole, pole!, "tap", "A").after;
  const secondary = Object.keys(tapped.system.points).find(
    (id) => growingPointOf(tapped, id).phases === "12",
  )!;
  const { after: banked, made: [low = ""] = [] } = grown(onPole, pole!, "wyeBank");
  const places: readonly (readonly [string, StillhotDocument, string])[] = [
    ["a station", primary, "p1"],
    ["a pole", onPole, pole!],
    ["a secondary", tapped, secondary],
    ["behind a bank", banked, low],
  ];
  for (const [name, document, point] of places)
    test.each(
      PARTS.filter((it) =>
        it.fits({ ...growingPointOf(document, point), isLow: lowVoltsAt(document, point) !== undefined }),
      ).map((it) => it.id),
    )(`${name}: %s`, (part) => {
      const { after } = grown(document, point, part);
      expect(isUnreadable(readDocument(writeDocument(after)))).toBe(false);
      const spots = (Object.keys(after.system.points) as PointId[]).map((id) =>
        completePoint(after.system.points[id]!),
      );
      for (const [k, a] of spots.entries())
        for (const b of spots.slice(k + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(24);
    });
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
      const change = part.edit(document, "p1", phases, lettersOf(part, phases))(document);
      return isRefusal(change) ? [] : Object.values(change.after.system.elements).map(({ kind }) => kind);
    }),
  );
  expect(
    Object.keys(DEVICES).filter((kind) => !DRAWN_OTHERWISE.includes(kind) && !made.includes(kind as never)),
  ).toEqual([]);
});

const madeOf = (change: ReturnType<typeof grown>, kind: string) =>
  Object.values(change.after.system.elements as Record<string, Record<string, unknown>>).filter(
    (it) => it["kind"] === kind,
  );

test("what was said of link and size stands in the drawing; what nobody said is not known, and says so", () => {
  const said = grown(start(), "p1", "tap", "ABC", { phase: "B", link: "15T", kva: "37.5" });
  expect(madeOf(said, "cutout")).toMatchObject([{ phases: "B", fuse: { type: "T", amps: 15 } }]);
  expect(madeOf(said, "transformer")).toMatchObject([{ phases: "B", kva: 37.5 }]);
  expect(madeOf(said, "transformer")[0]).not.toHaveProperty("evidence");
  const unsaid = grown(start(), "p1", "tap", "ABC", { phase: "B" });
  expect(madeOf(unsaid, "cutout")[0]).not.toHaveProperty("fuse");
  expect(madeOf(unsaid, "transformer")).toMatchObject([
    { kva: 25, evidence: "assumed", note: "Size not known: 25 kVA assumed." },
  ]);
});

test.each(["tap", "transformer", "padmount"])("%s: a unit on two letters keeps both", (part) => {
  expect(madeOf(grown(start(), "p1", part, "BC", { phase: "BC" }), "transformer")).toMatchObject([
    { phases: "BC", primaryKv: 12.47 },
  ]);
});

test("three unequal units give one secondary of three phases", () => {
  const change = grown(start(), "p1", "unequal", "ABC", { kva: "50", kvaB: "25", kvaC: "15" });
  expect(madeOf(change, "transformer").map((it) => [it["phases"], it["kva"]])).toEqual([
    ["A", 50],
    ["B", 25],
    ["C", 15],
  ]);
  expect(conductorsOf(change.after.system).get(change.made![0]!)).toEqual(["A", "B", "C", "N"]);
});

test("padmounts go on from elbow to elbow, as a loop does", () => {
  let document = grown(start(), "p1", "dip", "A").after;
  for (let n = 0; n < 2; n++) {
    const open = Object.keys(document.system.points).at(-1)!;
    const at = n === 0 ? open : loopOut(document);
    document = grown(document, at, "padmount", "A").after;
  }
  expect(Object.values(document.system.elements).filter(({ kind }) => kind === "elbow").length).toBe(5);
  expect(conductorsOf(document.system).get(loopOut(document))).toEqual(["A", "N"]);

  function loopOut({ system }: StillhotDocument): string {
    return Object.entries(system.points as Record<string, { label?: string }>)
      .filter(([, { label }]) => label?.startsWith("loop goes on"))
      .at(-1)![0];
  }
});

test("a bank whose unit failed goes on as open wye, open delta, with two thirds of its size", () => {
  const { after } = grown(start(), "p1", "bank", "ABC", { kva: "25" });
  const [id, saved] = Object.entries(after.system.elements).find(([, it]) => it.kind === "transformer")!;
  const change = withoutUnit(id, complete(saved) as ElementOfKind<"transformer">, "B")(after);
  if (isRefusal(change)) throw new Error(spell(change.refused));
  expect(change.after.system.elements[id as ElementId]).toMatchObject({
    connection: "openY-openD",
    phases: "AC",
    kva: 50,
  });
  expect(isUnreadable(readDocument(writeDocument(change.after)))).toBe(false);
});
