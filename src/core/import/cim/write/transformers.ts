import { isTransformer, lettersAtEnd, rateOf, type TransformerRating } from "../../../devices";
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
];

/** Transformers: units as tanks with their tests, banks of three as windings. */
export function writeTransformer(writing: Writing, written: Written): void {
  const { element, id, saved } = written;
  if (!isTransformer(element)) return;
  tellWhatIsLost(writing, written, KEYS);
  const { phases, connection, from, to: far } = element;
  const rating = rateOf(element);
  const low = lettersAtEnd(element, "to").join("");
  const isSingle = connection === "single";
  const ends: EndAt[] = [
    { node: from, letters: isSingle && phases.length === 1 ? `${phases}N` : phases },
    { node: far, letters: isSingle ? `${low}N` : "ABC" },
  ];
  const name = addEquipment(writing, "PowerTransformer", { id, saved }, ends);
  if (isSingle) {
    const primary = phases.length === 1 ? `${phases}N` : phases;
    const [letter] = phases;
    const secondary = element.secondary === "split" ? ["s1N", "Ns2"] : [`${letter!}N`];
    return addTank(
      writing,
      id,
      name,
      [primary, ...secondary],
      element.primaryKv * 1000,
      element.secondaryV,
      rating,
    );
  }
  if (connection === "openY-openD") {
    const isStepUp = element.secondaryV > element.primaryKv * 1000;
    const across = isStepUp ? { A: "AC", B: "BA", C: "CB" } : { A: "AB", B: "BC", C: "CA" };
    for (const letter of phases as Iterable<"A" | "B" | "C">)
      addTank(
        writing,
        `${id}-${letter}`,
        name,
        [`${letter}N`, across[letter]],
        (element.primaryKv * 1000) / Math.sqrt(3),
        element.secondaryV,
        rating,
        id,
      );
    return;
  }
  writeWindings(writing, written, name, rating);
}

/** A bank of three, winding by winding. */
function writeWindings(
  { rdf }: Writing,
  { id, element }: Written,
  name: string,
  rating: TransformerRating,
): void {
  if (!isTransformer(element)) return;
  const [high, low] = element.connection.split("-") as [string, string];
  const isStepUp = element.secondaryV > element.primaryKv * 1000;
  const isTurned = element.connection.includes("D") && element.connection !== "D-D";
  const sides = [
    { kind: high, volts: element.primaryKv * 1000, star: element.primaryStarOhms, clock: 0 },
    {
      kind: low,
      volts: element.secondaryV,
      star: element.secondaryStarOhms,
      clock: isTurned ? (isStepUp ? 11 : 1) : 0,
    },
  ];
  for (const [index, { kind, volts, star, clock }] of sides.entries())
    rdf.add("PowerTransformerEnd", `${name} end ${index + 1}`, {
      "PowerTransformerEnd.PowerTransformer": to(name),
      "TransformerEnd.endNumber": index + 1,
      "TransformerEnd.Terminal": to(terminalName(id, index + 1)),
      "TransformerEnd.grounded": kind === "Yg",
      "TransformerEnd.rground": star?.[0],
      "TransformerEnd.xground": star?.[1],
      "PowerTransformerEnd.connectionKind": choice(`WindingConnection.${kind === "Yg" ? "Yn" : kind}`),
      "PowerTransformerEnd.phaseAngleClock": clock,
      "PowerTransformerEnd.ratedS": element.kva * 1000,
      "PowerTransformerEnd.ratedU": volts,
    });
  const baseOhms = (element.primaryKv * 1000) ** 2 / (element.kva * 1000);
  rdf.add("TransformerMeshImpedance", `${name} leakage`, {
    "TransformerMeshImpedance.FromTransformerEnd": to(`${name} end 1`),
    "TransformerMeshImpedance.ToTransformerEnd": to(`${name} end 2`),
    "TransformerMeshImpedance.r": (rating.rPercent * baseOhms) / 100,
    "TransformerMeshImpedance.x": (rating.xPercent * baseOhms) / 100,
  });
  rdf.add("TransformerCoreAdmittance", `${name} core`, {
    "TransformerCoreAdmittance.TransformerEnd": to(`${name} end 1`),
    "TransformerCoreAdmittance.g": element.coreLossPercent / 100 / baseOhms,
    "TransformerCoreAdmittance.b": element.excitingPercent / 100 / baseOhms,
  });
}

/**
 * A single-phase unit, with its tests as a test sheet gives them. Of a split winding each half has the whole leakage on half the
 * volts: between the primary and a half it is half of the whole and a whole, between the halves twice.
 */
function addTank(
  { rdf }: Writing,
  id: string,
  of: string,
  phases: readonly string[],
  primaryVolts: number,
  secondaryVolts: number,
  { unitKva, rPercent, xPercent, excitingPercent, coreLossPercent }: TransformerRating,
  terminalsOf = id,
): void {
  const name = `tank ${id}`;
  const isSplit = phases.length === 3;
  rdf.add("TransformerTankInfo", `${name} info`, { "IdentifiedObject.name": id });
  rdf.add("TransformerTank", name, {
    "TransformerTank.PowerTransformer": to(of),
    "TransformerTank.TransformerTankInfo": to(`${name} info`),
  });
  const volts = phases.map((_, index) =>
    index === 0 ? primaryVolts : isSplit ? secondaryVolts / 2 : secondaryVolts,
  );
  const info = (index: number) => `${name} end info ${index + 1}`;
  for (const [index, ordered] of phases.entries()) {
    rdf.add("TransformerEndInfo", info(index), {
      "TransformerEndInfo.TransformerTankInfo": to(`${name} info`),
      "TransformerEndInfo.endNumber": index + 1,
      "TransformerEndInfo.ratedS": unitKva * 1000,
      "TransformerEndInfo.ratedU": volts[index],
    });
    rdf.add("TransformerTankEnd", `${name} end ${index + 1}`, {
      "TransformerTankEnd.TransformerTank": to(name),
      "TransformerEnd.endNumber": index + 1,
      "TransformerEnd.Terminal": to(terminalName(terminalsOf, Math.min(index, 1) + 1)),
      "TransformerTankEnd.orderedPhases": choice(`OrderedPhaseCodeKind.${ordered}`),
    });
  }
  const test = (from: number, grounded: number, times: number) => {
    const z = (times * Math.hypot(rPercent, xPercent)) / 100;
    rdf.add("ShortCircuitTest", `${name} test ${from} ${grounded}`, {
      "ShortCircuitTest.EnergisedEnd": to(info(from)),
      "ShortCircuitTest.GroundedEnds": to(info(grounded)),
      "ShortCircuitTest.leakageImpedance": (z * volts[from]! ** 2) / (unitKva * 1000),
      "ShortCircuitTest.loss": (times * rPercent * unitKva) / 100,
      "TransformerTest.basePower": unitKva * 1000,
    });
  };
  if (isSplit) {
    test(0, 1, 1.5);
    test(0, 2, 1.5);
    test(1, 2, 2);
  } else test(0, 1, 1);
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
