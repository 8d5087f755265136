import {
  amended,
  assess,
  complete,
  deviceNumbersOf,
  evidenceOf,
  type JsonObject,
  type Letter,
  type Range,
  rangesOf,
  type StillhotDocument,
  threatKey,
  type WorkPointId,
} from "../../src/core";

const W1 = "w1" as WorkPointId;
/** Of what is far under a volt nobody could feel the difference. */
const SLACK_VOLTS = 1e-6;
const NOWHERE = { least: Infinity, most: -Infinity };

/**
 * Draws every number that nobody has seen at random, so many times, and says which figures then lie outside of the range
 * that is told of them, and how many of single ways were asked.
 */
export function drawnOutside(
  document: StillhotDocument,
  { draws, seed }: { readonly draws: number; readonly seed: number },
): { readonly asked: number; readonly outside: readonly string[] } {
  const { conductors, ways } = rangesOf(document, W1, { mostWork: Infinity });
  const next = shares(seed);
  const outside: string[] = [];
  const check = (what: string, volts: number, { least, most }: Pick<Range, "least" | "most">) => {
    const slack = SLACK_VOLTS + 1e-6 * volts;
    if (volts > most + slack || volts < least - slack)
      outside.push(`${what}: ${volts} not in ${least} to ${most}`);
  };
  let asked = 0;
  for (let draw = 0; draw < draws; draw++) {
    const other = drawnOtherwise(document, next);
    for (const figure of ["volts", "exposureVolts"] as const)
      for (const [letter, volts] of highest(other, figure))
        check(`${letter} ${figure}`, volts, conductors[letter]?.[figure] ?? NOWHERE);
    const threats = new Map(assess(other).workPoints[W1]!.threats.map((it) => [threatKey(it), it]));
    for (const way of ways)
      for (const figure of ["volts", "exposureVolts", "exposureToEarthVolts"] as const) {
        const threat = threats.get(threatKey(way));
        if (threat === undefined) continue;
        check(`${threatKey(way)} ${figure}`, threat[figure], way[figure]);
        asked++;
      }
  }
  return { asked, outside };
}

/** The drawing with each number that nobody has seen to somewhere between its ends. */
function drawnOtherwise(document: StillhotDocument, next: () => number): StillhotDocument {
  const { system } = document;
  const between = (low: unknown, high: unknown, share: number): unknown =>
    Array.isArray(low)
      ? low.map((it, nth) => between(it, (high as unknown[])[nth], share))
      : typeof low === "number"
        ? low + share * ((high as number) - low)
        : low;
  const set: Record<string, JsonObject> = {};
  for (const id of Object.keys(system.elements))
    if (evidenceOf(system, id) !== "seen")
      for (const { low, high } of deviceNumbersOf(complete(system.elements[id as never]!))) {
        const share = next();
        set[id] = {
          ...set[id],
          ...(Object.fromEntries(
            Object.entries(low).map(([key, value]) => [key, between(value, high[key], share)]),
          ) as JsonObject),
        };
      }
  for (const [id, { earthOhms }] of Object.entries(system.points))
    if (typeof earthOhms === "number" && evidenceOf(system, id) !== "seen")
      set[id] = { earthOhms: earthOhms * (0.5 + 1.5 * next()) };
  return { ...document, system: amended(system, [{ set }]) };
}

/** The highest of each conductor of the work point, by letter. */
function highest(document: StillhotDocument, figure: "volts" | "exposureVolts"): Map<Letter, number> {
  const found = new Map<Letter, number>();
  for (const it of assess(document).workPoints[W1]!.threats)
    found.set(it.conductor, Math.max(it[figure], found.get(it.conductor) ?? 0));
  return found;
}

/** Uniform between 0 and 1, or, every other time, at one of the ends. */
function shares(seed: number): () => number {
  let state = seed * 2654435761 + 1;
  const uniform = () => (state = (state * 16807 + 11) % 2147483647) / 2147483647;
  return () => (uniform() < 0.5 ? Math.round(uniform()) : uniform());
}
