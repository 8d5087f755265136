/** What a crew carries, by the word of a file's `tools` and `with`. */
const TOOLS_BY_USE = {
  /** keep the worker away from the conductor: work with one goes by the rules of live-line work */
  sticks: ["clamp-stick", "extending-stick", "load-break-tool", "hot-stick"],
  /** are held in the hands for a step of any verb */
  others: ["switch-stick", "lead-cutters"],
  /** have a verb of their own */
  own: ["voltage-detector", "ground-set", "cover"],
} as const;

/** A tool that has a name. */
export type Tool = (typeof TOOLS_BY_USE)[keyof typeof TOOLS_BY_USE][number];

/** What proves a cable between its ends, where no detector touches anything: a grounded point driven through it from afar. */
export const SPIKE = "spike";

/** What tells a cable that is grounded at its ends from those beside it, by a signal that goes round through the ground sets. */
export const TRACER = "tracer";

/** Tools that a step may name in `with`. */
export const HAND_TOOLS: readonly Tool[] = [...TOOLS_BY_USE.sticks, ...TOOLS_BY_USE.others];
/** Every tool that has a name. A file may name others. */
export const TOOLS: readonly Tool[] = [...HAND_TOOLS, ...TOOLS_BY_USE.own];

const isOneOf = (tools: readonly string[], tool: string): boolean => tools.includes(tool);

/** Whether a word names a tool that has one; a file may name others. */
export const isTool = (tool: string): tool is Tool => isOneOf(TOOLS, tool);

/** Whether work with this tool goes by the rules of live-line work: the worker keeps away by its length. */
export const isHotStick = (tool: string | undefined): boolean => isOneOf(TOOLS_BY_USE.sticks, tool ?? "");

/** Whether a crew has a tool: a job that lists none has what a truck carries. */
export const hasTool = (tools: readonly string[], tool: string): boolean =>
  tools.length === 0 || tools.includes(tool);
