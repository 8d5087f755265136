import type { Box, Owner } from "../../core";

/** One event of a pointer, in units of the drawing and on the screen. */
export interface Touch {
  readonly x: number;
  readonly y: number;
  readonly screenX: number;
  readonly screenY: number;
  readonly kind: "mouse" | "pen" | "touch";
  readonly adding: boolean;
  /** what lies under it */
  readonly on: Owner | undefined;
}

/** What a tool may do to the drawing and its view. */
export interface Hand {
  /** how far a touch may wander before it is a drag [screen px] */
  slack(kind: Touch["kind"]): number;
  isSelected(owner: Owner): boolean;
  /** whether a drag over empty ground, or a tap, gathers things one by one */
  readonly gathering: boolean;
  tap(touch: Touch): void;
  gather(box: Box, adding: boolean): void;
  pan(dx: number, dy: number): void;
  showMarquee(box: Box | undefined): void;
  select(owner: Owner): void;
  /** shows the selection moved aside, without an edit yet [screen px] */
  previewMove(dx: number, dy: number): void;
  /** moves it there [screen px] */
  dropMove(dx: number, dy: number): void;
  cancelMove(): void;
}

/** A state of the pointer. Each event says what comes next. */
export interface PointerTool {
  readonly name: string;
  move?(hand: Hand, to: Touch): PointerTool;
  up?(hand: Hand, at: Touch): PointerTool;
  cancel?(hand: Hand): PointerTool;
}

/** Whether two touches are farther apart than so much [px]. */
export const farFrom = (a: Touch, b: Touch, slack: number): boolean =>
  Math.hypot(a.screenX - b.screenX, a.screenY - b.screenY) > slack;
