import type { StillhotDocument } from "../../document";
import { chanceFrom } from "../generate/chance";
import { generateTap, type TapRequest } from "../generate/generate";
import type { Level } from "../generate/levels";
import type { TapLanguage } from "../generate/words";
import { detector } from "./kinds/detector";
import { ground } from "./kinds/ground";
import { live } from "./kinds/live";
import { look } from "./kinds/look";
import { mistake } from "./kinds/mistake";
import { oneWrong } from "./kinds/oneWrong";
import { order } from "./kinds/order";
import { tool } from "./kinds/tool";
import { DRILL_KINDS, type DrillKind, type DrillMaker, type DrillQuestion } from "./question";

const MAKERS: Readonly<Record<DrillKind, DrillMaker>> = {
  live,
  "one-wrong": oneWrong,
  detector,
  tool,
  ground,
  order,
  mistake,
  look,
};

/** What a drill is made of. The same request gives the same questions for ever. */
export interface DrillRequest {
  readonly seed: number;
  readonly count: number;
  /** of the drawings that are made for it; nothing where drawings are given */
  readonly level?: Level;
  /** drawings of one's own, in place of made ones */
  readonly documents?: readonly StillhotDocument[];
  readonly language?: TapLanguage;
  /** kinds that are asked, in turn; all of them where nothing is said */
  readonly kinds?: readonly DrillKind[];
}

/** Questions that one drawing serves for, so that a sheet is not all drawings. */
const A_DRAWING = 2;
/** Drawings that are tried before a question is left out. */
const TRIES = 4;

/** So many questions, the kinds in turn; fewer where the drawings do not give as many. */
export function drillOf(request: DrillRequest): DrillQuestion[] {
  const made = new MadeDrawings();
  return Array.from({ length: request.count }, (_, at) => drillQuestion(request, at, made)).filter(
    (it) => it !== undefined,
  );
}

/**
 * One question of a drill by itself, the first one at 0: the one that the whole drill has there.
 *
 * @param made of whoever asks one question after the other: some are about the same drawing
 */
export function drillQuestion(
  request: Omit<DrillRequest, "count">,
  at: number,
  made = new MadeDrawings(),
): DrillQuestion | undefined {
  const kinds = kindsFor(request);
  for (let turn = 0; turn < TRIES; turn++) {
    const document = drawingFor(request, Math.floor(at / A_DRAWING), turn, made);
    // Where a drawing has no question of the kind whose turn it is, it is asked for another.
    for (let other = 0; other < (turn === TRIES - 1 ? kinds.length : 1); other++) {
      const kind = kinds[(at + other) % kinds.length]!;
      const question = MAKERS[kind](document, chanceFrom(`${kind}/${request.seed}/${at}/${turn}`));
      if (question !== undefined) return question;
    }
  }
  return undefined;
}

const kindsFor = ({
  seed,
  kinds = DRILL_KINDS,
}: Pick<DrillRequest, "seed" | "kinds">): readonly DrillKind[] => chanceFrom(`kinds/${seed}`).shuffled(kinds);

function drawingFor(
  { documents, level = 1, seed, language }: Omit<DrillRequest, "count">,
  place: number,
  turn: number,
  made: MadeDrawings,
): StillhotDocument {
  if (documents !== undefined) return documents[(place + turn) % documents.length]!;
  const tap = chanceFrom(`tap/${seed}/${place}/${turn}`).between(0, 999_999_999);
  return made.of({ level, seed: tap, ...(language === undefined ? {} : { language }) });
}

/** The drawing that was made last: the next question is asked of it too, and its order of steps is known. */
export class MadeDrawings {
  #last: { readonly key: string; readonly document: StillhotDocument } | undefined;

  of(request: TapRequest): StillhotDocument {
    const key = JSON.stringify(request);
    if (this.#last?.key !== key) this.#last = { key, document: generateTap(request) };
    return this.#last.document;
  }
}
