import { type CircuitElement, type DeviceKind, deviceOf, LOAD_BREAK_TOOL, openPhasesOf } from "../../devices";
import {
  complete,
  jobOf,
  perObject,
  type Step,
  type StepVerb,
  type StillhotDocument,
  type System,
} from "../../document";
import { circuitOf, EARTH, endsOf, reachGraphOf } from "../../network";
import type { ElementId, PointId } from "../../terms";

/** One thing that the crew can open, or stop: a single pole, or all poles of a gang. */
export interface Opening {
  readonly element: ElementId;
  /** phases that it opens; none where a generator is stopped */
  readonly phases: string;
  readonly key: string;
  readonly kind: DeviceKind;
  readonly at: PointId;
  /** how many times a stick or a handle goes up to open it */
  readonly poles: number;
  /** edges of the graph of conductors that it opens */
  readonly edges: readonly number[];
  /** a gap that one can see, so that isolation may rest on it */
  readonly visibleGap: boolean;
  /** can close by itself or from afar unless it is blocked */
  readonly automatic: boolean;
}

/** How each kind of thing is taken out of the circuit and put back. */
interface Handling {
  readonly off: StepVerb;
  readonly on: StepVerb;
  /** tools of which one must be in hand; none where a hand or a handle does it */
  readonly tools: readonly string[];
  /** what it costs beyond one operation, so that the usual way is taken first */
  readonly trouble: number;
}

const STICKS = ["extending-stick", "switch-stick", "hot-stick", "clamp-stick"] as const;

const HANDLING: Partial<Record<DeviceKind, Handling>> = {
  cutout: { off: "open", on: "close", tools: [LOAD_BREAK_TOOL, ...STICKS], trouble: 0 },
  disconnect: { off: "open", on: "close", tools: [], trouble: 0 },
  recloser: { off: "open", on: "close", tools: [], trouble: 0 },
  breaker: { off: "open", on: "close", tools: [], trouble: 0 },
  elbow: { off: "open", on: "close", tools: ["clamp-stick", "hot-stick"], trouble: 0 },
  clamp: { off: "lift", on: "attach", tools: ["clamp-stick", "hot-stick"], trouble: 1 },
  main: { off: "open", on: "close", tools: [], trouble: 1 },
  meter: { off: "pull", on: "replace", tools: [], trouble: 1 },
  capacitor: { off: "open", on: "close", tools: [], trouble: 0 },
  regulator: { off: "open", on: "close", tools: [], trouble: 3 },
  transfer: { off: "set-position", on: "set-position", tools: [], trouble: 3 },
  generator: { off: "stop", on: "start", tools: [], trouble: 4 },
  lead: { off: "cut", on: "join", tools: ["lead-cutters"], trouble: 6 },
};

export const handlingOf = (kind: DeviceKind): Handling => HANDLING[kind]!;

/** Whether a crew has a tool: a job that lists none has what a truck carries. */
const hasTool = (tools: readonly string[], tool: string): boolean =>
  tools.length === 0 || tools.includes(tool);

/** The tool for a thing, given whether it breaks load; nothing where a hand or a handle does it. */
export function toolFor(
  element: CircuitElement,
  tools: readonly string[],
  breaksLoad: boolean,
): string | undefined {
  const { tools: fit } = handlingOf(element.kind);
  const isHooked = element.kind === "cutout" && element.loadBreak === "hooks";
  const wanted =
    element.kind === "cutout"
      ? fit.filter((it) => (it === LOAD_BREAK_TOOL ? isHooked && breaksLoad : true))
      : fit;
  // With nothing better at hand, the load-break tool opens a dead cutout too.
  return wanted.find((it) => hasTool(tools, it)) ?? fit.find((it) => hasTool(tools, it));
}

/** All that the crew of a document can open as it was found, and which of it opens an edge of the graph of conductors. */
export interface Openings {
  readonly all: readonly Opening[];
  /** by edge */
  readonly byEdge: ReadonlyMap<number, Opening>;
  /** generators that run, by element */
  readonly byGenerator: ReadonlyMap<ElementId, Opening>;
}

/** Openings of a document. What carries somebody's tag and is closed is nobody's to operate. */
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
      byGenerator: new Map(all.filter(({ kind }) => kind === "generator").map((it) => [it.element, it])),
    };
  },
);

function openingsOfElement(system: System, id: ElementId, tools: readonly string[]): Opening[] {
  const element = complete(system.elements[id]!);
  const handling = HANDLING[element.kind];
  if (handling === undefined || (element as { tagged?: boolean }).tagged === true) return [];
  if (handling.tools.length > 0 && !handling.tools.some((it) => hasTool(tools, it))) return [];
  if (element.kind === "generator" && !element.on) return [];
  if (element.kind === "regulator" && element.bypassed) return [];
  if (element.kind === "transfer" && (element.position === "off" || element.bridged || element.blocked))
    return [];
  const open = openPhasesOf(element);
  const closed = [...(element as { phases: string }).phases].filter((it) => !open.includes(it));
  const opening = deviceOf(element.kind).opening;
  const isGang =
    element.kind === "transfer" || element.kind === "generator" || opening?.gang(element as never) === true;
  const groups = isGang || feedsBank(system, element) ? [closed.join("")] : closed;
  const [[, at] = ["at", ""]] = endsOf(element);
  return groups
    .filter((phases) => phases !== "")
    .map((phases) => ({
      element: id,
      phases: element.kind === "generator" ? "" : phases,
      key: `${id}/${element.kind === "generator" ? "" : phases}`,
      kind: element.kind,
      at: at as PointId,
      poles: isGang ? 1 : phases.length,
      edges: element.kind === "generator" ? [] : edgesOf(system, id, phases),
      visibleGap: opening?.visibleGap(element as never) ?? true,
      automatic: opening?.automatic(element as never) ?? false,
    }));
}

/**
 * Whether a bank that ties its phases hangs right behind a thing: one pole of it open leaves that phase alive through the
 * others, and a motor behind it on two phases. All of its poles are opened.
 */
function feedsBank(system: System, element: CircuitElement): boolean {
  const { to, phases } = element as { to?: string; phases: string };
  if (to === undefined || phases.length < 2) return false;
  return (Object.keys(system.elements) as ElementId[]).some((id) => {
    const bank = complete(system.elements[id]!);
    return bank.kind === "transformer" && bank.phases.length > 1 && (bank.from === to || bank.to === to);
  });
}

/** Edges of the joins of an element's phases. */
function edgesOf(system: System, id: ElementId, phases: string): number[] {
  const circuit = circuitOf(system);
  const { edgeOfJoin } = reachGraphOf(circuit);
  const { joins } = circuit;
  const index = circuit.elementIds.indexOf(id);
  const edges: number[] = [];
  for (let k = 0; k < joins.count; k++) {
    if (joins.element[k] !== index || joins.closed[k] === 0 || joins.from[k] === EARTH) continue;
    const letter = circuit.parts[index]!.filter(({ part }) => part === "join")[
      k - joins.element.indexOf(index)
    ];
    if (letter?.part === "join" && phases.includes(letter.letter) && edgeOfJoin[k] !== -1)
      edges.push(edgeOfJoin[k]!);
  }
  return edges;
}

/** The step that opens something, and the one that puts it back as it was found. */
export function stepOff(
  system: System,
  { element, kind }: Opening,
  phases: string,
  tool: string | undefined,
): Step {
  const { off } = handlingOf(kind);
  return {
    do: off,
    element,
    ...(kind === "transfer" ? { position: "off" as const } : {}),
    ...(kind === "transfer" || kind === "generator" || isWhole(system, element, phases) ? {} : { phases }),
    ...(tool === undefined ? {} : { with: tool }),
  };
}

export function stepOn(
  system: System,
  { element, kind }: Opening,
  phases: string,
  tool: string | undefined,
): Step {
  const { on } = handlingOf(kind);
  const found = complete(system.elements[element]!);
  return {
    do: on,
    element,
    ...(found.kind === "transfer" ? { position: found.position } : {}),
    ...(kind === "transfer" || kind === "generator" || isWhole(system, element, phases) ? {} : { phases }),
    ...(tool === undefined ? {} : { with: tool }),
  };
}

/** Whether these are all phases of a gang: a step that names none means all. */
function isWhole(system: System, id: ElementId, phases: string): boolean {
  const element = complete(system.elements[id]!);
  const gang = deviceOf(element.kind).opening?.gang(element as never) === true;
  return gang && phases === (element as { phases: string }).phases;
}
