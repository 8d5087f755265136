import { isSupply, type CircuitElement } from "../devices";
import { changed, complete, nameIn, type System } from "../document";
import {
  type Circuit,
  circuitOf,
  EARTH,
  indexOfElement,
  pathTo,
  REACH,
  reachGraphOf,
  reachOf,
  standingOf,
} from "../network";
import { worstAt } from "../phasor";
import { type FuseLink, linkName, meltSeconds } from "../reference";
import { type ElementId, type Finding, type Letter, type Message, say } from "../terms";
import { elementReports } from "./reports";
import type { ElementReport } from "./types";
import type { View } from "./view";
import { threeFigures } from "./workFindings";

/**
 * Faults that are fed as drawn. A link that melts on them for sure should have blown, and is looked at; where none does, what
 * would have to see the fault is named, and what stands at it, since nothing takes the danger away by itself.
 */
export function faultsStanding(
  system: System,
  circuit: Circuit,
  view: View,
  reports: Readonly<Record<ElementId, ElementReport>>,
): Finding[] {
  return [...fedFaults(circuit, view)].map(([element, nodes]) => {
    const id = circuit.elementIds[element]!;
    const name = nameIn({ system }, id);
    const letters = nodes.map((node) => circuit.letterOfNode[node] as Letter);
    const amps = Math.max(...letters.map((it) => reports[id]?.amps[it] ?? 0));
    const phases = nodes.map((node) => fedPhase(system, circuit, view, node, reports));
    const staying = phases.filter((it) => it.stays);
    // Between phases alone nothing flows once one of them is left.
    const isEnded = staying.length <= (isToEarth(circuit, element) ? 0 : 1);
    const clears = isEnded ? slowest(phases.flatMap(({ melting }) => melting)) : undefined;
    const common = { rule: "fault-stands", where: id, citation: "common practice, no source" } as const;
    const gaps = { name, phases: letters.join(" "), amps: threeFigures(amps) };
    if (clears !== undefined)
      return {
        ...common,
        severity: "warning",
        message: say("hazard.faultStands.link", {
          ...gaps,
          device: nameIn({ system }, clears.id),
          link: linkName(clears.link),
          seconds: threeFigures(clears.most),
        }),
        help: say("hazard.faultStands.link.help"),
      };
    const { path, links, machine } = staying[0]!;
    const feeds = complete(system.elements[path[0]!]!);
    // Two of its phases at earth are a short all the same.
    const isUnearthed = isSupply(feeds) && !feeds.earthed && nodes.length === 1;
    return {
      ...common,
      severity: "danger",
      message: say("hazard.faultStands", {
        ...gaps,
        sees:
          machine !== undefined
            ? say("hazard.faultStands.machine", { machine: nameIn({ system }, machine) })
            : isUnearthed
              ? say("hazard.faultStands.unearthed")
              : seenBy(system, path, links),
      }),
      help: whatStandsThere(circuit, view, element, nodes),
    };
  });
}

/** Faults that something feeds, with the phases in which it does. */
function fedFaults(circuit: Circuit, view: View): Map<number, number[]> {
  const found = new Map<number, number[]>();
  for (const { element, part, from, to } of circuit.branches) {
    if (part.role !== "fault") continue;
    for (const node of [from, to]) {
      if (node === EARTH || circuit.letterOfNode[node] === "N") continue;
      if (view.reach.how[node] === 0 || view.state(node) !== "faulted") continue;
      const nodes = found.get(element) ?? [];
      if (!nodes.includes(node)) nodes.push(node);
      found.set(element, nodes);
    }
  }
  return found;
}

const isToEarth = (circuit: Circuit, fault: number): boolean =>
  circuit.branches.some(
    ({ element, from, to }) =>
      element === fault && [from, to].some((node) => node === EARTH || circuit.letterOfNode[node] === "N"),
  );

/** What comes of a fault on one phase. */
interface FedPhase {
  /** links that melt for sure, each on another way to it */
  readonly melting: readonly LinkOnWay[];
  /** whether a way is left on which none does */
  readonly stays: boolean;
  /** the last way that was looked at, the supply first, and its links */
  readonly path: readonly ElementId[];
  readonly links: readonly LinkOnWay[];
  /** a customer's that goes on feeding it, whatever link melts */
  readonly machine?: ElementId;
}

/** Blows what melts on each way from a supply to a phase of a fault, until none is left or one stays whole. */
function fedPhase(
  system: System,
  circuit: Circuit,
  { reach: asDrawn }: View,
  node: number,
  reports: Readonly<Record<ElementId, ElementReport>>,
): FedPhase {
  const { element } = reachGraphOf(circuit);
  const { edgeOn: drawn, emfOn } = standingOf(circuit);
  const edgeOn = drawn.slice();
  const melting: LinkOnWay[] = [];
  const letter = circuit.letterOfNode[node] as Letter;
  let way = { path: pathTo(circuit, asDrawn, node), reports: [reports], from: 0 };
  for (;;) {
    const { path } = way;
    const links = linksOn(system, path, letter, way.reports);
    const melts = quickest(links.filter(({ most }) => most < Infinity));
    if (melts === undefined) {
      const first = path[0]!;
      const isMachine = links.length === 0 && !isSupply(complete(system.elements[first]!));
      return { melting, stays: true, path, links, ...(isMachine ? { machine: first } : {}) };
    }
    melting.push({ ...melts, most: way.from + melts.most });
    const blown = indexOfElement(circuit, melts.id);
    element.forEach((of, edge) => {
      if (of === blown) edgeOn[edge] = 0;
    });
    const reach = reachOf(circuit, { edgeOn, emfOn }, { groundsLifted: false });
    if ((reach.how[node]! & REACH.forward) !== 0) {
      way = { path: pathTo(circuit, reach, node), reports: [reports], from: 0 };
      continue;
    }
    // What comes back through a bank from the other phases goes with their own links; a machine goes on feeding the fault.
    const byMachine = reachOf(
      circuit,
      { edgeOn, emfOn: carryingOn(circuit, emfOn) },
      { groundsLifted: false },
    );
    if (byMachine.how[node] === 0) return { melting, stays: false, path, links };
    // Beside the utility a machine's own link carries what it feeds as well; what the machine alone drives through it is solved,
    // with the whole phases gone too and with them still on, whichever lets the link hold longer.
    way = {
      path: pathTo(circuit, byMachine, node),
      reports: [reportsWithBlown(system, melting), reportsWithBlown(system, melting, letter)],
      from: Math.max(...melting.map(({ most }) => most)),
    };
  }
}

/** Amperes once some links have melted: of one phase, where they have it, or of all. */
function reportsWithBlown(system: System, links: readonly LinkOnWay[], letter?: Letter): Reports {
  const blown = links.map(({ id }) => {
    const saved = system.elements[id]!;
    const phases = String(saved["phases"]);
    const melted = letter !== undefined && phases.includes(letter) ? letter : phases;
    return [id, changed(saved, { blown: melted })] as const;
  });
  const left: System = { ...system, elements: { ...system.elements, ...Object.fromEntries(blown) } };
  return elementReports(left, circuitOf(left));
}

/** Machines that are on and go on without the utility. */
const carryingOn = ({ emfs }: Circuit, emfOn: Uint8Array): Uint8Array =>
  emfOn.map((on, emf) => {
    const { role, withoutGrid } = emfs[emf]!.part;
    return role === "generator" && withoutGrid !== "stops" ? on : 0;
  });

const quickest = (links: readonly LinkOnWay[]): LinkOnWay | undefined =>
  [...links].sort((one, other) => one.most - other.most)[0];
const slowest = (links: readonly LinkOnWay[]): LinkOnWay | undefined =>
  [...links].sort((one, other) => other.most - one.most)[0];

interface LinkOnWay {
  readonly id: ElementId;
  readonly link: FuseLink;
  /** the longest that it takes with its current; for ever where it may not melt [s] */
  readonly most: number;
}

type Reports = Readonly<Record<ElementId, ElementReport>>;

/** Links on the way from the supply to a fault, the nearest to the supply first; of several reports the longest time counts. */
function linksOn(
  system: System,
  path: readonly ElementId[],
  letter: Letter,
  reports: readonly Reports[],
): LinkOnWay[] {
  return path.flatMap((id) => {
    const link = linkOf(complete(system.elements[id]!));
    if (link === undefined) return [];
    const times = reports.map((it) => {
      const { amps } = it[id]!;
      // Behind a transformer the phases bear other names.
      return meltSeconds(link, amps[letter] ?? Math.max(0, ...Object.values(amps))).most;
    });
    return [{ id, link, most: Math.max(...times) }];
  });
}

const linkOf = (element: CircuitElement): FuseLink | undefined =>
  "fuse" in element && typeof element.fuse === "object" ? element.fuse : undefined;

/** What is next to the fault of all that could clear it, and why that is not sure. */
function seenBy(system: System, path: readonly ElementId[], links: readonly LinkOnWay[]): Message {
  for (const id of [...path].reverse()) {
    const device = nameIn({ system }, id);
    const found = links.find((it) => it.id === id);
    if (found !== undefined) return say("hazard.faultStands.mayHold", { device, link: linkName(found.link) });
    if ("reclosing" in complete(system.elements[id]!)) return say("hazard.faultStands.trips", { device });
  }
  return say("hazard.faultStands.none");
}

/** What is to be done, and what stands at a fault: over the earth or neutral that it goes to, and on the phases that are whole. */
function whatStandsThere(circuit: Circuit, view: View, element: number, nodes: readonly number[]): Message {
  const [solution] = view.solutions;
  const held = circuit.branches
    .filter((it) => it.element === element)
    .map(({ from, to }) => (to === EARTH ? from : circuit.letterOfNode[to] === "N" ? to : undefined))
    .filter((it) => it !== undefined);
  const point = circuit.pointOfNode[nodes[0]!];
  const others = circuit.conductorIds
    .map((_, node) => node)
    .filter(
      (node) =>
        circuit.pointOfNode[node] === point &&
        "ABC12".includes(circuit.letterOfNode[node]!) &&
        circuit.letterOfNode[node] !== "" &&
        !nodes.includes(node),
    );
  const most = (of: readonly number[]) =>
    Math.round(Math.max(0, ...of.map((node) => worstAt(solution, node))));
  const at = held.length === 0 ? undefined : most(held);
  const beside = others.length === 0 ? undefined : most(others);
  if (at === undefined && beside === undefined) return say("hazard.faultStands.help");
  if (beside === undefined) return say("hazard.faultStands.help.at", { at: at! });
  return at === undefined
    ? say("hazard.faultStands.help.beside", { beside })
    : say("hazard.faultStands.help.both", { at, beside });
}
