import { savedElement } from "./elementsAt";
import { perDrawing } from "./touched";
import type { System } from "./types";

/** Elements that stand beside another, which they name. */
export const besideOthers: (system: System) => readonly string[] = perDrawing<readonly string[]>(
  ({ elements }) => Object.keys(elements).filter((id) => savedElement(elements, id)!.kind === "nearby"),
  (was, _before, { elements }, touched) => {
    const isBeside = (id: string) => savedElement(elements, id)?.kind === "nearby";
    const isChanged = [...touched.elements].some((id) => was.includes(id) !== isBeside(id));
    if (!isChanged) return was;
    return [...new Set([...was, ...touched.elements])].filter(isBeside);
  },
);
