import type { DrillKind, Level } from "../../core";

/** One short question that is to be asked: its kind, of a drawing of a level. */
export interface AskedItem {
  readonly kind: DrillKind;
  readonly level: Level;
}

/** What the next exercise is made of, where another place asks for it; taken once. */
export const drillAsked: { items: readonly AskedItem[] } = { items: [] };
