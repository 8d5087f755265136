import { MOST_STRENGTH } from "./tolerances";
import type { FoundSides } from "./threats";

/**
 * The least strength over the threats; null where there is none up to 3. Where not all could be sought it is never above
 * the least that could have been missed.
 */
export function leastMargin({
  threats,
  completeTo,
}: Pick<FoundSides, "threats" | "completeTo">): number | null {
  const least = threats.reduce((most, { strength }) => Math.min(most, strength), Infinity);
  const missed = completeTo < MOST_STRENGTH ? completeTo + 1 : Infinity;
  const margin = Math.min(least, missed);
  return margin === Infinity ? null : margin;
}
