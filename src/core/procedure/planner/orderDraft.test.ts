import { expect, test } from "vitest";
import { isNoWorse, type OrderDraft } from "./orderDraft";

const draft = (...severities: readonly string[]) =>
  ({
    findings: severities.map((severity) => ({ severity })),
    customers: { during: 1, worst: 1, steps: [] },
  }) as unknown as OrderDraft;

test("turns in which a rule finds a danger in place of a warning are worse, however many warnings go", () => {
  expect(isNoWorse(draft("danger"), draft("warning"))).toBe(false);
  expect(isNoWorse(draft("danger"), draft("warning", "warning"))).toBe(false);
  expect(isNoWorse(draft("warning"), draft("danger"))).toBe(true);
  expect(isNoWorse(draft("warning"), draft("warning"))).toBe(true);
});
