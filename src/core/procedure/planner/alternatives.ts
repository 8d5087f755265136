import { MOST_ALTERNATIVES, MOST_WAYS_TRIED } from "../tolerances";
import { complete, type StillhotDocument } from "../../document";
import { isOpening } from "../../steps";
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
  const tell = (draft: OrderDraft | undefined, summary: (draft: OrderDraft) => Message | undefined): void => {
    if (draft === undefined || draft.findings.length > 0 || found.length >= MOST_ALTERNATIVES) return;
    const key = JSON.stringify(draft.steps);
    if (told.has(key)) return;
    told.add(key);
    const sentence = summary(draft);
    if (sentence === undefined || told.has(JSON.stringify(sentence))) return;
    told.add(JSON.stringify(sentence));
    found.push({ summary: sentence, ...priced(document, draft) });
  };
  const { strictness } = first.wishes;
  const newIn = (draft: OrderDraft): Opening[] => openedOnlyIn(draft, first);
  for (const { bank } of first.intent.grounds)
    if (bank !== undefined)
      tell(draftFor(document, wish({ ...NO_WISHES, strictness }, "heldOpen", bank), noEnds()), (draft) => {
        const place = nameOf(document, (complete(document.system.elements[bank]!) as { to: string }).to);
        const more = newIn(draft);
        return more.length === 0
          ? say("plan.alternative.holdOpen", { place })
          : say("plan.alternative.hold", { names: namesOfOpenings(document, more), place });
      });
  for (let nth = 1; nth <= MOST_WAYS_TRIED && found.length < MOST_ALTERNATIVES; nth++) {
    const draft = draftFor(document, { ...NO_WISHES, strictness }, noEnds(), nth);
    if (draft === undefined) break;
    tell(draft, (it) => {
      const [more, fewer] = [newIn(it), openedOnlyIn(first, it)];
      const [names, others] = [namesOfOpenings(document, more), namesOfOpenings(document, fewer)];
      if (more.length > 0 && fewer.length > 0) return say("plan.alternative.openings", { names, others });
      if (more.length > 0) return say("plan.alternative.more", { names });
      return fewer.length > 0 ? say("plan.alternative.fewer", { others }) : undefined;
    });
  }
  return found;
}

/**
 * What one order chose to open and the other leaves alone until the work: it may open it on the way to something else. What is
 * opened for a moment on the way back is none of it.
 */
function openedOnlyIn(one: OrderDraft, other: OrderDraft): Opening[] {
  const { openings } = other.intent.choice;
  const work = other.steps.findIndex((it) => it.do === "work");
  const before = work === -1 ? other.steps : other.steps.slice(0, work);
  return one.intent.choice.openings.filter(
    (it) => !openings.includes(it) && !before.some((step) => isOpening(step) && step.element === it.element),
  );
}

const noEnds = (): DeadEnds => ({ ways: [], stuck: [] });
