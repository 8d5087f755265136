import { isRefusal, type JsonObject, refuse, type Refusal, say, type StructureId } from "../../terms";
import { asHeard, calledAlike, labelIn } from "../names";
import type { StillhotDocument } from "../types";
import { type Change, type Edit, elementOf, pointOf, putRecords, together, withKeys } from "./change";

/** The edit as it is, unless the keys that it sets give a thing the name of another one. */
export function unlessCalledAlike(
  before: StillhotDocument,
  id: string,
  keys: JsonObject,
  done: Change | Refusal,
): Change | Refusal {
  const isNaming = "label" in keys || "on" in keys;
  if (!isNaming || isRefusal(done) || !hasNamesake(done.after, id) || hasNamesake(before, id)) return done;
  return refuse(say("edit.nameTaken", { name: labelIn(done.after.system, id) }));
}

/** What an edit adds counts on where the drawing has its label already: `Pole 3` after `Pole 2`, `Mill 2` after `Mill`. */
export const withFreshLabels =
  (edit: Edit): Edit =>
  (before) => {
    const done = edit(before);
    if (isRefusal(done)) return done;
    const made = new Set(done.made);
    const taken = new Set(
      calledAlike(done.after.system)
        .flat()
        .filter((id) => made.has(id)),
    );
    if (taken.size === 0) return done;
    return { ...done, ...afterwards(done, relabelled([...taken])) };
  };

const afterwards = (done: Change, edit: Edit): Partial<Change> => {
  const both = together(done.label, [() => done, edit])(done.after);
  return isRefusal(both) ? {} : both;
};

const relabelled =
  (ids: readonly string[]): Edit =>
  (after) => {
    const { structures = {}, points, elements } = after.system;
    const all = [structures, points, elements].flatMap((map) => Object.keys(map));
    const heard = new Set(all.map((id) => asHeard(labelIn(after.system, id))));
    const fresh = (id: string): JsonObject => {
      const label = nextLabel(labelIn(after.system, id), heard);
      heard.add(asHeard(label));
      return { label };
    };
    return putRecords(say("edit.nothing"), after, {
      structures: records(ids, (id) => structures[id as StructureId], fresh),
      points: records(ids, (id) => pointOf(after, id), fresh),
      elements: records(ids, (id) => elementOf(after, id), fresh),
    });
  };

const records = <Saved extends JsonObject>(
  ids: readonly string[],
  recordOf: (id: string) => Saved | undefined,
  keys: (id: string) => JsonObject,
): Record<string, Saved> =>
  Object.fromEntries(
    ids.flatMap((id) => {
      const record = recordOf(id);
      return record === undefined ? [] : [[id, withKeys(record, keys(id))]];
    }),
  );

/** The first label like one, counted on, that nobody would take for another. */
export function nextLabel(label: string, heard: ReadonlySet<string>): string {
  if (!heard.has(asHeard(label))) return label;
  const [, stem = `${label} `, digits = "1"] = /^(.*?)(\d{1,6})$/s.exec(label) ?? [];
  for (let n = Number(digits) + 1; ; n++) if (!heard.has(asHeard(`${stem}${n}`))) return `${stem}${n}`;
}

const hasNamesake = ({ system }: StillhotDocument, id: string): boolean =>
  calledAlike(system).some((ids) => ids.includes(id));
