import type { Step, StepVerb } from "../../document";
import { SWITCHING } from "../../hazard";

const set = (...verbs: StepVerb[]): ReadonlySet<StepVerb> => new Set(verbs);

/** Steps that break a path. */
const OPENING = set("open", "lift", "cut", "pull", "remove-barrel");
/** Steps that make a path. A barrel that is put back hangs open, so that is none. */
export const CLOSING = set("close", "attach", "join", "replace");
/** Steps that rest on the section being dead, or find out whether it is. */
const RELYING = set("test", "ground", "work");
/** Steps that only tell or write something: nothing on the pole changes, and nothing lies between two others. */
export const TELLING = set("note", "confirm");

export const isSwitching = (step: Step): boolean => SWITCHING.has(step.do);
export const isOpening = (step: Step): boolean => OPENING.has(step.do);
export const isClosing = (step: Step): boolean => CLOSING.has(step.do);
export const isRelying = (step: Step): boolean => RELYING.has(step.do);

/** Steps by which hands change how things stand on the line, beside switching. */
const HANDLING = set(
  "tag",
  "untag",
  "block",
  "unblock",
  "ground",
  "unground",
  "secure",
  "cover",
  "uncover",
  "work",
);

/** Steps by which the crew does something to the line: switching, tags and blocks, grounds, covers, work. */
export const isActing = (step: Step): boolean => isSwitching(step) || HANDLING.has(step.do);

/** Tools that keep the worker away from the conductor: work with one goes by the rules of live-line work. */
const HOT_STICKS: readonly string[] = ["clamp-stick", "extending-stick", "hot-stick", "load-break-tool"];

export const isHotStickWork = (step: Step): boolean =>
  step.do === "work" && HOT_STICKS.includes(step.with ?? "");
