import { linkRatings } from "../../reference";

/** Usual sizes of single-phase units and of banks of three [kVA]. Source: IEEE C57.12.20, from memory. */
const UNITS_KVA = [10, 15, 25, 37.5, 50, 75, 100];
const BANKS_KVA = [45, 75, 112.5, 150, 225, 300];

const atLeast = (sizes: readonly number[], wanted: number): number =>
  sizes.find((it) => it >= wanted) ?? sizes.at(-1)!;

/** A unit with a fifth to spare over the load. */
export const unitKva = (kw: number): number => atLeast(UNITS_KVA, 1.2 * kw);

/** A bank of three with three tenths to spare over the load. */
export const bankKva = (kw: number): number => atLeast(BANKS_KVA, 1.3 * kw);

/** A link of twice to two and a half times full load, which lets the inrush through (common practice, no source). */
export const linkFor = (amps: number): { readonly type: "K"; readonly amps: number } => ({
  type: "K",
  amps: atLeast(SIZES, 2 * amps),
});

/** The link of a sideline: two sizes over the largest one beyond it, so that that one goes first. */
export const linkOver = (amps: number): { readonly type: "K"; readonly amps: number } =>
  linkFor(Math.max(15, 1.25 * amps));

const SIZES = linkRatings("K").filter((it) => it >= 6);

/** A tenth of a kvar, at a power factor of 0.97. */
export const kvarOf = (kw: number): number => Math.round(2.5 * kw) / 10;
