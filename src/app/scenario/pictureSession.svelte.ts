import {
  type Assessment,
  type ElementId,
  type Noted,
  type PointId,
  sceneOf,
  type StillhotDocument,
  withNoted,
} from "../../core";
import { Session } from "../session/session.svelte";
import { speech } from "../words/language.svelte";
import { told } from "../words/words";

/** A drawing that is looked at: tapped, panned and zoomed, and never edited. Its states are those that it is given. */
export class PictureSession extends Session {
  /** conductors that are left out look unknown */
  shown = $state.raw<Assessment | undefined>(undefined);
  /** what is noted beside points and elements */
  noted = $state.raw<ReadonlyMap<PointId | ElementId, Noted>>(new Map());
  override scene = $derived.by(() =>
    withNoted(
      sceneOf(this.document, this.shown, { ...this.lie, catalogue: speech.catalogue }),
      this.noted,
      told,
    ),
  );

  override previewMove() {
    // Nothing of a drawing that is looked at can be moved.
  }
  override dropMove() {
    // The same.
  }

  showing(
    document: StillhotDocument,
    shown: Assessment | undefined,
    noted: ReadonlyMap<PointId | ElementId, Noted>,
  ) {
    this.document = document;
    this.shown = shown;
    this.noted = noted;
  }
}
