import { isSameStep, type Step } from "../../core";

/** One row of two orders side by side: a step of either, or the same step of both. */
export interface ComparedRow {
  readonly mine: { readonly n: number; readonly step: Step } | undefined;
  readonly other: { readonly n: number; readonly step: Step } | undefined;
  readonly isSame: boolean;
}

/** Two orders side by side. */
export interface Comparison {
  /** steps that both begin with */
  readonly alike: number;
  /** from the first difference on */
  readonly rows: readonly ComparedRow[];
}

/** Two orders of steps, aligned by the longest run of steps that both have in the same order. */
export function compareOrders(mine: readonly Step[], other: readonly Step[]): Comparison {
  let alike = 0;
  while (alike < Math.min(mine.length, other.length) && isSameStep(mine[alike]!, other[alike]!)) alike++;
  const [left, right] = [mine.slice(alike), other.slice(alike)];
  const longest = Array.from({ length: left.length + 1 }, () => new Int32Array(right.length + 1));
  for (let i = left.length - 1; i >= 0; i--)
    for (let j = right.length - 1; j >= 0; j--)
      longest[i]![j] = isSameStep(left[i]!, right[j]!)
        ? longest[i + 1]![j + 1]! + 1
        : Math.max(longest[i + 1]![j]!, longest[i]![j + 1]!);
  const rows: ComparedRow[] = [];
  let [i, j] = [0, 0];
  while (i < left.length || j < right.length) {
    const one = left[i] === undefined ? undefined : { n: alike + i + 1, step: left[i]! };
    const two = right[j] === undefined ? undefined : { n: alike + j + 1, step: right[j]! };
    if (one !== undefined && two !== undefined && isSameStep(one.step, two.step)) {
      rows.push({ mine: one, other: two, isSame: true });
      [i, j] = [i + 1, j + 1];
    } else if (two === undefined || (one !== undefined && longest[i + 1]![j]! >= longest[i]![j + 1]!)) {
      rows.push({ mine: one, other: undefined, isSame: false });
      i++;
    } else {
      rows.push({ mine: undefined, other: two, isSame: false });
      j++;
    }
  }
  return { alike, rows };
}
