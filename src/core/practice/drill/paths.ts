import { elementName, type StillhotDocument } from "../../document";
import { whyHot } from "../../hazard";
import { type ConductorId, type ElementId, inARow, type Message, say } from "../../terms";

/** The way by which a conductor is reached, in words, and what to light of it. */
export function wayTo(
  document: StillhotDocument,
  conductor: ConductorId,
): { readonly words: Message; readonly lit: readonly ElementId[] } | undefined {
  const way = whyHot(document, conductor)[0];
  if (way === undefined) return undefined;
  const elements = [...new Set(way.steps.map(({ element }) => element))];
  return {
    words: say(way.isBackfeed ? "drill.way.back" : "drill.way", {
      path: inARow(elements.map((it) => say("name.plain", { name: elementName(document, it) }))),
    }),
    lit: elements,
  };
}
