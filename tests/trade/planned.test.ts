import { expect, test } from "vitest";
import { plan } from "../../src/core/procedure";
import { draw } from "../support/jobNotation";
import { spell } from "../support/words";
import { ORDINARY_JOBS } from "./ordinary";

/** Jobs that say where hands go: the others are done from a device, and have nothing to plan for. */
const WITH_WORK = ORDINARY_JOBS.filter(({ drawing }) => /^ *w1 +work /m.test(drawing));

test.each(WITH_WORK.map(({ job, drawing }) => [job, drawing] as const))(
  "a plan, and nobody dark at its end: %s",
  (_job, drawing) => {
    const { steps, findings, customers } = plan(draw(drawing), { alternatives: false });
    expect(findings.map((it) => `${it.rule} ${spell(it.message)}`)).toEqual([]);
    expect(steps.some((it) => it.do === "work")).toBe(true);
    expect(customers.end).toBe(0);
  },
);
