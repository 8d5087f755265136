import { describe, expect, test } from "vitest";
import approach from "../../../shared/reference/minimum-approach.json";
import gloves from "../../../shared/reference/gloves.json";
import { gloveClassFor } from "./gloves";
import { approachDistanceFor } from "./minimumApproach";

describe("Minimum approach distance: 29 CFR 1910.269 Table R-6", () => {
  test.each(approach.rows)("$nominalVoltsPhaseToPhaseFrom V to $nominalVoltsPhaseToPhaseTo V", (row) => {
    const wanted =
      row.phaseToGroundMetres === null
        ? { rule: "avoid-contact" }
        : {
            rule: "distance",
            phaseToGroundM: row.phaseToGroundMetres,
            phaseToPhaseM: row.phaseToPhaseMetres,
          };
    expect(approachDistanceFor(row.nominalVoltsPhaseToPhaseFrom)).toEqual(wanted);
    expect(approachDistanceFor(row.nominalVoltsPhaseToPhaseTo)).toEqual(wanted);
  });

  test.each([
    ["under 50 V no rule", 48, { rule: "none" }],
    [
      "a gap between rows takes the upper row",
      5050,
      { rule: "distance", phaseToGroundM: 0.65, phaseToPhaseM: 0.68 },
    ],
    ["12.47 kV", 12470, { rule: "distance", phaseToGroundM: 0.65, phaseToPhaseM: 0.68 }],
    [
      "14.4 kV to ground, single phase: footnote 2",
      14400,
      { rule: "distance", phaseToGroundM: 0.65, phaseToPhaseM: 0.68 },
    ],
    ["24.94 kV", 24940, { rule: "distance", phaseToGroundM: 0.77, phaseToPhaseM: 0.89 }],
    ["above the table", 115000, undefined],
  ])("%s", (_why, volts, wanted) => {
    expect(approachDistanceFor(volts)).toEqual(wanted);
  });
});

describe("Glove classes: 29 CFR 1910.137, ASTM D120", () => {
  test.each(gloves.rows)("class $class up to $maxUseVoltsAc V", (row) => {
    expect(gloveClassFor(row.maxUseVoltsAc)?.name).toBe(row.class);
    expect(gloveClassFor(row.maxUseVoltsAc + 1)?.name).not.toBe(row.class);
  });

  test.each([
    ["7.2 kV to ground where no other phase is in reach", 7200, "1"],
    ["12.47 kV phase to phase", 12470, "2"],
    ["240 V service", 240, "00"],
  ])("%s", (_why, volts, name) => {
    expect(gloveClassFor(volts)?.name).toBe(name);
  });

  test("above class 4 there is none", () => expect(gloveClassFor(46000)).toBeUndefined());
});
