import { type Patch, patched, patchesBetween, type StillhotDocument } from "../../core";

/** A drawing as it is sent: whole, or as what makes it of the one sent before. Each has a number on both sides. */
export type Sent = { readonly becomes: number } & (
  | { readonly whole: StillhotDocument }
  | { readonly patches: readonly Patch[]; readonly on: number }
);

/** Keeps in mind which drawing the other side has. */
export class Sender {
  #number = 0;
  #there: { readonly document: StillhotDocument; readonly number: number } | undefined;

  /** What brings a drawing to the other side. Copying a large one whole takes longer than a frame. */
  send(document: StillhotDocument): Sent {
    const there = this.#there;
    const patches = there === undefined ? undefined : patchesBetween(there.document, document);
    const number = ++this.#number;
    this.#there = { document, number };
    return patches === undefined
      ? { whole: document, becomes: number }
      : { patches, on: there!.number, becomes: number };
  }

  /** The other side is new, or lost its copy. */
  startAfresh() {
    this.#there = undefined;
  }
}

/** Holds the drawing on the other side. */
export class Receiver {
  #here: { readonly document: StillhotDocument; readonly number: number } | undefined;

  /** Nothing where the patches are for another drawing than the one that is here. */
  receive(sent: Sent): StillhotDocument | undefined {
    const document = "whole" in sent ? sent.whole : this.#patched(sent.patches, sent.on);
    if (document !== undefined) this.#here = { document, number: sent.becomes };
    return document;
  }

  #patched(patches: readonly Patch[], on: number): StillhotDocument | undefined {
    return this.#here?.number === on ? patched(this.#here.document, patches) : undefined;
  }
}
