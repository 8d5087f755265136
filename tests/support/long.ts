/**
 * `npm test -- --long`: what takes too long for each change is asked too. What a test asks in either run is a sample of that,
 * and whatever once found a fault.
 */
export const isLong = process.env["LONG"] === "1";

/** All of them in the long run, else every `nth`, begun with the first. */
export const sampled = <T>(all: readonly T[], nth: number): readonly T[] =>
  isLong ? all : all.filter((_, at) => at % nth === 0);
