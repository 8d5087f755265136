import { type AnyTransformer, isTransformer, leakageSharesOf, lowSidesOf, rateOf } from "../../../devices";
import { complex, type Complex } from "../../../terms";
import { choice, type RdfValue, to } from "./rdfWriter";
import { addSwitch } from "./switches";
import { writeJumper } from "./lines";
import {
  addEquipment,
  type EndAt,
  tellWhatIsLost,
  terminalName,
  type Writing,
  type Written,
} from "./writing";

const KEYS = [
  "connection",
  "kva",
  "primaryKv",
  "secondaryV",
  "rPercent",
  "xPercent",
  "excitingPercent",
  "coreLossPercent",
  "secondary",
  "primaryStarOhms",
  "secondaryStarOhms",
  "thirdV",
  "third",
  "thirdStarOhms",
  ...["rThirdPercent", "xThirdPercent", "rBetweenPercent", "xBetweenPercent"],
];

/** Transformers: units as tanks with their tests, banks of three as windings. */
export function writeTransformer(writing: Writing, written: Written): void {
  const { element, id, saved } = written;
  if (!isTransformer(element)) return;
  tellWhatIsLost(writing, written, KEYS);
  const { phases, connection, from } = element;
  const isSingle = connection === "single";
  const ends: EndAt[] = [
    { node: from, letters: isSingle && phases.length === 1 ? `${phases}N` : phases },
    ...lowSidesOf(element).map(({ at, letters }) => ({
      node: at,
      letters: isSingle ? `${letters.join("")}N` : "ABC",
    })),
  ];
  const name = addEquipment(writing, "PowerTransformer", { id, saved }, ends);
  const leakage = leakageOf(element);
  if (isSingle) {
    const primary = phases.length === 1 ? `${phases}N` : phases;
    const [first, ...others] = leakage.shares;
    const lows = lowSidesOf(element).flatMap(({ letters }, nth): TankEnd[] => {
      const own = { volts: lowVoltsOf(element)[nth]!, terminal: nth + 2, percent: others[nth]! };
      if (letters.length === 1) return [{ ...own, phases: `${letters[0]!}N` }];
      // Of a split winding each half has all of the leakage on half the volts: twice as much in percent of these.
      const half = { ...own, volts: own.volts / 2, percent: complex.scale(own.percent, 2) };
      return [
        { ...half, phases: "s1N" },
        { ...half, phases: "Ns2" },
      ];
    });
    const high = { phases: primary, volts: element.primaryKv * 1000, terminal: 1, percent: first! };
    return addTank(writing, id, name, [high, ...lows], element, leakage.unitKva, id);
  }
  if (connection === "openY-openD") {
    const isStepUp = element.secondaryV > element.primaryKv * 1000;
    const across = isStepUp ? { A: "AC", B: "BA", C: "CB" } : { A: "AB", B: "BC", C: "CA" };
    const [high, low] = leakage.shares as [Complex, Complex];
    for (const letter of phases as Iterable<"A" | "B" | "C">)
      addTank(
        writing,
        `${id}-${letter}`,
        name,
        [
          {
            phases: `${letter}N`,
            volts: (element.primaryKv * 1000) / Math.sqrt(3),
            terminal: 1,
            percent: high,
          },
          { phases: across[letter], volts: element.secondaryV, terminal: 2, percent: low },
        ],
        element,
        leakage.unitKva,
        id,
      );
    return;
  }
  writeWindings(writing, element, id, name, leakage);
}

const lowVoltsOf = (it: AnyTransformer): readonly number[] =>
  "thirdV" in it ? [it.secondaryV, it.thirdV] : [it.secondaryV];

/** What each winding has of the leakage, by the rating of a unit. */
interface Leakage {
  /** of each side in the order of its ends [%] */
  readonly shares: readonly Complex[];
  readonly unitKva: number;
}

function leakageOf(it: AnyTransformer): Leakage {
  if ("thirdV" in it) return leakageSharesOf(it);
  const { rPercent, xPercent, unitKva } = rateOf(it);
  const half: Complex = [rPercent / 2, xPercent / 2];
  return { shares: [half, half], unitKva };
}

/** A bank of three, winding by winding. */
function writeWindings(
  { rdf }: Writing,
  element: AnyTransformer,
  id: string,
  name: string,
  { shares }: Leakage,
): void {
  const [high, ...lows] = element.connection.split("-") as [string, ...string[]];
  const highVolts = element.primaryKv * 1000;
  const stars = [
    element.primaryStarOhms,
    element.secondaryStarOhms,
    "thirdV" in element ? element.thirdStarOhms : undefined,
  ];
  const volts = [highVolts, ...lowVoltsOf(element)];
  // Behind a delta all wyes turn as the first of them does.
  const leading = volts[1 + lows.findIndex((it) => it !== "D")];
  const clockOf = (wound: string, own: number): number => {
    if ((wound === "D") === (high === "D")) return 0;
    return (high === "D" ? leading! : own) > highVolts ? 11 : 1;
  };
  for (const [index, wound] of [high, ...lows].entries())
    rdf.add("PowerTransformerEnd", `${name} end ${index + 1}`, {
      "PowerTransformerEnd.PowerTransformer": to(name),
      "TransformerEnd.endNumber": index + 1,
      "TransformerEnd.Terminal": to(terminalName(id, index + 1)),
      "TransformerEnd.grounded": wound === "Yg",
      "TransformerEnd.rground": stars[index]?.[0],
      "TransformerEnd.xground": stars[index]?.[1],
      "PowerTransformerEnd.connectionKind": choice(`WindingConnection.${wound === "Yg" ? "Yn" : wound}`),
      "PowerTransformerEnd.phaseAngleClock": index === 0 ? 0 : clockOf(wound, volts[index]!),
      "PowerTransformerEnd.ratedS": element.kva * 1000,
      "PowerTransformerEnd.ratedU": volts[index],
    });
  const baseOhms = (nth: number) => volts[nth]! ** 2 / (element.kva * 1000);
  for (const [a, b] of pairsOf(shares.length)) {
    const [r, x] = complex.add(shares[a]!, shares[b]!);
    rdf.add("TransformerMeshImpedance", `${name} leakage${shares.length > 2 ? ` ${a + 1} ${b + 1}` : ""}`, {
      "TransformerMeshImpedance.FromTransformerEnd": to(`${name} end ${a + 1}`),
      "TransformerMeshImpedance.ToTransformerEnd": to(`${name} end ${b + 1}`),
      "TransformerMeshImpedance.r": (r * baseOhms(a)) / 100,
      "TransformerMeshImpedance.x": (x * baseOhms(a)) / 100,
    });
  }
  rdf.add("TransformerCoreAdmittance", `${name} core`, {
    "TransformerCoreAdmittance.TransformerEnd": to(`${name} end 1`),
    "TransformerCoreAdmittance.g": element.coreLossPercent / 100 / baseOhms(0),
    "TransformerCoreAdmittance.b": element.excitingPercent / 100 / baseOhms(0),
  });
}

/** Each two of so many, the first before the second. */
const pairsOf = (count: number): (readonly [number, number])[] =>
  Array.from({ length: count }, (_, a) => a).flatMap((a) =>
    Array.from({ length: count - a - 1 }, (_, more) => [a, a + more + 1] as const),
  );

/** One end of a single-phase unit. */
interface TankEnd {
  readonly phases: string;
  readonly volts: number;
  readonly terminal: number;
  /** of the leakage, by the unit's rating on these volts */
  readonly percent: Complex;
}

/** A single-phase unit, with its tests as a test sheet gives them: between each two of its ends. */
function addTank(
  { rdf }: Writing,
  id: string,
  of: string,
  ends: readonly TankEnd[],
  { excitingPercent, coreLossPercent }: Pick<AnyTransformer, "excitingPercent" | "coreLossPercent">,
  unitKva: number,
  terminalsOf: string,
): void {
  const name = `tank ${id}`;
  rdf.add("TransformerTankInfo", `${name} info`, { "IdentifiedObject.name": id });
  rdf.add("TransformerTank", name, {
    "TransformerTank.PowerTransformer": to(of),
    "TransformerTank.TransformerTankInfo": to(`${name} info`),
  });
  const info = (index: number) => `${name} end info ${index + 1}`;
  for (const [index, { phases, volts, terminal }] of ends.entries()) {
    rdf.add("TransformerEndInfo", info(index), {
      "TransformerEndInfo.TransformerTankInfo": to(`${name} info`),
      "TransformerEndInfo.endNumber": index + 1,
      "TransformerEndInfo.ratedS": unitKva * 1000,
      "TransformerEndInfo.ratedU": volts,
    });
    rdf.add("TransformerTankEnd", `${name} end ${index + 1}`, {
      "TransformerTankEnd.TransformerTank": to(name),
      "TransformerEnd.endNumber": index + 1,
      "TransformerEnd.Terminal": to(terminalName(terminalsOf, terminal)),
      "TransformerTankEnd.orderedPhases": choice(`OrderedPhaseCodeKind.${phases}`),
    });
  }
  for (const [a, b] of pairsOf(ends.length)) {
    const [r, x] = complex.add(ends[a]!.percent, ends[b]!.percent);
    rdf.add("ShortCircuitTest", `${name} test ${a} ${b}`, {
      "ShortCircuitTest.EnergisedEnd": to(info(a)),
      "ShortCircuitTest.GroundedEnds": to(info(b)),
      "ShortCircuitTest.leakageImpedance":
        ((Math.hypot(r, x) / 100) * ends[a]!.volts ** 2) / (unitKva * 1000),
      "ShortCircuitTest.loss": (r * unitKva) / 100,
      "TransformerTest.basePower": unitKva * 1000,
    });
  }
  rdf.add("NoLoadTest", `${name} no load`, {
    "NoLoadTest.EnergisedEnd": to(info(0)),
    "NoLoadTest.excitingCurrent": Math.hypot(excitingPercent, coreLossPercent),
    "NoLoadTest.loss": (coreLossPercent * unitKva) / 100,
    "TransformerTest.basePower": unitKva * 1000,
  });
}

/** Step-voltage regulators: a unit of equal volts with a tap changer for each phase. @returns false for what is none */
export function writeRegulator(writing: Writing, written: Written): boolean {
  const { element, id, saved, nominalVolts } = written;
  if (!("taps" in element)) return false;
  const { phases, open, bypassed, from, to: far, taps, neutral } = element;
  tellWhatIsLost(writing, written, [
    "open",
    "bypassed",
    "taps",
    ...(open === phases || bypassed ? ["neutral"] : []),
  ]);
  const letters = `${phases}${neutral ? "N" : ""}`;
  const ends = (own: string): EndAt[] => [from, far].map((node) => ({ node, letters: own }));
  if (bypassed) {
    writing.ledger.note("approximated", "bypassedAsJumper", id);
    writeJumper(writing, id, ends(letters), "");
    return true;
  }
  const closed = [...phases].filter((it) => !open.includes(it)).join("");
  if (open !== "") {
    writing.ledger.note("approximated", "regulatorOpen", id);
    const own = closed === "" ? letters : open;
    addSwitch(
      writing,
      { id: closed === "" ? id : `${id}-open`, saved: closed === "" ? saved : {} },
      { className: "Disconnector" },
      ends(own),
      { open, normalOpen: false },
    );
  }
  if (closed === "") return true;
  const name = addEquipment(writing, "PowerTransformer", { id, saved }, ends(`${closed}N`));
  for (const letter of closed) addStepTank(writing, id, name, letter, nominalVolts, taps[letter as "A"] ?? 0);
  return true;
}

/** One phase of a regulator: 5/8 % of neutral volts a step. */
function addStepTank(
  { rdf }: Writing,
  id: string,
  of: string,
  letter: string,
  nominalVolts: number,
  tap: number,
): void {
  const name = `tank ${id} ${letter}`;
  const volts = nominalVolts === 0 ? 1 : nominalVolts / Math.sqrt(3);
  rdf.add("TransformerTankInfo", `${name} info`, { "IdentifiedObject.name": `${id} ${letter}` });
  rdf.add("TransformerTank", name, {
    "TransformerTank.PowerTransformer": to(of),
    "TransformerTank.TransformerTankInfo": to(`${name} info`),
  });
  for (const number of [1, 2]) {
    const values: Record<string, RdfValue> = {
      "TransformerEndInfo.TransformerTankInfo": to(`${name} info`),
      "TransformerEndInfo.endNumber": number,
      "TransformerEndInfo.ratedU": volts,
    };
    rdf.add("TransformerEndInfo", `${name} end info ${number}`, values);
    rdf.add("TransformerTankEnd", `${name} end ${number}`, {
      "TransformerTankEnd.TransformerTank": to(name),
      "TransformerEnd.endNumber": number,
      "TransformerEnd.Terminal": to(terminalName(id, number)),
      "TransformerTankEnd.orderedPhases": choice(`OrderedPhaseCodeKind.${letter}N`),
    });
  }
  rdf.add("RatioTapChanger", `${name} changer`, {
    "RatioTapChanger.TransformerEnd": to(`${name} end 2`),
    "RatioTapChanger.stepVoltageIncrement": 0.625,
    "TapChanger.lowStep": -16,
    "TapChanger.highStep": 16,
    "TapChanger.neutralStep": 0,
    "TapChanger.step": tap,
  });
}
