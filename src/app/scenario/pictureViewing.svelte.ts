import type { Assessment, StillhotDocument } from "../../core";
import { Viewing } from "../session/viewing.svelte";

/** A drawing whose states are those that it is given, and no others. */
export class PictureViewing extends Viewing {
  readonly #shown: () => { readonly document: StillhotDocument; readonly assessment: Assessment | undefined };

  document: StillhotDocument = $derived.by(() => this.#shown().document);
  /** conductors that are left out look unknown */
  assessment: Assessment | undefined = $derived.by(() => this.#shown().assessment);
  stated: Assessment | undefined = $derived(this.assessment);
  readonly failed = undefined;
  readonly isStale = false;
  readonly states = undefined;

  constructor(
    shown: () => { readonly document: StillhotDocument; readonly assessment: Assessment | undefined },
  ) {
    super();
    this.#shown = shown;
  }
}
