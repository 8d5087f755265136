import {
  deviceOf,
  isBeside,
  isFault,
  isGroundSet,
  isLine,
  isLoad,
  isMachine,
  isSupply,
  isTransformer,
} from "../../../devices";
import { complete, type StillhotDocument, isPole, isStation } from "../../../document";
import { circuitOf, placeFor } from "../../../network";
import type { JsonObject } from "../../../terms";
import type { Ledger } from "../../ledger";
import { DRAWING_PROFILE } from "../../neutral";
import { notCarried } from "../../notCarried";
import { writeCapacitor, writeLoad, writeMachine, writeResponses, writeSource } from "./hanging";
import { writeLine, writeRod, writeRods } from "./lines";
import { RdfWriter, to } from "./rdfWriter";
import { writeSwitch, writeTransfer } from "./switches";
import { writeRegulator, writeTransformer } from "./transformers";
import { nodeName, type Writing, type Written } from "./writing";

/**
 * A drawing as a model of IEC 61970-301 and 61968-11, in RDF/XML (IEC 61970-552). What the standard has no words for stands in the
 * ledger; the header says that neutrals, grounds and meters are all there, so that the reader puts in none of its own.
 */
export function writeModel(document: StillhotDocument, ledger: Ledger): string {
  const { system, title } = document;
  notCarried(document, ledger);
  const rdf = new RdfWriter(DRAWING_PROFILE);
  const circuit = circuitOf(system);
  const isPlaced = Object.values(system.points).some((it) => it["x"] !== undefined || it["y"] !== undefined);
  ledger.note("approximated", isPlaced ? "placesOnPlane" : "placesNone", "");
  const writing: Writing = {
    rdf,
    ledger,
    system,
    isPlaced,
    stretches: new Map(circuit.stretches.map((it) => [circuit.elementIds[it.element]!, it.part])),
    lineData: new Map(),
    baseVolts: new Set(),
  };
  writeFrame(writing, title);
  for (const [id, point] of Object.entries(system.points)) writePoint(writing, id, point);
  for (const [index, id] of circuit.elementIds.entries()) {
    const saved = system.elements[id]!;
    const place = placeFor(circuit, index);
    const [end] = deviceOf(saved.kind).ends;
    writeElement(writing, {
      id,
      saved,
      element: complete(saved),
      nominalVolts: end === undefined ? 0 : place.nominalVolts(end),
    });
  }
  return rdf.text();
}

/** What all else refers to. */
function writeFrame(writing: Writing, title: string): void {
  const { rdf, system, isPlaced } = writing;
  rdf.add("BaseFrequency", "frequency", { "BaseFrequency.frequency": system.frequencyHz });
  rdf.add("Feeder", "feeder", { "IdentifiedObject.name": title === "" ? undefined : title });
  rdf.add("Substation", "station", {});
  if (isPlaced) rdf.add("CoordinateSystem", "places", { "CoordinateSystem.crsUrn": "plane-metres" });
  writeResponses(writing);
}

function writePoint(writing: Writing, id: string, point: JsonObject): void {
  const kind = String(point["kind"] ?? "pole");
  const label = typeof point["label"] === "string" ? point["label"] : "";
  writing.rdf.add("ConnectivityNode", nodeName(id), {
    "IdentifiedObject.name": label === "" ? id : label,
    "IdentifiedObject.aliasName": id,
    "ConnectivityNode.ConnectivityNodeContainer": to(isStation({ kind }) ? "station" : "feeder"),
  });
  if (!isPole({ kind }) && !isStation({ kind }))
    writing.ledger.note("leftOut", "keyLost", id, { key: "kind" });
  for (const key of ["evidence", "pinned", "on"])
    if (point[key] !== undefined) writing.ledger.note("leftOut", "keyLost", id, { key });
  const ohms = point["earthOhms"];
  if (typeof ohms === "number") writeRod(writing, `${id}-ground`, id, ohms);
}

function writeElement(writing: Writing, written: Written): void {
  const { element, id } = written;
  if (isBeside(element)) writing.ledger.note("leftOut", "nearbyLost", id);
  else if (isGroundSet(element)) writing.ledger.note("leftOut", "groundSetLost", id);
  else if (isFault(element)) writing.ledger.note("leftOut", "faultLost", id);
  else if (isSupply(element)) writeSource(writing, written);
  else if (isLine(element)) {
    writeLine(writing, written);
    writeRods(writing, written);
  } else if (isTransformer(element)) writeTransformer(writing, written);
  else if (isLoad(element)) writeLoad(writing, written);
  else if (isMachine(element)) writeMachine(writing, written);
  else if (
    !writeCapacitor(writing, written) &&
    !writeRegulator(writing, written) &&
    !writeTransfer(writing, written) &&
    !writeSwitch(writing, written)
  )
    writing.ledger.note("leftOut", "noClass", id);
}
