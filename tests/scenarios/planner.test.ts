import { describe, expect, test } from "vitest";
import {
  canBeSolved,
  factsOf,
  planned,
  scenarioOf,
  scoreOf,
  trapsOf,
  mapWith,
  type StillhotDocument,
} from "../../src/core";
import { files, scenarioFile } from "./library";
import { plan } from "../../src/core/procedure";
import { spell } from "../support/words";

/**
 * Where no plan made beforehand can be the whole answer, and why: something happens in the middle, a device does not move,
 * or the scenario asks for more than the rules do. Their own answers are played in `library.test.ts`.
 */
const BEYOND_A_PLAN: Readonly<Record<string, string>> = {
  "brook-lane": "a standby set starts in the middle",
  "larkfield-calls": "asks for the neutral to be remade; a plan may ground elsewhere instead",
  "larkfield-insulator": "another crew tags the cutout in the middle",
  "mill-sideline": "a generator starts in the middle",
  "orchard-close": "a generator starts in the middle",
  "pole-77": "the clamp does not move",
  quillfield: "a blade stays behind",
};

/** Where a plan made without the one fact does the right thing all the same, and why. */
const CAREFUL_ANYWAY: Readonly<Record<string, string>> = {
  "mill-sideline": "the planner has the mill's generator stopped first, which nobody has met by then",
  "pole-77": "the planner drops the load with the cutout before it tries the clamp",
  "sluice-pumps": "the planner opens all three phases of any bank",
};

const without = (document: StillhotDocument, change: (scenario: object) => object): StillhotDocument => ({
  ...document,
  scenario: change(document.scenario!) as never,
});

describe("the planner's order, after finding out, plays to full marks", () => {
  test.each(files.filter((id) => BEYOND_A_PLAN[id] === undefined))("%s", (id) => {
    const { answer: _answer, ...rest } = scenarioFile(id).scenario!;
    const { solved, why } = canBeSolved(
      without(scenarioFile(id), () => rest),
      planned,
    );
    expect(why.map((it) => spell(it))).toEqual([]);
    expect(solved).toBe(true);
  });
});

describe("a plan that does not know of a hidden fact falls into its trap", () => {
  const hiding = files.filter((id) =>
    scenarioOf(scenarioFile(id)).traps!.some(({ fact }) => fact !== undefined),
  );
  test.each(hiding)("%s", (id) => {
    const document = without(scenarioFile(id), (scenario) => ({
      ...scenario,
      traps: scenarioOf(scenarioFile(id))
        .traps!.filter(({ fact }) => fact !== undefined)
        .map(({ fall: _fall, ...trap }) => trap),
    }));
    const [check] = trapsOf(document, planned);
    expect(check!.canBeFallenInto).toBe(CAREFUL_ANYWAY[id] === undefined);
    if (check!.canBeFallenInto) expect(scoreOf(check!.attempt!).passed).toBe(false);
  });
});

// What happens in the middle is a fact like any other to whoever plans after it.
test.each(["brook-lane", "mill-sideline", "orchard-close", "quillfield", "pole-77"])(
  "whoever knows every fact of %s, what happened in the middle too, has an order that passes every rule",
  (id) => {
    const { ok, findings } = plan(mapWith(scenarioFile(id), [...factsOf(scenarioFile(id)).keys()]), {
      alternatives: false,
    });
    expect([ok, findings.map(({ rule }) => rule)]).toEqual([true, []]);
  },
);

// Common practice, no source: a customer's machine is the customer's; the crew has it stopped, and starts none.
test.each(files)("no plan that knows every fact starts a machine: %s", (id) => {
  expect(
    planned(mapWith(scenarioFile(id), [...factsOf(scenarioFile(id)).keys()])).filter(
      (it) => it.do === "start",
    ),
  ).toEqual([]);
});
