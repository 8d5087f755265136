import { complex, type Complex, type JsonObject, type Letter, lettersOf } from "../terms";
import { type DeviceDoubt, UNDRAWN } from "./define";
import type { Branch, End, Node, Unit, Winding } from "./parts";

type Corner = "A" | "B" | "C";
/** A winding's two ends: between two lines, or from a line to the star. */
type Span = readonly [Corner, Corner | "star"];

/**
 * Which primary winding shares a core with which low-side winding, so that the low side lags 30° (C57.12.00).
 * Stepping up, the same rule turns the pairs about.
 */
const DELTA_OF_WYE_DOWN: Record<Corner, Span> = { A: ["A", "B"], B: ["B", "C"], C: ["C", "A"] };
const DELTA_OF_WYE_UP: Record<Corner, Span> = { A: ["A", "C"], B: ["B", "A"], C: ["C", "B"] };
const WYE: Record<Corner, Span> = { A: ["A", "star"], B: ["B", "star"], C: ["C", "star"] };

/** One side of a transformer: where it stands, its volts, and how its windings hang together. */
export interface Side {
  readonly end: "from" | "to" | "alt";
  readonly wound: "Yg" | "Y" | "D";
  /** between the lines of a bank; across the winding of a unit alone [V] */
  readonly volts: number;
  /** its own share of the leakage, of the unit's rating [%] */
  readonly percent: Complex;
  /** of a unit alone: its centre is brought out as the neutral, between the legs 1 and 2 */
  readonly isSplit?: boolean;
  /** of a delta: the winding whose centre is brought out as the neutral */
  readonly midTap?: "ab" | "bc" | "ca" | undefined;
  readonly starOhms: Complex | undefined;
}

/** What all windings of a transformer have in common. */
export interface Core {
  /** of the primary */
  readonly phases: string;
  /** a unit alone, whose windings stand on their own letters */
  readonly isSingle: boolean;
  readonly unitKva: number;
  readonly excitingPercent: number;
  readonly coreLossPercent: number;
}

/** The letters at one side, without the neutral. */
export function lettersOn(
  { phases, isSingle }: Pick<Core, "phases" | "isSingle">,
  { end, isSplit }: Pick<Side, "end" | "isSplit">,
): Letter[] {
  const own = lettersOf(phases);
  if (end === "from") return own;
  if (!isSingle) return ["A", "B", "C"];
  return isSplit === true ? ["1", "2"] : [own[0]!];
}

/** Whether a side stands on its point's neutral; of units alone only the primary between two lines does not. */
const usesNeutral = ({ phases, isSingle }: Core, { end, wound, midTap }: Side): boolean =>
  isSingle ? end !== "from" || phases.length === 1 : wound === "Yg" || midTap !== undefined;

/** The conductors that the sides of a transformer bring to their points. */
export const broughtBySides = (core: Core, sides: readonly Side[]): (readonly [End, Letter])[] =>
  sides.flatMap((side) =>
    [...lettersOn(core, side), ...(usesNeutral(core, side) ? (["N"] as const) : [])].map(
      (letter) => [side.end, letter] as const,
    ),
  );

/** A transformer unit by unit, each with all of its windings on one core. */
export function unitsOf(core: Core, sides: readonly Side[]): Unit[] {
  const { phases, isSingle, unitKva } = core;
  const [high, ...lows] = sides as [Side, ...Side[]];
  const own = lettersOf(phases) as Corner[];
  return (isSingle ? own.slice(0, 1) : own).map((letter) => {
    const spans = isSingle ? undefined : spansAt(letter, high, lows);
    const wind = (side: Side, span: Span | undefined): Winding[] => {
      const { end, volts } = side;
      if (span !== undefined)
        return windings(
          side,
          unitKva,
          `${end}/${span[0]}`,
          span[1] === "star" ? starOf(side) : `${end}/${span[1]}`,
          span[1] === "star" ? volts / Math.sqrt(3) : volts,
          isMidTapped(span, side),
        );
      const [plus, minus] = side === high ? own : side.isSplit === true ? ["1", "2"] : [letter];
      return windings(
        side,
        unitKva,
        `${end}/${plus}` as Node,
        `${end}/${minus ?? "N"}` as Node,
        volts,
        side.isSplit,
      );
    };
    const lineToLine = (side: Side) =>
      isSingle && lettersOn(core, side).length === 1 ? side.volts * Math.sqrt(3) : side.volts;
    const ofPercent = unitKva * 10;
    return {
      part: "unit",
      letter,
      primary: wind(high, spans?.primary),
      secondary: lows.flatMap((side, nth) => wind(side, spans?.lows[nth])),
      lineToLineVolts: { primary: lineToLine(high), lows: lows.map(lineToLine) },
      excitingVa: core.excitingPercent * ofPercent,
      coreWatts: core.coreLossPercent * ofPercent,
    };
  });
}

/** What the star points of a bank stand on, between them and their points' neutrals. */
export const starBranches = (sides: readonly Side[]): Branch[] =>
  sides.flatMap((side): Branch[] =>
    side.starOhms === undefined
      ? []
      : [
          {
            part: "branch",
            role: "star",
            from: starOf(side),
            to: `${side.end}/N`,
            letter: "N",
            siemens: complex.inverse(side.starOhms),
          },
        ],
  );

/** Another bank of two windings on the same low side, fed by a line that nobody drew. */
export function secondBank(
  core: Core,
  [high, low]: readonly [Side, Side],
  keys: JsonObject,
  lineToLineVolts: number,
): DeviceDoubt {
  const { phases, isSingle } = core;
  const rated = (isSingle && phases.length === 1 ? Math.sqrt(3) : 1) * high.volts;
  return {
    doubt: "second-transformer",
    beside: [
      { kind: "source", at: UNDRAWN, phases, kvLL: (lineToLineVolts || rated) / 1000 },
      {
        kind: "transformer",
        from: UNDRAWN,
        to: `$${low.end}`,
        phases,
        primaryKv: high.volts / 1000,
        secondaryV: low.volts,
        ...keys,
      },
    ],
  };
}

/** Banks of three are mistaken for each other; a star point that the other has not stands on nothing. */
export const otherwiseConnected = (
  connection: string,
  others: readonly string[],
  keysBeside: (wound: readonly string[]) => JsonObject,
): DeviceDoubt[] =>
  others
    .filter((it) => it !== connection)
    .map((it) => ({
      doubt: "other-connection",
      instead: { connection: it, ...keysBeside(it.split("-")) },
    }));

/** Whether the centre of a delta's winding is the tapped one. */
export const isMidTapped = (span: readonly string[], { midTap }: Pick<Side, "midTap">): boolean =>
  midTap !== undefined && [...midTap.toUpperCase()].sort().join("") === [...span].sort().join("");

/** Where the windings of one unit of a bank lie: its primary, and one on each of the other sides. */
export function spansAt(
  corner: Corner,
  high: Pick<Side, "wound" | "volts">,
  lows: readonly Pick<Side, "wound" | "volts">[],
): { readonly primary: Span; readonly lows: readonly Span[] } {
  const isUp = ({ volts }: Pick<Side, "volts">) => volts > high.volts;
  const isDelta = high.wound === "D";
  // A delta lies before whichever wye there is, turned as a delta of that wye is the other way; of two the first says how.
  const wye = lows.find(({ wound }) => wound !== "D");
  const before = wye !== undefined && !isUp(wye) ? DELTA_OF_WYE_UP : DELTA_OF_WYE_DOWN;
  const primary = (isDelta ? before : WYE)[corner];
  return {
    primary,
    lows: lows.map((low) => {
      if (low.wound !== "D") return WYE[corner];
      return isDelta ? primary : (isUp(low) ? DELTA_OF_WYE_UP : DELTA_OF_WYE_DOWN)[corner];
    }),
  };
}

/** Where the windings of a side meet: the point's neutral, or a node of their own where the star is tied to nothing or stands on an impedance. */
const starOf = ({ end, wound, starOhms }: Side): Node =>
  wound === "Y" || starOhms !== undefined ? `inner/${end}` : `${end}/N`;

/** A winding, or its two halves about the tap where its centre is brought out as `N`. */
function windings(
  { end, percent }: Side,
  unitKva: number,
  plus: Node,
  minus: Node,
  volts: number,
  isTapped = false,
): Winding[] {
  const ohms = complex.scale(percent, (volts * volts) / (unitKva * 1000) / 100);
  if (!isTapped) return [{ plus, minus, volts, ohms }];
  const centre: Node = `${end}/N`;
  const halves = { volts: volts / 2, ohms: complex.scale(ohms, 0.5) };
  return [
    { plus, minus: centre, ...halves },
    { plus: centre, minus, ...halves },
  ];
}

/** A winding without leakage is one with next to none: windings that nothing stands between have no equations of their own [%]. */
const LEAST_PERCENT = 0.001;

/** Leakage in percent, or next to none. */
export const someLeakage = (percent: Complex): Complex =>
  complex.magnitude(percent) < LEAST_PERCENT ? [LEAST_PERCENT, 0] : percent;
