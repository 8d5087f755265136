/** What a command may touch of the world around it: tests hand in their own. */
export interface Io {
  /** standard output, text as it is */
  out(text: string): void;
  /** standard error */
  err(text: string): void;
  /**
   * shows how far it is, in one line that the next one takes the place of, and an empty one takes away; absent where nobody
   * sits before standard error
   */
  line?(text: string): void;
  /** standard input, read at most once */
  readonly stdin: AsyncIterable<Uint8Array | string>;
  /** for what runs until it is stopped: the signal that ends it, listened to from now on */
  untilStopped(): AbortSignal;
  /** starts a helper that answers lines of one file side by side with others; absent where there is none */
  helper?(): Helper;
  /** takes what was found of a file in place of its being printed: a helper's way to hand it on */
  take?(outcome: unknown): void;
}

/** The same program in a thread of its own. */
export interface Helper {
  /** what it found of the one file of a line; rejects where it broke down */
  ask(words: readonly string[]): Promise<unknown>;
  end(): void;
}

/** 0: done, nothing wrong found. 1: done, findings. 2: bad input or usage. */
export type ExitCode = 0 | 1 | 2;
