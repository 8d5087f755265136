import { walk, type WalkDirection } from "../sketch/walk";
import { preferences } from "../settings/preferences.svelte";
import type { Viewing } from "../session/viewing.svelte";

const ARROWS: Readonly<Record<string, WalkDirection>> = {
  ArrowRight: "onward",
  ArrowLeft: "back",
  ArrowDown: "sibling",
  ArrowUp: "siblingBefore",
  Home: "source",
  End: "end",
};

/** What keys do while a drawing that cannot be edited has the focus: the same as in Sketch, as far as it goes. */
export interface DrawingKeys {
  readonly view: Viewing;
  /** does the first thing that can be done with what is selected */
  first(): void;
  zoom(factor: number): void;
  fit(): void;
}

/** What a key does on the drawing of a plan: arrows follow the circuit, and a few letters look nearer or farther. */
export function drawingKey(event: KeyboardEvent, { view, first, zoom, fit }: DrawingKeys) {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const way = ARROWS[event.key];
  if (way !== undefined) {
    event.preventDefault();
    const next = walk(view.document, view.selection.at(-1), way);
    if (next !== undefined) view.select(next);
    return;
  }
  const letters: Readonly<Record<string, () => void>> = {
    "+": () => zoom(1.4),
    "=": () => zoom(1.4),
    "-": () => zoom(1 / 1.4),
    "0": fit,
    w: () => {
      if (view.workPoint !== undefined) view.select({ of: "point", id: view.workPoint.at });
    },
  };
  const does =
    event.key === " " || event.key === "Enter"
      ? first
      : preferences.singleKeys
        ? letters[event.key]
        : undefined;
  if (does === undefined) return;
  event.preventDefault();
  does();
}

/** Whether a key goes to something that takes letters itself, or to a dialog. */
export const isTaken = ({ target }: KeyboardEvent): boolean =>
  document.querySelector("dialog[open]") !== null ||
  (target instanceof HTMLElement && target.matches("input, textarea, select"));
