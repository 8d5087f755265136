import { edits, isRefusal } from "../../core";
import { GRID } from "../canvas/grid";
import { runKept } from "../session/runKept";
import type { Session } from "../session/session.svelte";
import { say } from "../words/catalogue";
import { t } from "../words/words";
import { selectMade } from "./taps";

/** What is put beside the things that it was copied from, so that it lies on none of them. */
const BESIDE = { x: GRID * 2, y: GRID * 2 };

/** Copies what is selected to the clipboard and puts copies in; also where the browser keeps its clipboard to itself. */
export class Clipboard {
  readonly #session: Session;
  /** what was copied here last */
  #copied: string | undefined;

  constructor(session: Session) {
    this.#session = session;
  }

  async copy() {
    const session = this.#session;
    this.#copied = edits.writeFragment(edits.copyOf(session.document, session.thingsOnThem));
    await navigator.clipboard?.writeText(this.#copied).catch(() => undefined);
    session.say(say("app.copied", { count: t("app.things", { count: session.selection.length }) }));
  }

  /** @param text what is pasted; without it whatever the clipboard holds */
  async paste(text?: string) {
    const given = text ?? (await navigator.clipboard?.readText?.().catch(() => this.#copied));
    selectMade(this.#session, pasteInto(this.#session, given ?? this.#copied ?? "", this.#copied));
  }

  duplicate() {
    const session = this.#session;
    const change = session.run(edits.duplicate(session.thingsOnThem, BESIDE), { offersUndo: true });
    selectMade(session, change?.made ?? []);
  }
}

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
