import type { JsonObject, Letter, Message } from "../terms";
import type { Complete, FieldProblem, Fields } from "./fields";
import {
  choice,
  flag,
  letters,
  optionalChoice,
  otherLetters,
  phases,
  pointRef,
  structureRef,
  text,
} from "./fields";
import type { End, Part, DevicePlace } from "./parts";
import type { Mark } from "./symbol";

/**
 * How it is known that a thing is there and stands so, the strongest first: seen on the pole, taken from the map, told by
 * somebody, assumed.
 */
export const EVIDENCE = ["seen", "map", "told", "assumed"] as const;

/** One of those words, as `evidence` of a record has it. */
export type Evidence = (typeof EVIDENCE)[number];

/** How a structure or a device was found to be; left out where nobody has said. */
export const CONDITIONS = [
  "sound",
  "loose",
  "burned",
  "cracked",
  "broken",
  "leaning",
  "leaking",
  "rotten",
  "seized",
] as const;

/** What was found of a structure or a device, and what more there is to say of it. */
export const conditionFields = { condition: optionalChoice(CONDITIONS), note: text() };
/** What was found of an element, and whether it is to come or to go. */
export const elementFields = {
  ...conditionFields,
  /** not there until the work that puts it in */
  planned: flag(false),
  /** not there any more after the work that takes it down */
  leave: optionalChoice(["gone"]),
};
/** Keys of every element. */
export const common = {
  label: text(),
  phases: letters("ABC or 12"),
  evidence: choice(EVIDENCE, "map"),
  ...elementFields,
};
/** Keys of an element between two points; `on` is the structure on which it hangs where its ends are on several. */
export const twoEnds = {
  ...common,
  from: pointRef(),
  to: pointRef(),
  neutral: flag(true),
  on: structureRef(),
};
/** Keys of an element at one point. */
export const oneEnd = { ...common, at: pointRef() };
/** Keys of whatever opens. */
export const opener = {
  open: phases(),
  normallyOpen: flag(false),
  tagged: flag(false),
  /** whose tag hangs on it: a crew or a person; nothing is the crew of the job */
  taggedBy: text(),
  blocked: flag(false),
};

/** Keys of what opens between two points; what is open of it is told by the letters at `from`. */
export const switchEnds = {
  ...twoEnds,
  ...opener,
  /** letters that its phases go on as at `to`, where it joins unlike ones */
  toPhases: otherLetters(),
};

/** What can happen to a device without the crew doing it; `upset.KIND` of the catalogue says each. */
export type UpsetKind =
  | "close"
  | "reclose"
  | "restore"
  | "start"
  | "start-unknown"
  | "transfer"
  | "rejoin"
  | "contact";

/** One thing that can change without the crew doing it. */
export interface DeviceUpset {
  readonly kind: UpsetKind;
  readonly phase?: Letter;
  /** how many independent things must go wrong */
  readonly strength: 1 | 2 | 3;
  /** the keys of the element that it changes, and to what */
  readonly change: ElementChange;
}

/** New values of some keys of an element. */
export type ElementChange = Readonly<Record<string, unknown>>;

/** The limits of the file's settings that a device's own upsets depend on. */
export interface UpsetSettings {
  readonly assumeGenerators: boolean;
  readonly assumedGeneratorKva: number;
}

/** One way in which what stands on the poles can differ from the drawing: the file format's own words. */
export type DoubtKind =
  | "goes-on"
  | "other-position"
  | "second-transformer"
  | "other-connection"
  | "swapped-labels"
  | "swapped-phases"
  | "machine"
  | "open-neutral"
  | "no-rod"
  | "no-pole-bond"
  | "crossing"
  | "no-span"
  | "other-cable"
  | "thin-ground";

/** In a record that a doubt adds: the thing that is doubted. */
export const THIS = "$this";
/** In a record that a doubt adds: a pole that nobody drew. */
export const UNDRAWN = "$undrawn";

/** A number of a thing that a map or a plate gives, and how far off it may be: keys of the thing at both ends. */
export interface DeviceNumber {
  readonly low: JsonObject;
  readonly high: JsonObject;
}

/** What one thing leaves open about itself, and what would stand in its place. */
export interface DeviceDoubt {
  readonly doubt: DoubtKind;
  /** the phases that are doubted, where it is not the whole thing */
  readonly phases?: string;
  /** keys of the thing as they would be; `null` takes a key away, so that its default holds */
  readonly instead?: JsonObject;
  readonly isGone?: true;
  /** the end at which machines that are drawn run then, as those do that start by themselves */
  readonly runningAt?: End;
  /** things that nobody drew */
  readonly beside?: readonly JsonObject[];
}

/** What a thing may know of its place to say what could be otherwise there. */
export interface DoubtPlace {
  /** line to line; leg to leg on a split secondary; 0 where nothing says [V] */
  nominalVolts(end: End): number;
}

/** How a thing that opens moves. */
export interface OpeningMechanism<Element> {
  /** phases that are open in any way: opened, blown, barrel out, lifted */
  openPhases(element: Element): string;
  /** all phases together */
  gang(element: Element): boolean;
  /** can close by itself or from afar, unless blocked */
  automatic(element: Element): boolean;
  visibleGap(element: Element): boolean;
  /** cannot close by itself or by hand, on this phase */
  blocked(element: Element, phase: string): boolean;
  /** what closes these phases */
  closing(element: Element, phases: string): ElementChange;
}

/** What hands or a handle do to a thing: verbs of steps. */
export type HandlingVerb =
  | "open"
  | "close"
  | "lift"
  | "attach"
  | "cut"
  | "join"
  | "pull"
  | "replace"
  | "set-position"
  | "start"
  | "stop";

/** How the crew takes a thing out of the circuit and puts it back. */
export interface Handling<Element> {
  readonly off: HandlingVerb;
  readonly on: HandlingVerb;
  /** what moves: phases of it, one position for all, or a machine that runs or stands */
  readonly moves: "phases" | "position" | "machine";
  /** tools of which one must be in hand; none where a hand or a handle does it */
  readonly tools: readonly string[];
  /** what it costs beyond one operation, so that the usual way is taken first */
  readonly trouble: number;
  /** comes away in the hand, so that only what it hangs on beyond has to be dead before it is changed */
  readonly comesAway?: true;
  /** whether it can be taken out as it stands; absent: whenever a phase of it is closed */
  canGoOff?(element: Element): boolean;
}

/** Sticks that move a cutout's barrel or a switch's blade. */
export const STICKS = ["extending-stick", "switch-stick", "hot-stick", "clamp-stick"] as const;

/** By a hand or a handle, phase by phase: how a thing that opens is handled where its kind says nothing else. */
export const BY_HANDLE: Handling<unknown> = {
  off: "open",
  on: "close",
  moves: "phases",
  tools: [],
  trouble: 0,
};

/** The limits of the file's settings on what may be broken, and carried, without a rating. */
export interface BreakSettings {
  readonly openWithoutLoadBreakAmps: number;
  readonly clampBreakAmps: number;
  readonly tapClampMaxAmps: number;
}

/**
 * Why a thing may break so much: `tool` the portable tool on its hooks, `arc-chute` its own chute, `rated` the rating on
 * its plate, `made-for-load` it breaks its own load and the drawing has no figure, `bare` nothing on it or in hand breaks
 * load, `unrated` a switch or an elbow that is not made to, `clamp` and `lead` a metal part drawn apart by a stick.
 */
export type BreakBasis =
  | "tool"
  | "arc-chute"
  | "rated"
  | "made-for-load"
  | "bare"
  | "unrated"
  | "clamp"
  | "lead";

/** The current that a thing may break when it opens [A]; infinite where it is made to and no figure is drawn. */
export interface Breaks {
  readonly amps: number;
  readonly basis: BreakBasis;
}

/**
 * Interrupting rating of the portable load-break tool [A]: 600 nominal, 900 at most (from memory: published tool class
 * figures, `shared/reference/cutouts-and-connectors.json`). The nominal one is used.
 */
export const LOAD_BREAK_TOOL_AMPS = 600;

/** The portable tool that hooks on a cutout and draws the arc inside a tube. */
export const LOAD_BREAK_TOOL = "load-break-tool";

/**
 * What a thing is on a drawing, where others have to know it: a length of `line`, a `transformer` between two voltages, the
 * utility's `supply`, a customer's or a crew's `machine`, the customers' `load`, a `ground-set`, a circuit `beside` a line,
 * a `fault` that goes when it is mended.
 */
export type DeviceRole =
  | "line"
  | "transformer"
  | "supply"
  | "machine"
  | "load"
  | "ground-set"
  | "beside"
  | "fault";

/** What one file of a kind declares: everything that is asked of a device of this kind, through `faces.ts`. */
export interface DeviceSpec<
  Kind extends string,
  F extends Fields,
  Role extends DeviceRole | undefined = DeviceRole | undefined,
> {
  readonly kind: Kind;
  readonly role?: Role;
  /** how ids of this kind begin */
  readonly prefix: string;
  /** what a new one says of itself, where its kind demands a key and whoever draws it has not said */
  readonly startsWith?: JsonObject;
  readonly ends: readonly End[];
  readonly fields: F;
  /** problems between fields, once each field by itself is right */
  check?(element: Complete<F>): readonly FieldProblem[];
  /** conductors that this element brings to its points */
  brings(element: Complete<F>): readonly (readonly [End, Letter])[];
  /** conductors that must be there already; `why` names the key that asks for them */
  needs?(element: Complete<F>): readonly { end: End; letter: Letter; key: string }[];
  parts(element: Complete<F>, place: DevicePlace): readonly Part[];
  upsets?(element: Complete<F>, settings: UpsetSettings): readonly DeviceUpset[];
  /** what of it could be otherwise than drawn */
  doubts?(element: Complete<F>, place: DoubtPlace): readonly DeviceDoubt[];
  /** its numbers that may be off, each by how much and why */
  numbers?(element: Complete<F>): readonly DeviceNumber[];
  readonly opening?: OpeningMechanism<Complete<F>>;
  /** what it may break with this tool in hand */
  breaks?(element: Complete<F>, tool: string, settings: BreakSettings): Breaks;
  /** what it may carry all day [A]; absent: the drawing has no figure */
  carries?(element: Complete<F>, settings: BreakSettings): number;
  /** how the crew handles it; absent: by its handle where it has an opening, else not at all */
  readonly handling?: Handling<Complete<F>>;
  /** operating it shakes the pole that it stands on */
  readonly shakes?: true;
  /** whether a crew takes `load` off the line by it, or `nothing` off anything else; absent: its own alone */
  readonly drops?: "load" | "nothing";
  /** stands at the customer's, not on the line */
  readonly atCustomer?: true;
  /** its owner has the key, so that it may close again however it was left */
  readonly ownersKey?: true;
  /** letters of its phases at an end; absent: the same at every end */
  lettersAtEnd?(element: Complete<F>, end: End): readonly Letter[];
  /** of what is conductors and nothing else: the key that says which of them came apart */
  readonly apartKey?: "parted" | "cut";
  /** phases that it holds together at its point, or to earth */
  shorts?(element: Complete<F>): string;
  /** how many customers hang on it */
  customers?(element: Complete<F>): number;
  /** whether it could put volts on what it hangs at, running or not; `assumed` takes it that customers have machines */
  couldFeed?(element: Complete<F>, assumed: boolean): boolean;
  /** closed, it leaves nothing bare where it joins: insulated and shielded up to its plug */
  readonly deadFront?: true;
  /** whether each phase has a symbol of its own, one beside the other */
  readonly standsAbreast?: true;
  /** its symbol is drawn as if the cable that it ends came from its `from` */
  readonly endsCable?: true;
  /** its position in words, where it is not as it normally is; absent: what is open of it */
  position?(element: Complete<F>): Message | undefined;
  /** the one rating that tells it from its neighbours on a drawing */
  rating?(element: Complete<F>): Message | undefined;
  /** how it is drawn, from (−20, 0) to (20, 0) where it has two ends */
  symbol(element: Complete<F>): readonly Mark[];
  /** the same thing told from its third end: that is its first one then */
  fromThirdEnd?(element: Complete<F>): Complete<F>;
  /** the current goes straight through it, so that it stands in the line where a line is drawn through */
  readonly standsInLine?: true;
  /** where it likes to hang at its point, clockwise from the right [degrees]; absent: straight down */
  readonly hangsToward?: number;
  /** hangs clear of its point, since a person put it there */
  readonly hangsClear?: true;
  /** what its rating mostly takes beside its symbol, with how it is known [px]; absent: no room of its own */
  readonly ratingWidth?: number;
  /** how far the symbol reaches from its middle toward its ends, where that is not `SYMBOL_REACH` [units] */
  readonly symbolReach?: number;
}

/** A kind as `defineDevice` gave it back. */
export type Device<Kind extends string = string, F extends Fields = Fields> = DeviceSpec<Kind, F>;

/** Declares one device kind. The fields are its one definition: reader, schema, inspector and types follow from them. */
export const defineDevice = <
  const Kind extends string,
  const F extends Fields,
  const Role extends DeviceRole | undefined = undefined,
>(
  spec: DeviceSpec<Kind, F, Role>,
): DeviceSpec<Kind, F, Role> => spec;

/** The complete record of a device: its kind, and every field with its default filled in. */
export type ElementOf<D> =
  D extends DeviceSpec<infer Kind, infer F> ? Complete<F> & { readonly kind: Kind } : never;

/** A problem of one field, at its key, in words of the catalogue. */
export const problem = (key: string, message: Message): FieldProblem => ({ at: `.${key}`, problem: message });
