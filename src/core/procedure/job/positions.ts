import {
  type CircuitElement,
  deviceOf,
  hasPositions,
  isGroundSet,
  isMachine,
  isSupply,
  openingOf,
  openKeyOf,
  partingVerbs,
} from "../../devices";
import {
  conductorsOf,
  nextGroundId,
  type SavedElement,
  type Step,
  type StepBy,
  type System,
} from "../../document";
import {
  type ElementId,
  isRefusal,
  type JsonObject,
  lettersOf,
  type Message,
  type Refusal,
  refuse,
  say,
} from "../../terms";
import { elementOf, nameOf } from "./names";

/**
 * The drawing after one step of the hands, or why the hands cannot do that. Unlike an edit of the drawing it does one
 * thing at a time: a barrel whose link is blown does not close, and one that is put back hangs open. It checks nothing
 * that the reader has checked, so that a hundred steps are played in a blink.
 */
export function systemAfter(system: System, step: Step): System | Refusal {
  if (step.do === "ground") return grounded(system, step);
  const move = MOVES[step.do];
  // The permit is handed over as well, and that moves nothing.
  if (move === undefined || (step.do === "hand-over" && step.element === undefined)) return system;
  const element = elementOf(system, step.element);
  const name: Name = () => nameOf({ system }, step.element ?? "");
  if (element === undefined) return refuse(say("step.noElement", { id: step.element ?? "" }));
  if (step.do === "unground") return ungrounded(system, step.element, element, name);
  const keys = move(element as Movable, step, name);
  // What it says of a thing that is there already comes first: nobody tries to move that.
  if (!isRefusal(keys) && MOVED_BY_STICK.has(step.do) && element.condition === "seized")
    return refuse(say("step.seized", { name: name() }));
  return isRefusal(keys) ? keys : put(system, step.element as ElementId, keys);
}

/** The keys of any element that moves; which of them it has depends on its kind. */
type Movable = CircuitElement & {
  readonly kind: CircuitElement["kind"];
  readonly phases: string;
  readonly open: string;
  readonly cut: string;
  readonly parted: string;
  readonly blown: string;
  readonly removed: string;
  readonly position: string;
  readonly tagged: boolean;
  readonly blocked: boolean;
};

/** Told only where a step is refused: finding a name takes longer than the step. */
type Name = () => string | Message;

type Move = (element: Movable, step: Step, name: Name) => JsonObject | Refusal;

const has = (element: Movable, key: string): boolean => Object.hasOwn(deviceOf(element.kind).fields, key);

/** Phases that a step is about: those that it names, or all of the element; a gang moves as one. */
export function phasesOf(element: CircuitElement, step: Step): string {
  // A neighbouring circuit has no phases of its own.
  const { phases = "" } = element as { phases?: string };
  if (openingOf(element)?.gang === true) return phases;
  return step.phases === undefined || step.phases === "" ? phases : step.phases;
}

const inOrder = (own: string, letters: string): string =>
  [...`${own}N`].filter((it) => letters.includes(it)).join("");
const without = (letters: string, gone: string): string =>
  [...letters].filter((it) => !gone.includes(it)).join("");

function openKey(element: Movable): "open" | "cut" | "parted" | undefined {
  if (has(element, "open")) return "open";
  return has(element, "cut") ? "cut" : has(element, "parted") ? "parted" : undefined;
}

const opens: Move = (element, step, name) => {
  const key = openKey(element);
  if (key === undefined || key === "parted") return refuse(say("step.doesNotOpen", { name: name() }));
  return opened(key, element, step, name);
};

function opened(
  key: "open" | "cut" | "parted",
  element: Movable,
  step: Step,
  name: Name,
): JsonObject | Refusal {
  const phases = phasesOf(element, step);
  const openNow = openingOf(element)?.openPhases ?? element[key];
  if ([...phases].every((it) => openNow.includes(it)))
    return refuse(say("step.alreadyOpen", { name: name(), phases }));
  return { [key]: inOrder(element.phases, element[key] + phases) };
}

const closes: Move = (element, step, name) => {
  const key = openKey(element);
  if (key === undefined) return refuse(say("step.doesNotClose", { name: name() }));
  return closed(key, element, step, name);
};

function closed(
  key: "open" | "cut" | "parted",
  element: Movable,
  step: Step,
  name: Name,
): JsonObject | Refusal {
  const phases = phasesOf(element, step);
  if (has(element, "removed")) {
    const out = inOrder(element.phases, [...phases].filter((it) => element.removed.includes(it)).join(""));
    if (out !== "") return refuse(say("step.barrelOut", { name: name(), phases: out }));
    const blown = [...phases].filter((it) => element.blown.includes(it)).join("");
    if (blown !== "") return refuse(say("step.linkBlown", { name: name(), phases: blown }));
  }
  if (has(element, "blocked") && element.blocked) return refuse(say("step.blocked", { name: name() }));
  if (![...phases].some((it) => element[key].includes(it)))
    return refuse(say("step.alreadyClosed", { name: name(), phases }));
  return { [key]: without(element[key], phases) };
}

/** The same for some things only. */
const only =
  (isOne: (element: Movable, verb: Step["do"]) => boolean, move: Move): Move =>
  (element, step, name) =>
    isOne(element, step.do)
      ? move(element, step, name)
      : refuse(say("step.otherKind", { name: name(), verb: say(`doing.${step.do}`) }));

const isPartedSo = (element: Movable, verb: Step["do"]): boolean =>
  (partingVerbs(element) as readonly Step["do"][] | undefined)?.includes(verb) === true;
const hasBarrel = (element: Movable): boolean => has(element, "removed");
const runs = (element: Movable): boolean => isMachine(element) || isSupply(element);

/** Verbs that move a part of a thing against its own friction; a lead is cut, and a link renewed, whatever is stuck. */
const MOVED_BY_STICK: ReadonlySet<Step["do"]> = new Set([
  "open",
  "close",
  "lift",
  "attach",
  "pull",
  "replace",
  "remove-barrel",
  "replace-barrel",
  "set-position",
]);

const setTo =
  (key: "tagged" | "blocked" | "on", value: boolean): Move =>
  (element, step, name) => {
    // A tag can hang on anything; where the record has no key for it, the job remembers it.
    const now = (element as Readonly<Record<string, unknown>>)[key];
    if (typeof now !== "boolean")
      return key === "tagged"
        ? {}
        : refuse(say("step.otherKind", { name: name(), verb: say(`doing.${step.do}`) }));
    return now === value
      ? refuse(say(value ? `step.already.${key}` : `step.not.${key}`, { name: name() }))
      : { [key]: value };
  };

const MOVES: Partial<Record<Step["do"], Move>> = {
  open: opens,
  close: closes,
  lift: only(isPartedSo, opens),
  attach: only(isPartedSo, closes),
  cut: only(isPartedSo, (element, step, name) =>
    opened(openKeyOf(element.kind) as "parted" | "cut", element, step, name),
  ),
  join: only(isPartedSo, closes),
  pull: only(isPartedSo, opens),
  replace: only(isPartedSo, closes),
  "remove-barrel": only(hasBarrel, (element, step, name) => {
    const phases = phasesOf(element, step);
    if ([...phases].every((it) => element.removed.includes(it)))
      return refuse(say("step.barrelOut", { name: name(), phases }));
    return {
      removed: inOrder(element.phases, element.removed + phases),
      open: inOrder(element.phases, element.open + phases),
    };
  }),
  "replace-barrel": only(hasBarrel, (element, step, name) => {
    const phases = phasesOf(element, step);
    if (![...phases].some((it) => element.removed.includes(it)))
      return refuse(say("step.barrelIn", { name: name(), phases }));
    return {
      removed: without(element.removed, phases),
      open: inOrder(element.phases, element.open + phases),
    };
  }),
  // A blown link drops its barrel: with a new link in, the barrel still hangs open.
  refuse: only(hasBarrel, (element, step, name) => {
    const phases = phasesOf(element, step);
    if (![...phases].some((it) => element.blown.includes(it)))
      return refuse(say("step.linkWhole", { name: name(), phases }));
    return { blown: without(element.blown, phases), open: inOrder(element.phases, element.open + phases) };
  }),
  "set-position": only(
    (it) => has(it, "taps") || hasPositions(it),
    (element, step, name) => {
      const position = step.position ?? step.to ?? "";
      if ("taps" in element)
        return Object.values(element.taps).every((it) => it === 0)
          ? refuse(say("step.alreadyThere", { name: name(), position }))
          : { taps: {} };
      return element.position === position
        ? refuse(say("step.alreadyThere", { name: name(), position }))
        : { position };
    },
  ),
  start: only(runs, setTo("on", true)),
  stop: only(runs, setTo("on", false)),
  tag: setTo("tagged", true),
  untag: (element, step, name) => {
    const keys = setTo("tagged", false)(element, step, name);
    return isRefusal(keys) || !has(element, "taggedBy") ? keys : { ...keys, taggedBy: "" };
  },
  block: setTo("blocked", true),
  unblock: setTo("blocked", false),
  unground: () => ({}),
  "hand-over": (element, step, name) => {
    const key = has(element, "taggedBy") ? "taggedBy" : has(element, "by") ? "by" : undefined;
    return key === undefined
      ? refuse(say("step.otherKind", { name: name(), verb: say("doing.hand-over") }))
      : { [key]: step.to ?? "" };
  },
};

/** The drawing with the link of one phase blown: its barrel has dropped open. */
export function withLinkBlown(system: System, id: ElementId, letter: string): System {
  const element = elementOf(system, id) as Movable;
  return put(system, id, { blown: inOrder(element.phases, element.blown + letter) });
}

/** The drawing with other values of some keys of one element. */
export function put(system: System, id: ElementId, keys: JsonObject): System {
  if (Object.keys(keys).length === 0) return system;
  const { fields } = deviceOf(system.elements[id]!.kind);
  const record: Record<string, JsonObject[string]> = { ...system.elements[id]! };
  for (const [key, value] of Object.entries(keys))
    // A default stands in a record only where it stood before, so that a thing put back is as it was found.
    if (value === fields[key]!.fallback && record[key] !== value) delete record[key];
    else record[key] = value;
  return { ...system, elements: { ...system.elements, [id]: record as SavedElement } };
}

/** Phases that a ground goes on, or a test is made of: those named, or every phase of the point. */
export const phasesAt = (system: System, step: StepBy<"ground" | "test">): string =>
  step.phases !== undefined && step.phases !== ""
    ? step.phases
    : (conductorsOf(system).get(step.at) ?? []).filter((it) => it !== "N").join("");

/** The id under which a ground set goes on. */
export const groundIdOf = (system: System, step: Step): ElementId => step.element ?? nextGroundId(system);

function grounded(system: System, step: StepBy<"ground">): System | Refusal {
  const id = groundIdOf(system, step);
  if (Object.hasOwn(system.elements, id)) return refuse(say("step.groundTwice", { id }));
  const there = conductorsOf(system).get(step.at) ?? [];
  const phases = lettersOf(phasesAt(system, step))
    .filter((it) => there.includes(it))
    .join("");
  if (phases === "") return refuse(say("step.noConductor", { at: step.at }));
  if ((step.to ?? "neutral") !== "earth" && !there.includes("N"))
    return refuse(say("step.noNeutral", { at: step.at }));
  const record = {
    kind: "ground",
    at: step.at,
    phases,
    ...(step.to === undefined || step.to === "neutral" ? {} : { to: step.to }),
    ...(step.cable === undefined ? {} : { cable: step.cable }),
  } as SavedElement;
  return { ...system, elements: { ...system.elements, [id]: record } };
}

function ungrounded(system: System, id: ElementId, element: CircuitElement, name: Name): System | Refusal {
  if (!isGroundSet(element)) return refuse(say("step.otherKind", { name: name(), verb: "unground" }));
  const elements = { ...system.elements };
  delete elements[id];
  return { ...system, elements };
}
