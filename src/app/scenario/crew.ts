import {
  type Attempt,
  type CrewRole,
  isAbout,
  isRefusal,
  type Message,
  readHandOver,
  type StillhotDocument,
  takeOver,
  variantOf,
} from "../../core";
import { say } from "../words/catalogue";
import { speech } from "../words/language.svelte";
import { scenario, scenarios } from "./scenarios";
import { study } from "./study.svelte";

/** Takes over the attempt that a code of the other phone holds. @returns why not; nothing where it is taken over */
export async function goOnWith(text: string): Promise<Message | undefined> {
  const handed = readHandOver(text);
  if (handed === undefined) return say("crew.damaged");
  for await (const document of candidates(handed.variant)) {
    if (!isAbout(handed, document)) continue;
    const attempt = takeOver(handed, document, study.attempt);
    if (isRefusal(attempt)) return attempt.refused;
    study.takeOver(attempt, handed.to);
    return undefined;
  }
  return say("crew.otherScenario");
}

/** Who goes on after somebody. */
export const otherOf = (role: CrewRole | undefined): CrewRole =>
  role === "operator" ? "worker" : "operator";

/** Scenarios that a code may be about: what is played or read here, and those that come with the app. */
async function* candidates(variant: number): AsyncGenerator<StillhotDocument> {
  const here: readonly (Attempt | { document: StillhotDocument } | undefined)[] = [
    study.attempt,
    study.offered === undefined ? undefined : { document: study.offered },
  ];
  for (const it of here) {
    if (it === undefined) continue;
    yield it.document;
    yield variantOf(it.document, variant, speech.language);
  }
  for (const { id } of await scenarios()) {
    const document = await scenario(id);
    if (document !== undefined) yield variantOf(document, variant, speech.language);
  }
}
