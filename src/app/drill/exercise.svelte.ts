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
  scoreOfAnswer,
  type StillhotDocument,
} from "../../core";

/** Questions of one exercise: two minutes of them. */
export const QUESTIONS = 5;

/** What an exercise is made of, whatever the number of its questions. */
export type ExerciseRequest = Omit<DrillRequest, "count">;

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

  constructor(asking: ExerciseRequest) {
    this.asking = asking;
    this.question = drillQuestion(asking, 0);
  }

  get isOver(): boolean {
    return this.at >= QUESTIONS || this.question === undefined;
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
    this.question = this.at < QUESTIONS ? drillQuestion(this.asking, this.at) : undefined;
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
