import { complete, jobOf, type Step, type StillhotDocument, type WorkPoint } from "../document";
import { type ElementId, isMessageKey, type Message, type MessageKey, say, type WorkPointId } from "../terms";
import { elementName, pointName } from "./sentences";

/** A step as one act on one thing: `Open Q1 cutout, A, with the load-break tool`. */
export function stepSentence(document: StillhotDocument, step: Step): Message {
  const { do: verb, text, phases, position, seconds } = step;
  const act = say(`do.${verb}`, {
    name: nameOf(document, step),
    set: step.element ?? "",
    on: phases === undefined || phases === "" ? "" : say("do.onPhases", { phases: spaced(phases) }),
    with: step.with === undefined || step.with === "" ? "" : toolOf(step.with),
    to: keyed(`do.to.${step.to ?? ""}`),
    cable: step.cable === undefined || step.cable === "" ? "" : say("do.cable", { cable: step.cable }),
    first: firstEnd(document, step),
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
  });

const spaced = (phases: string): string => [...phases].join(" ");

function phasesOf({ system }: StillhotDocument, id: string | undefined): string {
  const saved = system.elements[id as ElementId];
  const phases = saved === undefined ? undefined : (complete(saved) as { phases?: string }).phases;
  return phases ?? "";
}

/** What a step is about: a device, or the place that it is done at. */
function nameOf(document: StillhotDocument, { do: verb, element, at }: Step): string | Message {
  if (verb === "work") return workPointName(document, at ?? "");
  if (verb === "ground" || verb === "test") return pointName(document, at ?? "");
  if (element !== undefined) return elementName(document, element);
  return at === undefined ? "" : pointName(document, at);
}

/** What a person calls a work point: its label, or the place where it is. */
export function workPointName(document: StillhotDocument, id: string): string {
  const workPoint = jobOf(document).workPoints[id as WorkPointId] as WorkPoint | undefined;
  return workPoint === undefined ? id : workPoint.label || pointName(document, workPoint.at);
}

const keyed = (key: string): string | Message => (isMessageKey(key) ? say(key as MessageKey) : "");

const toolOf = (tool: string): Message =>
  isMessageKey(`tool.${tool}`)
    ? say("do.with", { tool: say(`tool.${tool}` as MessageKey) })
    : say("do.withOther", { tool });

/** Which end goes on or comes off first: said always, since the wrong order puts a person in the circuit. */
function firstEnd(document: StillhotDocument, { do: verb, first, to, element }: Step): string | Message {
  if (verb !== "ground" && verb !== "unground") return "";
  const end = first ?? (verb === "ground" ? "neutral" : "phase");
  if (end === "phase") return say("do.first.phase");
  const saved = document.system.elements[element as ElementId];
  const goesTo = to ?? (saved === undefined ? "neutral" : (complete(saved) as { to?: string }).to);
  return say(goesTo === "earth" ? "do.first.earth" : "do.first.neutral");
}
