import type { ExitCode, Io } from "./io";
import type { MessageKey } from "./words";

/** A flag that a command knows beside `--json` and `--help`. */
export interface Flag {
  readonly name: `--${string}`;
  /** a second way to write it, such as `-o` */
  readonly short?: `-${string}`;
  /** what its value is called in the help; a flag without one is on or off */
  readonly value?: string;
}

/** What was asked for on one line. */
export interface Call {
  readonly files: readonly string[];
  readonly json: boolean;
  /** values of flags, by name; `true` for those that are on or off */
  readonly flags: ReadonlyMap<string, string | true>;
}

/** One command of the program: how it is called, what it takes, and what it does. */
export interface Command {
  readonly name: string;
  /** one line in the list of commands */
  readonly summary: MessageKey;
  /** the page of `stillhot NAME --help` */
  readonly help: MessageKey;
  readonly flags: readonly Flag[];
  /** a command that takes none runs by itself; one to which they are optional may */
  readonly takesFiles: boolean | "optional";
  run(call: Call, io: Io): Promise<ExitCode>;
}

/** A line that cannot be carried out as it stands: printed with where to read more. */
export class UsageError extends Error {}
