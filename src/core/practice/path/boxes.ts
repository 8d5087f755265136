import { dayAfter } from "./days";

/**
 * Days that what was missed waits in each box: a day, three, a week. The rule of the boxes is Sebastian Leitner's: what is
 * known goes on to the next box, what is not goes back to the first. His boxes were asked when they were full; fixed days
 * in their place are common practice, and these three are ours.
 *
 * @see Leitner, So lernt man lernen, 1972
 */
export const BOX_DAYS = [1, 3, 7] as const;

/** One answer: the day, as the calendar of whoever gave it has it, `2026-03-31`, and whether it was right. */
export interface Answered {
  readonly day: string;
  readonly right: boolean;
}

/** Where something that was missed waits, and the day from which it is asked again. */
export interface InBox {
  /** the first one at 0 */
  readonly box: number;
  readonly due: string;
}

/**
 * Where something stands after all that was answered to it, the oldest answer first: in a box, or in none, where it was never
 * missed or came through all of them. What is answered right before its day stays where it is: it was fresh.
 */
export function boxAfter(answers: readonly Answered[]): InBox | undefined {
  let at: InBox | undefined;
  for (const { day, right } of answers) at = right ? movedOn(at, day) : inBox(0, day);
  return at;
}

function movedOn(at: InBox | undefined, day: string): InBox | undefined {
  if (at === undefined || day < at.due) return at;
  return at.box + 1 < BOX_DAYS.length ? inBox(at.box + 1, day) : undefined;
}

const inBox = (box: number, day: string): InBox => ({ box, due: dayAfter(day, BOX_DAYS[box]!) });
