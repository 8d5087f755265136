import { gathering } from "./gathering";
import { idle } from "./idle";
import { panning } from "./panning";
import { farFrom, type Tool, type Touch } from "./tool";

/** The pointer is down on empty ground and has not moved: letting go is a tap, a pull pans or gathers. */
export const pointingGround = (press: Touch): Tool => ({
  name: "pointingGround",
  move(hand, to) {
    if (!farFrom(press, to, hand.slack(press.kind))) return this;
    return press.adding || hand.gathering ? gathering(press) : panning(to);
  },
  up(hand) {
    hand.tap(press);
    return idle;
  },
  cancel: () => idle,
});
