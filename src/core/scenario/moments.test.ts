import { expect, test } from "vitest";
import { momentAfter } from "./moments";

test("a moment some seconds later is the one that the platform's clock gives", () => {
  for (const start of [
    "1970-01-01T00:00:00Z",
    "2024-02-28T23:59:30Z",
    "2026-12-31T20:00:00.250-05:00",
    "2000-02-29T12:00:00+09:30",
  ])
    for (const seconds of [0, 31, 86_400, 40_000_000]) {
      const wanted = new Date(Date.parse(start.replace(".250", "")) + seconds * 1000)
        .toISOString()
        .replace(".000Z", "Z");
      expect(momentAfter(start, seconds)).toBe(wanted);
    }
  expect(momentAfter("yesterday", 3)).toBeUndefined();
});
