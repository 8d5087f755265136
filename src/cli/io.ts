/** What a command may touch of the world around it: tests hand in their own. */
export interface Io {
  /** standard output, text as it is */
  out(text: string): void;
  /** standard error */
  err(text: string): void;
  /** standard input, read at most once */
  readonly stdin: AsyncIterable<Uint8Array | string>;
  /** for what runs until it is stopped: the signal that ends it, listened to from now on */
  untilStopped(): AbortSignal;
}

/** 0: done, nothing wrong found. 1: done, findings. 2: bad input or usage. */
export type ExitCode = 0 | 1 | 2;
