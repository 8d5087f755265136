import {
  asOf,
  codeTexts,
  type CodePicture,
  codePicture,
  fingerprintLetters,
  fingerprintOf,
  sheetHtml,
  type StillhotDocument,
} from "../core";
import { type Call, UsageError } from "./command";
import { eachFile } from "./eachFile";
import { writeBeside, writeTo } from "./output";
import { counts, findingJson, findingLines } from "./print";
import { say, speech, spell } from "./words";
import { today } from "./today";

/** The job-briefing sheet, as one page of HTML. */
export const sheet = eachFile({
  name: "sheet",
  summary: "cli.sheet.summary",
  help: "cli.sheet.help",
  flags: [
    { name: "--out", short: "-o", value: "OUT" },
    { name: "--large" },
    { name: "--drawn", value: "TEXT" },
    { name: "--app", value: "URL" },
  ],
  before({ files, flags }) {
    writeTo(flags, files, ".html");
    addressOf(flags);
  },
  async answer({ file, document, warnings, call }) {
    const fingerprint = fingerprintLetters(fingerprintOf(document));
    const drawnAt = call.flags.get("--drawn");
    const html = sheetHtml(asOf(document, today()), {
      fingerprint,
      codes: codesOf(document, fingerprint, addressOf(call.flags)),
      largePrint: call.flags.has("--large"),
      language: speech().language,
      catalogue: speech().catalogue,
      ...(typeof drawnAt === "string" ? { drawnAt } : {}),
    });
    const out = writeTo(call.flags, call.files, ".html")?.(file);
    if (out !== undefined) await writeBeside(out, html);
    const ok = !warnings.some(counts);
    const result = out === undefined ? { html } : { out };
    return {
      ok,
      json: { file, ok, findings: warnings.map(findingJson), fingerprint, ...result },
      lines: [spell(say("cli.wrote", { file, out: out ?? "" }))],
      ...(out === undefined ? { raw: html } : {}),
      aside: call.json ? [] : warnings.flatMap((it) => findingLines(it, file, document)),
    };
  },
});

function addressOf(flags: Call["flags"]): string {
  const app = flags.get("--app");
  if (app === undefined) return "";
  if (typeof app === "string" && /^https?:\/\/[^\s#]+$/.test(app)) return app;
  throw new UsageError(spell(say("cli.sheet.noApp", { app: String(app) })));
}

const codesOf = (document: StillhotDocument, fingerprint: string, address: string): CodePicture[] =>
  codeTexts(document, fingerprint, address).map(codePicture);
