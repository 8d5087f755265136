import { pointingGround } from "./pointingGround";
import { pointingThing } from "./pointingThing";
import type { PointerTool, Touch } from "./tool";

/** No pointer is down. */
export const idle: PointerTool = { name: "idle" };

/** What a pointer that goes down begins. */
export const pressed = (at: Touch): PointerTool =>
  at.on === undefined ? pointingGround(at) : pointingThing(at);
