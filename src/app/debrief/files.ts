import { type Attempt, classCsv, isRefusal, readAttempt, writeAttempt, xapiOf } from "../../core";
import { download, fileNameOf } from "../share/files";
import { speech } from "../words/language.svelte";
import { told } from "../words/words";

/** Asks for one file or several. */
export function askForFiles(): Promise<readonly File[]> {
  return new Promise((done) => {
    const input = document.createElement("input");
    input.type = "file";
    input.multiple = true;
    input.accept = ".json,application/json";
    input.addEventListener("change", () => done([...(input.files ?? [])]));
    input.addEventListener("cancel", () => done([]));
    input.click();
  });
}

/** What could be read of files that were chosen. */
export interface ReadFiles {
  readonly attempts: readonly Attempt[];
  /** files that are none, or that somebody edited, each with the reason */
  readonly problems: readonly { readonly name: string; readonly why: string }[];
}

/** The page answers a press at least this often while files are read [ms]. */
const SLICE_MS = 40;

/** Reads a whole class at once. The files come in together; taking them apart lets the page breathe in between. */
export async function readAttempts(files: readonly File[]): Promise<ReadFiles> {
  const texts = await Promise.all(files.map((file) => file.text()));
  const attempts: Attempt[] = [];
  const problems: { name: string; why: string }[] = [];
  let since = performance.now();
  for (const [index, text] of texts.entries()) {
    if (performance.now() - since > SLICE_MS) {
      await new Promise((done) => setTimeout(done));
      since = performance.now();
    }
    const read = readAttempt(text);
    if (isRefusal(read)) problems.push({ name: files[index]!.name, why: told(read.refused) });
    else attempts.push(read);
  }
  return { attempts, problems };
}

const nameOf = ({ document, who }: Attempt, extension: string): string =>
  fileNameOf({ ...document, title: `${document.title} ${who}`.trim() }, extension);

/** Hands an attempt over as a file; returns its name. */
export const saveAttempt = (attempt: Attempt): string =>
  download(nameOf(attempt, "attempt.json"), writeAttempt(attempt));

/** Hands a class over as a table, in the language of the app; returns the file's name. */
export const saveCsv = (attempts: readonly Attempt[]): string =>
  download(nameOf(attempts[0]!, "csv"), classCsv(attempts, speech.catalogue), "text/csv");

/** Hands attempts over as xAPI statements; returns the file's name. */
export const saveXapi = (attempts: readonly Attempt[]): string =>
  download(
    nameOf(attempts[0]!, "xapi.json"),
    `${JSON.stringify(
      attempts.flatMap((it) => xapiOf(it, { language: speech.language })),
      undefined,
      2,
    )}\n`,
  );
