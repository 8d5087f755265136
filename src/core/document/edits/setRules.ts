import { isWellFormedId, type JsonObject, refuse, say } from "../../terms";
import { DEFAULT_SETTINGS, type LimitKey } from "../settings";
import { settingFields } from "../settingFields";
import { change, type Edit, putPart, withKeys } from "./change";

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
