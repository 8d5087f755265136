import { edits, isRefusal, type Message, nameIn, renamedBetween, type StillhotDocument } from "../../core";
import { say } from "../words/catalogue";
import { told } from "../words/words";

/** A drawing whose log says how it was changed under its job; the same one where that is nothing to the job. */
export function changeNoted(was: StillhotDocument, now: StillhotDocument, what: Message): StillhotDocument {
  const names = renamedBetween(was, now).map((id) =>
    told(say("app.renamed", { was: nameIn(was, id), now: nameIn(now, id) })),
  );
  const text = names.length === 0 ? told(what) : names.join(", ");
  const noted = edits.noteChange(was, new Date().toISOString(), text)(now);
  return isRefusal(noted) ? now : noted.after;
}
