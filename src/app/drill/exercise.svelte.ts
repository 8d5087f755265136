import {
  assess,
  type Assessment,
  type DrillQuestion,
  drillQuestion,
  type DrillRequest,
  type ElementId,
  type Noted,
  type Owner,
  type PointId,
  letterOf,
  type Level,
  MadeDrawings,
  scoreOfAnswer,
  type StillhotDocument,
} from "../../core";
import type { AskedItem } from "./asked";

/** Questions of one exercise: two minutes of them. */
export const QUESTIONS = 5;

/** What an exercise is made of, whatever the number of its questions. */
export interface ExerciseRequest extends Omit<DrillRequest, "count" | "kinds"> {
  /** the very questions, each by its kind and level; where nothing is said, the kinds in turn at one level */
  readonly items?: readonly AskedItem[];
}

/** Seeds that are tried for a question of one kind: not every drawing has one. */
const MOST_SEEDS = 6;

function questionAt(
  { items, ...asking }: ExerciseRequest,
  at: number,
  made: MadeDrawings,
): DrillQuestion | undefined {
  if (items === undefined) return drillQuestion(asking, at, made);
  const item = items[at];
  if (item === undefined) return undefined;
  for (let nth = 0; nth < MOST_SEEDS; nth++) {
    const seed = asking.seed + nth;
    const question = drillQuestion({ ...asking, seed, level: item.level, kinds: [item.kind] }, at, made);
    if (question !== undefined) return question;
  }
  return undefined;
}

/** Some questions, one after the other: what was answered, what was right, and how many points that makes. */
export class Exercise {
  readonly asking: ExerciseRequest;
  /** the question's place, the first one at 0; `QUESTIONS` when all were answered */
  at = $state(0);
  question = $state.raw<DrillQuestion | undefined>(undefined);
  /** options that were chosen, in this order */
  given = $state.raw<readonly number[]>([]);
  isAnswered = $state(false);
  points = $state(0);
  readonly #made = new MadeDrawings();

  constructor(asking: ExerciseRequest) {
    this.asking = asking;
    this.question = questionAt(asking, 0, this.#made);
  }

  /** how many questions there are */
  get count(): number {
    return this.asking.items?.length ?? QUESTIONS;
  }

  get isOver(): boolean {
    return this.at >= this.count || this.question === undefined;
  }

  /** The level of the drawing that is asked about; nothing where it is the learner's own. */
  get level(): Level | undefined {
    if (this.asking.documents !== undefined) return undefined;
    return this.asking.items?.[this.at]?.level ?? this.asking.level;
  }

  /** How much of the answer is right, from −1 to 1. */
  get score(): number {
    return this.question === undefined ? 0 : scoreOfAnswer(this.question, this.given);
  }

  choose(option: number) {
    if (this.isAnswered || this.question === undefined) return;
    const isTakenBack = this.given.includes(option);
    if (isTakenBack) this.given = this.given.filter((it) => it !== option);
    else this.given = this.question.answering === "one" ? [option] : [...this.given, option];
  }

  /** Chooses what stands there on the drawing, where that is one option and no more. */
  chooseAt(owner: Owner | undefined) {
    const there = (this.question?.options ?? []).flatMap(({ at }, index) =>
      at !== undefined && at === owner?.id ? [index] : [],
    );
    if (there.length === 1) this.choose(there[0]!);
  }

  answer() {
    if (this.isAnswered || this.given.length === 0) return;
    this.isAnswered = true;
    this.points += this.score;
  }

  next() {
    this.at++;
    this.given = [];
    this.isAnswered = false;
    this.question = this.at < this.count ? questionAt(this.asking, this.at, this.#made) : undefined;
  }
}

/** What the drawing shows of its conductors: nothing of their states before the answer, all of them with it. */
export function shownOf(document: StillhotDocument, isAnswered: boolean): Assessment {
  const assessment = assess(document);
  if (isAnswered) return assessment;
  const conductors = Object.fromEntries(
    Object.entries(assessment.conductors).map(([id, it]) => [id, { ...it, state: "neutral" as const }]),
  );
  return { ...assessment, conductors };
}

/** The letters of the options where they stand on the drawing, and a mark at what the question is about. */
export function lettersOn({ options, about }: DrillQuestion): Map<PointId | ElementId, Noted> {
  const letters = new Map<PointId | ElementId, string>();
  if (about !== undefined) letters.set(about, "?");
  options.forEach(({ at }, index) => {
    if (at !== undefined) letters.set(at, [letters.get(at), letterOf(index)].filter(Boolean).join(" "));
  });
  return new Map([...letters].map(([id, text]) => [id, { text, look: "ink" }]));
}
