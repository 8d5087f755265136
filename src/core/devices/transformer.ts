import { type Complex, complex, type Letter, lettersOf, say } from "../terms";
import { impedanceOfUnit } from "../reference";
import {
  amount,
  choice,
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
} from "./define";
import type { Part } from "./parts";
import { offBy } from "./shared";
import { circle, inscribed, ring } from "./symbol";
import {
  broughtBySides,
  type Core,
  isMidTapped,
  lettersOn,
  otherwiseConnected,
  secondBank,
  type Side,
  someLeakage,
  spansAt,
  starBranches,
  unitsOf,
} from "./windings";

const CONNECTIONS = ["single", "Yg-Yg", "Y-D", "Yg-D", "D-Yg", "D-D", "openY-openD", "Yg-Y", "Y-Y"] as const;
type Connection = (typeof CONNECTIONS)[number];

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

/** The letters at the secondary, without the neutral. */
export const secondaryLetters = ({ connection, phases, secondary }: Bank): Letter[] =>
  lettersOn(
    { phases, isSingle: connection === "single" },
    { end: "to", isSplit: connection === "single" && secondary === "split" },
  );

/** How the two sides of a bank are wound; of an open one as of three units. */
const woundAs = (connection: Connection): [Side["wound"], Side["wound"]] =>
  connection === "single"
    ? ["Yg", "Yg"]
    : connection === "openY-openD"
      ? ["Yg", "D"]
      : (connection.split("-") as [Side["wound"], Side["wound"]]);

/** Its two sides, each with half of the leakage; on a split winding each leg has half of the secondary's ohms. */
function sidesOf(it: Rated): [Side, Side] {
  const [high, low] = woundAs(it.connection);
  const { rPercent, xPercent } = rateOf(it);
  const percent = complex.scale(someLeakage([rPercent, xPercent]), 0.5);
  return [
    { end: "from", wound: high, volts: it.primaryKv * 1000, percent, starOhms: it.primaryStarOhms },
    {
      end: "to",
      wound: low,
      volts: it.secondaryV,
      percent,
      isSplit: it.connection === "single" && it.secondary === "split",
      midTap: it.midTap,
      starOhms: it.secondaryStarOhms,
    },
  ];
}

const coreOf = (it: Rated): Core => ({
  phases: it.phases,
  isSingle: it.connection === "single",
  unitKva: it.kva / unitCount(it),
  excitingPercent: it.excitingPercent,
  coreLossPercent: it.coreLossPercent,
});

/** The secondary's windings, of as many units as there are. */
function secondarySpans(it: Rated): (readonly string[])[] {
  const [high, low] = sidesOf(it);
  return lettersOf(it.phases).map((corner) => spansAt(corner as "A" | "B" | "C", high, [low]).lows[0]!);
}

/**
 * Transformers, unit by unit from their windings: single-phase units, and banks of them in their real connection.
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
    return [
      ...(count.includes(phases.length)
        ? []
        : [problem("phases", say("read.bankPhases", { connection, count: count.join(" or "), phases }))]),
      ...(midTap !== undefined &&
      (!connection.endsWith("D") || !secondarySpans(it).some((span) => isMidTapped(span, it)))
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
  brings: (it) => broughtBySides(coreOf(it), sidesOf(it)),
  lettersAtEnd: (it, end) => (end === "to" ? secondaryLetters(it) : lettersOf(it.phases)),
  parts: (it, place): Part[] => [
    ...unitsOf(coreOf(it), sidesOf(it)),
    ...starBranches(sidesOf(it)),
    ...(it.neutral && place.hasNeutral("from") && place.hasNeutral("to")
      ? [{ part: "join", from: "from/N", to: "to/N", letter: "N", closed: true } as const]
      : []),
  ],
  doubts: (it, { nominalVolts }) => {
    const { connection, kva, neutral, secondary, midTap } = it;
    const bank = { connection, kva, neutral, secondary, ...(midTap === undefined ? {} : { midTap }) };
    return [secondBank(coreOf(it), sidesOf(it), bank, nominalVolts("from")), ...connectedOtherwise(it)];
  },
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

/** The connections of three units that are met on poles and pads: a star of the low side that is tied to nothing is not. */
const MISTAKEN: readonly Connection[] = ["Yg-Yg", "Y-D", "Yg-D", "D-Yg", "D-D"];

/** Of one or two units there is but one connection. */
const connectedOtherwise = ({ connection }: Bank): DeviceDoubt[] =>
  connection === "single" || connection === "openY-openD"
    ? []
    : otherwiseConnected(connection, MISTAKEN, ([high, low]) => ({
        ...(low === "D" ? {} : { midTap: null }),
        ...(high === "Yg" ? {} : { primaryStarOhms: null }),
        ...(low === "Yg" ? {} : { secondaryStarOhms: null }),
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
