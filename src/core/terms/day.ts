/** What a clock says of the day where it is; a `Date` is one. */
interface Clock {
  getFullYear(): number;
  getMonth(): number;
  getDate(): number;
}

/** The day as a file writes it: `2026-03-31`. */
export function dayBy(clock: Clock): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${clock.getFullYear()}-${two(clock.getMonth() + 1)}-${two(clock.getDate())}`;
}

/**
 * Days from one day to another as files write them, negative where the other was before.
 *
 * Source: the Julian day number, H. F. Fliegel and T. C. Van Flandern, Communications of the ACM 11 (1968), 657.
 */
export const daysBetween = (from: string, to: string): number => julianDay(to) - julianDay(from);

function julianDay(day: string): number {
  const [year, month, date] = day.split("-").map(Number) as [number, number, number];
  const beforeMarch = Math.trunc((month - 14) / 12);
  return (
    date -
    32_075 +
    Math.trunc((1461 * (year + 4800 + beforeMarch)) / 4) +
    Math.trunc((367 * (month - 2 - beforeMarch * 12)) / 12) -
    Math.trunc((3 * Math.trunc((year + 4900 + beforeMarch) / 100)) / 4)
  );
}
