import type { Message } from "../../core";
import type { Session } from "../session/session.svelte";
import { say } from "../words/catalogue";
import type { Elsewhere } from "../worker/elsewhere";
import type { WrittenForms } from "../worker/writing";
import { download, fileNameOf } from "./files";
import { writeWithPatience } from "./waiting.svelte";

/** What came of writing a drawing, or why there is nothing. */
export type CameOf<As extends keyof WrittenForms> =
  | { readonly written: WrittenForms[As] }
  | { readonly why: Message };

/** Writes the drawing that is shown. What was asked before it changed does not come after it. */
export function write<As extends keyof WrittenForms>(
  session: Session,
  as: As,
  name: string,
): Elsewhere<CameOf<As>> {
  const { document, told, lit } = session;
  const writing = writeWithPatience({ as, document, told, lit }, name);
  const answer = writing.answer.then((found): CameOf<As> => {
    if (session.document !== document) return { why: say("share.changed", { name }) };
    if (found === undefined) return { why: say("share.stopped", { name }) };
    return "failed" in found ? { why: say("share.failed", { why: found.failed }) } : { written: found };
  });
  return { answer, stop: writing.stop };
}

/** Saves the picture as an SVG, and says what came of it. */
export async function saveSvg(session: Session): Promise<void> {
  const name = fileNameOf(session.document, "svg");
  const came = await write(session, "svg", name).answer;
  if (came === undefined) return;
  if ("why" in came) return session.say(came.why, "refusal");
  session.say(say("app.saved", { name: download(name, came.written.file, "image/svg+xml") }));
}
