import { type Exported, exportMap } from "../core";
import { eachFile } from "./eachFile";
import { entryJson, ledgerLines } from "./ledger";
import { writeBeside, writeTo } from "./output";
import { heading, printable } from "./print";
import { say, spell } from "./words";

const ENDING = ".geojson";

/** Writes a drawing for other programs, and says what of it is not in there. */
export const exportFiles = eachFile({
  name: "export",
  summary: "cli.export.summary",
  help: "cli.export.help",
  flags: [{ name: "--out", short: "-o", value: "OUT" }],
  before: (call) => void writeTo(call.flags, call.files, ENDING),
  async answer({ file, document, call }) {
    const done = exportMap(document);
    const out = writeTo(call.flags, call.files, ENDING)?.(file);
    if (out !== undefined) await writeBeside(out, done.text);
    const told = [
      heading(file, document.title),
      ...lossLines(done),
      ...(out === undefined ? [] : ["", spell(say("cli.wrote", { file, out }))]),
    ];
    return {
      ok: true,
      json: {
        file,
        ok: true,
        leftOut: done.leftOut.map(entryJson),
        approximated: done.approximated.map(entryJson),
        ...(out === undefined ? { map: JSON.parse(done.text) as unknown } : { out }),
      },
      lines: told,
      ...(out === undefined ? { raw: printable(done.text) } : {}),
      aside: call.json || out !== undefined ? [] : told,
    };
  },
});

const lossLines = ({ leftOut, approximated }: Exported): string[] => [
  ...ledgerLines("leftOut", leftOut),
  ...ledgerLines("approximated", approximated),
];
