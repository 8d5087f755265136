import {
  type Assessment,
  type AssessmentColumns,
  buffersOf,
  type Catalogue,
  codeTexts,
  elementCountOf,
  type ElementId,
  type Exported,
  exportMap,
  exportModel,
  fingerprintLetters,
  fingerprintOf,
  fromColumns,
  intoSvg,
  linkTo,
  type StillhotDocument,
  toColumns,
} from "../../core";
import { learn } from "../words/catalogue";
import { speech } from "../words/language.svelte";
import { svgOf } from "./drawnSvg";
import { answeredBy, type Elsewhere } from "./elsewhere";
import type { Failed } from "./line";

/** What a drawing becomes to be taken along, by what it is asked as. */
export interface WrittenForms {
  readonly map: WrittenFile & NotInIt;
  readonly model: WrittenFile & NotInIt;
  /** a picture that opens again */
  readonly svg: WrittenFile;
  /** what a PNG is painted from, and the link that it is to carry */
  readonly png: { readonly picture: Blob; readonly link: string };
  /** what follows the `#` of a link, the fingerprint, and the texts of the codes that open it */
  readonly link: { readonly link: string; readonly letters: string; readonly codes: readonly string[] };
}

interface WrittenFile {
  /** a blob is handed over without a copy, however long it is */
  readonly file: Blob;
}

type NotInIt = Omit<Exported, "text">;

/** A drawing, and what it is to become. */
export interface WritingQuestion<As extends keyof WrittenForms = keyof WrittenForms> {
  readonly as: As;
  readonly document: StillhotDocument;
  /** what is known of it, for a picture */
  readonly told?: Assessment | undefined;
  readonly lit?: readonly ElementId[];
  /** where the app is, for codes */
  readonly address?: string;
}

/** The same as it is sent: with columns instead of records, and with the words of whoever asks. */
export type WritingMessage = Omit<WritingQuestion, "told"> & {
  readonly columns: AssessmentColumns | undefined;
  readonly catalogue: Catalogue;
};

/** Drawings up to this many elements are written at once: a worker would take longer to begin. */
const AT_ONCE_UP_TO = 150;

/** Writes a drawing: a large one off the main thread, where there is another one. */
export function writeElsewhere<As extends keyof WrittenForms>(
  question: WritingQuestion<As>,
): Elsewhere<WrittenForms[As] | Failed> {
  if (typeof Worker === "undefined" || elementCountOf(question.document.system) <= AT_ONCE_UP_TO) {
    const answer = saidOf(() => written(question));
    return { answer: Promise.resolve(answer), stop: () => undefined };
  }
  const worker = new Worker(new URL("./writing.worker.ts", import.meta.url), { type: "module" });
  const writing = answeredBy<WrittenForms[As]>(worker);
  const message = messageOf(question);
  // What is known was made into columns just now; the drawing is copied in a task of its own, so that the page answers in between.
  setTimeout(() =>
    worker.postMessage(message, message.columns === undefined ? [] : buffersOf(message.columns)),
  );
  return writing;
}

/** A question as it is sent. */
export function messageOf({ told, ...question }: WritingQuestion): WritingMessage {
  const columns = told === undefined ? undefined : toColumns(told).columns;
  return { ...question, columns, catalogue: speech.catalogue };
}

/** What the worker answers, in the words of whoever asked. */
export function answerWriting({ columns, catalogue, ...question }: WritingMessage) {
  learn(catalogue);
  speech.catalogue = catalogue;
  const told = columns === undefined ? undefined : fromColumns(columns).assessment;
  return saidOf(() => written({ ...question, told }));
}

function saidOf<Answer>(answer: () => Answer): Answer | Failed {
  try {
    return answer();
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}

const WRITERS: { readonly [As in keyof WrittenForms]: (question: WritingQuestion) => WrittenForms[As] } = {
  map: ({ document }) => fileOf(exportMap(document)),
  model: ({ document }) => fileOf(exportModel(document)),
  svg: ({ document, told, lit = [] }) => ({
    file: new Blob([intoSvg(svgOf(document, told, { lit }), linkTo(document))]),
  }),
  png: ({ document, told }) => ({
    picture: new Blob([svgOf(document, told)], { type: "image/svg+xml" }),
    link: linkTo(document),
  }),
  link: ({ document, address = "" }) => {
    const letters = fingerprintLetters(fingerprintOf(document));
    return { link: linkTo(document), letters, codes: codeTexts(document, letters, address) };
  },
};

const written = <As extends keyof WrittenForms>(question: WritingQuestion<As>): WrittenForms[As] =>
  WRITERS[question.as](question);

const fileOf = ({ text, ...notInIt }: Exported): WrittenFile & NotInIt => ({
  file: new Blob([text]),
  ...notInIt,
});
