import { idle } from "./idle";
import type { PointerTool, Touch } from "./tool";

/**
 * The selection follows the pointer; one edit is made where it is dropped, none where the drag is cancelled. How far is
 * told in the screen's own measure: what is moved by hand may be shown in another size than before.
 */
export const dragging = (press: Touch): PointerTool => ({
  name: "dragging",
  move(hand, to) {
    hand.previewMove(to.screenX - press.screenX, to.screenY - press.screenY);
    return this;
  },
  up(hand, at) {
    hand.dropMove(at.screenX - press.screenX, at.screenY - press.screenY);
    return idle;
  },
  cancel(hand) {
    hand.cancelMove();
    return idle;
  },
});
