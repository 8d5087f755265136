import { boxOf } from "../../core";
import { idle } from "./idle";
import type { PointerTool, Touch } from "./tool";

/** A frame grows from where the pointer went down; letting go selects what lies within. */
export const gathering = (press: Touch): PointerTool => ({
  name: "gathering",
  move(hand, to) {
    hand.showMarquee(boxOf([press.x, press.y, to.x, to.y], 0));
    return this;
  },
  up(hand, at) {
    hand.showMarquee(undefined);
    hand.gather(boxOf([press.x, press.y, at.x, at.y], 0), press.adding);
    return idle;
  },
  cancel(hand) {
    hand.showMarquee(undefined);
    return idle;
  },
});
