import {
  canGoOff,
  type CircuitElement,
  type DeviceKind,
  handlingOf,
  hangs,
  openingOf,
  openPhasesOf,
} from "../../devices";
import {
  complete,
  jobOf,
  perObject,
  type Step,
  type StillhotDocument,
  type System,
  transformersOf,
} from "../../document";
import { hasTool } from "../../steps";
import { type Circuit, circuitOf, EARTH, endsOf, reachGraphOf } from "../../network";
import type { ElementId, Message, PointId } from "../../terms";
import { nameOf, namesOf } from "../job/names";

/** One thing that the crew can open, or stop: a single pole, or all poles of a gang. */
export interface Opening {
  readonly element: ElementId;
  /** phases that it opens; none where a generator is stopped */
  readonly phases: string;
  readonly key: string;
  readonly kind: DeviceKind;
  /** what moves: phases of it, one position for all, or a machine that runs */
  readonly moves: "phases" | "position" | "machine";
  readonly at: PointId;
  /** how many times a stick or a handle goes up to open it */
  readonly poles: number;
  /** what it costs beyond one operation, so that the usual way is taken first */
  readonly trouble: number;
  /** edges of the graph of conductors that it opens */
  readonly edges: readonly number[];
  /** the same by phase, in the order of `phases` */
  readonly edgesByPhase: readonly (readonly number[])[];
  /** a gap that one can see, so that isolation may rest on it */
  readonly visibleGap: boolean;
  /** can close by itself or from afar unless it is blocked */
  readonly automatic: boolean;
}

/** All that the crew of a document can open as it was found, and which of it opens an edge of the graph of conductors. */
export interface Openings {
  readonly all: readonly Opening[];
  /** by edge */
  readonly byEdge: ReadonlyMap<number, Opening>;
  /** generators that run, by element */
  readonly byGenerator: ReadonlyMap<ElementId, Opening>;
}

/** Openings of a document. What carries somebody's tag and is closed is nobody's to operate, and what is seized does not move. */
export const openingsOf: (document: StillhotDocument) => Openings = perObject(
  (document: StillhotDocument) => {
    const { system } = document;
    const { tools } = jobOf(document);
    const all = (Object.keys(system.elements) as ElementId[]).flatMap((id) =>
      openingsOfElement(system, id, tools),
    );
    return {
      all,
      byEdge: new Map(all.flatMap((it) => it.edges.map((edge) => [edge, it] as const))),
      byGenerator: new Map(all.filter(({ moves }) => moves === "machine").map((it) => [it.element, it])),
    };
  },
);

/** The same of a drawing as it stands at some moment of the job: its numbers of edges are that drawing's own. */
export const openingsIn = (document: StillhotDocument, system: System): Openings =>
  openingsOf(documentOn(document, system));

const documentsOn = perObject((_document: StillhotDocument) => new WeakMap<System, StillhotDocument>());

/** The job of a document on a drawing as it stands at some moment; the same object for the same drawing. */
export function documentOn(document: StillhotDocument, system: System): StillhotDocument {
  if (system === document.system) return document;
  const known = documentsOn(document);
  let found = known.get(system);
  if (found === undefined) known.set(system, (found = { ...document, system }));
  return found;
}

function openingsOfElement(system: System, id: ElementId, tools: readonly string[]): Opening[] {
  const element = complete(system.elements[id]!);
  const handling = handlingOf(element);
  if (handling === undefined || (element as { tagged?: boolean }).tagged === true) return [];
  if (handling.tools.length > 0 && !handling.tools.some((it) => hasTool(tools, it))) return [];
  if (!canGoOff(element) || system.elements[id]!["condition"] === "seized") return [];
  const { moves } = handling;
  const open = openPhasesOf(element);
  const closed = [...(element as { phases: string }).phases].filter((it) => !open.includes(it));
  const opening = openingOf(element);
  const isGang = moves !== "phases" || opening?.gang === true;
  const groups = isGang || feedsBank(system, element) ? [closed.join("")] : closed;
  const [[, at] = ["at", ""]] = endsOf(element);
  return groups
    .filter((phases) => phases !== "")
    .map((phases) => ({
      element: id,
      phases: moves === "machine" ? "" : phases,
      key: `${id}/${moves === "machine" ? "" : phases}`,
      kind: element.kind,
      moves,
      at: at as PointId,
      poles: isGang ? 1 : phases.length,
      trouble: handling.trouble,
      edges: moves === "machine" ? [] : edgesOf(system, id, phases),
      edgesByPhase: moves === "machine" ? [] : [...phases].map((it) => edgesOf(system, id, it)),
      visibleGap: opening?.visibleGap ?? true,
      automatic: opening?.automatic ?? false,
    }));
}

/** Whether an opening takes off what hangs at one point and has poles, as a capacitor has; a machine is stopped. */
export const takesOffHung = (opening: Opening): boolean => hangs(opening) && opening.moves === "phases";

/** Some phases of an opening; nothing where it has none of them. */
export function partOf(opening: Opening, has: (letter: string) => boolean): Opening | undefined {
  const kept = [...opening.phases].flatMap((letter, index) => (has(letter) ? [{ letter, index }] : []));
  if (kept.length === 0) return undefined;
  if (kept.length === opening.phases.length) return opening;
  const phases = kept.map(({ letter }) => letter).join("");
  const edgesByPhase = kept.map(({ index }) => opening.edgesByPhase[index]!);
  return {
    ...opening,
    phases,
    key: `${opening.element}/${phases}`,
    poles: Math.min(opening.poles, phases.length),
    edges: edgesByPhase.flat(),
    edgesByPhase,
  };
}

/**
 * Whether a bank that ties its phases hangs right behind a thing: one pole of it open leaves that phase alive through the
 * others, and a motor behind it on two phases. All of its poles are opened.
 */
function feedsBank(system: System, element: CircuitElement): boolean {
  const { to, phases } = element as { to?: string; phases: string };
  if (to === undefined || phases.length < 2) return false;
  return transformersOf(system).some(
    ([, bank]) => bank.phases.length > 1 && endsOf(bank).some(([, at]) => at === to),
  );
}

/** Edges of the joins of an element's phases. */
function edgesOf(system: System, id: ElementId, phases: string): number[] {
  const circuit = circuitOf(system);
  const { edgeOfJoin } = reachGraphOf(circuit);
  const { joins } = circuit;
  const { index, own } = joinsOf(circuit).get(id) ?? { index: -1, own: [] };
  return own.flatMap((k) => {
    if (joins.closed[k] === 0 || joins.from[k] === EARTH) return [];
    const part = circuit.parts[index]!.filter((it) => it.part === "join")[k - own[0]!];
    return part?.part === "join" && phases.includes(part.letter) && edgeOfJoin[k] !== -1
      ? [edgeOfJoin[k]!]
      : [];
  });
}

/** The joins of each element that has some, in their order. */
const joinsOf = perObject((circuit: Circuit) => {
  const { joins, elementIds } = circuit;
  const found = new Map<ElementId, { readonly index: number; readonly own: number[] }>();
  for (let k = 0; k < joins.count; k++) {
    const index = joins.element[k]!;
    const id = elementIds[index]!;
    const known = found.get(id);
    if (known === undefined) found.set(id, { index, own: [k] });
    else known.own.push(k);
  }
  return found;
});

/** The step that opens something, and the one that puts it back as it was found. */
export function stepOff(system: System, opening: Opening, phases: string, tool: string | undefined): Step {
  const element = complete(system.elements[opening.element]!);
  return {
    do: handlingOf(element)!.off,
    element: opening.element,
    ...(opening.moves === "position" ? { position: "off" as const } : {}),
    ...whatMoves(element, opening, phases),
    ...(tool === undefined ? {} : { with: tool }),
  } as Step;
}

/** The step by which an opening is put back, on these phases, with this tool in hand. */
export function stepOn(system: System, opening: Opening, phases: string, tool: string | undefined): Step {
  const found = complete(system.elements[opening.element]!);
  return {
    do: handlingOf(found)!.on,
    element: opening.element,
    ...("position" in found ? { position: found.position } : {}),
    ...whatMoves(found, opening, phases),
    ...(tool === undefined ? {} : { with: tool }),
  } as Step;
}

/** The phases that a step names: none where all move at once. */
const whatMoves = (element: CircuitElement, { moves }: Opening, phases: string): Pick<Step, "phases"> => {
  const isWhole = openingOf(element)?.gang === true && phases === (element as { phases: string }).phases;
  return moves !== "phases" || isWhole ? {} : { phases };
};

/** Names of the things of some openings, each once. */
export const namesOfOpenings = (document: StillhotDocument, openings: readonly Opening[]): Message =>
  namesOf([...new Set(openings.map(({ element }) => element))].map((id) => nameOf(document, id)));
