import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { spell } from "../../../tests/support/words";
import {
  type Change,
  isUnreadable,
  readDocument,
  scenarioOf,
  type StillhotDocument,
  structuresOf,
  writeDocument,
} from "../document";
import { assess } from "../hazard";
import { isRefusal } from "../terms";
import { act, startAttempt, worldOf } from "./act";
import { mapOf, truthOf } from ".";
import { forget, unhide } from "./edits";
import { hideStructure } from "./hideStructure";

const demo = (name: string): StillhotDocument => {
  const read = readDocument(
    readFileSync(new URL(`../../../shared/demos/${name}.stillhot.json`, import.meta.url), "utf8"),
  );
  if (isUnreadable(read)) throw new Error(`${name} does not read`);
  return read.document;
};
const SIDELINE = demo("sideline-three-transformers");

function hidden(id: string, document = SIDELINE): Change {
  const change = hideStructure(id, "An older map")(document);
  if (isRefusal(change)) throw new Error(spell(change.refused));
  expect(readDocument(writeDocument(change.after))).toMatchObject({ document: change.after, warnings: [] });
  return change;
}
const on = ({ system }: StillhotDocument) => [...structuresOf(system).keys()].toSorted();

test("a pole at the end of a line leaves the map with all that is on it and all that it alone feeds", () => {
  const { after } = hidden("s33");
  expect(on(mapOf(after))).toEqual(["h1", "h2", "s30", "s31", "s32", "st1"]);
  expect(Object.keys(mapOf(after).system.elements)).not.toContain("sp4");
  expect(truthOf(after).system).toEqual(SIDELINE.system);
});

test("past a pole in the middle of a line the line runs on, on the map, and nothing beyond it loses its feed", () => {
  const { after } = hidden("s31");
  const map = mapOf(after);
  expect(on(map)).toEqual(["h2", "h3", "s30", "s32", "s33", "st1"]);
  expect(map.system.elements["sp2" as never]).toMatchObject({ from: "p4", to: "p6", lengthM: 125 });
  expect(truthOf(after).system).toEqual(SIDELINE.system);
  // An end without a feed would be taken for live and not known, and would give the hidden pole away.
  const states = Object.values(assess(map).conductors).map(({ state }) => state);
  expect(states.length).toBeGreaterThan(0);
  expect(states).not.toContain("unknown");
});

test("what was hidden is put back on the map whole, or is forgotten whole", () => {
  for (const id of ["s31", "s33"]) {
    const change = hidden(id);
    const [fact] = change.made!;
    const back = unhide(fact!)(change.after);
    if (isRefusal(back)) throw new Error(spell(back.refused));
    expect(back.after.system).toEqual(SIDELINE.system);
    const forgotten = forget(fact!)(change.after);
    if (isRefusal(forgotten)) throw new Error(spell(forgotten.refused));
    expect(truthOf(forgotten.after).system).toEqual(mapOf(change.after).system);
    expect(scenarioOf(forgotten.after).truth).toBeUndefined();
  }
});

test("a pole at which work is to be done, or through which alone its place is fed, stays on the map", () => {
  for (const id of ["s32", "s30", "st1"]) {
    const refused = hideStructure(id, "x")(SIDELINE);
    expect(isRefusal(refused) && spell(refused.refused)).toMatch(/^Work is to be done on (Pole 3|Fernhill)/);
  }
  expect(isRefusal(hideStructure("s99", "x")(SIDELINE))).toBe(true);
});

test("whoever looks at the next pole finds the one that the map does not show", () => {
  const { after, made } = hidden("s31");
  const attempt = startAttempt(after);
  const known = (it: typeof attempt) => on(worldOf(it).known.document);
  expect(known(attempt)).not.toContain("s31");
  const acted = act(attempt, { do: "inspect", at: "s30" as never });
  if (isRefusal(acted)) throw new Error(spell(acted.refused));
  expect(acted.attempt.log.at(-1)!.result.reveals).toEqual([...made!]);
  expect(known(acted.attempt)).toContain("s31");
});

test("every pole of every demo is hidden whole, and is true all the same, or it is said why not", () => {
  let count = 0;
  for (const name of ["quarry-lane", "transformer-tap", "sideline-far-end-tie", "grounded-wye-delta-bank"]) {
    const document = demo(name);
    for (const id of structuresOf(document.system).keys()) {
      const change = hideStructure(id, "x")(document);
      if (isRefusal(change)) {
        expect(spell(change.refused)).toMatch(/^Work is to be done/);
        continue;
      }
      count++;
      expect([name, id, truthOf(change.after).system]).toEqual([name, id, document.system]);
      expect(structuresOf(mapOf(change.after).system).has(id)).toBe(false);
    }
  }
  expect(count).toBeGreaterThan(6);
});
