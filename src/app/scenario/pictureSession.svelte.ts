import {
  type Assessment,
  type ConductorId,
  type Measured,
  sceneOf,
  type StillhotDocument,
  withMeasured,
} from "../../core";
import { Session } from "../session/session.svelte";
import { speech } from "../words/language.svelte";
import { told } from "../words/words";

/** A drawing that is looked at: tapped, panned and zoomed, and never edited. Its states are those that it is given. */
export class PictureSession extends Session {
  /** conductors that are left out look unknown */
  shown = $state.raw<Assessment | undefined>(undefined);
  /** what was measured, and where */
  measured = $state.raw<ReadonlyMap<ConductorId, Measured>>(new Map());
  override scene = $derived.by(() =>
    withMeasured(
      sceneOf(this.document, this.shown, { ...this.lie, catalogue: speech.catalogue }),
      this.measured,
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
    measured: ReadonlyMap<ConductorId, Measured>,
  ) {
    this.document = document;
    this.shown = shown;
    this.measured = measured;
  }
}
