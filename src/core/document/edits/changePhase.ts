import { isSupply, lettersAtEnd } from "../../devices";
import { type ElementId, isObject, type Json, type JsonObject, refuse, say } from "../../terms";
import { complete } from "../complete";
import { elementsAt, endPointsOf } from "../elementsAt";
import { elementName } from "../names";
import type { StillhotDocument } from "../types";
import { change, type Edit, elementOf, put, putPart, withKeys } from "./change";
import { type LetterTurn, turnedLetters } from "./letterTurn";
import { withTurnedLetters } from "./turnLetters";

/**
 * Puts an element, and all that lies behind it, on other phases: letters of devices, of work points and of steps. One
 * edit, so that no half of a tap is left on the phase that the other half was taken off. Refused where what lies behind
 * it is joined to the rest another way as well.
 */
export const changePhase =
  (id: string, by: Exclude<LetterTurn, 0>): Edit =>
  (before) => {
    const element = elementOf(before, id);
    if (element === undefined) return refuse(say("edit.noElement", { id }));
    const name = elementName(before, id);
    const behind = behindOf(before, id);
    if (behind === undefined) return refuse(say("phase.joined", { name }));
    const phases = turnedLetters(String(element["phases"] ?? ""), by);
    return change(say("edit.changePhase", { name, phases }), before, (draft) => {
      for (const it of behind.elements)
        put(draft.system.elements, it, withTurnedLetters(elementOf(before, it)!, by));
      if (before.job !== undefined) putPart(draft, "job", turnedJob(before.job, behind, by));
    });
  };

interface Behind {
  readonly points: ReadonlySet<string>;
  readonly elements: ReadonlySet<string>;
}

/** All that hangs on an element by phases of the primary; nothing where it leads back, or to a source of its own. */
function behindOf({ system }: StillhotDocument, id: string): Behind | undefined {
  const [near = "", ...far] = endPointsOf(elementOf({ system } as StillhotDocument, id));
  const points = new Set<string>();
  const elements = new Set([id]);
  const next = [...far];
  for (let point = next.pop(); point !== undefined; point = next.pop()) {
    if (point === near) return undefined;
    if (points.has(point)) continue;
    points.add(point);
    for (const it of elementsAt(system).get(point) ?? []) {
      const element = complete(system.elements[it as ElementId]!);
      if (isSupply(element)) return undefined;
      elements.add(it);
      if (it !== id)
        next.push(
          ...endPointsOf(system.elements[it as ElementId]).filter((end) => bringsPhases(element, end)),
        );
    }
  }
  return { points, elements };
}

type Completed = ReturnType<typeof complete>;

/** Whether an element has a phase of the primary at the end by which it meets a point: legs keep their names. */
const bringsPhases = (element: Completed, point: string): boolean =>
  (["from", "alt", "to", "at"] as const).some(
    (end) =>
      (element as unknown as JsonObject)[end] === point &&
      lettersAtEnd(element, end).some((it) => /[ABC]/.test(it)),
  );

function turnedJob(job: JsonObject, { points, elements }: Behind, by: LetterTurn): JsonObject {
  const turned = (record: Json, key: string, isThere: boolean): Json =>
    isObject(record) && isThere && typeof record[key] === "string"
      ? withKeys(record, { [key]: turnedLetters(record[key], by) })
      : record;
  const workPoints = isObject(job["workPoints"]) ? job["workPoints"] : {};
  const isBehind = (step: JsonObject) =>
    points.has(String(step["at"])) || elements.has(String(step["element"]));
  return withKeys(job, {
    ...(job["workPoints"] === undefined
      ? {}
      : {
          workPoints: Object.fromEntries(
            Object.entries(workPoints).map(([id, it]) => [
              id,
              turned(it!, "conductors", isObject(it) && points.has(String(it["at"]))),
            ]),
          ),
        }),
    ...(Array.isArray(job["steps"])
      ? { steps: job["steps"].map((it) => turned(it, "phases", isObject(it) && isBehind(it))) }
      : {}),
  });
}
