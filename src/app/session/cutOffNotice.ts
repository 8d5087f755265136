import { conductorNames, cutOffBy, type Message, type StillhotDocument, type System } from "../../core";
import { say } from "../words/catalogue";
import type { Notice } from "./notice";

/** What an edit has cut off from every source, with what mends it; nothing where it cut nothing off. */
export function cutOffNotice(
  before: System,
  after: StillhotDocument,
  also: Message | undefined,
): Notice | undefined {
  const cut = cutOffBy(before, after.system);
  if (cut === undefined) return undefined;
  const message = say("cutOff.notKnown", { what: conductorNames(after, cut.conductors) });
  return {
    message: also === undefined ? message : say("cutOff.also", { cut: message, also }),
    tone: "refusal",
    offersUndo: true,
    offers: cut.bridge,
  };
}
