import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { DEVICES, type DeviceKind, type End } from "../devices";
import { isRefusal, type JsonObject } from "../terms";
import {
  type Edit,
  edits,
  emptyHistory,
  type History,
  isUnreadable,
  jobOf,
  readDocument,
  redo,
  remember,
  type StillhotDocument,
  undo,
  writeDocument,
} from ".";
import { draws } from "../../../tests/support/draws";

const demos = readdirSync("shared/demos")
  .filter((it) => it.endsWith(".stillhot.json"))
  .map((it) => readFileSync(`shared/demos/${it}`, "utf8"));

const read = (text: string): StillhotDocument => {
  const file = readDocument(text);
  if (isUnreadable(file)) throw new Error(JSON.stringify(file.problems));
  return file.document;
};

/** A place in a list of ids, mostly; sometimes a name that nothing has. */
type Pick = number | string;
const aPick: fc.Arbitrary<Pick> = fc.oneof(
  { weight: 9, arbitrary: fc.nat() },
  { weight: 1, arbitrary: fc.constantFrom("toString", "__proto__", "", "-x", "p99", "g1") },
);
const picked = (map: object, pick: Pick): string => {
  const ids = Object.keys(map);
  return typeof pick === "string" || ids.length === 0 ? String(pick) : ids[pick % ids.length]!;
};

const aPhases = fc.constantFrom("A", "B", "C", "AB", "ABC", "12", "1", "N", "BA", "");
const someValue = fc.oneof(
  fc.jsonValue(),
  fc.double(),
  fc.constantFrom(NaN, -0, 1e300, 12, true, false),
  aPhases,
) as fc.Arbitrary<never>;
const aKind = fc.constantFrom(...(Object.keys(DEVICES) as DeviceKind[]));
const aKey = fc.oneof(
  fc.constantFrom(...new Set(Object.values(DEVICES).flatMap(({ fields }) => Object.keys(fields)))),
  fc.constantFrom("x", "y", "kind", "colour", "constructor"),
);
const someKeys: fc.Arbitrary<JsonObject> = fc.oneof(
  fc.constantFrom<JsonObject>(
    {},
    { label: "new" },
    { evidence: "told" },
    { x: 20, y: -0 },
    { phases: "A" },
    { phases: "AB" },
  ),
  fc.dictionary(aKey, fc.oneof(someValue, fc.constant(undefined)), { maxKeys: 2, noNullPrototype: true }),
);
const anOffset = fc.record({
  x: fc.integer({ min: -500, max: 500 }),
  y: fc.oneof(fc.double({ min: -500, max: 500, noNaN: true }), fc.constant(-0)),
});
const somePicks = fc.array(aPick, { minLength: 1, maxLength: 3 });
const someThings = fc.record(
  { points: somePicks, elements: somePicks, workPoints: somePicks },
  { requiredKeys: [] },
);

type Made = (document: StillhotDocument) => Edit;
const pointOf = ({ system }: StillhotDocument, pick: Pick) => picked(system.points, pick);
const elementOf = ({ system }: StillhotDocument, pick: Pick) => picked(system.elements, pick);
const workPointsOf = (document: StillhotDocument) => jobOf(document).workPoints;
const thingsOf = (
  document: StillhotDocument,
  { points, elements, workPoints }: { points?: Pick[]; elements?: Pick[]; workPoints?: Pick[] },
) => ({
  points: (points ?? []).map((it) => pointOf(document, it)),
  elements: (elements ?? []).map((it) => elementOf(document, it)),
  workPoints: (workPoints ?? []).map((it) => picked(workPointsOf(document), it)),
});
const aFlag = fc.constantFrom(
  edits.tag,
  edits.untag,
  edits.block,
  edits.unblock,
  edits.turnOn,
  edits.turnOff,
);
const aMove = fc.constantFrom(edits.open, edits.close);
const maybePhases = fc.option(aPhases, { nil: undefined, freq: 1 });

/** One arbitrary for each edit: what it is given is drawn from the document that it meets. */
const aCommand: fc.Arbitrary<Made> = fc.oneof(
  someKeys.map(
    (keys): Made =>
      () =>
        edits.addPoint(keys),
  ),
  fc.tuple(somePicks, anOffset, fc.constantFrom(0, 20)).map(
    ([picks, by, grid]): Made =>
      (it) =>
        edits.movePoints(
          picks.map((pick) => pointOf(it, pick)),
          by,
          grid,
        ),
  ),
  someThings.map(
    (things): Made =>
      (it) =>
        edits.removeThings(thingsOf(it, things)),
  ),
  fc.tuple(aKind, aPick, aPick, aPick, someKeys).map(([kind, a, b, c, keys]): Made => (it) => {
    const [one, other, third] = [pointOf(it, a), pointOf(it, b), pointOf(it, c)];
    const ends = Object.fromEntries(
      DEVICES[kind].ends.map((end) => [end, end === "to" ? other : end === "alt" ? third : one]),
    );
    return edits.addElement(kind, ends, kind === "nearby" ? { span: elementOf(it, b), ...keys } : keys);
  }),
  fc.tuple(aPick, aKind, anOffset, someKeys).map(
    ([from, kind, at, keys]): Made =>
      (it) =>
        edits.growFrom(pointOf(it, from), kind, { ...at }, keys),
  ),
  fc.tuple(aPick, someKeys).map(
    ([id, keys]): Made =>
      (it) =>
        edits.setElementKeys(elementOf(it, id), keys),
  ),
  fc.tuple(aPick, someKeys).map(
    ([id, keys]): Made =>
      (it) =>
        edits.setPointKeys(pointOf(it, id), keys),
  ),
  fc.tuple(aPick, fc.constantFrom<End>("from", "to", "at", "alt"), aPick).map(
    ([id, end, to]): Made =>
      (it) =>
        edits.reconnect(elementOf(it, id), end, pointOf(it, to)),
  ),
  fc.tuple(aMove, aPick, maybePhases).map(
    ([move, id, phases]): Made =>
      (it) =>
        move(elementOf(it, id), phases),
  ),
  fc.tuple(aFlag, aPick).map(
    ([flag, id]): Made =>
      (it) =>
        flag(elementOf(it, id)),
  ),
  fc.tuple(aPick, fc.constantFrom("utility", "generator", "off")).map(
    ([id, position]): Made =>
      (it) =>
        edits.setPosition(elementOf(it, id), position),
  ),
  aPick.map(
    (id): Made =>
      (it) =>
        edits.addGround(pointOf(it, id)),
  ),
  fc.tuple(aPick, someKeys).map(
    ([id, keys]): Made =>
      (it) =>
        edits.addWorkPoint(pointOf(it, id), keys),
  ),
  fc.tuple(aPick, someKeys).map(
    ([id, keys]): Made =>
      (it) =>
        edits.setWorkPoint(picked(workPointsOf(it), id), keys),
  ),
  fc.string({ unit: "binary", maxLength: 20 }).map(
    (text): Made =>
      () =>
        edits.setTitle(text),
  ),
  fc
    .dictionary(
      fc.constantFrom("task", "permit", "tools", "crew"),
      fc.oneof(someValue, fc.constant("held" as never)),
      { noNullPrototype: true },
    )
    .map(
      (keys): Made =>
        () =>
          edits.setJob(keys),
    ),
  fc.tuple(fc.constantFrom("hazardVolts", "bodyOhms", "singleCrew", "rules"), someValue, fc.string()).map(
    ([key, value, reason]): Made =>
      () =>
        edits.setLimit(key, value, reason),
  ),
  fc.tuple(someThings, anOffset).map(
    ([things, by]): Made =>
      (it) =>
        edits.duplicate(thingsOf(it, things), by),
  ),
);

test("E1: random edits undo to the same bytes, redo to the same bytes, and always read back as they are", () => {
  const accepted = new Map<string, number>();
  fc.assert(
    fc.property(
      fc.constantFrom(...demos),
      fc.array(fc.tuple(aCommand, fc.option(fc.constantFrom("a", "b"), { nil: undefined, freq: 2 })), {
        minLength: 1,
        maxLength: 30,
        size: "max",
      }),
      (text, several) => {
        let document = read(text);
        let history: History = emptyHistory;
        const texts = [writeDocument(document)];
        for (const [edit, gesture] of several) {
          const before = history.done.length;
          const outcome = edit(document)(document);
          if (isRefusal(outcome)) continue;
          accepted.set(outcome.label.key, (accepted.get(outcome.label.key) ?? 0) + 1);
          document = outcome.after;
          history = remember(history, outcome, gesture);
          const now = writeDocument(document);
          expect(read(now)).toEqual(document);
          if (history.done.length === before) texts[texts.length - 1] = now;
          else texts.push(now);
        }
        for (const back of texts.toReversed().slice(1)) {
          ({ document, history } = undo(history, document)!);
          expect(writeDocument(document)).toBe(back);
        }
        for (const forth of texts.slice(1)) {
          ({ document, history } = redo(history, document)!);
          expect(writeDocument(document)).toBe(forth);
        }
      },
    ),
    { numRuns: draws(150) },
  );
  // Nearly every edit has been met in earnest, not only refused.
  expect(accepted.size).toBeGreaterThan(12);
});

test("a damaged file is read as it is, or gives problems; it never throws, and is never slow", () => {
  const aDamage = fc.tuple(fc.nat(), fc.nat(12), fc.string({ unit: "binary", maxLength: 6 }));
  fc.assert(
    fc.property(
      fc.constantFrom(...demos),
      fc.array(aDamage, { minLength: 1, maxLength: 3 }),
      (text, damages) => {
        const damaged = damages.reduce((it, [at, cut, put]) => {
          const from = at % it.length;
          return it.slice(0, from) + put + it.slice(from + cut);
        }, text);
        const file = readDocument(damaged);
        if (isUnreadable(file)) expect(file.problems.length).toBeGreaterThan(0);
        else expect(read(writeDocument(file.document))).toEqual(file.document);
      },
    ),
    { numRuns: draws(500) },
  );
});

test("a file with one value replaced by anything is read as it is, or gives problems", () => {
  fc.assert(
    fc.property(fc.constantFrom(...demos), fc.nat(), fc.jsonValue({ maxDepth: 3 }), (text, pick, value) => {
      const file = JSON.parse(text) as JsonObject;
      const places: (() => void)[] = [];
      const visit = (it: object): void => {
        for (const [key, member] of Object.entries(it)) {
          places.push(() => void ((it as Record<string, unknown>)[key] = value));
          if (typeof member === "object" && member !== null) visit(member);
        }
      };
      visit(file);
      places[pick % places.length]!();
      const outcome = readDocument(JSON.stringify(file));
      if (!isUnreadable(outcome)) expect(read(writeDocument(outcome.document))).toEqual(outcome.document);
    }),
    { numRuns: draws(1000) },
  );
});
