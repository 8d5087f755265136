import { isLong } from "./long";

/** Whether hundreds of mutants are each held against the laws: what lives through a few drawings is held against all later. */
export const asksFew = process.env["FEWER_DRAWS"] !== undefined;

/**
 * Of so many random drawings those that a law is asked of: a third in the tests, all in the long run, an eighth where few are
 * asked. Of what is counted on the way as many are wanted as of all.
 */
export const draws = (count: number): number => Math.ceil(count / (asksFew ? 8 : isLong ? 1 : 3));
