import table from "../../../shared/reference/fuse-links.json";

/** A link by its speed and its rating. */
export interface FuseLink {
  readonly type: "K" | "T";
  readonly amps: number;
}

/** A link as it is called: `25K`. */
export const linkName = ({ amps, type }: FuseLink): string => `${amps}${type}`;

/** The earliest and the latest that something happens, over the links of one rating. */
export interface Spread {
  readonly least: number;
  readonly most: number;
}

/** Melting current against time, longest time first. */
interface Curve {
  readonly seconds: readonly number[];
  readonly amps: readonly number[];
}

/** Ratings of the table, by type. */
export const linkRatings = (type: FuseLink["type"]): number[] =>
  table.rows.filter((row) => row.type === type).map(({ ratedAmps }) => ratedAmps);

/** A link that melts latest takes about a fifth more current than the one that melts first: the table's 0.1 s column. */
const SPREAD_OF_GENERIC = 1.2;

/**
 * The quickest and the slowest melting curve of a link. A rating that the table does not have takes the generic curve of
 * its type, in multiples of the rating. Source: K and T links, from memory of C37.42 (`shared/reference/fuse-links.json`).
 */
function curvesOf({ type, amps }: FuseLink): { quickest: Curve; slowest: Curve } {
  const row = table.rows.find((it) => it.type === type && it.ratedAmps === amps);
  if (row !== undefined) {
    const seconds = [row.longTimeSeconds, 10, 0.1];
    return {
      quickest: { seconds, amps: [row.minMeltAmpsLong, row.minMeltAmps10s, row.minMeltAmps0p1s] },
      slowest: { seconds, amps: [row.maxMeltAmpsLong, row.maxMeltAmps10s, row.maxMeltAmps0p1s] },
    };
  }
  const generic =
    type === "K" ? table.genericCurves.kLinkMultipleSeconds : table.genericCurves.tLinkMultipleSeconds;
  const seconds = generic.map((it) => it[1]!);
  const curve = (factor: number): Curve => ({ seconds, amps: generic.map((it) => it[0]! * amps * factor) });
  return { quickest: curve(1), slowest: curve(SPREAD_OF_GENERIC) };
}

/**
 * How long a link takes to melt at a current. Straight lines between the table's points on logarithmic scales; above the
 * last point I²t is constant (the link heats with no time to lose heat); below the long-time current it never melts.
 *
 * @param amps through the link [A, rms]
 * @returns seconds of the quickest and of the slowest link of that rating; infinite where it does not melt
 */
export function meltSeconds(link: FuseLink, amps: number): Spread {
  const { quickest, slowest } = curvesOf(link);
  return { least: secondsAt(quickest, amps), most: secondsAt(slowest, amps) };
}

/**
 * The current that melts a link in a time: what the quickest link needs at least, and the slowest.
 *
 * @param seconds from the moment that current flows [s]; beyond the table's long time its long-time current
 */
export function meltAmps(link: FuseLink, seconds: number): Spread {
  const { quickest, slowest } = curvesOf(link);
  return { least: ampsAt(quickest, seconds), most: ampsAt(slowest, seconds) };
}

function secondsAt({ seconds, amps }: Curve, at: number): number {
  if (at < amps[0]!) return Infinity;
  const last = amps.length - 1;
  if (at >= amps[last]!) return seconds[last]! * (amps[last]! / at) ** 2;
  const k = amps.findIndex((it) => at < it);
  return logLog(amps[k - 1]!, seconds[k - 1]!, amps[k]!, seconds[k]!, at);
}

function ampsAt({ seconds, amps }: Curve, at: number): number {
  if (at >= seconds[0]!) return amps[0]!;
  const last = amps.length - 1;
  if (at <= seconds[last]!) return amps[last]! * Math.sqrt(seconds[last]! / at);
  const k = seconds.findIndex((it) => at > it);
  return logLog(seconds[k - 1]!, amps[k - 1]!, seconds[k]!, amps[k]!, at);
}

/** The value at `x` on the straight line through two points, both scales logarithmic. */
const logLog = (x1: number, y1: number, x2: number, y2: number, x: number): number =>
  y1 * (y2 / y1) ** (Math.log(x / x1) / Math.log(x2 / x1));
