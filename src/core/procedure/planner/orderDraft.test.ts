import { expect, test } from "vitest";
import { isNoWorse, type OrderDraft } from "./orderDraft";

const draft = (...severities: readonly string[]) =>
  ({
    findings: severities.map((severity) => ({ severity })),
    customers: { during: 1, worst: 1, end: 0, steps: 0 },
    darkSteps: 0,
    steps: [],
  }) as unknown as OrderDraft;

test("turns in which a rule finds a danger in place of a warning are worse, however many warnings go", () => {
  expect(isNoWorse(draft("danger"), draft("warning"))).toBe(false);
  expect(isNoWorse(draft("danger"), draft("warning", "warning"))).toBe(false);
  expect(isNoWorse(draft("warning"), draft("danger"))).toBe(true);
  expect(isNoWorse(draft("warning"), draft("warning"))).toBe(true);
});

const darkFor = (darkSteps: number, end = 18): OrderDraft => ({
  ...draft(),
  darkSteps,
  customers: { asFound: 0, during: 20, worst: 20, end, steps: 0 },
});

test("who gets supply back waits no longer in an order that is no worse", () => {
  expect(isNoWorse(darkFor(56), darkFor(56))).toBe(true);
  expect(isNoWorse(darkFor(56), darkFor(52))).toBe(false);
  expect(isNoWorse(darkFor(52), darkFor(56))).toBe(true);
  expect(isNoWorse(darkFor(52, 19), darkFor(56))).toBe(false);
});
