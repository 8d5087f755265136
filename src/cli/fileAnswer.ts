import type { Refused } from "./input";

/** What a command says of one file. */
export interface FileAnswer {
  /** false: exit code 1 */
  readonly ok: boolean;
  readonly json: unknown;
  /** lines for a person */
  readonly lines: readonly string[];
  /** text to be printed as it is, in place of `lines`: a picture, a page, a file */
  readonly raw?: string;
  /** lines for standard error beside them */
  readonly aside?: readonly string[];
}

/** What came of one file: its answer, or why it could not be used. */
export type FileOutcome = FileAnswer | Refused;
