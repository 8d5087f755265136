import { type Letter, type Message } from "../terms";
import {
  BY_HANDLE,
  type Breaks,
  type BreakSettings,
  type Device,
  type DeviceDoubt,
  type DeviceNumber,
  type DeviceRole,
  type DeviceUpset,
  type DoubtPlace,
  type ElementChange,
  type Handling,
  type HandlingVerb,
  type UpsetSettings,
} from "./define";
import type { FieldProblem } from "./fields";
import { lettersAtBothEnds } from "./shared";
import { type CircuitElement, type DeviceKind, deviceOf, type DEVICES } from "./kinds";
import type { End, Part, DevicePlace } from "./parts";
import type { Mark } from "./symbol";

/** What a thing itself answers, one function a question: everybody else asks here, and nobody asks for its kind. */

/** A thing, complete or as saved. */
interface Kinded {
  readonly kind: DeviceKind;
}

/** Kinds that say of themselves that they are this. */
type KindThatIs<Role extends DeviceRole> = {
  [Kind in DeviceKind]: Role extends (typeof DEVICES)[Kind]["role"] ? Kind : never;
}[DeviceKind];

/** Asks things for what they are; the answer of what is not there is no. */
const is =
  <Role extends DeviceRole>(role: Role) =>
  <E extends Kinded | undefined>(element: E): element is E & { readonly kind: KindThatIs<Role> } =>
    element !== undefined && (deviceOf(element.kind) as Device | undefined)?.role === role;

/** A length of line or cable: it runs from structure to structure, where all else stands on one. */
export const isLine = is("line");
/** A line in the ground, whose metal nobody can touch along its way. */
export const isCable = (element: CircuitElement): boolean =>
  isLine(element) && element.construction === "cable";
/** The metal ends here, and other volts begin. */
export const isTransformer = is("transformer");
/** A transformer of whatever kind, complete. */
export type AnyTransformer = Extract<CircuitElement, { kind: KindThatIs<"transformer"> }>;
/** The utility's own supply. */
export const isSupply = is("supply");
/** A customer's or a crew's generator. */
export const isMachine = is("machine");
/** What customers draw. */
export const isLoad = is("load");
/** Grounds that a crew put on. */
export const isGroundSet = is("ground-set");
/** Another circuit that runs beside a line, and has no ends of its own. */
export const isBeside = is("beside");
/** What is no equipment, and is gone once it is mended. */
export const isFault = is("fault");

/** What customers have: it stands at the end, and nothing comes behind it. */
export const isCustomers = (element: Kinded): boolean => isLoad(element) || isMachine(element);

const says =
  (what: "shakes" | "atCustomer" | "ownersKey" | "deadFront" | "standsAbreast" | "standsInLine") =>
  ({ kind }: Kinded): boolean =>
    deviceOf(kind)[what] === true;

/** How long the line is that a thing is [m]; nothing for what is no line. */
export const lengthOf = (element: CircuitElement): number => (isLine(element) ? element.lengthM : 0);

/** How a thing that opens stands and moves. */
export interface BoundOpening {
  /** phases that are open in any way: opened, blown, barrel out, lifted */
  readonly openPhases: string;
  /** all phases together */
  readonly gang: boolean;
  /** can close by itself or from afar, unless blocked */
  readonly automatic: boolean;
  readonly visibleGap: boolean;
  /** cannot close by itself or by hand, on this phase */
  blocked(phase: string): boolean;
  /** what closes these phases */
  closing(phases: string): ElementChange;
}

/** How a thing opens; nothing for what does not open at its own contacts. */
export function openingOf(element: CircuitElement): BoundOpening | undefined {
  const [{ opening }, own] = ask(element);
  if (opening === undefined) return undefined;
  return {
    openPhases: opening.openPhases(own),
    gang: opening.gang(own),
    automatic: opening.automatic(own),
    visibleGap: opening.visibleGap(own),
    blocked: (phase) => opening.blocked(own, phase),
    closing: (phases) => opening.closing(own, phases),
  };
}

/** Phases of a thing that are open in any way; of a line or a lead those that are parted or cut. */
export function openPhasesOf(element: CircuitElement): string {
  const opening = openingOf(element);
  if (opening !== undefined) return opening.openPhases;
  const key = openKeyOf(element.kind);
  return key === undefined ? "" : (element as unknown as Record<typeof key, string>)[key];
}

/** How the crew takes a thing out and puts it back; nothing for what no crew operates. */
export function handlingOf({ kind }: Kinded): Handling<never> | undefined {
  const { handling, opening } = deviceOf(kind);
  return handling ?? (opening === undefined ? undefined : BY_HANDLE);
}

/** Whether a thing goes from one position to another as a whole, as a transfer switch does. */
export const hasPositions = (element: Kinded): boolean => handlingOf(element)?.moves === "position";

/** Whether a thing is lifted off the conductor and clamped onto it again, as by a stick. */
export const isLiftedOff = (element: Kinded): boolean => handlingOf(element)?.off === "lift";

/** The verbs that take a thing apart phase by phase and join it again; nothing for what does not move so. */
export function partingVerbs(element: Kinded): readonly [HandlingVerb, HandlingVerb] | undefined {
  if (isConductor(element)) return ["cut", "join"];
  const handling = handlingOf(element);
  return handling?.moves === "phases" ? [handling.off, handling.on] : undefined;
}

/** Whether a thing comes away in the hand when it is taken off. */
export const comesAway = (element: Kinded): boolean => handlingOf(element)?.comesAway === true;

/** Whether operating a thing shakes the pole. */
export const shakesThePole = says("shakes");

/** Whether a crew takes `load` off the line by a thing, or `nothing` off anything else. */
export const droppedBy = ({ kind }: Kinded): "load" | "nothing" | undefined => deviceOf(kind).drops;

/** Whether a thing hangs at one point, so that nothing goes on through it. */
export const hangs = ({ kind }: Kinded): boolean => deviceOf(kind).ends.length === 1;

/** Whether a thing stands at the customer's, not on the line. */
export const isAtCustomer = says("atCustomer");

/** Whether a thing's owner has the key to it. */
export const isOwners = says("ownersKey");

/** Whether a thing can be taken out as it stands. */
export function canGoOff(element: CircuitElement): boolean {
  const handling = handlingOf(element);
  const [, own] = ask(element);
  return handling !== undefined && (handling.canGoOff?.(own) ?? true);
}

/** What a thing may break with this tool in hand; nothing where its kind has no limit of its own. */
export const breaksOf = (
  element: CircuitElement,
  tool: string,
  settings: BreakSettings,
): Breaks | undefined => {
  const [device, own] = ask(element);
  return device.breaks?.(own, tool, settings);
};

/** What a thing may carry all day [A]; infinite where the drawing has no figure. */
export const carriesAmps = (element: CircuitElement, settings: BreakSettings): number => {
  const [device, own] = ask(element);
  return device.carries?.(own, settings) ?? Infinity;
};

/** What can change of a thing without the crew doing it. */
export const deviceUpsetsOf = (element: CircuitElement, settings: UpsetSettings): readonly DeviceUpset[] => {
  const [device, own] = ask(element);
  return element.planned ? [] : (device.upsets?.(own, settings) ?? []);
};

/** What of a thing could be otherwise than drawn. What is still to be put in leaves nothing open. */
export const deviceDoubtsOf = (element: CircuitElement, place: DoubtPlace): readonly DeviceDoubt[] => {
  const [device, own] = ask(element);
  return element.planned ? [] : (device.doubts?.(own, place) ?? []);
};

/** The numbers of a thing that may be off. */
export const deviceNumbersOf = (element: CircuitElement): readonly DeviceNumber[] => {
  const [device, own] = ask(element);
  return element.planned ? [] : (device.numbers?.(own) ?? []);
};

/** The electrical parts of a thing in its place. What is still to be put in is on the drawing, and not on the pole. */
export const partsOf = (element: CircuitElement, place: DevicePlace): readonly Part[] => {
  const [device, own] = ask(element);
  return element.planned ? [] : device.parts(own, place);
};

/** Conductors that a thing brings to its points. */
export const broughtBy = (element: CircuitElement): readonly (readonly [End, Letter])[] => {
  const [device, own] = ask(element);
  return device.brings(own);
};

/** Conductors that a thing must find there. */
export const neededBy = (
  element: CircuitElement,
): readonly { readonly end: End; readonly letter: Letter; readonly key: string }[] => {
  const [device, own] = ask(element);
  return device.needs?.(own) ?? [];
};

/** What is wrong between fields of a thing. */
export const problemsOf = (element: CircuitElement): readonly FieldProblem[] => {
  const [device, own] = ask(element);
  return device.check?.(own) ?? [];
};

/** A thing as it is told from its third end, which is its first one then; one that has none is what it was. */
export const fromThirdEnd = <It extends CircuitElement>(element: It): It =>
  (deviceOf(element.kind).fromThirdEnd?.(element) ?? element) as It;

/** What is drawn for an element as it stands, in units of the drawing; nothing for what is drawn as a line alone. */
export const symbolOf = (element: CircuitElement): readonly Mark[] => {
  const [device, own] = ask(element);
  return device.symbol(own);
};

/** Letters of a thing's phases at one of its ends. */
export const lettersAtEnd = (element: CircuitElement, end: End): readonly Letter[] => {
  const [device, own] = ask(element);
  return device.lettersAtEnd?.(own, end) ?? lettersAtBothEnds(own, end);
};

/** A side of a transformer beyond its primary. */
export interface LowSide {
  readonly at: string;
  /** without the neutral */
  readonly letters: readonly Letter[];
  /** its windings have their home in the neutral of its point */
  readonly hasNeutral: boolean;
}

/** The sides of a transformer beyond its primary: one, or two where it has a third winding. */
export const lowSidesOf = (it: AnyTransformer): readonly LowSide[] =>
  deviceOf(it.kind)
    .ends.slice(1)
    .map((end) => ({
      at: (it as unknown as Readonly<Record<End, string>>)[end],
      letters: lettersAtEnd(it, end),
      hasNeutral: broughtBy(it).some(([at, letter]) => at === end && letter === "N"),
    }));

/** What a phase of a thing is called at one of its ends. */
export const letterAt = (element: CircuitElement, end: End, letter: Letter): Letter =>
  lettersAtEnd(element, end)[phasesOf(element).indexOf(letter)] ?? letter;

const phasesOf = (element: CircuitElement): string => (element as { phases?: string }).phases ?? "";

/** Whether a thing is conductors and nothing else: a line, or a lead. */
export const isConductor = <E extends Kinded>(
  element: E,
): element is E & { readonly kind: Extract<CircuitElement, { cut: string } | { parted: string }>["kind"] } =>
  deviceOf(element.kind).apartKey !== undefined;

/** Conductors of a line or a lead that came apart, its neutral among them; nothing of any other thing. */
export function apartOf(element: CircuitElement): string {
  const { apartKey } = deviceOf(element.kind);
  return apartKey === undefined ? "" : (element as unknown as Record<typeof apartKey, string>)[apartKey];
}

/** The key that says which conductors of a thing are open: of a line or a lead those that came apart. */
export const openKeyOf = (kind: DeviceKind): "open" | "parted" | "cut" | undefined => {
  const { apartKey, fields } = deviceOf(kind);
  return apartKey ?? ("open" in fields ? "open" : undefined);
};

/** Phases that a thing holds together at its point, or to earth: a ground set, a fault, what failed. */
export const shortedBy = (element: CircuitElement): string => {
  const [device, own] = ask(element);
  return device.shorts?.(own) ?? "";
};

/** Whether a thing can hold phases together at its point: it brings no neutral there, and feeds nothing. */
export const canShort = ({ kind }: Kinded): boolean => deviceOf(kind).shorts !== undefined;

/** How many customers hang on a thing itself. */
export const customersOf = (element: CircuitElement): number => {
  const [device, own] = ask(element);
  return device.customers?.(own) ?? 0;
};

/** Whether a thing could put volts on what it hangs at; `assumed` takes it that customers have machines of their own. */
export const couldFeed = (element: CircuitElement, assumed: boolean): boolean => {
  const [device, own] = ask(element);
  return device.couldFeed?.(own, assumed) ?? false;
};

/** Whether a customer could put volts on the line by a thing: the utility's own supplies are drawn as such. */
export const customerCouldFeed = (element: CircuitElement): boolean =>
  couldFeed(element, true) && !isSupply(element);

/** Whether it leaves nothing bare where it joins, once it is closed. */
export const isDeadFront = says("deadFront");

/** Whether each phase of a thing has a symbol of its own, one beside the other. */
export const standsAbreast = says("standsAbreast");

/** Whether a thing stands in the line itself: the current goes straight through. */
export const standsInLine = says("standsInLine");

/** Where what hangs at one point likes to hang, clockwise from the right [degrees]. */
export const hangsToward = ({ kind }: Kinded): number => deviceOf(kind).hangsToward ?? 90;

/** The position of a thing in words, where it is not as it normally is. */
export const positionOf = (element: CircuitElement): Message | undefined => {
  const [device, own] = ask(element);
  return device.position?.(own);
};

/** The one rating that tells a thing from its neighbours. */
export const ratingOf = (element: CircuitElement): Message | undefined => {
  const [device, own] = ask(element);
  return device.rating?.(own);
};

/**
 * The device of a thing's own kind with its record: which of the kinds it is stands in `kind`, so the two belong together. This is the
 * one place that tells the compiler so.
 */
const ask = (element: CircuitElement): readonly [Device, never] => [deviceOf(element.kind), element as never];
