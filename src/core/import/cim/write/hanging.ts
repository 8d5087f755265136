import { isLoad, isMachine, isSplit, isSupply } from "../../../devices";
import { choice, type RdfValue, to } from "./rdfWriter";
import { addSwitch } from "./switches";
import {
  addEquipment,
  addNode,
  baseVoltage,
  type EndAt,
  singlePhase,
  tellWhatIsLost,
  type Writing,
  type Written,
} from "./writing";

const RADIANS = Math.PI / 180;

/** Sources: volts behind their sequence impedances. One that is off stands behind an open breaker. */
export function writeSource(writing: Writing, written: Written): void {
  const { element, id, saved } = written;
  if (!isSupply(element)) return;
  tellWhatIsLost(writing, written, ["kvLL", "z1Ohms", "z0Ohms", "angleDeg", "on"]);
  const { phases, kvLL, angleDeg, z1Ohms, z0Ohms, on } = element;
  const letters = `${phases}N`;
  const at = on ? element.at : addNode(writing, `${id}-off`);
  const name = addEquipment(writing, "EnergySource", { id, saved }, [{ node: at, letters }], {
    "EnergySource.nominalVoltage": kvLL * 1000,
    "EnergySource.voltageMagnitude": kvLL * 1000,
    "EnergySource.voltageAngle": angleDeg * RADIANS,
    "EnergySource.r": z1Ohms[0],
    "EnergySource.x": z1Ohms[1],
    "EnergySource.r0": z0Ohms[0],
    "EnergySource.x0": z0Ohms[1],
  });
  for (const letter of phases)
    writing.rdf.add("EnergySourcePhase", `${name} ${letter}`, {
      "EnergySourcePhase.EnergySource": to(name),
      "EnergySourcePhase.phase": singlePhase(letter),
    });
  if (on) return;
  writing.ledger.note("approximated", "offBehindBreaker", id);
  const ends = [at, element.at].map((node): EndAt => ({ node, letters }));
  addSwitch(writing, { id: `${id}-breaker`, saved: {} }, { className: "Breaker" }, ends, {
    open: phases,
    normalOpen: false,
  });
}

/** Loads, by their phases and how they answer to other volts. */
export function writeLoad(writing: Writing, written: Written): void {
  const { element, id, saved, nominalVolts } = written;
  if (!isLoad(element)) return;
  tellWhatIsLost(writing, written, ["kw", "kvar", "connection", "model", "ratedKv", "customers"]);
  const { phases, kw, kvar, connection, model, customers, at } = element;
  const volts = element.ratedKv === undefined ? nominalVolts : element.ratedKv * 1000;
  const isDelta = connection === "delta";
  const name = addEquipment(
    writing,
    "EnergyConsumer",
    { id, saved },
    [{ node: at, letters: isDelta ? phases : `${phases}N` }],
    {
      "EnergyConsumer.p": kw * 1000,
      "EnergyConsumer.q": kvar * 1000,
      "EnergyConsumer.customerCount": customers,
      "EnergyConsumer.phaseConnection": choice(`PhaseShuntConnectionKind.${isDelta ? "D" : "Y"}`),
      "EnergyConsumer.LoadResponse": to(`response ${model}`),
      "ConductingEquipment.BaseVoltage": baseVoltage(writing, isSplit(phases) ? asBase(volts) : volts),
    },
  );
  const letters = isDelta ? deltaLetters(phases) : phases === "ABC" ? "" : phases;
  for (const letter of letters)
    writing.rdf.add("EnergyConsumerPhase", `${name} ${letter}`, {
      "EnergyConsumerPhase.EnergyConsumer": to(name),
      "EnergyConsumerPhase.phase": singlePhase(letter),
      "EnergyConsumerPhase.p": (kw * 1000) / letters.length,
      "EnergyConsumerPhase.q": (kvar * 1000) / letters.length,
    });
}

/** How loads answer to other volts, one object for each of the three ways. */
export function writeResponses({ rdf }: Writing): void {
  for (const [model, name] of Object.entries({ Z: "Impedance", I: "Current", PQ: "Power" }))
    rdf.add("LoadResponseCharacteristic", `response ${model}`, {
      "IdentifiedObject.name": `constant ${name.toLowerCase()}`,
      "LoadResponseCharacteristic.exponentModel": false,
      [`LoadResponseCharacteristic.pConstant${name}`]: 100,
      [`LoadResponseCharacteristic.qConstant${name}`]: 100,
    });
}

/** The letter by which the standard names what hangs between two: from it to the next. */
const deltaLetters = (phases: string): string => ({ AB: "A", BC: "B", AC: "C", "12": "1" })[phases] ?? "";

/** Base volts of a split secondary, as models give them: √3 times a leg's, where that is 120 V or nearly so. */
function asBase(legToLegVolts: number): number {
  const legVolts = legToLegVolts / 2;
  const asStar = legVolts * Math.sqrt(3);
  if (asStar >= 200 && asStar <= 216) return asStar;
  return legVolts < 200 ? legVolts : legToLegVolts;
}

/** Machines, with what they could give, and what those give that run at a set output. */
export function writeMachine(writing: Writing, written: Written): void {
  const { element, id, saved } = written;
  if (!isMachine(element)) return;
  const { phases, kva, volts, at } = element;
  const isInverter = element.interface === "inverter";
  const isWhole = phases === "ABC" && !isInverter;
  const { on, outputKw = 0, outputKvar } = element;
  const isFeeding = on && (outputKw !== 0 || (element.outputKw !== undefined && outputKvar !== 0));
  const [watts, vars] = isFeeding ? [outputKw * 1000, outputKvar * 1000] : [0, 0];
  tellWhatIsLost(writing, written, [
    ...["kva", "volts"],
    ...(isInverter || isWhole ? ["interface"] : []),
    ...(isFeeding ? ["on", "outputKw", "outputKvar"] : []),
  ]);
  if (!isInverter && !isWhole) writing.ledger.note("approximated", "machineAsInverter", id);
  const power = isWhole ? "RotatingMachine" : "PowerElectronicsConnection";
  const name = addEquipment(
    writing,
    isWhole ? "SynchronousMachine" : "PowerElectronicsConnection",
    { id, saved },
    [{ node: at, letters: phases }],
    {
      [`${power}.p`]: watts,
      [`${power}.q`]: vars,
      [`${power}.ratedS`]: kva * 1000,
      [`${power}.ratedU`]: isSplit(phases) && volts <= 400 ? volts / 2 : volts,
    },
  );
  if (isWhole) return;
  for (const letter of phases)
    writing.rdf.add("PowerElectronicsConnectionPhase", `${name} ${letter}`, {
      "PowerElectronicsConnectionPhase.PowerElectronicsConnection": to(name),
      "PowerElectronicsConnectionPhase.phase": singlePhase(letter),
      "PowerElectronicsConnectionPhase.p": watts / phases.length,
      "PowerElectronicsConnectionPhase.q": vars / phases.length,
    });
}

/** Capacitors. @returns false for what is none */
export function writeCapacitor(writing: Writing, written: Written): boolean {
  const { element, id, saved } = written;
  if (!("kvLL" in element && "kvar" in element && "charged" in element)) return false;
  tellWhatIsLost(writing, written, ["open", "kvar", "kvLL", "connection"]);
  const { phases, kvar, kvLL, connection } = element;
  const volts = kvLL * 1000;
  const isDelta = connection === "delta";
  const { open, at } = isDelta ? behindSwitch(writing, written) : element;
  const letters = isDelta ? deltaLetters(phases) : phases;
  const isWhole = phases === "ABC" && (isDelta || open === "" || open === phases);
  // Volts across a phase of a wye are those between lines over √3, between legs over 2.
  const across = isDelta ? volts : isSplit(phases) ? volts / 2 : volts / Math.sqrt(3);
  const sections = (letter: string): number => (open.includes(letter) ? 0 : 1);
  const name = addEquipment(
    writing,
    "LinearShuntCompensator",
    { id, saved },
    [{ node: at, letters: isDelta ? phases : `${phases}N` }],
    {
      "ShuntCompensator.nomU": volts,
      "ShuntCompensator.phaseConnection": choice(`PhaseShuntConnectionKind.${isDelta ? "D" : "Y"}`),
      "ShuntCompensator.sections": sections(phases[0]!),
      "ShuntCompensator.normalSections": 1,
      "LinearShuntCompensator.bPerSection": (kvar * 1000) / (volts * volts),
      "ConductingEquipment.BaseVoltage": baseVoltage(writing, volts),
    },
  );
  if (isWhole) return true;
  for (const letter of letters) {
    const values: Record<string, RdfValue> = {
      "ShuntCompensatorPhase.ShuntCompensator": to(name),
      "ShuntCompensatorPhase.phase": singlePhase(letter),
      "ShuntCompensatorPhase.sections": sections(letter),
      "LinearShuntCompensatorPhase.bPerSection": (kvar * 1000) / letters.length / (across * across),
    };
    writing.rdf.add("LinearShuntCompensatorPhase", `${name} ${letter}`, values);
  }
  return true;
}

/** A delta of which one lead or two are open: the standard opens it as a whole, so what opens stands ahead of it. */
function behindSwitch(
  writing: Writing,
  { element, id }: Written,
): { readonly open: string; readonly at: string } {
  const { open, phases, at } = element as { open: string; phases: string; at: string };
  if (open === "" || open === phases) return { open, at };
  writing.ledger.note("approximated", "deltaBehindSwitch", id);
  const beyond = addNode(writing, `${id}-can`);
  const ends = [at, beyond].map((node): EndAt => ({ node, letters: phases }));
  addSwitch(writing, { id: `${id}-switch`, saved: {} }, { className: "Disconnector" }, ends, {
    open,
    normalOpen: false,
  });
  return { open: "", at: beyond };
}
