import { isObject, type Message } from "../../terms";
import { canonicalText } from "../canonical";
import type { StillhotDocument } from "../types";
import { change, type Edit } from "./change";

/** Makes the drawing into another one, as one edit: records that are the same in both stay as they are. */
export const replaceBy =
  (after: StillhotDocument, label: Message): Edit =>
  (before) =>
    change(label, before, (draft) => {
      become(draft as unknown as Bag, before, after, 0);
    });

type Bag = Record<string, unknown>;

/** How deep records are told apart: `system.points.p1` is replaced as a whole, so that a patch reads "this became that". */
const RECORD_LEVEL = 2;

function become(draft: Bag, before: Bag, after: Bag, level: number) {
  for (const key of Object.keys(before)) if (!Object.hasOwn(after, key)) delete draft[key];
  for (const [key, value] of Object.entries(after)) {
    const was = Object.hasOwn(before, key) ? before[key] : undefined;
    if (was !== undefined && isSame(was, value)) continue;
    if (level < RECORD_LEVEL && isObject(was) && isObject(value))
      become(draft[key] as Bag, was, value, level + 1);
    else draft[key] = value;
  }
}

const isSame = (one: unknown, other: unknown): boolean =>
  one === other || canonicalText(one) === canonicalText(other);
