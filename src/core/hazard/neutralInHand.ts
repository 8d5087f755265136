import { isLine, openPhasesOf } from "../devices";
import { complete, elementsOfKind, isSameStructure, perObject, pointName, type System } from "../document";
import { type Circuit, circuitOf, EDGE, endsOf, floodFrom, reachGraphOf, standingOf } from "../network";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  type Finding,
  type PointId,
  say,
  type WorkPointId,
} from "../terms";
import { leastStepTouch, type StepTouch, worstStepTouch } from "./threats";
import { whenWords } from "./upsetWords";
import { metallicIslands } from "./view";
import type { Question } from "./types";

/** What keeps a neutral that is worked on from counting as grounded; nothing where it counts. */
export type NeutralDoubt =
  | { readonly why: "not-tied" }
  | { readonly why: "not-tested" }
  | { readonly why: "not-known" }
  | { readonly why: "lifted"; readonly lift: Exclude<StepTouch, string> };

/**
 * Why a neutral in hand is no grounded conductor. It is one where a rod or a ground set on its own structure ties it to
 * earth without what is worked on, where it was tested, or a break of it is bridged, and where no set of upsets of
 * strength 0 to 2 lifts it to the exposure limit above earth: against itself it never stands at anything.
 */
export function neutralDoubt(question: Question, tested: ReadonlySet<ConductorId>): NeutralDoubt | undefined {
  const { system } = question;
  const { at, does } = question.workPoint;
  const circuit = circuitOf(system);
  if (!isTiedHere(circuit, system, at, does ?? [])) return { why: "not-tied" };
  if (!tested.has(conductorId(at, "N")) && !isBridged(circuit, system, at)) return { why: "not-tested" };
  const lift = liftOf(question);
  if (lift === "none") return undefined;
  return lift === "not-known" ? { why: "not-known" } : { why: "lifted", lift };
}

/** What lifts the neutral of a work point to the exposure limit. Its verdict and its findings ask the same question. */
const liftOf = perObject(({ system, settings, workPoint: { at } }: Question) =>
  leastStepTouch({ system, settings, workPoint: { at, conductors: "N" } }),
);

/** Whether a rod or a set with one hangs on the neutral at its own structure, spans and what is worked on left out. */
function isTiedHere(circuit: Circuit, system: System, at: string, does: readonly string[]): boolean {
  const here = joinedOnStructure(circuit, system, at, does);
  return (
    [...here].some((point) => system.points[point as keyof System["points"]]?.["earthOhms"] !== undefined) ||
    elementsOfKind(system, "ground").some(
      ([id, { to, at: point }]) => to === "both" && !does.includes(id) && here.has(point),
    )
  );
}

/** Points of the structure whose neutrals are one with that of a point, by way of what stands on the structure. */
function joinedOnStructure(
  circuit: Circuit,
  system: System,
  at: string,
  does: readonly string[],
): Set<string> {
  const graph = reachGraphOf(circuit);
  const { edgeOn } = standingOf(circuit);
  const start = circuit.nodeOf.get(conductorId(at, "N"));
  const pointOf = (node: number) => circuit.pointIds[circuit.pointOfNode[node] ?? -1];
  const { nodes } = floodFrom(graph, start === undefined ? [] : [start], (edge, other) => {
    const id = circuit.elementIds[graph.element[edge]!]!;
    if (graph.kind[edge] !== EDGE.metallic || edgeOn[edge] === 0 || does.includes(id)) return false;
    const point = pointOf(other);
    return !isLine(system.elements[id]) && point !== undefined && isSameStructure(system, point, at);
  });
  return new Set(nodes.map((node) => pointOf(node)!));
}

/** Whether a neutral that is open at a point has a way around the break. */
function isBridged(circuit: Circuit, system: System, at: PointId): boolean {
  const islands = metallicIslands(circuit, standingOf(circuit));
  return (Object.keys(system.elements) as ElementId[]).some((id) => {
    const it = complete(system.elements[id]!);
    if (!openPhasesOf(it).includes("N")) return false;
    const ends = endsOf(it).map(([, point]) => point);
    const nodes = ends.map((point) => circuit.nodeOf.get(conductorId(point, "N")));
    const labels = nodes.map((node) => (node === undefined ? -1 : islands[node]!));
    return ends.includes(at) && labels[0] !== -1 && labels.every((label) => label === labels[0]);
  });
}

/** The worst of it over the drawings that may stand: what lifts a neutral may do so only once a fault is gone. */
export function worstNeutralDoubt(
  asked: readonly Question[],
  tested: ReadonlySet<ConductorId>,
): NeutralDoubt | undefined {
  const doubts = asked.flatMap((it) => neutralDoubt(it, tested) ?? []);
  const worst = worstStepTouch(doubts.flatMap((it) => (it.why === "lifted" ? [it.lift] : [])));
  const told = doubts.find(({ why }) => why === "not-tied") ?? doubts[0];
  return typeof worst === "string" ? told : { why: "lifted", lift: worst };
}

/** What the verdict of a work point does not say of a neutral in hand. */
export function neutralInHand(
  asked: readonly Question[],
  id: WorkPointId,
  tested: ReadonlySet<ConductorId>,
): Finding[] {
  const { system, workPoint } = asked[0]!;
  const doubt = worstNeutralDoubt(asked, tested);
  if (doubt === undefined || (doubt.why !== "lifted" && doubt.why !== "not-tied")) return [];
  const at = pointName({ system }, workPoint.at);
  return [
    {
      rule: "neutral-in-hand",
      severity: "warning",
      where: id,
      message:
        doubt.why === "not-tied"
          ? say("hazard.neutralInHand.notTied", { at })
          : say("hazard.neutralInHand.lifted", {
              at,
              volts: Math.round(doubt.lift.volts),
              when: whenWords(system, doubt.lift.upsets),
            }),
      help: say("hazard.neutralInHand.help"),
      citation: "common practice, no source",
    },
  ];
}
