import type { ElementId, NoteSizes, Owner, Palette, Scene } from "../../core";

/** Everything that the canvas shows. */
export interface BoardView {
  readonly scene: Scene;
  readonly palette: Palette;
  readonly sizes: NoteSizes;
  readonly selection: readonly Owner[];
  /** the thing that the keyboard is on, while the drawing has the focus */
  readonly focus: Owner | undefined;
  readonly lit: readonly ElementId[];
  /** the end that a join starts from */
  readonly joiningFrom: Owner | undefined;
  /** a picture lies under it: the drawing keeps its place on the screen */
  readonly isTraced: boolean;
  /** paints what a view lays over the drawing, in its units */
  readonly overlay: Overlay | undefined;
}

/** What a view shows in place of the drawing as it stands, or over it. */
export interface Instead {
  readonly scene?: Scene | undefined;
  readonly lit?: readonly ElementId[] | undefined;
  readonly overlay?: Overlay | undefined;
}

/** Paints over the drawing, in units of the drawing, at a scale [px per unit]. */
export type Overlay = (context: CanvasRenderingContext2D, palette: Palette, scale: number) => void;
