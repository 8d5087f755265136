import { describe, expect, test } from "vitest";
import {
  assess,
  type Doubt,
  doubtsAround,
  groundsWorth,
  jobOf,
  type Json,
  type JsonObject,
  lookFirst,
  MOST_ENTRIES,
  readDocument,
  settingsOf,
  type StillhotDocument,
  type WorkPointId,
  type WorkPointReport,
  writeDocument,
} from "../../src/core";
import { draw } from "../support/jobNotation";
import { randomDocument } from "../support/randomSystems";
import { draws } from "../support/draws";

const W1 = "w1" as WorkPointId;
/** Enough for small drawings to be asked whole. */
const ALL = { mostWork: Infinity };

function readable(seed: number, parts: number): StillhotDocument | undefined {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts })));
  return "document" in read ? read.document : undefined;
}

/** Carries doubts out in a file as somebody would with a text editor, and reads it again; nothing where it is refused. */
function byHand(document: StillhotDocument, doubts: readonly Doubt[]): StillhotDocument | undefined {
  const file = JSON.parse(writeDocument(document)) as {
    system: { points: Record<string, JsonObject>; elements: Record<string, JsonObject> };
  };
  const { points, elements } = file.system;
  for (const { instead } of doubts) {
    for (const [id, it] of Object.entries(instead.add?.points ?? {})) points[id] = it;
    for (const [id, it] of Object.entries(instead.add?.elements ?? {})) elements[id] = it;
    for (const [id, keys] of Object.entries(instead.set ?? {})) {
      const map = id in elements ? elements : points;
      const record: Record<string, Json | undefined> = { ...map[id] };
      for (const [key, value] of Object.entries(keys))
        if (value === null) delete record[key];
        else record[key] = value;
      map[id] = record as JsonObject;
    }
    for (const id of instead.remove ?? []) delete elements[id];
  }
  const read = readDocument(JSON.stringify(file));
  return "document" in read ? read.document : undefined;
}

const standing = (document: StillhotDocument): WorkPointReport => assess(document).workPoints[W1]!;

const BADNESS = ["grounded", "isolated", "could-go-live", "live"];

/** By how many things going wrong each conductor comes over the limit. */
function overAt({ threats }: WorkPointReport, limit: number): Map<string, number> {
  const least = new Map<string, number>();
  for (const it of threats)
    if (it.exposureVolts >= limit)
      least.set(it.conductor, Math.min(it.strength, least.get(it.conductor) ?? Infinity));
  return least;
}

function isWorse(document: StillhotDocument, before: WorkPointReport, now: WorkPointReport): boolean {
  const limit = settingsOf(document).exposureLimitVolts;
  const [had, has] = [overAt(before, limit), overAt(now, limit)];
  return (
    BADNESS.indexOf(now.verdict) > BADNESS.indexOf(before.verdict) ||
    (now.margin ?? 4) < (before.margin ?? 4) ||
    [...has].some(([letter, strength]) => strength < (had.get(letter) ?? Infinity))
  );
}

const nameOf = (doubts: readonly Doubt[]): string =>
  doubts.map((it) => `${it.doubt} ${it.where}`).join(" + ");

const touches = ({ instead: { set = {}, remove = [] } }: Doubt): string[] => [...Object.keys(set), ...remove];

describe("H15 what lookFirst says of a doubt is what holds once it is carried out in the file by hand", () => {
  test("verdict, margin and volts of every entry", () => {
    let asked = 0;
    for (let seed = 0; seed < draws(40); seed++) {
      const document = readable(seed, 5);
      if (document === undefined) continue;
      for (const entry of lookFirst(document, W1).entries) {
        const doubts = [entry.doubt, ...(entry.pair === null ? [] : [entry.pair])];
        const drawn = byHand(document, doubts);
        expect(drawn, `seed ${seed}: ${nameOf(doubts)} is a file that reads`).toBeDefined();
        const now = standing(drawn!);
        const found = { verdict: entry.verdict, margin: entry.margin };
        expect(found, `seed ${seed}: ${nameOf(doubts)}`).toEqual({
          verdict: now.verdict,
          margin: now.margin,
        });
        if (entry.volts !== null)
          expect(
            now.threats.some(
              (it) =>
                it.conductor === entry.conductor &&
                it.strength === entry.strength &&
                Math.abs(it.volts - entry.volts!) <= 1e-3 + 1e-4 * it.volts,
            ),
            `seed ${seed}: ${nameOf(doubts)}, ${entry.volts} V`,
          ).toBe(true);
        asked++;
      }
    }
    expect(asked).toBeGreaterThan(draws(30));
  });
});

/** Two switches in a row, blocked, and a source behind them: neither alone does harm. */
const TIE = `
  s1 source p1 ABC kvLL=12.47
  c1 cutout p1-p2 A open=A evidence=seen
  d1 disconnect p2-p3 A open=A tagged=true blocked=true
  d2 disconnect p3-p4 A open=A tagged=true blocked=true
  s2 source p4 ABC kvLL=12.47
  w1 work p2 A`;

function* smallDrawings(): Generator<readonly [number | string, StillhotDocument]> {
  yield ["tie", draw(TIE)];
  for (let seed = 300; seed < 300 + draws(45); seed++) {
    const document = readable(seed, 3);
    // What is live as drawn can hardly be worse.
    if (document !== undefined && standing(document).verdict !== "live") yield [seed, document];
  }
}

describe("H16 no doubt that would do harm is left out: brute force over single doubts and pairs", () => {
  test("small drawings", () => {
    let harms = 0;
    let pairs = 0;
    for (const [seed, document] of [...smallDrawings()]) {
      const before = standing(document);
      const harmful = (doubts: readonly Doubt[]): boolean => {
        const drawn = byHand(document, doubts);
        return drawn !== undefined && isWorse(document, before, standing(drawn));
      };
      const doubts = doubtsAround(document.system, jobOf(document).workPoints[W1]!);
      if (doubts.length > 24) continue;
      const wanted = new Set(doubts.filter((it) => harmful([it])).map((it) => nameOf([it])));
      const harmless = doubts.filter((it) => !harmful([it]));
      if (wanted.size < MOST_ENTRIES)
        for (const [nth, second] of harmless.entries())
          for (const first of harmless.slice(0, nth))
            if (!touches(first).some((it) => touches(second).includes(it)) && harmful([first, second])) {
              wanted.add(nameOf([first, second]));
              pairs++;
            }
      const { entries, asked } = lookFirst(document, W1, ALL);
      const found = entries.map(({ doubt, pair }) => nameOf([doubt, ...(pair === null ? [] : [pair])]));
      if (wanted.size <= MOST_ENTRIES) expect(found.sort(), `seed ${seed}`).toEqual([...wanted].sort());
      else expect([...wanted], `seed ${seed}`).toEqual(expect.arrayContaining(found));
      expect(asked.singles).toBe(asked.ofSingles);
      harms += found.length;
    }
    expect(harms).toBeGreaterThan(draws(20));
    expect(pairs).toBeGreaterThan(0);
  });
});

describe("H21 what the grounds are said to hold is what holds with the file changed by hand", () => {
  test("with the sets taken away, and in place", () => {
    let held = 0;
    let left = 0;
    for (let seed = 0; seed < draws(160); seed++) {
      const document = readable(seed, 6);
      const worth = document && groundsWorth(document, W1);
      if (worth === undefined || worth.asked < worth.of) continue;
      const limit = settingsOf(document!).exposureLimitVolts;
      const isOver = (drawn: StillhotDocument, doubts: readonly Doubt[]): boolean =>
        standing(byHand(drawn, doubts)!).threats.some((it) => it.exposureVolts >= limit);
      const sets = Object.entries(document!.system.elements).filter(([, it]) => it.kind === "ground");
      const remove = sets.map(([id]) => id);
      const bare = byHand(document!, [{ instead: { remove } } as never])!;
      const { entries } = lookFirst(bare, W1, ALL);
      if (entries.length < MOST_ENTRIES) {
        const hurting = entries.filter(
          ({ doubt, pair, exposureVolts }) =>
            pair === null && doubt.doubt !== "no-span" && (exposureVolts === null || exposureVolts >= limit),
        );
        expect(worth.hurting, `seed ${seed}`).toBe(hurting.length);
      }
      for (const doubt of worth.left) {
        expect(isOver(document!, [doubt]), `seed ${seed}: ${nameOf([doubt])}`).toBe(true);
        expect(isOver(bare, [doubt]), `seed ${seed}: ${nameOf([doubt])} without sets`).toBe(true);
        left++;
      }
      held += worth.held;
    }
    expect(held).toBeGreaterThan(draws(5));
    expect(left).toBeGreaterThan(draws(5));
  });
});
