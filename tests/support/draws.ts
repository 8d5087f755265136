/** How many random drawings a law is asked of: all in the tests, an eighth where each of hundreds of mutants asks anew and is asked of all only if it lives. */
export const draws = (count: number): number =>
  process.env["FEWER_DRAWS"] === undefined ? count : Math.ceil(count / 8);
