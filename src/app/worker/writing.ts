import {
  asOf,
  type Assessment,
  type AssessmentColumns,
  type Catalogue,
  codePicture,
  codeTexts,
  type ElementId,
  type Exported,
  exportMap,
  exportModel,
  fingerprintLetters,
  fingerprintOf,
  fromColumns,
  type FromNotation,
  fromNotation,
  intoSvg,
  linkTo,
  type Notation,
  type PaletteName,
  sheetHtml,
  type StillhotDocument,
  toColumns,
  toNotation,
} from "../../core";
import { learn } from "../words/catalogue";
import { speech, type Words } from "../words/language.svelte";
import { today } from "../words/today";
import { clockTime } from "../words/words";
import { svgOf } from "./drawnSvg";
import type { Failed } from "./questions";
import { thumbnailOf } from "./thumbnail";

/** What a drawing becomes to be taken along, by what it is asked as. */
export interface WrittenForms {
  readonly map: WrittenFile & NotInIt;
  readonly model: WrittenFile & NotInIt;
  /** a picture that opens again */
  readonly svg: WrittenFile;
  /** a picture that opens again, or what it is painted from where nothing can be painted beside the page */
  readonly png: WrittenFile | PictureToPaint;
  /** what follows the `#` of a link, the fingerprint, and the texts of the codes that open it */
  readonly link: { readonly link: string; readonly letters: string; readonly codes: readonly string[] };
  /** the job-briefing sheet as a page, and the fingerprint that stands on it */
  readonly sheet: { readonly html: string; readonly letters: string };
  /** the circuit in the notation */
  readonly notation: Notation;
  /** the drawing as a text in the notation would have it, or what is wrong with the text */
  readonly retyped: { readonly outcome: FromNotation };
  /** the fingerprint */
  readonly letters: { readonly letters: string };
  /** the address of a small picture */
  readonly thumbnail: { readonly src: string };
}

interface WrittenFile {
  /** a blob is handed over without a copy, however long it is */
  readonly file: Blob;
}

/** What a PNG is painted from, and the link that it is to carry. */
export interface PictureToPaint {
  readonly picture: Blob;
  readonly link: string;
}

type NotInIt = Omit<Exported, "text">;

/** A drawing, and what it is to become. */
export interface WritingQuestion<As extends keyof WrittenForms = keyof WrittenForms> {
  readonly as: As;
  readonly document: StillhotDocument;
  /** what is known of it, for a picture */
  readonly told?: Assessment | undefined;
  readonly lit?: readonly ElementId[];
  /** the sheet in larger letters */
  readonly largePrint?: boolean;
  /** when the drawing was last changed, as a person writes it, for the sheet */
  readonly drawnAt?: string | undefined;
  readonly palette?: PaletteName;
  /** the text in the notation that it is to become */
  readonly typed?: string;
  /** where the app is, for codes */
  readonly address?: string;
}

/** The same as it is sent: with columns instead of records, and with the words of whoever asks. */
export type WritingMessage = Omit<WritingQuestion, "told"> & {
  readonly columns: AssessmentColumns | undefined;
  readonly catalogue: Catalogue;
  readonly words: Words;
};

/** A question as it is sent. */
export function messageOf({ told, ...question }: WritingQuestion): WritingMessage {
  const columns = told === undefined ? undefined : toColumns(told).columns;
  return { ...question, columns, catalogue: speech.catalogue, words: speech.words };
}

/** What the worker answers, in the words of whoever asked. */
export function answerWriting({ columns, catalogue, words, ...question }: WritingMessage) {
  learn(catalogue);
  speech.words = words;
  speech.catalogue = catalogue;
  const told = columns === undefined ? undefined : fromColumns(columns).assessment;
  return written({ ...question, told });
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
  sheet: ({ document, address = "", largePrint = false, drawnAt }) => {
    const letters = fingerprintLetters(fingerprintOf(document));
    const html = sheetHtml(asOf(document, today()), {
      fingerprint: letters,
      codes: codeTexts(document, letters, address).map((text) => codePicture(text)),
      largePrint,
      language: speech.language,
      ...(drawnAt === undefined ? {} : { drawnAt }),
      catalogue: speech.catalogue,
      timeOf: (at) => clockTime(Date.parse(at)),
    });
    return { html, letters };
  },
  notation: ({ document }) => toNotation(document),
  retyped: ({ document, typed = "" }) => ({ outcome: fromNotation(typed, document) }),
  letters: ({ document }) => ({ letters: fingerprintLetters(fingerprintOf(document)) }),
  thumbnail: ({ document, palette = "sun" }) => ({ src: thumbnailOf(document, palette) }),
};

/** What a drawing becomes, or why it does not. */
export function written<As extends keyof WrittenForms>(
  question: WritingQuestion<As>,
): WrittenForms[As] | Failed {
  try {
    return WRITERS[question.as](question);
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}

const fileOf = ({ text, ...notInIt }: Exported): WrittenFile & NotInIt => ({
  file: new Blob([text]),
  ...notInIt,
});
