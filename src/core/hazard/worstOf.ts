import { byStrength, type FoundSides, type FoundThreats } from "./threats";
import type { ThreatWay } from "./search";
import { keyOfUpsets, threatKey } from "./threatKey";
import type { Threat } from "./types";

/** Threats in each drawing that may stand, as one list: each as bad as it is in any of them. */
export function worstThreats(found: readonly FoundThreats[]): FoundThreats {
  const [only] = found;
  if (only !== undefined && found.length === 1) return only;
  const known = new Map<string, ThreatInWays>();
  for (const { threats, ways } of found)
    for (const threat of threats) {
      const key = threatKey(threat);
      const other = known.get(key);
      const own = ways.get(threat)!;
      known.set(
        key,
        other === undefined
          ? { threat, ways: own }
          : { threat: worseOf(other.threat, threat), ways: [...new Set([...other.ways, ...own])] },
      );
    }
  const minimal = minimalOf([...known.values()]);
  return {
    threats: minimal.map((it) => it.threat).sort(byStrength),
    ways: new Map(minimal.map((it) => [it.threat, it.ways])),
    settled: found.every((it) => it.settled),
    ...askedOf(found),
  };
}

/** The same where only the sides of the limits are known. */
export const worstSides = (found: readonly FoundSides[]): FoundSides => ({
  threats: found.flatMap((it) => it.threats),
  ...askedOf(found),
});

const askedOf = (found: readonly FoundSides[]): Pick<FoundSides, "completeTo" | "work"> => ({
  completeTo: Math.min(...found.map((it) => it.completeTo)),
  work: found.reduce((sum, it) => sum + it.work, 0),
});

/** A threat, and the ways in which no smaller set of upsets is one. */
interface ThreatInWays {
  readonly threat: Threat;
  readonly ways: readonly ThreatWay[];
}

/** The same way to go live, with the higher of each figure; its path is of the drawing in which more is felt. */
function worseOf(one: Threat, other: Threat): Threat {
  const most = (
    figure: "volts" | "exposureVolts" | "exposureToEarthVolts" | "bodyMilliamps" | "groundAmps",
  ) => Math.max(one[figure], other[figure]);
  const { source, path } = other.exposureVolts > one.exposureVolts ? other : one;
  return {
    ...one,
    source,
    path,
    volts: most("volts"),
    exposureVolts: most("exposureVolts"),
    exposureToEarthVolts: most("exposureToEarthVolts"),
    bodyMilliamps: most("bodyMilliamps"),
    groundAmps: most("groundAmps"),
  };
}

/** Those that are minimal in some way: what takes two upsets in one drawing may take one of them in another. */
function minimalOf(some: readonly ThreatInWays[]): ThreatInWays[] {
  const known = new Set(
    some.flatMap(({ threat: { upsets }, ways }) => ways.map((way) => `${way} ${keyOfUpsets(upsets)}`)),
  );
  return some.flatMap(({ threat, ways }) => {
    const smaller = smallerThan(threat.upsets).map((it) => keyOfUpsets(it));
    const left = ways.filter((way) => !smaller.some((key) => known.has(`${way} ${key}`)));
    return left.length === 0 ? [] : [{ threat, ways: left }];
  });
}

/** Every set within a set of upsets but itself. */
const smallerThan = (upsets: Threat["upsets"]): Threat["upsets"][] =>
  upsets
    .reduce<Threat["upsets"][]>((some, it) => [...some, ...some.map((set) => [...set, it])], [[]])
    .filter((set) => set.length < upsets.length);
