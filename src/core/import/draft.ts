import { complete, type SavedElement } from "../document";
import { isSupply, isTransformer, lowSidesOf } from "../devices";
import type { Ledger } from "./ledger";

/** A point on its way into the drawing. */
export interface DraftPoint {
  readonly key: string;
  /** what the file calls it; empty where it is made here */
  readonly label: string;
  /** what its id is made of, alike whatever stands before it in the file */
  readonly idOf: { readonly name: string; readonly own: string };
  kind: "pole" | "pad" | "station" | "service";
  place?: { readonly x: number; readonly y: number };
  /** ohms of its driven ground, where the file says so [Ω] */
  earthOhms?: number;
  evidence?: string;
}

/** An element on its way into the drawing: its keys but for id and ends, and the points that it ends on. */
export interface DraftElement {
  readonly idOf: { readonly name: string; readonly own: string };
  readonly label: string;
  /** what a message calls it: its class, name and id in the file */
  readonly shown: string;
  readonly keys: SavedElement;
  readonly ends: readonly string[];
  /** which end is the source side follows from the file and not from the walk outward */
  readonly isDirected?: boolean;
}

/** Letters that an element brings to one of its ends. */
export const lettersAt = (element: DraftElement, end: number): string => {
  const phases = String(element.keys["phases"] ?? "");
  if (end === 1 && typeof element.keys["toPhases"] === "string") return element.keys["toPhases"];
  const whole = complete(element.keys);
  return isTransformer(whole) && end > 0 ? lowSidesOf(whole)[end - 1]!.letters.join("") : phases;
};

/** Points and elements of a drawing that is being put together from another file. */
export class DrawingDraft {
  readonly ledger: Ledger;
  readonly points = new Map<string, DraftPoint>();
  readonly elements: DraftElement[] = [];

  constructor(ledger: Ledger) {
    this.ledger = ledger;
  }

  readonly #letters = new Map<string, Set<string>>();

  add(element: DraftElement): void {
    this.elements.push(element);
    if (element.ends.length < 2 && !isSupply(element.keys)) return;
    for (const [index, end] of element.ends.entries()) {
      const known = this.#letters.get(end) ?? new Set<string>();
      this.#letters.set(end, known);
      for (const letter of lettersAt(element, index)) known.add(letter);
    }
  }

  /** Phase letters that lines, switches, transformers and sources bring to a point so far, in the format's order. */
  lettersAtPoint = (key: string): string =>
    [..."ABC12"].filter((it) => this.#letters.get(key)?.has(it) === true).join("");

  /** Keeps only some of the elements. */
  retain(isKept: (element: DraftElement) => boolean): void {
    const kept = this.elements.filter(isKept);
    this.elements.splice(0, this.elements.length, ...kept);
  }

  /** Elements by the points that they end on. */
  byPoint(): Map<string, DraftElement[]> {
    const found = new Map<string, DraftElement[]>();
    for (const element of this.elements)
      for (const end of new Set(element.ends)) {
        const known = found.get(end);
        if (known === undefined) found.set(end, [element]);
        else known.push(element);
      }
    return found;
  }
}
