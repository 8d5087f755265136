import { type Call, UsageError } from "./command";
import { say, spell } from "./words";

interface Range {
  readonly from: number;
  readonly to: number;
  /** what holds where the flag is left out; without it the flag is needed */
  readonly otherwise?: number;
}

/** A flag's value as a whole number of a range. */
export function wholeNumber(flags: Call["flags"], flag: string, { from, to, otherwise }: Range): number {
  const text = flags.get(flag);
  if (text === undefined && otherwise !== undefined) return otherwise;
  if (text === undefined) throw new UsageError(spell(say("cli.flagNeeded", { flag, from, to })));
  const value = Number(text);
  if (/^\d{1,10}$/.test(String(text)) && value >= from && value <= to) return value;
  throw new UsageError(spell(say("cli.noWholeNumber", { flag, found: String(text), from, to })));
}
