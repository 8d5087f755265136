import type { CutOff, Message } from "../../core";

/** A sentence for the person, with what they can do about it. */
export interface Notice {
  readonly message: Message;
  readonly tone: "note" | "refusal";
  /** offers to undo the last edit */
  readonly offersUndo: boolean;
  /** offers another edit, which mends what the last one did */
  readonly offers?: CutOff["bridge"];
}
