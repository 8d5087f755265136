import { letterOf } from "../../core";

/** How the code of a vote begins; then who votes, by letters that the phone made up, and for what. */
const VOTE = /^stillhot-vote\.([a-z0-9]{6})\.([a-z]*)$/;

/** The code of a vote for some options, by which a camera tells one phone from another and nobody a person. */
export const voteCode = (voter: string, options: readonly number[]): string =>
  `stillhot-vote.${voter}.${[...options]
    .sort((a, b) => a - b)
    .map(letterOf)
    .join("")}`;

/** What a class votes: hands that somebody counted, and phones that a camera read. */
export class Votes {
  #hands = $state.raw<readonly number[]>([]);
  #phones = $state.raw<ReadonlyMap<string, readonly number[]>>(new Map());

  /** @param options how many there are to vote for */
  constructor(options: number) {
    this.#hands = Array.from({ length: options }, () => 0);
  }

  /** votes for each option */
  readonly counts = $derived(
    this.#hands.map((hands, option) => {
      const phones = [...this.#phones.values()].filter((it) => it.includes(option));
      return hands + phones.length;
    }),
  );

  /** Counts hands; what phones voted stays. */
  count(option: number, by: 1 | -1) {
    this.#hands = this.#hands.map((it, index) => (index === option ? Math.max(0, it + by) : it));
  }

  /** Counts the vote of a phone, in place of what the same phone voted before. @returns whether the text is a vote */
  take(text: string): boolean {
    const [, voter, letters] = VOTE.exec(text) ?? [];
    if (voter === undefined || letters === undefined) return false;
    const options = [...letters].map((it) => it.charCodeAt(0) - letterOf(0).charCodeAt(0));
    if (options.some((it) => it >= this.#hands.length)) return false;
    this.#phones = new Map([...this.#phones, [voter, [...new Set(options)]]]);
    return true;
  }
}
