import { expect, test } from "vitest";
import { dayBy, daysBetween } from "./day";

test("days between two days are those of the calendar that JavaScript keeps", () => {
  const first = Date.UTC(1899, 11, 25);
  for (let n = 0; n < 80_000; n += 37) {
    const day = new Date(first + n * 86_400_000).toISOString().slice(0, 10);
    expect(daysBetween("1899-12-25", day)).toBe(n);
    expect(daysBetween(day, "1899-12-25")).toBe(-n || 0);
  }
});

test("a day is the one of the clock's own place", () => {
  expect(dayBy(new Date(2026, 2, 31, 23, 59))).toBe("2026-03-31");
  expect(dayBy(new Date(2026, 10, 1, 0, 1))).toBe("2026-11-01");
});
