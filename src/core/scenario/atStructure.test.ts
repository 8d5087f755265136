import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { spell } from "../../../tests/support/words";
import { isUnreadable, pointName, readValue, type StillhotDocument, structureName } from "../document";
import { isRefusal, type Json } from "../terms";
import { act, startAttempt, worldOf } from "./act";
import type { Action } from "./actions";
import type { Attempt } from "./attempt";
import { whenTrue } from "./conditions";
import { makeTrue } from "./edits";

const FILE = JSON.parse(
  readFileSync("shared/demos/sideline-three-transformers.stillhot.json", "utf8"),
) as Record<string, Json>;

/** The demo with a scenario on it. */
function scenario(keys: object = {}): StillhotDocument {
  const read = readValue({ ...FILE, scenario: { prebrief: "x", ...keys } as Json });
  if (isUnreadable(read))
    throw new Error(read.problems.map((it) => `${it.path} ${spell(it.message)}`).join());
  return read.document;
}

function after(document: StillhotDocument, actions: readonly object[]): Attempt {
  let attempt = startAttempt(document);
  for (const action of actions) {
    const acted = act(attempt, action as Action);
    if (isRefusal(acted)) throw new Error(spell(acted.refused));
    attempt = acted.attempt;
  }
  return attempt;
}

const did = ({ log }: Attempt): string[] => log.map(({ verb, object }) => `${verb} ${object}`);

test("who stands at a structure is at all of its points, and walks to no other one for them", () => {
  const attempt = after(scenario(), [
    { do: "go", at: "s31" },
    { do: "inspect", at: "s31" },
    { do: "test", at: "p9", phases: "12" },
    { do: "open", element: "c2", with: "load-break-tool" },
  ]);
  expect(did(attempt)).toEqual(["go s31", "inspect s31", "test p9", "open c2"]);
  expect(attempt.log[0]!.result.shown.map((it) => spell(it))).toEqual(["you stand at Pole 31"]);
});

test("a meter is at the house that it is on: who stands at the pole of its transformer walks there", () => {
  const attempt = after(scenario(), [
    { do: "go", at: "s31" },
    { do: "pull", element: "m1" },
  ]);
  expect(did(attempt)).toEqual(["go s31", "go p10", "pull m1"]);
});

test("a structure that is not on the map is refused, and so is a test at a whole pole", () => {
  const attempt = startAttempt(scenario());
  expect(isRefusal(act(attempt, { do: "go", at: "s99" }))).toBe(true);
  expect(isRefusal(act(attempt, { do: "test", at: "s31" } as Action))).toBe(true);
});

test("a pole that bears another number is a change of its label in truth, found by a look at that pole", () => {
  const changed = makeTrue("s32", { label: "Pole 34" }, "Pole 32 is numbered 34")(scenario());
  if (isRefusal(changed)) throw new Error(spell(changed.refused));
  const hidden = scenario({
    truth: { f1: { label: "Pole 32 is numbered 34", set: { s32: { label: "Pole 34" } } } },
  });
  expect(changed.after.scenario!["truth"]).toEqual(hidden.scenario!["truth"]);
  const known = (attempt: Attempt) => worldOf(attempt).known.document;
  const elsewhere = after(hidden, [{ do: "inspect", at: "s31" }]);
  expect(structureName(known(elsewhere), "s32")).toBe("Pole 32");
  const there = after(hidden, [{ do: "inspect", at: "s32" }]);
  expect(structureName(known(there), "s32")).toBe("Pole 34");
  expect(spell(pointName(known(there), "p11"))).toBe("Pole 34, T2 bushing");
  expect(there.log.at(-1)!.result.reveals).toEqual(["f1"]);
});

test("a look that counts is a look at the whole structure; another pole is another", () => {
  const document = scenario();
  const when = (at: string) =>
    whenTrue({ step: { do: "inspect", at: "p6" } }, document, after(document, [{ do: "inspect", at }]).log);
  expect([when("p6"), when("p11"), when("s32"), when("s31")]).toEqual([2, 2, 2, undefined]);
});

test("a structure that comes in truth alone is named where it may be, and nowhere twice", () => {
  const truth = (id: string) => ({
    truth: { f1: { label: "x", add: { structures: { [id]: { label: "Pole 40" } } } } },
    reveals: [{ by: "inspect", at: id, text: "t", shows: ["f1"] }],
  });
  expect(scenario(truth("s40")).scenario).toMatchObject({ reveals: [{ at: "s40" }] });
  expect(() => scenario(truth("s31"))).toThrow(/s31/);
});
