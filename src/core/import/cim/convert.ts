import { DrawingDraft } from "../draft";
import type { Ledger } from "../ledger";
import type { NeutralWay } from "../neutral";
import { addMeters } from "../services";
import { readLines } from "./lines";
import { readCapacitors, readLoads, readMachines } from "./loads";
import { CimModel, nameOf } from "./model";
import { placePoints } from "./places";
import type { RdfModel } from "./rdf";
import { Reading } from "./reading";
import { readSources } from "./sources";
import { isRod, readGrounds } from "./grounds";
import { readGroundSwitches, readSwitches } from "./switches";
import { Topology } from "./topology";
import { readTransformers } from "./transformers";

interface Options {
  /** what holds for the neutral; by the file's header where nobody asks */
  readonly way: NeutralWay | undefined;
  /** where the file does not say */
  readonly frequencyHz: 50 | 60 | undefined;
  readonly units: "plain" | "kilo" | undefined;
}

/** Classes that are read; anything else with a terminal is left out by name. */
const READ = new Set([
  "EnergySource",
  "ExternalNetworkInjection",
  "ACLineSegment",
  "PowerTransformer",
  "Breaker",
  "Recloser",
  "LoadBreakSwitch",
  "Disconnector",
  "Sectionaliser",
  "Switch",
  "Fuse",
  "Jumper",
  "Cut",
  "GroundDisconnector",
  "EnergyConsumer",
  "ConformLoad",
  "NonConformLoad",
  "StationSupply",
  "LinearShuntCompensator",
  "PowerElectronicsConnection",
  "SynchronousMachine",
  "AsynchronousMachine",
]);

/** Places of equipment, which give their nodes a name and nothing else. */
const NAMING = new Set(["BusbarSection", "Junction"]);

/** What a model holds, as a draft of a drawing. */
export interface Converted {
  readonly draft: DrawingDraft;
  readonly frequencyHz: 50 | 60;
  readonly way: NeutralWay;
  readonly title: string;
  readonly classCounts: Readonly<Record<string, number>>;
}

/** Turns the objects of a model of IEC 61970/61968 into a draft of a drawing. */
export function convert(rdf: RdfModel, ledger: Ledger, options: Options): Converted {
  const model = new CimModel(rdf, ledger, options.units);
  const draft = new DrawingDraft(ledger);
  const topology = new Topology(model, draft);
  const frequencyHz = frequencyOf(model, options.frequencyHz);
  const way = options.way ?? (model.isDrawing ? "given" : "return");
  const reading = new Reading(model, topology, draft, way, frequencyHz);
  readGrounds(reading);
  leaveOut(model, topology, draft);
  readSources(reading);
  readLines(reading);
  readTransformers(reading);
  readSwitches(reading);
  readGroundSwitches(reading);
  readLoads(reading);
  readCapacitors(reading);
  readMachines(reading);
  placePoints(model, topology, draft);
  if (way !== "earth" && way !== "given") addMeters(draft);
  if (model.all("EnergySource", "ExternalNetworkInjection").length === 0)
    ledger.note("warnings", "noSource", "");
  ledger.note("warnings", "crossings", "");
  const [feeder] = model.all("Feeder", "Line", "Substation");
  return {
    draft,
    frequencyHz,
    way,
    title:
      feeder === undefined ? "" : model.isDrawing ? (feeder.attributes.get("name") ?? "") : nameOf(feeder),
    classCounts: model.classCounts(),
  };
}

function frequencyOf(model: CimModel, asked: 50 | 60 | undefined): 50 | 60 {
  const [base] = model.all("BaseFrequency");
  const hertz = base === undefined ? undefined : model.number(base, "frequency");
  if (hertz === 50 || hertz === 60) return hertz;
  if (asked === undefined) model.ledger.note("assumed", "frequency", "");
  return asked ?? 60;
}

function leaveOut(model: CimModel, topology: Topology, draft: DrawingDraft): void {
  for (const key of topology.equipment) {
    const object = model.byKey(key);
    if (object === undefined || READ.has(object.className) || isRod(model, topology, object)) continue;
    if (!NAMING.has(object.className)) {
      draft.ledger.note("leftOut", "class", nameOf(object), { className: object.className });
      continue;
    }
    for (const terminal of topology.terminalsOf(object)) {
      const point = topology.pointOfTerminal(terminal, object, 1);
      const node = point === undefined ? undefined : model.byKey(point);
      if (point !== undefined && node?.attributes.get("name") === undefined)
        draft.points.set(point, { ...draft.points.get(point)!, label: nameOf(object) });
    }
  }
}
