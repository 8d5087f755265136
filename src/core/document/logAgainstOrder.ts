import { type Step, undoesTests } from "../steps";
import { canonicalText } from "./canonical";
import { isDoneStep, isStanding, type JobLogLine } from "./jobLog";

/**
 * Which step of the order each line of the log ticks, from 0; nothing for a line that ticks none. The order may have been
 * changed since: what was done keeps its place among what was done, and where a step was only put otherwise it still counts.
 */
export function placesInOrder(
  log: readonly JobLogLine[],
  order: readonly Step[],
): readonly (number | undefined)[] {
  const ticked = log
    .flatMap((line, index) =>
      isDoneStep(line) && line.struck === undefined && line.n !== undefined
        ? [{ index, step: line.step, n: line.n }]
        : [],
    )
    .sort((a, b) => a.n - b.n);
  const places = new Array<number | undefined>(log.length).fill(undefined);
  const taken = new Set<number>();
  const take = (line: number, place: number) => {
    places[line] = place;
    taken.add(place);
  };
  for (const [row, column] of inTheSameOrder(
    ticked.map(({ step }) => step),
    order,
  ))
    take(ticked[row]!.index, column);
  // What is left was moved within the order.
  for (const { index, step } of ticked) {
    if (places[index] !== undefined) continue;
    const place = order.findIndex((it, at) => !taken.has(at) && likeness(step, it) > 0);
    if (place >= 0) take(index, place);
  }
  return places;
}

/** The longest pairing of two orders in which nothing changes places, word for word where that may be. */
function inTheSameOrder(done: readonly Step[], order: readonly Step[]): (readonly [number, number])[] {
  const best = Array.from({ length: done.length + 1 }, () => new Array<number>(order.length + 1).fill(0));
  for (let row = done.length - 1; row >= 0; row--)
    for (let column = order.length - 1; column >= 0; column--) {
      const alike = likeness(done[row]!, order[column]!);
      best[row]![column] = Math.max(
        best[row + 1]![column]!,
        best[row]![column + 1]!,
        alike === 0 ? 0 : alike + best[row + 1]![column + 1]!,
      );
    }
  const pairs: (readonly [number, number])[] = [];
  for (let row = 0, column = 0; row < done.length && column < order.length;) {
    const alike = likeness(done[row]!, order[column]!);
    if (alike > 0 && best[row]![column] === alike + best[row + 1]![column + 1]!)
      pairs.push([row++, column++]);
    else if (best[row]![column] === best[row]![column + 1]) column++;
    else row++;
  }
  return pairs;
}

/** Two for the same step, one for the same act put otherwise (with another tool, say), nothing for another act. */
function likeness(one: Step, other: Step): 0 | 1 | 2 {
  if (one.do !== other.do || one.element !== other.element) return 0;
  if (one.at !== other.at || one.phases !== other.phases) return 0;
  return isSameStep(one, other) ? 2 : 1;
}

/** Whether two steps say the same; a mark that one is done is no difference. */
export const isSameStep = (one: Step, other: Step): boolean =>
  one === other || textOfStep(one) === textOfStep(other);

/** A step as one comparable text. */
export const textOfStep = ({ done: _done, ...step }: Step): string => canonicalText(step);

/**
 * Which steps of the order are done by the log. A test that was done is marked only while nothing undid it that the order
 * does not show after it: whoever reads the order alone must not take it for a proof that has gone.
 */
export function doneByLog(log: readonly JobLogLine[], order: readonly Step[]): ReadonlySet<number> {
  const places = placesInOrder(log, order);
  const done = new Set<number>();
  log.forEach((line, index) => {
    const place = places[index];
    if (place === undefined || !isStanding(line)) return;
    const isUndone = (it: JobLogLine, at: number) =>
      at > index && isStanding(it) && undoesTests(it.step) && (places[at] ?? -1) < place;
    if (line.step.do === "test" && log.some(isUndone)) return;
    done.add(place);
  });
  return done;
}
