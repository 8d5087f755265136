/** Whether hundreds of mutants are each held against the laws: what lives through a few drawings is held against all later. */
export const asksFew = process.env["FEWER_DRAWS"] !== undefined;

/** How many random drawings a law is asked of: all in the tests, an eighth where few are asked. */
export const draws = (count: number): number => (asksFew ? Math.ceil(count / 8) : count);
