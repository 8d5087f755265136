import { elementName, type System } from "../document";
import { isMessageKey, type Message, type MessageKey, say } from "../terms";
import type { Upset } from "./types";

/** One thing that could change without the crew doing it, as half a sentence; `name` where not one element is meant. */
export function upsetWords(
  document: { readonly system: System },
  { kind, element, phase }: Upset,
  name: string | Message = elementName(document, element),
): Message {
  const own = `upset.${kind}.${document.system.elements[element]?.kind}`;
  return say((isMessageKey(own) ? own : `upset.${kind}`) as MessageKey, {
    name,
    on: phase === undefined ? "" : say("upset.onPhase", { phase }),
  });
}
