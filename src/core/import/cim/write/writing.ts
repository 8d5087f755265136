import { type CircuitElement, deviceOf, type Fields, type Stretch } from "../../../devices";
import type { System } from "../../../document";
import type { JsonObject } from "../../../terms";
import type { Ledger } from "../../ledger";
import { choice, type RdfValue, type RdfWriter, to } from "./rdfWriter";

/** What every writer of a kind of equipment works with. */
export interface Writing {
  readonly rdf: RdfWriter;
  readonly ledger: Ledger;
  readonly system: System;
  /** whether anything on the drawing has a place */
  readonly isPlaced: boolean;
  /** lines by the id of their element */
  readonly stretches: ReadonlyMap<string, Stretch>;
  /** objects that hold the matrices of lines, by what they hold */
  readonly lineData: Map<string, string>;
  /** base voltages that are written, line to line [V] */
  readonly baseVolts: Set<number>;
}

/** An element on its way into a model. */
export interface Written {
  readonly id: string;
  readonly saved: JsonObject;
  readonly element: CircuitElement;
  /** nominal volts at its first end: line to line, leg to leg on a split secondary; 0 where nothing says [V] */
  readonly nominalVolts: number;
}

/** One end of what is written: a point, or a node that is made for the model alone, and the letters there. */
export interface EndAt {
  readonly node: string;
  readonly letters: string;
}

/** Letters of ours as the standard's `PhaseCode`. */
export const phaseCode = (letters: string): string =>
  letters === "" ? "none" : letters.replace(/[12]+/, (legs) => `s${legs}`);

/** One letter of ours as the standard's `SinglePhaseKind`. */
export const singlePhase = (letter: string): RdfValue =>
  choice(`SinglePhaseKind.${letter === "1" || letter === "2" ? `s${letter}` : letter}`);

/** The name under which a node is written. */
export const nodeName = (point: string): string => `node ${point}`;

/** Writes a piece of equipment with its terminals, and where it stands. */
export function addEquipment(
  { rdf, system, isPlaced }: Writing,
  className: string,
  { id, saved }: Pick<Written, "id" | "saved">,
  ends: readonly EndAt[],
  values: Readonly<Record<string, RdfValue>> = {},
): string {
  const name = `element ${id}`;
  const label = typeof saved["label"] === "string" ? saved["label"] : "";
  rdf.add(className, name, {
    "IdentifiedObject.name": label === "" ? undefined : label,
    "IdentifiedObject.aliasName": id,
    "Equipment.EquipmentContainer": to("feeder"),
    ...(isPlaced ? { "PowerSystemResource.Location": to(`${name} location`) } : {}),
    ...values,
  });
  for (const [index, { node, letters }] of ends.entries())
    rdf.add("Terminal", terminalName(id, index + 1), {
      "ACDCTerminal.sequenceNumber": index + 1,
      "Terminal.ConductingEquipment": to(name),
      "Terminal.ConnectivityNode": to(nodeName(node)),
      "Terminal.phases": choice(`PhaseCode.${phaseCode(letters)}`),
    });
  if (!isPlaced) return name;
  rdf.add("Location", `${name} location`, { "Location.CoordinateSystem": to("places") });
  for (const [index, { node }] of ends.entries()) {
    const point = (system.points as Readonly<Record<string, JsonObject>>)[node];
    if (point === undefined) continue;
    rdf.add("PositionPoint", `${name} position ${index + 1}`, {
      "PositionPoint.Location": to(`${name} location`),
      "PositionPoint.sequenceNumber": index + 1,
      "PositionPoint.xPosition": Number(point["x"] ?? 0),
      "PositionPoint.yPosition": -Number(point["y"] ?? 0),
    });
  }
  return name;
}

/** The name of a terminal of an element. */
export const terminalName = (id: string, number: number): string => `element ${id} terminal ${number}`;

/** A node that the model needs and the drawing does not. */
export function addNode({ rdf }: Writing, id: string): string {
  rdf.add("ConnectivityNode", nodeName(id), {
    "IdentifiedObject.name": id,
    "IdentifiedObject.aliasName": id,
    "ConnectivityNode.ConnectivityNodeContainer": to("feeder"),
  });
  return id;
}

/** A base voltage, written once. @returns what refers to it; nothing for none */
export function baseVoltage({ rdf, baseVolts }: Writing, volts: number): RdfValue {
  if (volts === 0) return undefined;
  const name = `base voltage ${volts}`;
  if (!baseVolts.has(volts)) {
    baseVolts.add(volts);
    rdf.add("BaseVoltage", name, { "BaseVoltage.nominalVoltage": volts });
  }
  return to(name);
}

/** Keys that every piece of equipment carries, in its terminals and names. */
const ALWAYS = new Set(["kind", "label", "phases", "from", "to", "at", "alt"]);

/** Names every key of a record that differs from its default and that the model does not carry. */
export function tellWhatIsLost(
  { ledger }: Writing,
  { id, saved, element }: Written,
  carries: readonly string[],
): void {
  const fields: Fields = deviceOf(element.kind).fields;
  for (const [key, value] of Object.entries(saved)) {
    if (ALWAYS.has(key) || carries.includes(key)) continue;
    const isDefault = key in fields && JSON.stringify(fields[key]!.fallback) === JSON.stringify(value);
    if (key in fields && !isDefault) ledger.note("leftOut", "keyLost", id, { key });
    if (!(key in fields)) ledger.note("leftOut", "unknownKey", id);
  }
}
