import { type Message, say } from "./message";

/**
 * Several things in a row: `a, b and c`, or `a, b or c`.
 *
 * @param items one at least: a sentence about nothing is another sentence
 */
export function inARow(items: readonly Message[], word: "row.and" | "row.or" = "row.and"): Message {
  const last = items.at(-1)!;
  return items.length === 1 ? last : say(word, { first: withCommas(items.slice(0, -1)), rest: last });
}

/** Joined by halves: joined one by one, a long list would be spelled from deeper than a program can go. */
function withCommas(items: readonly Message[]): Message {
  if (items.length === 1) return items[0]!;
  const middle = items.length >> 1;
  return say("row.comma", {
    first: withCommas(items.slice(0, middle)),
    rest: withCommas(items.slice(middle)),
  });
}
