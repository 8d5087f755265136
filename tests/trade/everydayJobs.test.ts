import { describe, expect, test } from "vitest";
import { findingsAtEnd } from "../../src/core/procedure";
import { playedOn } from "../support/jobNotation";
import { spell } from "../support/words";
import { BANK_JOBS } from "./banks";
import { CALL_OUT_JOBS } from "./callOuts";
import type { EverydayJob } from "./everydayJob";
import { LINE_JOBS } from "./lines";
import { NEW_AND_MOVED_JOBS } from "./newAndMoved";
import { RARE_JOBS } from "./onceAYear";
import { ORDINARY_JOBS } from "./ordinary";
import { OTHER_GEAR_JOBS } from "./otherGear";
import { PEOPLE_JOBS } from "./people";
import { linesOf, spoiled } from "./spoil";
import { DEVICE_JOBS } from "./stations";
import { YEARS_JOBS } from "./throughTheYear";
import { WEEKLY_JOBS } from "./weekly";

/** Everything that is found, as `severity rule @ step`. */
function foundIn(drawing: string, steps: string): string[] {
  const lines = linesOf(steps);
  const played = playedOn(drawing, steps);
  return [
    ...played.flatMap(({ findings, n }) =>
      findings.map((it) => `${it.severity} ${it.rule} @ ${lines[n - 1]!} (${spell(it.message)})`),
    ),
    ...findingsAtEnd(played.at(-1)!.state).map(
      (it) => `${it.severity} ${it.rule} @ end (${spell(it.message)})`,
    ),
  ];
}

const JOBS: readonly EverydayJob[] = [
  ...BANK_JOBS,
  ...LINE_JOBS,
  ...DEVICE_JOBS,
  ...PEOPLE_JOBS,
  ...CALL_OUT_JOBS,
  ...RARE_JOBS,
  ...ORDINARY_JOBS,
  ...YEARS_JOBS,
  ...NEW_AND_MOVED_JOBS,
  ...OTHER_GEAR_JOBS,
  ...WEEKLY_JOBS,
];

for (const { job, drawing, order, mistakes } of JOBS)
  describe(job, () => {
    test("its order draws no finding above a note", () => {
      const found = foundIn(drawing, order).filter((it) => !it.startsWith("note "));
      expect(found).toEqual([]);
    });

    test.each(mistakes)("%s", (_why, edits, wanted) => {
      const { drawing: drawn, steps } = spoiled(drawing, order, edits);
      const found = foundIn(drawn, steps);
      expect(found).toContainEqual(expect.stringContaining(`${wanted} (`));
    });
  });
