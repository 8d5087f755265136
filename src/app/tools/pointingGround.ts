import { gathering } from "./gathering";
import { idle } from "./idle";
import { panning } from "./panning";
import { farFrom, type Hand, type PointerTool, type Touch } from "./tool";

/** The pointer is down on empty ground and has not moved: letting go is a tap, a pull pans or gathers. */
export const pointingGround = (press: Touch): PointerTool => ({
  name: "pointingGround",
  move(hand, to) {
    if (!farFrom(press, to, hand.slack(press.kind))) return this;
    return pulledGround(press, hand, to);
  },
  up(hand) {
    hand.tap(press);
    return idle;
  },
  cancel: () => idle,
});

/** What a pull over ground begins. */
export const pulledGround = (press: Touch, hand: Hand, to: Touch): PointerTool =>
  press.adding || hand.gathering ? gathering(press) : panning(to);
