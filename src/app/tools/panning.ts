import { idle } from "./idle";
import type { PointerTool, Touch } from "./tool";

/** The drawing follows the pointer. */
export const panning = (last: Touch): PointerTool => ({
  name: "panning",
  move(hand, to) {
    hand.pan(to.screenX - last.screenX, to.screenY - last.screenY);
    return panning(to);
  },
  up: () => idle,
  cancel: () => idle,
});
