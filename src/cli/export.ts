import { type Exported, exportMap, exportModel } from "../core";
import { type Call, UsageError } from "./command";
import { eachFile } from "./eachFile";
import { entryJson, ledgerLines } from "./ledger";
import { writeBeside, writeTo } from "./output";
import { heading, printable } from "./print";
import { say, spell } from "./words";

/** What a drawing can be written as: what does it, what its files are called by, and how it stands in an answer. */
const FORMS = {
  map: {
    write: exportMap,
    ending: ".geojson",
    inJson: (text: string) => ({ map: JSON.parse(text) as unknown }),
  },
  cim: { write: exportModel, ending: ".xml", inJson: (text: string) => ({ cim: text }) },
} as const;

/** What is asked for with `--as`, else what the ending of `-o` says, else a map. */
function formOf({ flags }: Call): (typeof FORMS)[keyof typeof FORMS] {
  const asked = flags.get("--as");
  if (asked === "map" || asked === "cim") return FORMS[asked];
  if (asked !== undefined)
    throw new UsageError(
      spell(say("cli.export.noForm", { form: String(asked), known: Object.keys(FORMS).join(", ") })),
    );
  return /\.(xml|rdf)$/i.test(String(flags.get("--out") ?? "")) ? FORMS.cim : FORMS.map;
}

/** Writes a drawing for other programs, and says what of it is not in there. */
export const exportFiles = eachFile({
  name: "export",
  summary: "cli.export.summary",
  help: "cli.export.help",
  flags: [
    { name: "--out", short: "-o", value: "OUT" },
    { name: "--as", value: "FORM" },
  ],
  before: (call) => void writeTo(call.flags, call.files, formOf(call).ending),
  async answer({ file, document, call }) {
    const form = formOf(call);
    const done = form.write(document);
    const out = writeTo(call.flags, call.files, form.ending)?.(file);
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
        ...(out === undefined ? form.inJson(done.text) : { out }),
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
