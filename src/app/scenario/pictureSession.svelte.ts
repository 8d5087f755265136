import { type Assessment, sceneOf, type StillhotDocument } from "../../core";
import { Session } from "../session/session.svelte";
import { speech } from "../words/language.svelte";

/** A drawing that is looked at: tapped, panned and zoomed, and never edited. Its states are those that it is given. */
export class PictureSession extends Session {
  /** conductors that are left out look unknown */
  shown = $state.raw<Assessment | undefined>(undefined);
  override scene = $derived.by(() =>
    sceneOf(this.document, this.shown, { ...this.lie, catalogue: speech.catalogue }),
  );

  override previewMove() {
    // Nothing of a drawing that is looked at can be moved.
  }
  override dropMove() {
    // The same.
  }

  showing(document: StillhotDocument, shown: Assessment | undefined) {
    this.document = document;
    this.shown = shown;
  }
}
