import { expect, test } from "vitest";
import { numberFrom, typed } from "./numbers";

test.each<[string, number | undefined]>([
  ["7.5", 7.5],
  ["7,5", 7.5],
  [" 12 470 ", 12470],
  ["12\u202f470,5", 12470.5],
  ["-3", -3],
  ["", undefined],
  ["  ", undefined],
  ["1,5,2", undefined],
  ["7.5 kVA", undefined],
  ["Infinity", undefined],
])("%j is typed for %j", (text, number) => expect(numberFrom(text)).toBe(number));

test.each([0.001, 7.5, 12470, 1e21])("%d is read from a field as it was written", (number) =>
  expect(numberFrom(typed(number))).toBe(number),
);
