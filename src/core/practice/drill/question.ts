import type { StillhotDocument } from "../../document";
import type { ConductorId, ElementId, Message, PointId } from "../../terms";
import type { Chance } from "../generate/chance";

/** What can be asked, each kind with its file in `kinds/`. */
export const DRILL_KINDS = [
  "live",
  "one-wrong",
  "detector",
  "tool",
  "ground",
  "order",
  "mistake",
  "look",
] as const;

/** One of those. */
export type DrillKind = (typeof DRILL_KINDS)[number];

/** One of the answers to choose from. */
export interface DrillOption {
  readonly text: string | Message;
  /** where it stands on the drawing; nothing where it is only words */
  readonly at?: PointId | ElementId;
  /** the conductor that it means */
  readonly conductor?: ConductorId;
}

/** How a question is answered: by one option, by all that are right, or by all of them in their order. */
export type Answering = "one" | "all" | "order";

/** A question on a drawing as it stands, with the engine's own answer. */
export interface DrillQuestion {
  readonly kind: DrillKind;
  /** the drawing that is shown */
  readonly document: StillhotDocument;
  readonly ask: Message;
  /** the one thing that it is about; nothing where it is about all of the drawing */
  readonly about?: PointId | ElementId;
  /** the conductor of `about` that is meant */
  readonly conductor?: ConductorId;
  readonly options: readonly DrillOption[];
  readonly answering: Answering;
  /** indices of options: in order where that is asked for, else ascending */
  readonly answer: readonly number[];
  readonly why: readonly Message[];
  /** what to light with the answer */
  readonly lit: readonly ElementId[];
}

/** Makes a question of its kind from a drawing, or nothing where the drawing has none to ask. */
export type DrillMaker = (document: StillhotDocument, chance: Chance) => DrillQuestion | undefined;

/**
 * How much of an answer is right, from −1 to 1, so that guessing gives nothing on the average: what is right counts for
 * it, what is wrong against it. An order counts whole or not at all.
 */
export function scoreOfAnswer(
  { answering, answer, options }: Pick<DrillQuestion, "answering" | "answer" | "options">,
  given: readonly number[],
): number {
  if (given.length === 0) return 0;
  if (answering === "order") return given.join() === answer.join() ? 1 : 0;
  if (answering === "one") {
    if (given.length > 1) return 0;
    return answer.includes(given[0]!) ? 1 : -1 / (options.length - 1);
  }
  // Each option is a question of its own that a coin would answer: pressing all or none of them earns what chance does.
  const [right, wrong] = [answer.length, options.length - answer.length];
  const hits = given.filter((it) => answer.includes(it)).length;
  return hits / right - (given.length - hits) / wrong;
}

/** Options in another order, with the answer that goes with them. */
export function shuffledOptions<Option>(
  chance: Chance,
  options: readonly { readonly option: Option; readonly isRight: boolean }[],
): { readonly options: Option[]; readonly answer: number[] } {
  const order = chance.shuffled(options);
  return {
    options: order.map(({ option }) => option),
    answer: order.flatMap(({ isRight }, index) => (isRight ? [index] : [])),
  };
}
