import { type JsonObject, type Message, refuse, say } from "../../terms";
import type { Step } from "../../steps";
import { change, type Edit, type Draft, plain, putPart, withKeys } from "./change";

/** Names the drawing. */
export const setTitle = (title: string): Edit => setTop("title", title, say("edit.setTitle"));

/** Sets the free text; an empty one is taken away. */
export const setNotes = (notes: string): Edit =>
  setTop("notes", notes === "" ? undefined : notes, say("edit.setNotes"));

const setTop =
  (key: "title" | "notes", value: string | undefined, label: Message): Edit =>
  (before) =>
    change(label, before, (draft) => {
      if (value === undefined) delete (draft as Partial<Draft>)[key];
      else draft[key] = value;
    });

/** Sets what an instructor hides and how an attempt is scored; `undefined` takes it away. */
export const setScenario =
  (scenario: JsonObject | undefined): Edit =>
  (before) =>
    change(say("edit.setScenario"), before, (draft) => {
      if (scenario === undefined) delete draft.scenario;
      else putPart(draft, "scenario", plain(scenario));
    });

/** Sets the frequency of the whole system [Hz]. */
export const setFrequency =
  (frequencyHz: 50 | 60): Edit =>
  (before) =>
    change(
      say("edit.setFrequency", { frequencyHz }),
      before,
      (draft) => void (draft.system.frequencyHz = frequencyHz),
    );

const JOB_KEYS = ["task", "permit", "tools"];

/** Sets the task, the permit or the tools; `undefined` takes a key away. */
export const setJob =
  (keys: JsonObject): Edit =>
  (before) => {
    const unknown = Object.keys(keys).find((key) => !JOB_KEYS.includes(key));
    if (unknown !== undefined) return refuse(say("edit.unknownKey", { key: unknown }));
    return change(say("edit.setJob"), before, (draft) =>
      putPart(draft, "job", withKeys(before.job ?? {}, keys)),
    );
  };

/** Replaces the order of steps. */
export const setSteps =
  (steps: readonly Step[]): Edit =>
  (before) =>
    change(say("edit.setSteps", { count: steps.length }), before, (draft) =>
      putPart(draft, "job", withKeys(before.job ?? {}, { steps })),
    );
