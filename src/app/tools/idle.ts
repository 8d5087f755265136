import { pointingGround } from "./pointingGround";
import { pointingThing } from "./pointingThing";
import type { Tool, Touch } from "./tool";

/** No pointer is down. */
export const idle: Tool = { name: "idle" };

/** What a pointer that goes down begins. */
export const pressed = (at: Touch): Tool => (at.on === undefined ? pointingGround(at) : pointingThing(at));
