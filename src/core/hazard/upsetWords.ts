import { elementName, type System } from "../document";
import { inARow, type Message, type MessageKey, say } from "../terms";
import type { Upset } from "./types";

/** One thing that could change without the crew doing it, as half a sentence; `name` where not one element is meant. */
export function upsetWords(
  document: { readonly system: System },
  { kind, element, phase }: Upset,
  name: string | Message = elementName(document, element),
): Message {
  const own = `upset.${kind}.${document.system.elements[element]?.kind}`;
  return say(OWN_WORDS.find((it) => it === own) ?? `upset.${kind}`, {
    name,
    on: phase === undefined ? "" : say("upset.onPhase", { phase }),
  });
}

/** Kinds that an upset happens to in words of their own. */
const OWN_WORDS = [
  "upset.close.meter",
  "upset.close.clamp",
  "upset.close.elbow",
] as const satisfies readonly MessageKey[];

/** Upsets as the condition of a sentence: as drawn, where there are none. */
export const whenWords = (system: System, upsets: readonly Upset[]): Message =>
  upsets.length === 0
    ? say("upset.asDrawn")
    : say("upset.if", { upsets: inARow(upsets.map((it) => upsetWords({ system }, it))) });

/** Whether a machine starts that nobody drew. */
export const startsUnknown = ({ kind }: Pick<Upset, "kind">): boolean => kind === "start-unknown";
