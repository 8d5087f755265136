import { isWellFormedId, type Json, type JsonObject, type Message, refuse, say } from "../../terms";
import { DEFAULT_SETTINGS, type LimitKey, settingFields } from "../settings";
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
      putPart(draft, "job", withKeys(before.job ?? {}, { steps: steps as unknown as Json })),
    );

/**
 * Sets a limit for a reason; without a value its default holds again and the reason goes with it. Rules are set by
 * `setRule`.
 */
export const setLimit =
  (key: string, value: number | boolean | undefined, reason = ""): Edit =>
  (before) => {
    if (!Object.hasOwn(settingFields, key)) return refuse(say("edit.unknownKey", { key }));
    const isUsual = value === undefined || value === DEFAULT_SETTINGS[key as LimitKey];
    if (!isUsual && reason.trim() === "") return refuse(say("edit.limitReason"));
    const saved = before.settings ?? {};
    const reasons = withKeys((saved["reasons"] ?? {}) as JsonObject, {
      [key]: isUsual ? undefined : reason.trim(),
    });
    const keys = {
      [key]: isUsual ? undefined : value,
      reasons: Object.keys(reasons).length === 0 ? undefined : reasons,
    };
    const name = say(`limit.${key as LimitKey}`);
    return change(say(isUsual ? "edit.limitBack" : "edit.setLimit", { name }), before, (draft) =>
      putPart(draft, "settings", withKeys(saved, keys)),
    );
  };

/** Turns a rule off for a reason, or on again where there is none. */
export const setRule =
  (rule: string, reasonOff: string | undefined): Edit =>
  (before) => {
    if (!isWellFormedId(rule)) return refuse(say("edit.noThing", { id: rule }));
    const rules = withKeys((before.settings?.["rules"] ?? {}) as JsonObject, {
      [rule]: reasonOff === undefined ? undefined : { off: true, reason: reasonOff },
    });
    return change(say(reasonOff === undefined ? "edit.ruleOn" : "edit.ruleOff", { rule }), before, (draft) =>
      putPart(draft, "settings", withKeys(before.settings ?? {}, { rules })),
    );
  };
