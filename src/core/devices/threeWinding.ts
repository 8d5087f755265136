import { complex, type Complex, type JsonObject, lettersOf, say } from "../terms";
import {
  amount,
  choice,
  type Complete,
  type FieldProblem,
  flag,
  letters,
  neededAmount,
  optionalAmount,
  optionalImpedance,
  pointRef,
  structureRef,
  text,
} from "./fields";
import {
  defineDevice,
  type DeviceDoubt,
  type DeviceNumber,
  elementFields,
  EVIDENCE,
  problem,
} from "./define";
import type { Part } from "./parts";
import { offBy } from "./shared";
import { circle, inscribed, ring } from "./symbol";
import { rateOf } from "./transformer";
import {
  broughtBySides,
  type Core,
  lettersOn,
  otherwiseConnected,
  secondBank,
  type Side,
  someLeakage,
  starBranches,
  unitsOf,
} from "./windings";

const WOUND = ["Yg", "Y", "D"] as const;
type Bank = `${Side["wound"]}-${Side["wound"]}-${Side["wound"]}`;

const BANKS: readonly Bank[] = WOUND.flatMap((high) =>
  WOUND.flatMap((low) => WOUND.map((third): Bank => `${high}-${low}-${third}`)),
);

const fields = {
  label: text(),
  phases: letters("ABC"),
  evidence: choice(EVIDENCE, "map"),
  ...elementFields,
  from: pointRef(),
  to: pointRef(),
  alt: pointRef(),
  neutral: flag(true),
  on: structureRef(),
  connection: choice(["single", ...BANKS], "single", true),
  kva: neededAmount("kVA"),
  primaryKv: neededAmount("kV"),
  secondaryV: neededAmount("V"),
  thirdV: neededAmount("V"),
  rPercent: optionalAmount("%"),
  xPercent: optionalAmount("%"),
  rThirdPercent: optionalAmount("%"),
  xThirdPercent: optionalAmount("%"),
  rBetweenPercent: optionalAmount("%"),
  xBetweenPercent: optionalAmount("%"),
  excitingPercent: amount("%", 0.5),
  coreLossPercent: amount("%", 0),
  secondary: choice(["split", "two-wire"], "split"),
  third: choice(["split", "two-wire"], "two-wire"),
  primaryStarOhms: optionalImpedance(),
  secondaryStarOhms: optionalImpedance(),
  thirdStarOhms: optionalImpedance(),
};

type ThreeWinding = Complete<typeof fields>;

const STARS = ["primaryStarOhms", "secondaryStarOhms", "thirdStarOhms"] as const;

const woundAs = ({ connection }: Pick<ThreeWinding, "connection">) =>
  (connection === "single" ? ["Yg", "Yg", "Yg"] : connection.split("-")) as [
    Side["wound"],
    Side["wound"],
    Side["wound"],
  ];

/** Its sides in the order of its ends: primary, secondary, third. */
function sidesOf(it: ThreeWinding): readonly [Side, Side, Side] {
  const isSingle = it.connection === "single";
  const [high, low, third] = woundAs(it);
  const shares = leakageSharesOf(it).shares.map(someLeakage) as [Complex, Complex, Complex];
  return [
    {
      end: "from",
      wound: high,
      volts: it.primaryKv * 1000,
      percent: shares[0],
      starOhms: it.primaryStarOhms,
    },
    {
      end: "to",
      wound: low,
      volts: it.secondaryV,
      percent: shares[1],
      isSplit: isSingle && it.secondary === "split",
      starOhms: it.secondaryStarOhms,
    },
    {
      end: "alt",
      wound: third,
      volts: it.thirdV,
      percent: shares[2],
      isSplit: isSingle && it.third === "split",
      starOhms: it.thirdStarOhms,
    },
  ];
}

const coreOf = (it: ThreeWinding): Core => ({
  phases: it.phases,
  isSingle: it.connection === "single",
  unitKva: leakagePairsOf(it).unitKva,
  excitingPercent: it.excitingPercent,
  coreLossPercent: it.coreLossPercent,
});

/**
 * A transformer with a third winding on the same core: a station's tertiary, or a unit on a pole with two secondaries. What
 * feeds any of its sides feeds the other two.
 */
export const threeWinding = defineDevice({
  kind: "threeWinding",
  role: "transformer",
  prefix: "tw",
  startsWith: { connection: "single", kva: 50, primaryKv: 7.2, secondaryV: 240, thirdV: 277 },
  ends: ["from", "to", "alt"],
  fields,
  check: (it) => [
    ...((lettersOf(it.phases).length === 3) === (it.connection !== "single")
      ? []
      : [
          problem(
            "phases",
            say("read.bankPhases", {
              connection: it.connection,
              count: it.connection === "single" ? "1 or 2" : "3",
              phases: it.phases,
            }),
          ),
        ]),
    ...STARS.flatMap((key, nth) =>
      it[key] === undefined || (woundAs(it)[nth] === "Yg" && it.connection !== "single")
        ? []
        : [problem(key, say("read.noStar", { connection: it.connection }))],
    ),
    ...leakagesBelongTogether(it),
  ],
  brings: (it) => broughtBySides(coreOf(it), sidesOf(it)),
  lettersAtEnd: (it, end) =>
    lettersOn(
      coreOf(it),
      sidesOf(it).find((side) => side.end === end)!,
    ),
  parts: (it, place): Part[] => [
    ...unitsOf(coreOf(it), sidesOf(it)),
    ...starBranches(sidesOf(it)),
    ...(["to", "alt"] as const).flatMap((end): Part[] =>
      it.neutral && place.hasNeutral("from") && place.hasNeutral(end)
        ? [{ part: "join", from: "from/N", to: `${end}/N`, letter: "N", closed: true }]
        : [],
    ),
  ],
  doubts: (it, { nominalVolts }) => {
    const [high, ...lows] = sidesOf(it);
    const { kva, neutral } = it;
    return [
      ...lows.map((low) => {
        const connection = it.connection === "single" ? "single" : `Yg-${low.wound}`;
        const secondary = low.isSplit === true ? "split" : "two-wire";
        const bank = { connection, kva, neutral, secondary };
        return secondBank(coreOf(it), [high, low], bank, nominalVolts("from"));
      }),
      ...connectedOtherwise(it),
    ];
  },
  numbers: leakageOff,
  fromThirdEnd: ({ from, alt, connection, ...rest }) => ({
    ...rest,
    from: alt,
    alt: from,
    connection: connection.split("-").reverse().join("-") as typeof connection,
  }),
  rating: ({ kva }) => say("drawing.kva", { kva }),
  ratingWidth: 64,
  symbol: (it) => [
    circle(-9, -5, 12),
    ring(9, -5, 12),
    ring(0, 9, 12),
    ...(it.connection === "single"
      ? []
      : woundAs(it).map((wound, nth) => inscribed([-11, 11, 0][nth]!, [-8, -8, 13][nth]!, wound))),
  ],
});

/** What says how large its leakages are. */
type Rated = Pick<
  ThreeWinding,
  | "connection"
  | "phases"
  | "kva"
  | "rPercent"
  | "xPercent"
  | "rThirdPercent"
  | "xThirdPercent"
  | "rBetweenPercent"
  | "xBetweenPercent"
>;

/** Leakage of each pair of sides in percent of the bank's rating: as drawn, else as if each winding had half of the usual. */
function leakagePairsOf(it: Rated): {
  readonly toSecondary: Complex;
  readonly toThird: Complex;
  readonly between: Complex;
  readonly unitKva: number;
} {
  const connection = it.connection === "single" ? "single" : "Yg-Yg";
  const { rPercent, xPercent, unitKva } = rateOf({
    ...it,
    connection,
    excitingPercent: 0,
    coreLossPercent: 0,
  });
  return {
    toSecondary: [rPercent, xPercent],
    toThird: [it.rThirdPercent ?? rPercent, it.xThirdPercent ?? xPercent],
    between: [it.rBetweenPercent ?? rPercent, it.xBetweenPercent ?? xPercent],
    unitKva,
  };
}

/**
 * Each winding's own share, so that any two of them together have what was measured between them: Z₁ = (Z₁₂ + Z₁₃ − Z₂₃)/2 and
 * so on about. One of the three may well come out below zero.
 * Source: the star of a three-winding transformer (Grainger and Stevenson, Power System Analysis, 2.6; any textbook).
 */
export function leakageSharesOf(it: Rated): {
  readonly shares: readonly [Complex, Complex, Complex];
  readonly unitKva: number;
} {
  const { toSecondary, toThird, between, unitKva } = leakagePairsOf(it);
  const share = (one: Complex, other: Complex, opposite: Complex): Complex =>
    complex.scale(complex.subtract(complex.add(one, other), opposite), 0.5);
  return {
    shares: [
      share(toSecondary, toThird, between),
      share(toSecondary, between, toThird),
      share(toThird, between, toSecondary),
    ],
    unitKva,
  };
}

/**
 * Three reactances can be those of one core where the energy of its leakage is above zero whatever flows: 4 X₁₂ X₁₃ is more
 * than (X₁₂ + X₁₃ − X₂₃)². Source: the matrix of leakage inductances is positive definite (any textbook).
 */
function leakagesBelongTogether(it: ThreeWinding): FieldProblem[] {
  const { toSecondary, toThird, between } = leakagePairsOf(it);
  const part = toSecondary[1] + toThird[1] + between[1] === 0 ? 0 : 1;
  const [a, b, c] = [toSecondary[part], toThird[part], between[part]];
  const isNone = a + b + c === 0;
  return isNone || 4 * a * b > (a + b - c) ** 2
    ? []
    : [problem("xBetweenPercent", say("read.leakages", { first: a, second: b, between: c }))];
}

/** The connections with three windings that stations have most; common practice, no source. */
const MISTAKEN: readonly Bank[] = ["Yg-Yg-D", "D-Yg-Yg", "Yg-Yg-Yg", "D-Yg-D", "Yg-D-D"];

const connectedOtherwise = ({ connection }: ThreeWinding): DeviceDoubt[] =>
  connection === "single"
    ? []
    : otherwiseConnected(connection, MISTAKEN, (wound) =>
        Object.fromEntries(STARS.filter((_, nth) => wound[nth] !== "Yg").map((key) => [key, null])),
      );

/**
 * A nameplate's impedances are right within 10 % (IEEE C57.12.00, three windings, from memory); where nobody has read the
 * plate, half to twice what is usual for its size (common practice, no source). All three go together.
 */
function leakageOff(it: ThreeWinding): DeviceNumber[] {
  const { toSecondary, toThird, between } = leakagePairsOf(it);
  const values: JsonObject = {
    rPercent: toSecondary[0],
    xPercent: toSecondary[1],
    rThirdPercent: toThird[0],
    xThirdPercent: toThird[1],
    rBetweenPercent: between[0],
    xBetweenPercent: between[1],
  };
  const isRead = Object.keys(values).every((key) => it[key as "rPercent"] !== undefined);
  return isRead ? offBy(values, 0.9, 1.1) : offBy(values, 0.5, 2);
}
