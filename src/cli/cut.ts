import { writeDocument } from "../core";
import { AROUND, cutJson, cutLines, OPENINGS, openingsOf, pieceCalled } from "./around";
import { UsageError } from "./command";
import { eachFile } from "./eachFile";
import { heading, printable } from "./print";
import { write, writeTo } from "./output";
import { say, spell } from "./words";

const ENDING = ".stillhot.json";

/** Cuts out what a job needs of a large drawing, with an equal source where the rest was. */
export const cut = eachFile({
  name: "cut",
  summary: "cli.cut.summary",
  help: "cli.cut.help",
  flags: [AROUND, OPENINGS, { name: "--out", short: "-o", value: "OUT" }],
  before(call) {
    openingsOf(call);
    writeTo(call.flags, call.files, ENDING);
    if (!call.flags.has("--around")) throw new UsageError(spell(say("cli.cut.needsAround")));
  },
  async answer({ file, document, call }) {
    const piece = pieceCalled(document, String(call.flags.get("--around")), openingsOf(call));
    const out = writeTo(call.flags, call.files, ENDING)?.(file);
    const text = writeDocument(piece.document);
    if (out !== undefined) await write(out, text);
    const told = [
      heading(file, document.title),
      ...cutLines(document, piece),
      ...(out === undefined ? [] : ["", spell(say("cli.wrote", { file, out }))]),
    ];
    return {
      ok: true,
      json: {
        file,
        ok: true,
        ...cutJson(document, piece),
        ...(out === undefined ? { drawing: piece.document } : { out }),
      },
      lines: told,
      ...(out === undefined ? { raw: printable(text) } : {}),
      aside: call.json || out !== undefined ? [] : told,
    };
  },
});
