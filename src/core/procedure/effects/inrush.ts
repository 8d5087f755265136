import type { AnyTransformer } from "../../devices";
import { type FuseLink, meltAmps } from "../../reference";

/** A current that a link must carry for a time without melting. */
export interface Surge {
  readonly amps: number;
  readonly seconds: number;
}

/**
 * Magnetizing inrush as it heats a link: 12 times full load for 0.1 s, 25 times for 0.01 s.
 * Source: `shared/reference/fuse-links.json`, conventions, inrush.
 *
 * @param fullLoadAmps of all transformers that are energized together [A]
 */
export const inrushSurges = (fullLoadAmps: number): Surge[] => [
  { amps: 12 * fullLoadAmps, seconds: 0.1 },
  { amps: 25 * fullLoadAmps, seconds: 0.01 },
];

/** Load without diversity after an outage, against the same load before: twice, for half an hour (from memory: handbooks). */
const COLD_LOAD = 2;
const COLD_LOAD_SECONDS = 1800;

/** What a load draws when it comes back cold, for longer than any link takes to decide. */
export const coldLoadSurge = (loadAmps: number): Surge => ({
  amps: COLD_LOAD * loadAmps,
  seconds: COLD_LOAD_SECONDS,
});

/** Whether the quickest link of a rating melts in a surge. */
export const melts = (link: FuseLink, { amps, seconds }: Surge): boolean =>
  amps >= meltAmps(link, seconds).least;

/**
 * Full-load amperes on the primary.
 *
 * @returns amperes in each line of the primary [A]; `kva / kv` for one unit, `kva / (√3 kv)` for a three-phase bank
 */
export function fullLoadAmps({
  kva,
  primaryKv,
  connection,
}: Pick<AnyTransformer, "kva" | "primaryKv" | "connection">): number {
  if (connection === "single") return kva / primaryKv;
  // Two units, each between a line and the neutral.
  if (connection === "openY-openD") return kva / 2 / (primaryKv / Math.sqrt(3));
  return kva / (Math.sqrt(3) * primaryKv);
}
