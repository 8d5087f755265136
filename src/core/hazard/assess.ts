import { type CircuitElement, deviceOf } from "../devices";
import {
  complete,
  conductorNames,
  evidenceOf,
  jobOf,
  perObject,
  pointName,
  type Settings,
  settingsOf,
  type StillhotDocument,
  type System,
  type WorkPoint,
} from "../document";
import {
  type Circuit,
  circuitOf,
  EARTH,
  EDGE,
  edgesAround,
  feedNotDrawn,
  floodFrom,
  reachGraphOf,
  reachOf,
  rodNodesOf,
  standingOf,
} from "../network";
import {
  ampsAtPoint,
  AS_DRAWN,
  type ElementAmps,
  elementAmps,
  type FaultAmps,
  faultAmpsAt,
  solutionOf,
  voltsAt,
  worstAt,
} from "../phasor";
import {
  complex,
  type ConductorId,
  conductorId,
  type ElementId,
  type Finding,
  type Letter,
  type Message,
  type MessageKey,
  partsOfConductor,
  type PointId,
  say,
  type StructureId,
  type WorkPointId,
} from "../terms";
import { wrongAsFound } from "./asFound";
import { bodyAmpsOf, conductorsOf } from "./outcome";
import { MOST_STRENGTH } from "./search";
import { type FoundThreats, leastStepTouch, threatsTo } from "./threats";
import { leastMargin } from "./margin";
import { neutralDoubt, neutralInHand } from "./neutralInHand";
import { barricadedPlaces, isBarricaded, testedConductors } from "./tested";
import type { Assessment, ConductorReport, ElementReport, Threat, Verdict, WorkPointReport } from "./types";
import { whenWords } from "./upsetWords";
import { metallicIslands, type View, viewOf } from "./view";

/** What a rehearsal knows better than the file: what was tested dead and still counts, and which places are barricaded. */
export interface KnownFromPlay {
  readonly tested?: ReadonlySet<ConductorId>;
  readonly barricaded?: ReadonlySet<PointId | StructureId>;
}

/**
 * Everything about a drawing as it stands: states and volts of every conductor, currents of every element, threats,
 * margin and verdict of every work point, and what is wrong. Remembered for each document.
 */
export function assess(document: StillhotDocument, known: KnownFromPlay = {}): Assessment {
  const parts = partsOf(document);
  const job = jobOf(document);
  const settings = settingsOf(document);
  const tested = (at: PointId) => known.tested ?? testedConductors(job.steps, at);
  const barricaded = known.barricaded ?? barricadedPlaces(job.steps);
  const findings: Finding[] = [...parts.findings];
  const workPoints: Record<WorkPointId, WorkPointReport> = {};
  for (const [id, workPoint] of Object.entries(job.workPoints) as [WorkPointId, WorkPoint][]) {
    const found = parts.threats(id);
    const unfed = conductorsNotFed(document.system, workPoint);
    const { verdict, margin } = judged(document.system, settings, workPoint, found, tested(workPoint.at));
    workPoints[id] = {
      verdict,
      margin,
      threats: found.threats,
      ...(found.completeTo < MOST_STRENGTH ? { threatsCompleteTo: found.completeTo } : {}),
      assumptions: countAssumptions(document.system, workPoint),
    };
    findings.push(...feedMissing(id, unfed));
    findings.push(...threatsNotAll(id, found), ...loadsUnsettled(id, found));
    findings.push(...workPointFindings(document.system, settings, id, workPoint));
    if (hasNeutral(workPoint))
      findings.push(...neutralInHand(document.system, settings, id, workPoint, tested(workPoint.at)));
    if (verdict === "grounded")
      findings.push(
        ...stepTouch(
          document.system,
          settings,
          id,
          workPoint,
          isBarricaded(document.system, barricaded, workPoint.at),
        ),
      );
  }
  return {
    conductors: parts.conductors,
    elements: parts.elements,
    workPoints,
    findings: findings.filter(isOnIn(settings)),
  };
}

/** The same of all that needs no work point: the threats to one take far longer than the rest. */
export function assessWithoutWork(document: StillhotDocument): Assessment {
  const { conductors, elements, findings } = partsOf(document);
  return { conductors, elements, workPoints: {}, findings: findings.filter(isOnIn(settingsOf(document))) };
}

/** How one work point stands: its verdict, its margin and the threats to it, without all else that an assessment tells. */
export interface WorkStanding {
  readonly verdict: Verdict;
  readonly margin: number | null;
  readonly threats: readonly Threat[];
  /** nothing on the drawing could ever feed one of its conductors */
  readonly isUnfed: boolean;
  /** what it took to say so, in multiplications */
  readonly work: number;
}

/**
 * How a work point of a drawing stands, the currents through a body left out. With `mostStrength` under 3 only threats up to there are sought: the verdict and
 * the margin are then right where they are the worst, and never worse than they are.
 */
export function standingOfWork(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  tested: ReadonlySet<ConductorId>,
  mostStrength = MOST_STRENGTH,
): WorkStanding {
  const found = threatsTo(system, settings, workPoint, { mostStrength, bodies: false });
  const { verdict, margin } = judged(system, settings, workPoint, found, tested);
  const isUnfed = conductorsNotFed(system, workPoint).length > 0;
  return { verdict, margin, threats: found.threats, isUnfed, work: found.work };
}

function judged(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  found: FoundThreats,
  tested: ReadonlySet<ConductorId>,
): Pick<WorkPointReport, "verdict" | "margin"> {
  const verdict = verdictOf(system, settings, workPoint, found, tested);
  const isAtOnce = verdict === "live" || conductorsNotFed(system, workPoint).length > 0;
  return { verdict, margin: isAtOnce ? 0 : leastMargin(found) };
}

const isOnIn =
  ({ rules }: Settings) =>
  ({ rule }: Finding): boolean =>
    rules[rule]?.off !== true;

/** What does not depend on the steps: kept for each system, so that another test or barricade costs nothing. */
const partsOf = perObject((document: StillhotDocument) => {
  const settings = settingsOf(document);
  const { system } = document;
  const job = jobOf(document);
  const threats = new Map<string, FoundThreats>();
  return {
    ...systemParts(system, settings),
    threats: (id: WorkPointId): FoundThreats => {
      const found = threats.get(id);
      if (found !== undefined) return found;
      const fresh = threatsOf(system, settings, job.workPoints[id]!);
      threats.set(id, fresh);
      return fresh;
    },
  };
});

const threatsBySystem = perObject((_system: System) => new Map<string, FoundThreats>());

/** Threats to a work point; the same question about the same system is answered once. */
function threatsOf(system: System, settings: Settings, workPoint: WorkPoint): FoundThreats {
  const known = threatsBySystem(system);
  const key = JSON.stringify([settings, workPoint.at, workPoint.conductors]);
  const found = known.get(key);
  if (found !== undefined) return found;
  const fresh = threatsTo(system, settings, workPoint);
  known.set(key, fresh);
  return fresh;
}

/** States, volts and currents: all that needs no work point. */
function systemParts(system: System, settings: Settings) {
  const circuit = circuitOf(system);
  const view = viewOf(circuit, settings, { groundsLifted: false });
  return {
    conductors: conductorReports(circuit, view),
    elements: elementReports(system, circuit),
    findings: [
      ...unsolved(view),
      ...neutralVolts(system, circuit, view, settings),
      ...wrongAsFound(system, circuit, view),
    ],
  };
}

function conductorReports(circuit: Circuit, view: View): Record<ConductorId, ConductorReport> {
  const [drawn, off] = view.solutions;
  const sources = sourcesOf(circuit);
  const reports: Record<ConductorId, ConductorReport> = {};
  circuit.conductorIds.forEach((id, node) => {
    const volts = voltsAt(drawn, node);
    const magnitude = complex.magnitude(volts);
    const worst = worstAt(drawn, node);
    reports[id] = {
      state: view.state(node),
      volts: magnitude,
      ...(worst > WORTH_TELLING * magnitude ? { voltsWorst: worst } : {}),
      voltsLoadsOff: complex.magnitude(voltsAt(off, node)),
      angleDeg: complex.angleDegrees(volts),
      sources: sources(node),
    };
  });
  return reports;
}

/** So many times the volts as drawn those at the worst angles have to be before they are told [1]. */
const WORTH_TELLING = 1.01;

/** Elements that are on and reach a node, in order of id. */
function sourcesOf(circuit: Circuit): (node: number) => ElementId[] {
  const standing = standingOf(circuit);
  const on = new Set(
    circuit.emfs.flatMap(({ element }, emf) => (standing.emfOn[emf] === 1 ? [element] : [])),
  );
  const reached = [...on]
    .map((element) => ({
      id: circuit.elementIds[element]!,
      how: reachOf(circuit, standing, { groundsLifted: false, onlyFrom: element }).how,
    }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  return (node) => reached.filter(({ how }) => how[node] !== 0).map(({ id }) => id);
}

function elementReports(system: System, circuit: Circuit): Record<ElementId, ElementReport> {
  const amps = elementAmps(solutionOf(circuit));
  const pointIndex = new Map(circuit.pointIds.map((id, index) => [id, index]));
  const reports: Record<ElementId, ElementReport> = {};
  circuit.elementIds.forEach((id, element) => {
    reports[id] = elementReport(system, circuit, amps, pointIndex, element);
  });
  return reports;
}

function elementReport(
  system: System,
  circuit: Circuit,
  amps: ElementAmps,
  pointIndex: ReadonlyMap<PointId, number>,
  element: number,
): ElementReport {
  const record = complete(system.elements[circuit.elementIds[element]!]!) as CircuitElement & {
    from?: PointId;
    at?: PointId;
    phases?: string;
  };
  const own = ampsAtPoint(circuit, amps, element, pointIndex.get((record.from ?? record.at)!) ?? -1);
  const letters = [...(record.phases ?? ""), "N"] as Letter[];
  const isTwoEnded = deviceOf(record.kind).ends.length > 1;
  const shown = letters.filter(
    (it) => own[it] !== undefined && (it !== "N" || isTwoEnded || complex.magnitude(own[it]) > 0),
  );
  return {
    amps: Object.fromEntries(shown.map((it) => [it, complex.magnitude(own[it]!)])),
    angleDeg: Object.fromEntries(shown.map((it) => [it, complex.angleDegrees(own[it]!)])),
  };
}

/** Amperes of one element with every load off: what still flows, such as charging, exciting and fault current. */
export function ampsLoadsOff({ system }: StillhotDocument, id: ElementId): ElementReport | undefined {
  const circuit = circuitOf(system);
  const element = circuit.elementIds.indexOf(id);
  if (element === -1) return undefined;
  const amps = elementAmps(solutionOf(circuit, { ...AS_DRAWN, loads: false }));
  const pointIndex = new Map(circuit.pointIds.map((it, index) => [it, index]));
  return elementReport(system, circuit, amps, pointIndex, element);
}

/** What the details of a point show beyond the assessment. */
export interface PointNumbers {
  readonly faults: FaultAmps;
  /** nominal volts to earth of its phases; undefined where nothing says [V] */
  readonly nominalVolts: number | undefined;
}

export function pointNumbers({ system }: StillhotDocument, point: PointId): PointNumbers {
  const circuit = circuitOf(system);
  const volts = (["A", "B", "C", "1", "2"] as const).flatMap((letter) => {
    const node = circuit.nodeOf.get(conductorId(point, letter));
    const across = node === undefined ? 0 : circuit.nominalVolts[node]!;
    return across === 0 ? [] : [across / (letter === "1" || letter === "2" ? 2 : Math.sqrt(3))];
  });
  return {
    faults: faultAmpsAt(circuit, point),
    nominalVolts: volts.length === 0 ? undefined : Math.max(...volts),
  };
}

/** Equations that could not be solved, or loads that would not settle: said, never silently wrong. */
function unsolved(view: View): Finding[] {
  const [drawn, off] = view.solutions;
  const findings: Finding[] = [];
  if (drawn.singularAt !== -1 || off.singularAt !== -1)
    findings.push({
      rule: "unsolved",
      severity: "danger",
      where: "system",
      message: say("hazard.unsolved"),
      citation: "common practice, no source",
    });
  if (!drawn.settled) findings.push(loadModel("system", say("hazard.loadsUnsettled")));
  return findings;
}

/** The same after some set of upsets. */
const loadsUnsettled = (id: WorkPointId, { settled }: FoundThreats): Finding[] =>
  settled ? [] : [loadModel(id, say("hazard.loadsUnsettledAfter"))];

const loadModel = (where: string, message: Message): Finding => ({
  rule: "load-model",
  severity: "warning",
  where,
  message,
  citation: "common practice, no source",
});

/** Neutrals that are tied to earth and stand at a dangerous voltage, loads as drawn. */
function neutralVolts(system: System, circuit: Circuit, view: View, settings: Settings): Finding[] {
  const hot = circuit.conductorIds.flatMap((_, node) => (isHotNeutral(view, settings, node) ? [node] : []));
  if (hot.length === 0) return [];
  const rods = alongNeutrals(circuit);
  return hot.map((node): Finding => {
    const volts = worstAt(view.solutions[0], node);
    const where = circuit.conductorIds[node]!;
    const common = {
      rule: "neutral-volts",
      where,
      help: say("hazard.neutralVolts.help"),
      citation: "common practice, no source",
    };
    const gaps = { where: conductorNames({ system }, [where]), volts: Math.round(volts) };
    if (rods(node))
      return {
        ...common,
        severity: "danger",
        message: say(Number.isFinite(volts) ? "hazard.neutralVolts" : "hazard.neutralVolts.notKnown", gaps),
      };
    return {
      ...common,
      severity: "warning",
      message: say("hazard.neutralVolts.noRods", {
        ...gaps,
        left: Math.round(worstAt(solutionOf(circuitOf(withUsualRods(system))), node)),
        rods: USUAL_RODS_PER_KM,
      }),
    };
  });
}

const isHotNeutral = (view: View, { hazardVolts }: Settings, node: number): boolean =>
  view.state(node) === "neutral" && worstAt(view.solutions[0], node) >= hazardVolts;

/** Rods along a multi-grounded neutral: four a mile. Source: NESC 96C, from memory. */
const USUAL_RODS_PER_KM = 2.5;

/** Whether a rod is drawn anywhere along what is joined to a neutral. */
function alongNeutrals(circuit: Circuit): (node: number) => boolean {
  const islands = metallicIslands(circuit, standingOf(circuit));
  const rodded = new Set(rodNodesOf(circuit).map((node) => islands[node]!));
  return (node) => rodded.has(islands[node]!);
}

/** The drawing with the usual rods along every span that has a neutral and none of its own. */
const withUsualRods = perObject((system: System): System => ({
  ...system,
  elements: Object.fromEntries(
    Object.entries(system.elements).map(([id, saved]) => [
      id,
      saved.kind === "span" && !saved["rodsPerKm"] ? { ...saved, rodsPerKm: USUAL_RODS_PER_KM } : saved,
    ]),
  ) as System["elements"],
}));

/** The verdict of the worst conductor. It never says safe: `grounded` is grounded and tested as drawn. */
function verdictOf(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  { threats, completeTo }: FoundThreats,
  tested: ReadonlySet<ConductorId>,
): Verdict {
  const circuit = circuitOf(system);
  const view = viewOf(circuit, settings, { groundsLifted: false });
  const ids = conductorsOf(workPoint).map((letter) => conductorId(workPoint.at, letter));
  const states = ids.map((id) => view.stateIfFed(circuit.nodeOf.get(id)!));
  if (states.some((it) => it === "energized" || it === "backfed" || it === "induced" || it === "faulted"))
    return "live";
  const overAt = (most: number) =>
    threats.some((it) => it.strength <= most && it.exposureVolts >= settings.exposureLimitVolts);
  if (overAt(1) || conductorsNotFed(system, workPoint).length > 0) return "could-go-live";
  const neutral = circuit.nodeOf.get(conductorId(workPoint.at, "N"));
  const neutralIsHot = neutral !== undefined && isHotNeutral(view, settings, neutral);
  const isGrounded =
    ids.every(
      (id, nth) => partsOfConductor(id).letter === "N" || (states[nth] === "grounded" && tested.has(id)),
    ) &&
    completeTo >= 2 &&
    !overAt(2) &&
    !neutralIsHot &&
    (!hasNeutral(workPoint) || neutralDoubt(system, settings, workPoint, tested) === undefined);
  return isGrounded ? "grounded" : "isolated";
}

const hasNeutral = ({ conductors }: WorkPoint): boolean => conductors.includes("N");

/** The body in circuit by which an induced conductor is judged [Ω]. Source: 29 CFR 1910.269(q)(2)(iv) note. */
const INDUCED_OHMS = 500;

function workPointFindings(
  system: System,
  settings: Settings,
  id: WorkPointId,
  workPoint: WorkPoint,
): Finding[] {
  const circuit = circuitOf(system);
  const lifted = viewOf(circuit, settings, { groundsLifted: true });
  const induced = bodyAmpsOf(system, settings, workPoint, { ohms: INDUCED_OHMS, loads: "as-drawn" });
  const findings: Finding[] = [];
  conductorsOf(workPoint).forEach((letter, index) => {
    const node = circuit.nodeOf.get(conductorId(workPoint.at, letter))!;
    const volts = INDUCED_OHMS * induced[index]!;
    if (lifted.stateIfFed(node) === "induced" && volts > settings.inducedLimitVolts)
      findings.push({
        rule: "induced-exposure",
        severity: "danger",
        where: id,
        message: say(Number.isFinite(volts) ? "hazard.inducedExposure" : "hazard.inducedExposure.notKnown", {
          letter,
          milliamps: roundVolts(1000 * induced[index]!),
          volts: roundVolts(volts),
          limit: settings.inducedLimitVolts,
        }),
        help: say("hazard.inducedExposure.help"),
        citation: "29 CFR 1910.269(q)(2)(iv) note",
      });
  });
  const sets = Object.values(system.elements)
    .map(complete)
    .filter((it) => it.kind === "ground" && it.at === workPoint.at);
  if (sets.length === 0 || sets.some((it) => it.kind === "ground" && !it.poleBond))
    findings.push({
      rule: "equipotential",
      severity: "warning",
      where: id,
      message: say(sets.length === 0 ? "hazard.noGroundHere" : "hazard.poleNotBonded", {
        at: pointName({ system }, workPoint.at),
      }),
      help: say("hazard.equipotential.help"),
      citation: "29 CFR 1910.269(n)(3)",
    });
  return findings;
}

/** Letters of a work point's conductors that no source on the drawing could ever reach. */
function conductorsNotFed(system: System, workPoint: WorkPoint): Letter[] {
  const circuit = circuitOf(system);
  const unfed = feedNotDrawn(circuit);
  return conductorsOf(workPoint).filter(
    (letter) => unfed[circuit.nodeOf.get(conductorId(workPoint.at, letter))!] === 1,
  );
}

/** A line that no source could ever reach was not made dead: its feed was left out, or an edit cut it off. */
const feedMissing = (id: WorkPointId, letters: readonly Letter[]): Finding[] =>
  letters.length === 0
    ? []
    : [
        {
          rule: "feed-not-drawn",
          severity: "danger",
          where: id,
          message: say("hazard.feedNotDrawn", { letters: letters.join(" ") }),
          help: say("hazard.feedNotDrawn.help"),
          citation: "common practice, no source",
        },
      ];

/** Where a drawing has more sets of upsets than can be asked: said, and the verdict and the margin take it for the worst. */
function threatsNotAll(id: WorkPointId, { completeTo }: FoundThreats): Finding[] {
  return completeTo >= MOST_STRENGTH
    ? []
    : [notAll(id, say(`hazard.threatsNotAll.${completeTo}` as MessageKey))];
}

const notAll = (where: WorkPointId, message: Message): Finding => ({
  rule: "threats-not-all",
  severity: "warning",
  where,
  message,
  help: say("hazard.threatsNotAll.help"),
  citation: "common practice, no source",
});

function stepTouch(
  system: System,
  settings: Settings,
  id: WorkPointId,
  workPoint: WorkPoint,
  isBarricaded: boolean,
): Finding[] {
  const least = leastStepTouch(system, settings, workPoint);
  if (least === "none") return [];
  if (least === "not-known") return [notAll(id, say("hazard.stepTouchNotAll"))];
  return [
    {
      rule: "step-touch",
      severity: isBarricaded ? "note" : "warning",
      where: id,
      message: say(stepTouchKey(isBarricaded, least.volts), {
        volts: roundVolts(least.volts),
        when: whenWords(system, least.upsets),
      }),
      help: say("hazard.stepTouch.help", { at: pointName({ system }, workPoint.at) }),
      citation: "29 CFR 1910.269 Appendix C",
    },
  ];
}

const stepTouchKey = (isBarricaded: boolean, volts: number): MessageKey =>
  !Number.isFinite(volts)
    ? "hazard.stepTouch.notKnown"
    : isBarricaded
      ? "hazard.stepTouch.barricaded"
      : "hazard.stepTouch";

const roundVolts = (volts: number): number => Number(volts.toPrecision(3));

/**
 * How many points and elements the verdict rests on that nobody has seen, and ground sets whose cable nobody noted: everything joined to the work point, through
 * whatever closes or couples, up to and with the open devices around it.
 */
function countAssumptions(system: System, workPoint: WorkPoint): number {
  const circuit = circuitOf(system);
  const graph = reachGraphOf(circuit);
  const standing = standingOf(circuit);
  const { tied } = reachOf(circuit, standing, { groundsLifted: false });
  // Work that takes down all that hung at a point leaves it without conductors.
  const start = conductorsOf(workPoint).flatMap(
    (letter) => circuit.nodeOf.get(conductorId(workPoint.at, letter)) ?? [],
  );
  const { nodes } = floodFrom(
    graph,
    start,
    (edge, other) =>
      (standing.edgeOn[edge] === 1 || graph.kind[edge] !== EDGE.metallic) &&
      other !== EARTH &&
      tied[other] === 0,
  );
  const elements = new Set(
    nodes.flatMap((node) => edgesAround(graph, node).map((edge) => graph.element[edge]!)),
  );
  const points = new Set(
    nodes.flatMap((node) => (circuit.pointOfNode[node] === -1 ? [] : [circuit.pointOfNode[node]!])),
  );
  const unseenPoints = [...points].filter((index) => evidenceOf(system, circuit.pointIds[index]!) !== "seen");
  const unseenElements = [...elements].filter(
    (index) => evidenceOf(system, circuit.elementIds[index]!) !== "seen",
  );
  const guessedCables = [...elements].filter((index) => {
    const it = complete(system.elements[circuit.elementIds[index]!]!);
    return it.kind === "ground" && it.cable === undefined;
  });
  return unseenPoints.length + unseenElements.length + guessedCables.length;
}
