import { dragging } from "./dragging";
import { idle } from "./idle";
import { panning } from "./panning";
import { pulledGround } from "./pointingGround";
import { farFrom, type PointerTool, type Touch } from "./tool";

/**
 * The pointer is down on a thing and has not moved: letting go is a tap. A pull moves what is selected; a mouse also
 * takes what it is on, while a finger pans, so that a swipe over a full drawing moves nothing. The ground of a structure is
 * ground, until that structure is selected.
 */
export const pointingThing = (press: Touch): PointerTool => ({
  name: "pointingThing",
  move(hand, to) {
    if (!farFrom(press, to, hand.slack(press.kind))) return this;
    const on = press.on!;
    if (!hand.isSelected(on)) {
      if (on.of === "structure") return pulledGround(press, hand, to);
      if (press.kind === "touch") return panning(to);
      hand.select(on);
    }
    return dragging(press);
  },
  up(hand) {
    hand.tap(press);
    return idle;
  },
  cancel: () => idle,
});
