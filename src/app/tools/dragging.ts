import { idle } from "./idle";
import type { Tool, Touch } from "./tool";

/** The selection follows the pointer; one edit is made where it is dropped, none where the drag is cancelled. */
export const dragging = (press: Touch): Tool => ({
  name: "dragging",
  move(hand, to) {
    hand.previewMove(to.x - press.x, to.y - press.y);
    return this;
  },
  up(hand, at) {
    hand.dropMove(at.x - press.x, at.y - press.y);
    return idle;
  },
  cancel(hand) {
    hand.cancelMove();
    return idle;
  },
});
