import { MOST_ALTERNATIVES, MOST_WAYS_TRIED } from "../tolerances";
import { complete, type StillhotDocument } from "../../document";
import { type Message, say } from "../../terms";
import { nameOf } from "../job/names";
import { draftFor } from "./draft";
import type { OrderDraft } from "./orderDraft";
import { namesOfOpenings, type Opening } from "./openings";
import { priced } from "./price";
import type { DeadEnds } from "./search";
import type { Alternative } from "./types";
import { NO_WISHES, wish } from "./wishes";

/** Other ways to do the same, each played and without a finding. */
export function alternativesTo(document: StillhotDocument, first: OrderDraft): Alternative[] {
  const found: Alternative[] = [];
  const told = new Set([JSON.stringify(first.steps)]);
  const tell = (draft: OrderDraft | undefined, summary: (draft: OrderDraft) => Message): void => {
    if (draft === undefined || draft.findings.length > 0 || found.length >= MOST_ALTERNATIVES) return;
    const key = JSON.stringify(draft.steps);
    if (told.has(key)) return;
    told.add(key);
    found.push({ summary: summary(draft), ...priced(document, draft) });
  };
  const { strictness } = first.wishes;
  const newIn = (draft: OrderDraft): Opening[] =>
    draft.intent.choice.openings.filter((it) => !first.intent.choice.openings.includes(it));
  for (const { bank } of first.intent.grounds)
    if (bank !== undefined)
      tell(draftFor(document, wish({ ...NO_WISHES, strictness }, "heldOpen", bank), noEnds()), (draft) =>
        say("plan.alternative.hold", {
          names: namesOfOpenings(document, newIn(draft)),
          place: nameOf(document, (complete(document.system.elements[bank]!) as { to: string }).to),
        }),
      );
  for (let nth = 1; nth <= MOST_WAYS_TRIED && found.length < MOST_ALTERNATIVES; nth++) {
    const draft = draftFor(document, { ...NO_WISHES, strictness }, noEnds(), nth);
    if (draft === undefined) break;
    tell(draft, (it) => {
      const others = namesOfOpenings(
        document,
        first.intent.choice.openings.filter((opening) => !it.intent.choice.openings.includes(opening)),
      );
      return newIn(it).length === 0
        ? say("plan.alternative.fewer", { others })
        : say("plan.alternative.openings", { names: namesOfOpenings(document, newIn(it)), others });
    });
  }
  return found;
}

const noEnds = (): DeadEnds => ({ ways: [], stuck: [] });
