import { Ajv2020 } from "ajv/dist/2020";
import { describe, expect, test } from "vitest";
import {
  canBeSolved,
  factsOf,
  jsonSchema,
  mapOf,
  scenarioOf,
  scoreOf,
  trapsOf,
  writeDocument,
} from "../../src/core";
import { files, listed, scenarioFile, textOf } from "./library";
import { spell } from "../support/words";

/** What each trap does to whoever falls into it: the rule that fires in that entry, and what is seen of it. */
const CONSEQUENCES: Readonly<
  Record<string, Readonly<Record<string, readonly [rule: string, kind: string]>>>
> = {
  "first-cutout": {
    "clamp-under-load": ["load-break", "arc"],
    "open-is-not-dead": ["work-not-safe", "none"],
    "secondary-forgotten": ["secondary-backfeed", "none"],
  },
  "bird-guard": { shaken: ["loose-hardware", "none"] },
  "orchard-close": { "no-test": ["ground-on-live", "fault"], "live-ignored": ["test-live", "none"] },
  "pole-77": { force: ["", "none"] },
  "gristmill-tap": { bare: ["load-break", "arc"], clamp: ["load-break", "arc"] },
  "larkfield-storm": { "believed-map": ["ground-on-live", "fault"] },
  "larkfield-lead": { "ground-on-live": ["ground-on-live", "fault"], "not-dropped": ["test-live", "none"] },
  quillfield: { handle: ["ground-on-live", "fault"], "live-b": ["test-live", "none"] },
  "mill-terrace": { "one-cutout": ["ground-on-live", "fault"] },
  "sluice-pumps": { "one-phase": ["open-phase-backfeed", "fault"] },
  heathside: { charged: ["capacitor-discharge", "arc"] },
  lindens: { "one-end": ["ground-on-live", "fault"] },
  "brook-lane": { trusted: ["ground-on-live", "fault"] },
  "fern-row": { number: ["ground-on-live", "fault"] },
  "larkfield-insulator": { "closed-on-crew": ["tagged-operated", "none"] },
  "foundry-section": {
    "one-phase": ["open-phase-backfeed", "fault"],
    "tested-and-went-on": ["test-live", "none"],
  },
  "larkfield-calls": { "rod-alone": ["ground-return", "none"] },
  "mill-sideline": {
    "lost-tie": ["ground-on-live", "fault"],
    "mill-generator": ["ground-on-live", "fault"],
    "one-phase": ["work-not-safe", "shock"],
  },
};

const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(jsonSchema());

test("the library lists every file, in order of difficulty no harder than five", () => {
  expect(listed.map(({ id }) => id).sort()).toEqual([...files].sort());
  expect(files.length).toBeGreaterThanOrEqual(16);
  for (const { id, title, level, minutes } of listed) {
    const { title: own } = scenarioFile(id);
    const scenario = scenarioOf(scenarioFile(id));
    expect([title, level, minutes]).toEqual([own, scenario.level, scenario.minutes]);
  }
});

describe.each(files)("%s", (id) => {
  const document = scenarioFile(id);
  const scenario = scenarioOf(document);

  test("is written as the program writes it, and says what it teaches, asks and debriefs", () => {
    expect(writeDocument(document)).toBe(textOf(id));
    expect(validate(JSON.parse(textOf(id))), JSON.stringify(validate.errors)).toBe(true);
    expect(scenario.objectives!.length).toBeGreaterThanOrEqual(3);
    expect(scenario.traps!.length).toBeGreaterThanOrEqual(1);
    for (const key of ["reactions", "happened", "why", "takeAway"] as const)
      expect(scenario.debrief?.[key]?.length).toBeGreaterThan(0);
    for (const { objective } of scenario.criteria!)
      expect(scenario.objectives!.map((it) => it.id)).toContain(objective);
  });

  test("can be solved: its answer plays to full marks", () => {
    const { solved, why, attempt } = canBeSolved(document);
    expect(why.map((it) => spell(it))).toEqual([]);
    expect(solved).toBe(true);
    expect(scoreOf(attempt)).toMatchObject({ percent: 100, passed: true, dangers: [] });
    // Nothing that the answer does is even a warning: it is what a crew should be shown.
    const warnings = attempt.log.flatMap(({ n, result }) =>
      (result.findings ?? []).filter(({ severity }) => severity !== "note").map(({ rule }) => `${n} ${rule}`),
    );
    expect(warnings).toEqual([]);
  });

  test("each trap can be fallen into, with its own consequence, and fails the attempt", () => {
    const checks = trapsOf(document);
    expect(Object.keys(CONSEQUENCES[id]!)).toEqual(checks.map(({ trap }) => trap.id));
    for (const { trap, canBeFallenInto, attempt, entry } of checks) {
      expect(canBeFallenInto, trap.id).toBe(true);
      const { result } = attempt!.log[entry! - 1]!;
      const [rule, kind] = CONSEQUENCES[id]![trap.id]!;
      if (rule !== "") expect((result.findings ?? []).map((it) => it.rule)).toContain(rule);
      expect(result.consequence?.kind ?? "none", trap.id).toBe(kind);
      expect(scoreOf(attempt!).passed).toBe(false);
    }
  });

  test("nothing hidden stands in what the apprentice gets", () => {
    const map = JSON.stringify(mapOf(document));
    for (const fact of factsOf(document).values()) {
      expect(map).not.toContain(fact.label);
      for (const added of [...Object.keys(fact.add?.points ?? {}), ...Object.keys(fact.add?.elements ?? {})])
        expect(map).not.toContain(`"${added}"`);
      if ("text" in fact && fact.text !== undefined) expect(map).not.toContain(fact.text);
    }
    expect(Object.keys(mapOf(document).scenario ?? {})).not.toContain("truth");
    expect(mapOf(document).job?.["steps"] ?? []).toEqual([]);
  });
});
