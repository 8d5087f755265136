import { fingerprintLetters, fingerprintOf, type StillhotDocument } from "../../core";
import type { Opened } from "./files";
import { say } from "../words/catalogue";
import { t, told } from "../words/words";
import { codeReader, pictureOf } from "./codeReader";
import { fragmentOf, readCodes, readLink } from "./link";

/** What came of a code: more are to come, a drawing, or the reason why there is none. */
export type ScanOutcome =
  | { readonly count: number; readonly have: readonly number[] }
  | { readonly document: StillhotDocument }
  | { readonly problem: string };

const PART = /^n1p\.([A-Z0-9]{8})\.(\d)\.(\d)\.\d+$/;

/** Codes as they are scanned, in whatever order, until they are the whole of one drawing. Anyone may have printed them. */
export class Scanned {
  readonly #parts = new Map<number, string>();
  #set = "";

  /** Takes the text of one more code. */
  async take(text: string): Promise<ScanOutcome> {
    const fragment = fragmentOf(text);
    if (fragment === undefined) return { problem: t("scan.notOurs") };
    const part = PART.exec(fragment);
    return part === null ? opened(await readLink(fragment)) : this.#takePart(fragment, part);
  }

  async #takePart(fragment: string, [, letters, n, count]: RegExpExecArray): Promise<ScanOutcome> {
    const set = `${letters} ${count}`;
    if (this.#set !== "" && this.#set !== set) return { problem: t("share.codesUnfit") };
    this.#set = set;
    this.#parts.set(Number(n), fragment);
    if (this.#parts.size < Number(count))
      return { count: Number(count), have: [...this.#parts.keys()].sort((a, b) => a - b) };
    const texts = [...this.#parts.values()];
    this.startAgain();
    const outcome = opened(await readCodes(texts));
    // What the codes say of themselves must be what they make.
    const isWhole = !("document" in outcome) || lettersOf(outcome.document) === letters;
    return isWhole ? outcome : { problem: t("share.codesUnfit") };
  }

  /** Forgets the codes of a drawing that was not whole. */
  startAgain() {
    this.#parts.clear();
    this.#set = "";
  }
}

/** Nothing is wrong with what the person stopped. */
const opened = (read: Opened): ScanOutcome =>
  "document" in read
    ? { document: read.document }
    : { problem: read.problems[0] ?? told(say("app.openStopped", { name: t("share.theLink") })) };

const lettersOf = (document: StillhotDocument): string =>
  fingerprintLetters(fingerprintOf(document)).replace(" ", "");

/** The drawing in a photograph of its code, or why that code holds none; nothing where no code is in it. */
export async function readPhotograph(file: File): Promise<Opened | undefined> {
  const picture = await pictureOf(file);
  if (picture === undefined) return undefined;
  const [text] = await (await codeReader()).read(picture, true);
  picture.close();
  const fragment = text === undefined ? undefined : fragmentOf(text);
  if (text === undefined) return undefined;
  return fragment === undefined ? { problems: [t("scan.notOurs")] } : readLink(fragment);
}

/** How a drawing on paper stands to the one that is open: the very same, one of its name in another state, or another. */
export interface Likeness {
  readonly is: "same" | "stale" | "other";
  readonly paper: string;
  readonly here: string;
}

/** How the drawing on paper stands to the one here: the same, another state of it, or another drawing. */
export function likeness(paper: StillhotDocument, here: StillhotDocument): Likeness {
  const [onPaper, onScreen] = [fingerprintOf(paper), fingerprintOf(here)];
  const letters = { paper: fingerprintLetters(onPaper), here: fingerprintLetters(onScreen) };
  if (onPaper === onScreen) return { is: "same", ...letters };
  // What a scenario hides never goes onto a sheet.
  const { scenario: _, ...shown } = here;
  const printed = fingerprintOf(shown);
  if (onPaper === printed) return { is: "same", ...letters, here: fingerprintLetters(printed) };
  return { is: nameOf(paper) === nameOf(here) ? "stale" : "other", ...letters };
}

const nameOf = ({ title }: StillhotDocument): string => title.trim().toLowerCase();
