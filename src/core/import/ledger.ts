import type { Message, MessageKey, MessageGaps } from "../terms";
import { say } from "../terms";

/** One sort of thing that an importer did on its own account: how often, to which, and why. */
export interface LedgerEntry {
  readonly what: Message;
  readonly why: Message;
  readonly count: number;
  /** names of the first few that it was done to */
  readonly names: readonly string[];
}

/** What the file did not say and was put in; what it said and the drawing does not hold; what the drawing holds less exactly. */
export type LedgerSide = "assumed" | "leftOut" | "approximated" | "warnings";

/** A sort of entry: `importing.NAME` says what was done, `importing.NAME.why` says why. */
export type LedgerName = MessageKey extends infer Key
  ? Key extends `importing.${infer Name}.why`
    ? Name
    : never
  : never;

/** Errors beyond a page's worth are counted. */
const MOST_ERRORS = 20;
const MOST_NAMED = 8;

interface Entry {
  readonly what: Message;
  readonly why: Message;
  count: number;
  readonly names: string[];
}

/** What an importer has to tell, gathered as it goes: nothing is put in, left out or rounded in silence. */
export class Ledger {
  readonly errors: Message[] = [];
  moreErrors = 0;
  readonly #sides: Record<LedgerSide, Map<string, Entry>> = {
    assumed: new Map(),
    leftOut: new Map(),
    approximated: new Map(),
    warnings: new Map(),
  };

  error(key: MessageKey, gaps?: MessageGaps): void {
    if (this.errors.length < MOST_ERRORS) this.errors.push(say(key, gaps));
    else this.moreErrors++;
  }

  /** Counts one more thing of a sort; entries of one sort with other gaps stand apart. */
  note(side: LedgerSide, name: LedgerName, thing: string, gaps?: MessageGaps): void {
    const key = gaps === undefined ? name : `${name} ${JSON.stringify(gaps)}`;
    const entry = this.#sides[side].get(key);
    if (entry === undefined)
      this.#sides[side].set(key, {
        what: say(`importing.${name}` as MessageKey, gaps),
        why: say(`importing.${name}.why` as MessageKey, gaps),
        count: 1,
        names: thing === "" ? [] : [thing],
      });
    else {
      entry.count++;
      if (thing !== "" && entry.names.length < MOST_NAMED) entry.names.push(thing);
    }
  }

  entries(side: LedgerSide): LedgerEntry[] {
    return [...this.#sides[side].values()];
  }
}
