import { expect, test } from "vitest";
import { darkSteps, isNoWorse, type OrderDraft } from "./orderDraft";

const draft = (...severities: readonly string[]) =>
  ({
    findings: severities.map((severity) => ({ severity })),
    customers: { during: 1, worst: 1, end: 0, steps: 0 },
    steps: [],
  }) as unknown as OrderDraft;

test("turns in which a rule finds a danger in place of a warning are worse, however many warnings go", () => {
  expect(isNoWorse(draft("danger"), draft("warning"))).toBe(false);
  expect(isNoWorse(draft("danger"), draft("warning", "warning"))).toBe(false);
  expect(isNoWorse(draft("warning"), draft("danger"))).toBe(true);
  expect(isNoWorse(draft("warning"), draft("warning"))).toBe(true);
});

/** An order of so many steps, in all of which as many are dark. */
const darkAllAlong = (customers: number, length: number, back = 0) =>
  ({
    findings: [],
    customers: {
      during: customers + back,
      worst: customers + back,
      end: customers,
      steps: (customers + back) * length,
    },
    steps: Array.from({ length }, () => ({})),
  }) as unknown as OrderDraft;

test("who is dark at the end as well is none the better for an order with a test less", () => {
  expect(darkSteps(darkAllAlong(18, 28))).toBe(0);
  expect(isNoWorse(darkAllAlong(18, 28), darkAllAlong(18, 26))).toBe(true);
  expect(darkSteps(darkAllAlong(18, 28, 2))).toBe(56);
  expect(isNoWorse(darkAllAlong(18, 28, 2), darkAllAlong(18, 26, 2))).toBe(false);
  expect(isNoWorse(darkAllAlong(2, 28), darkAllAlong(0, 28, 2))).toBe(false);
});
