import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { isAtOnce } from "./atOnce";

const sideBySide = (count: number, open: string) =>
  draw(`
    s1 source p1 ABC kvLL=12.47
    ${Array.from({ length: count }, (_, n) => `d${n + 1} disconnect p1-p2 ABC ${open}`).join("\n    ")}
    w1 work p2 ABC
  `);

test.each([
  ["a few switches", 4, "", true],
  ["a hundred closed ones", 100, "", true],
  ["four open ones", 4, "open=ABC", true],
  ["a hundred open ones side by side, of which each may close with any other", 100, "open=ABC", false],
  ["more things than a frame has room for", 200, "", false],
])("%s", (_, count, open, expected) => {
  expect(isAtOnce(sideBySide(count, open))).toBe(expected);
});
