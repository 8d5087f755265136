import { isBeside } from "../devices";
import { savedElement } from "./elementsAt";
import { perDrawing } from "./touched";
import type { System } from "./types";

/** Elements that stand beside another, which they name. */
export const besideOthers: (system: System) => readonly string[] = perDrawing<readonly string[]>(
  ({ elements }) => Object.keys(elements).filter((id) => isBeside(savedElement(elements, id))),
  (was, _before, { elements }, touched) => {
    const isSo = (id: string) => isBeside(savedElement(elements, id));
    const isChanged = [...touched.elements].some((id) => was.includes(id) !== isSo(id));
    if (!isChanged) return was;
    return [...new Set([...was, ...touched.elements])].filter(isSo);
  },
);
