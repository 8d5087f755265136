import {
  complete,
  elementName,
  nameOnStructure,
  pointName,
  type Step,
  type StillhotDocument,
  structureName,
  structureOf,
  workPointName,
} from "../../document";
import { isBeside } from "../../devices";
import { isTool, SPIKE, TRACER } from "../../steps";
import { type ElementId, type Message, say, type StructureId } from "../../terms";
import { isWireDownAt } from "./wiresDown";

const SECONDS_A_MINUTE = 60;

interface Telling {
  /** leaves out with what, and which end first */
  readonly short?: boolean;
  /** where whoever reads it stands: what is there goes by what it is called there */
  readonly under?: StructureId | undefined;
}

/** A step as one act on one thing: `Open Pole 30, sideline cutout, A, with the load-break tool`. */
export function stepSentence(
  document: StillhotDocument,
  step: Step,
  { short = false, under }: Telling = {},
): Message {
  const end = short ? undefined : firstEnd(document, step);
  const { do: verb, text, phases, position, seconds } = step;
  const minutes = verb === "wait" ? Number(seconds) / SECONDS_A_MINUTE : NaN;
  const isInMinutes = minutes > 1 && Number.isInteger(minutes);
  const onCable =
    verb !== "test" ? undefined : step.with === SPIKE ? "spike" : step.with === TRACER ? "trace" : undefined;
  const isGuard = verb === "barricade" && step.at !== undefined && isWireDownAt(document.system, step.at);
  const isHold = verb === "ask" && isBeside(document.system.elements[step.element as ElementId]);
  const how = isInMinutes ? "waitMinutes" : isGuard ? "guard" : isHold ? "hold" : (onCable ?? verb);
  const act = say(`do.${how}`, {
    minutes: isInMinutes ? minutes : "",
    name: nameOf(document, step, under),
    set: say("do.groundSet"),
    on: phases === undefined || phases === "" ? "" : say("do.onPhases", { phases: spaced(phases) }),
    with: short ? "" : withWhat(step),
    first: end === undefined ? "" : say(`do.first.${end}`),
    position: position ?? step.to ?? "",
    seconds: seconds ?? "",
  });
  if (text === undefined || text === "") return act;
  return say("do.saying", { act, text });
}

/** What is seen when a step is done. */
export const stepSeen = (document: StillhotDocument, step: Step): Message =>
  say(`seen.${step.do}`, {
    phases: spaced(step.phases || phasesOf(document, step.element)),
    position: step.position ?? step.to ?? "",
    to: goesTo(step.to ?? "neutral"),
    cable: step.cable === undefined ? "" : say("do.cable", { cable: step.cable }),
  });

const spaced = (phases: string): string => [...phases].join(" ");

function phasesOf({ system }: StillhotDocument, id: string | undefined): string {
  const saved = system.elements[id as ElementId];
  const phases = saved === undefined ? undefined : (complete(saved) as { phases?: string }).phases;
  return phases ?? "";
}

/** What a step is about: a device, or the place that it is done at. */
function nameOf(
  document: StillhotDocument,
  { do: verb, element, at }: Step,
  under: StructureId | undefined,
): string | Message {
  const isHere = (id: string) => under !== undefined && structureOf(document.system, id)?.id === under;
  const placeName = (id: string) =>
    isHere(id) && id !== under ? nameOnStructure(document, id) : pointName(document, id);
  if (verb === "work") return workPointName(document, at);
  const around = verb === "barricade" ? structureOf(document.system, at) : undefined;
  if (around !== undefined) return structureName(document, around.id);
  if (verb === "ground" || verb === "test") return placeName(at);
  if (element !== undefined)
    return isHere(element) ? nameOnStructure(document, element) : elementName(document, element);
  if (verb === "hand-over") return say("do.permit");
  return at === undefined ? "" : placeName(at);
}

const goesTo = (to: string): string | Message => {
  const key = (["do.to.neutral", "do.to.earth", "do.to.both"] as const).find((it) => it === `do.to.${to}`);
  return key === undefined ? "" : say(key);
};

/** The tool in hand, and how hands are kept from what is live. */
function withWhat({ with: tool, method, gloveClass }: Step): string | Message {
  const inHand = tool === undefined || tool === "" ? "" : toolOf(tool);
  if (method === undefined) return inHand;
  const kept = say(`do.method.${method}`, { class: gloveClass ?? "" });
  return inHand === "" ? kept : say("do.withBoth", { tool: inHand, method: kept });
}

const toolOf = (tool: string): Message =>
  isTool(tool) ? say("do.with", { tool: say(`withTool.${tool}`) }) : say("do.withOther", { tool });

/** Which end goes on or comes off first: the wrong order puts a person in the circuit. */
export function firstEnd(
  document: StillhotDocument,
  { do: verb, first, to, element }: Step,
): "neutral" | "earth" | "both" | "phase" | undefined {
  if (verb !== "ground" && verb !== "unground") return undefined;
  if ((first ?? (verb === "ground" ? "neutral" : "phase")) === "phase") return "phase";
  const saved = document.system.elements[element as ElementId];
  const goesTo = to ?? (saved === undefined ? undefined : (complete(saved) as { to?: string }).to);
  return goesTo === "earth" || goesTo === "both" ? goesTo : "neutral";
}
