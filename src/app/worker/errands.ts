import type { WorkerQuestion } from "./questions";
import type { ReadingQuestion } from "./reading";
import type { WritingMessage } from "./writing";

/** What a worker is sent for: to answer about a drawing, again and again, or to read or write one and be done. */
export type Errand =
  | ({ readonly to: "answer" } & WorkerQuestion)
  | ({ readonly to: "read" } & ReadingQuestion)
  | ({ readonly to: "write" } & WritingMessage);
