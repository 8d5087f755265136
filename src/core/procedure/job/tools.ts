import { type CircuitElement, handlingOf, LOAD_BREAK_TOOL } from "../../devices";
import { hasTool } from "../../steps";

/** The tool for a thing, given whether it breaks load; nothing where a hand or a handle does it. */
export function toolFor(
  element: CircuitElement,
  tools: readonly string[],
  breaksLoad: boolean,
): string | undefined {
  const fit = handlingOf(element)?.tools ?? [];
  const wanted = fit.filter((it) => it !== LOAD_BREAK_TOOL || (breaksLoad && takesLoadBreakTool(element)));
  // With nothing better at hand, the load-break tool opens a dead cutout too.
  return wanted.find((it) => hasTool(tools, it)) ?? fit.find((it) => hasTool(tools, it));
}

/** Whether there are hooks on it for the portable tool. */
const takesLoadBreakTool = (element: CircuitElement): boolean =>
  "loadBreak" in element && element.loadBreak === "hooks";
