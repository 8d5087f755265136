import { type Complex, complex, type Letter, lettersOf, say } from "../terms";
import { impedanceOfUnit } from "../reference";
import {
  amount,
  choice,
  type Complete,
  flag,
  letters,
  neededAmount,
  optionalAmount,
  optionalChoice,
  optionalImpedance,
  pointRef,
  structureRef,
  text,
} from "./fields";
import {
  elementFields,
  defineDevice,
  type DeviceDoubt,
  type DeviceNumber,
  EVIDENCE,
  problem,
  UNDRAWN,
} from "./define";
import type { Branch, End, Node, Part, Unit, Winding } from "./parts";
import { offBy } from "./shared";
import { circle, inscribed, ring } from "./symbol";

const CONNECTIONS = ["single", "Yg-Yg", "Y-D", "Yg-D", "D-Yg", "D-D", "openY-openD", "Yg-Y", "Y-Y"] as const;
type Connection = (typeof CONNECTIONS)[number];

type Corner = "A" | "B" | "C";
/** A winding's two ends: between two lines, or from a line to the star. */
type Span = readonly [Corner, Corner | "star"];

/**
 * Which primary winding shares a core with which secondary winding, so that the low side lags 30° (C57.12.00).
 * Stepping up, the same rule turns the pairs about.
 */
const DELTA_OF_WYE_DOWN: Record<Corner, Span> = { A: ["A", "B"], B: ["B", "C"], C: ["C", "A"] };
const DELTA_OF_WYE_UP: Record<Corner, Span> = { A: ["A", "C"], B: ["B", "A"], C: ["C", "B"] };
const DELTA_BEFORE_WYE_DOWN: Record<Corner, Span> = { A: ["A", "C"], B: ["B", "A"], C: ["C", "B"] };
const DELTA_BEFORE_WYE_UP: Record<Corner, Span> = { A: ["A", "B"], B: ["B", "C"], C: ["C", "A"] };
const DELTA: Record<Corner, Span> = { A: ["A", "B"], B: ["B", "C"], C: ["C", "A"] };
const WYE: Record<Corner, Span> = { A: ["A", "star"], B: ["B", "star"], C: ["C", "star"] };

const fields = {
  label: text(),
  phases: letters("ABC"),
  evidence: choice(EVIDENCE, "map"),
  ...elementFields,
  from: pointRef(),
  to: pointRef(),
  neutral: flag(true),
  on: structureRef(),
  connection: choice(CONNECTIONS, "single", true),
  kva: neededAmount("kVA"),
  primaryKv: neededAmount("kV"),
  secondaryV: neededAmount("V"),
  rPercent: optionalAmount("%"),
  xPercent: optionalAmount("%"),
  excitingPercent: amount("%", 0.5),
  coreLossPercent: amount("%", 0),
  secondary: choice(["split", "two-wire"], "split"),
  midTap: optionalChoice(["ab", "bc", "ca"]),
  primaryStarOhms: optionalImpedance(),
  secondaryStarOhms: optionalImpedance(),
};

interface Bank {
  readonly phases: string;
  readonly connection: Connection;
  readonly secondary: "split" | "two-wire";
  readonly primaryKv: number;
  readonly secondaryV: number;
  readonly midTap: "ab" | "bc" | "ca" | undefined;
}

/** How many single-phase units stand behind the drawing of a bank. */
const unitCount = ({ connection, phases }: Pick<Bank, "connection" | "phases">): number =>
  connection === "single" ? 1 : connection === "openY-openD" ? phases.length : 3;

const isStepUp = ({ primaryKv, secondaryV }: Bank): boolean => secondaryV > primaryKv * 1000;

const primaryUsesNeutral = ({ connection, phases }: Bank): boolean =>
  connection === "single"
    ? phases.length === 1
    : ["Yg-Yg", "Yg-D", "Yg-Y", "openY-openD"].includes(connection);

const secondaryUsesNeutral = ({ connection, midTap }: Bank): boolean =>
  connection === "single" || connection === "Yg-Yg" || connection === "D-Yg" || midTap !== undefined;

/** The letters at the secondary, without the neutral. */
export const secondaryLetters = ({ connection, secondary, phases }: Bank): Letter[] => {
  if (connection !== "single") return ["A", "B", "C"];
  return secondary === "split" ? ["1", "2"] : [lettersOf(phases)[0]!];
};

/** Where each unit's windings lie, by the corner whose primary it is. */
function windingSpans(bank: Bank): { corner: Corner; primary: Span; secondary: Span }[] {
  const { connection } = bank;
  const corners = (connection === "openY-openD" ? lettersOf(bank.phases) : ["A", "B", "C"]) as Corner[];
  const up = isStepUp(bank);
  const pick = (corner: Corner): { primary: Span; secondary: Span } => {
    switch (connection) {
      case "D-Yg":
        return {
          primary: (up ? DELTA_BEFORE_WYE_UP : DELTA_BEFORE_WYE_DOWN)[corner],
          secondary: WYE[corner],
        };
      case "D-D":
        return { primary: DELTA[corner], secondary: DELTA[corner] };
      case "Y-D":
      case "Yg-D":
      case "openY-openD":
        return { primary: WYE[corner], secondary: (up ? DELTA_OF_WYE_UP : DELTA_OF_WYE_DOWN)[corner] };
      default:
        return { primary: WYE[corner], secondary: WYE[corner] };
    }
  };
  return corners.map((corner) => ({ corner, ...pick(corner) }));
}

const isMidTapped = (span: Span, midTap: Bank["midTap"]): boolean =>
  midTap !== undefined && [...midTap.toUpperCase()].sort().join("") === [...span].sort().join("");

/**
 * Transformers, unit by unit from their windings: single-phase units, and banks of them in their real connection.
 * Leakage is half on the primary and half on the secondary; on a split winding each leg has half of the secondary's ohms.
 */
export const transformer = defineDevice({
  kind: "transformer",
  role: "transformer",
  prefix: "t",
  startsWith: { connection: "single", kva: 25, primaryKv: 7.2, secondaryV: 240 },
  ends: ["from", "to"],
  fields,
  check: (it) => {
    const { connection, phases, midTap } = it;
    const count = connection === "single" ? [1, 2] : connection === "openY-openD" ? [2] : [3];
    const tapped = windingSpans({ ...it, phases: phases || "A" }).map(({ secondary }) => secondary);
    return [
      ...(count.includes(phases.length)
        ? []
        : [problem("phases", say("read.bankPhases", { connection, count: count.join(" or "), phases }))]),
      ...(midTap !== undefined &&
      (!connection.endsWith("D") || !tapped.some((span) => isMidTapped(span, midTap)))
        ? [problem("midTap", say("read.midTap", { midTap, connection }))]
        : []),
      ...(it.primaryStarOhms !== undefined && !connection.startsWith("Yg-")
        ? [problem("primaryStarOhms", say("read.noStar", { connection }))]
        : []),
      ...(it.secondaryStarOhms !== undefined && !connection.endsWith("-Yg")
        ? [problem("secondaryStarOhms", say("read.noStar", { connection }))]
        : []),
    ];
  },
  brings: (it) => [
    ...lettersOf(it.phases).map((letter): readonly [End, Letter] => ["from", letter]),
    ...(primaryUsesNeutral(it) ? [["from", "N"] as const] : []),
    ...secondaryLetters(it).map((letter): readonly [End, Letter] => ["to", letter]),
    ...(secondaryUsesNeutral(it) ? [["to", "N"] as const] : []),
  ],
  lettersAtEnd: (it, end) => (end === "to" ? secondaryLetters(it) : lettersOf(it.phases)),
  parts: (it, place): Part[] => [
    ...(it.connection === "single" ? [singleUnit(it)] : [...bankUnits(it), ...starBranches(it)]),
    ...(it.neutral && place.hasNeutral("from") && place.hasNeutral("to")
      ? [{ part: "join", from: "from/N", to: "to/N", letter: "N", closed: true } as const]
      : []),
  ],
  doubts: (it, { nominalVolts }) => [...secondBank(it, nominalVolts("from")), ...connectedOtherwise(it)],
  numbers: (it) => leakageOff(it),
  rating: ({ kva, primaryStarOhms, secondaryStarOhms }) => {
    const star = primaryStarOhms ?? secondaryStarOhms;
    if (star === undefined) return say("drawing.kva", { kva });
    return say("drawing.kvaStar", { kva, ohms: Math.round(100 * complex.magnitude(star)) / 100 });
  },
  ratingWidth: 64,
  symbol: (it) =>
    it.connection === "single"
      ? [circle(-8, 0, 12.5), ring(8, 0, 12.5)]
      : [
          circle(-9, 0, 14),
          ring(9, 0, 14),
          inscribed(-10, 0, it.connection.split("-")[0]!.replace("open", "o")),
          inscribed(10, 0, it.connection.split("-")[1]!.replace("open", "o")),
        ],
});

/** Another bank of the same kind on the same secondary, fed by a line that nobody drew. */
function secondBank(
  { phases, connection, kva, primaryKv, secondaryV, secondary, midTap, neutral }: Complete<typeof fields>,
  lineToLineVolts: number,
): DeviceDoubt[] {
  const ratedVolts = connection === "single" && phases.length === 1 ? Math.sqrt(3) * primaryKv : primaryKv;
  const bank = { phases, connection, kva, primaryKv, secondaryV, secondary, neutral };
  return [
    {
      doubt: "second-transformer",
      beside: [
        { kind: "source", at: UNDRAWN, phases, kvLL: lineToLineVolts / 1000 || ratedVolts },
        {
          kind: "transformer",
          from: UNDRAWN,
          to: "$to",
          ...bank,
          ...(midTap === undefined ? {} : { midTap }),
        },
      ],
    },
  ];
}

/** The connections of three units that are met on poles and pads: a star of the low side that is tied to nothing is not. */
const MISTAKEN: readonly Connection[] = ["Yg-Yg", "Y-D", "Yg-D", "D-Yg", "D-D"];

/** Banks of three units are mistaken for each other; of one or two units there is but one connection. */
const connectedOtherwise = ({ connection }: Bank): DeviceDoubt[] =>
  connection === "single" || connection === "openY-openD"
    ? []
    : MISTAKEN.filter((it) => it !== connection).map((it) => ({
        doubt: "other-connection",
        instead: {
          connection: it,
          ...(it.endsWith("D") ? {} : { midTap: null }),
          ...(it.startsWith("Yg-") ? {} : { primaryStarOhms: null }),
          ...(it.endsWith("-Yg") ? {} : { secondaryStarOhms: null }),
        },
      }));

interface Rated extends Bank {
  readonly kva: number;
  readonly rPercent: number | undefined;
  readonly xPercent: number | undefined;
  readonly excitingPercent: number;
  readonly coreLossPercent: number;
  readonly primaryStarOhms: Complex | undefined;
  readonly secondaryStarOhms: Complex | undefined;
}

/** A unit without leakage is one with next to none: windings that nothing stands between have no equations of their own [%]. */
const LEAST_PERCENT = 0.001;

/** What each unit of a bank is rated at. */
export interface TransformerRating {
  readonly unitKva: number;
  readonly rPercent: number;
  readonly xPercent: number;
  readonly excitingPercent: number;
  readonly coreLossPercent: number;
}

/** Rating and leakage of the units of a bank: as drawn, else by the table. */
export function rateOf(
  bank: Pick<
    Rated,
    "connection" | "phases" | "kva" | "rPercent" | "xPercent" | "excitingPercent" | "coreLossPercent"
  >,
): TransformerRating {
  const { excitingPercent, coreLossPercent } = bank;
  const unitKva = bank.kva / unitCount(bank);
  const table = impedanceOfUnit(unitKva);
  return {
    unitKva,
    rPercent: bank.rPercent ?? table.percentR,
    xPercent: bank.xPercent ?? table.percentX,
    excitingPercent,
    coreLossPercent,
  };
}

/** Leakage in ohms on a winding's volts: the percent of V²/S [Ω]. */
function leakageOhms(bank: Rated, volts: number): Complex {
  const { unitKva, rPercent, xPercent } = rateOf(bank);
  const given: Complex = [rPercent, xPercent];
  const percent: Complex = complex.magnitude(given) < LEAST_PERCENT ? [LEAST_PERCENT, 0] : given;
  return complex.scale(percent, (volts * volts) / (unitKva * 1000) / 100);
}

/**
 * A nameplate's impedance is right within 7.5 % (IEEE C57.12.00, two windings, from memory); where nobody has read the
 * plate, a unit has half to twice what is usual for its size (common practice, no source).
 */
function leakageOff(bank: Rated): DeviceNumber[] {
  if (bank.rPercent !== undefined && bank.xPercent !== undefined)
    return offBy({ rPercent: bank.rPercent, xPercent: bank.xPercent }, 0.925, 1.075);
  const { percentR, percentX } = impedanceOfUnit(bank.kva / unitCount(bank));
  return offBy({ rPercent: bank.rPercent ?? percentR, xPercent: bank.xPercent ?? percentX }, 0.5, 2);
}

const half = (ohms: Complex): Complex => complex.scale(ohms, 0.5);

/** What a unit's core draws at rated volts, by its own rating. */
function coreOf(bank: Rated): Pick<Unit, "excitingVa" | "coreWatts"> {
  const ofPercent = (bank.kva / unitCount(bank)) * 10;
  return { excitingVa: bank.excitingPercent * ofPercent, coreWatts: bank.coreLossPercent * ofPercent };
}

/** A winding, or its two halves about the tap where its centre is brought out as `N`. */
function secondaryWindings(plus: Node, minus: Node, volts: number, ohms: Complex, centre?: Node): Winding[] {
  if (centre === undefined) return [{ plus, minus, volts, ohms }];
  return [
    { plus, minus: centre, volts: volts / 2, ohms: half(ohms) },
    { plus: centre, minus, volts: volts / 2, ohms: half(ohms) },
  ];
}

function singleUnit(it: Rated): Unit {
  const [first, second] = lettersOf(it.phases);
  const volts = it.primaryKv * 1000;
  const secondaryOhms = half(leakageOhms(it, it.secondaryV));
  return {
    part: "unit",
    letter: first!,
    primary: [
      {
        plus: `from/${first!}`,
        minus: second === undefined ? "from/N" : `from/${second}`,
        volts,
        ohms: half(leakageOhms(it, volts)),
      },
    ],
    secondary:
      it.secondary === "split"
        ? secondaryWindings("to/1", "to/2", it.secondaryV, secondaryOhms, "to/N")
        : secondaryWindings(`to/${first!}`, "to/N", it.secondaryV, secondaryOhms),
    lineToLineVolts: {
      primary: second === undefined ? volts * Math.sqrt(3) : volts,
      secondary: it.secondary === "split" ? it.secondaryV : it.secondaryV * Math.sqrt(3),
    },
    ...coreOf(it),
  };
}

/** Where the windings of a side meet: the point's neutral, or a node of their own where the star is tied to nothing or stands on an impedance. */
const primaryStarOf = ({ connection, primaryStarOhms }: Rated): Node =>
  connection.startsWith("Y-") || primaryStarOhms !== undefined ? "inner/star" : "from/N";
const secondaryStarOf = ({ connection, secondaryStarOhms }: Rated): Node =>
  connection.endsWith("-Y") || secondaryStarOhms !== undefined ? "inner/lowStar" : "to/N";

/** What the star points stand on, between them and their points' neutrals. */
function starBranches(it: Rated): Branch[] {
  const branch = (from: Node, to: Node, ohms: Complex | undefined): Branch[] =>
    ohms === undefined
      ? []
      : [{ part: "branch", role: "star", from, to, letter: "N", siemens: complex.inverse(ohms) }];
  return [
    ...branch(primaryStarOf(it), "from/N", it.primaryStarOhms),
    ...branch(secondaryStarOf(it), "to/N", it.secondaryStarOhms),
  ];
}

function bankUnits(it: Rated): Unit[] {
  const primaryStar = primaryStarOf(it);
  const secondaryStar = secondaryStarOf(it);
  const acrossVolts = (span: Span, lineToLine: number) =>
    span[1] === "star" ? lineToLine / Math.sqrt(3) : lineToLine;
  const node = (end: End, corner: Corner | "star", star: Node): Node =>
    corner === "star" ? star : `${end}/${corner}`;
  return windingSpans(it).map(({ corner, primary, secondary }): Unit => {
    const primaryVolts = acrossVolts(primary, it.primaryKv * 1000);
    const secondaryVolts = acrossVolts(secondary, it.secondaryV);
    return {
      part: "unit",
      letter: corner,
      primary: [
        {
          plus: node("from", primary[0], primaryStar),
          minus: node("from", primary[1], primaryStar),
          volts: primaryVolts,
          ohms: half(leakageOhms(it, primaryVolts)),
        },
      ],
      secondary: secondaryWindings(
        node("to", secondary[0], secondaryStar),
        node("to", secondary[1], secondaryStar),
        secondaryVolts,
        half(leakageOhms(it, secondaryVolts)),
        isMidTapped(secondary, it.midTap) ? "to/N" : undefined,
      ),
      lineToLineVolts: { primary: it.primaryKv * 1000, secondary: it.secondaryV },
      ...coreOf(it),
    };
  });
}
