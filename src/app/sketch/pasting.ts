import { edits, isRefusal, type StillhotDocument } from "../../core";
import { GRID } from "../canvas/grid";
import { runKept } from "../session/runKept";
import type { Session } from "../session/session.svelte";
import { say } from "../words/catalogue";

/** What is put beside the things that it was copied from, so that it lies on none of them. */
const BESIDE = { x: GRID * 2, y: GRID * 2 };

/** What is copied, as the clipboard holds it. */
export const textOf = (document: StillhotDocument, things: edits.Things): string =>
  edits.writeFragment(edits.copyOf(document, things));

/** @returns ids of what there is now beside what is selected */
export const duplicate = (session: Session): readonly string[] =>
  session.run(edits.duplicate(session.thingsOnThem, BESIDE), { offersUndo: true })?.made ?? [];

type Drawing = Pick<Session, "can" | "keepBefore" | "run" | "say">;

/**
 * Puts parts of a drawing into this one. Before those from elsewhere it is kept as it was: they may be anything, and many.
 *
 * @param copied what was copied here last, which is put in where the clipboard holds no parts of a drawing
 * @returns ids of what there is now
 */
export function pasteInto(drawing: Drawing, text: string, copied: string | undefined): readonly string[] {
  const given = edits.readFragment(text);
  const isGiven = !isRefusal(given);
  const fragment = isGiven || copied === undefined ? given : edits.readFragment(copied);
  if (isRefusal(fragment)) {
    drawing.say(say("app.pasteRefused"), "refusal");
    return [];
  }
  const edit = edits.paste(fragment, BESIDE);
  const isFromElsewhere = isGiven && text !== copied;
  const change = isFromElsewhere ? runKept(drawing, edit) : drawing.run(edit, { offersUndo: true });
  return change?.made ?? [];
}
