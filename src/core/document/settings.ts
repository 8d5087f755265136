import type { Complete } from "../devices";
import { isObject, type JsonObject, type WorkPointId } from "../terms";
import { jobFields } from "./jobFields";
import { perObject } from "./perObject";
import { settingFields } from "./settingFields";
import type { Job, RuleSetting, Settings, StillhotDocument, WorkPoint } from "./types";

/** What holds where a file says nothing. */
export const DEFAULT_SETTINGS: Settings = {
  ...(Object.fromEntries(
    Object.entries(settingFields).map(([key, { fallback }]) => [key, fallback]),
  ) as Complete<typeof settingFields>),
  rules: {},
  reasons: {},
};

/** The settings of a file with every default filled in. */
export const settingsOf: (document: StillhotDocument) => Settings = perObject(
  (document: StillhotDocument) => {
    const saved = document.settings ?? {};
    return { ...DEFAULT_SETTINGS, ...saved, rules: rulesOf(saved), reasons: reasonsOf(saved) };
  },
);

/** A rule is turned off by `{ "off": true, "reason": "…" }`; anything else leaves it on. */
function rulesOf(saved: JsonObject): Record<string, RuleSetting> {
  if (!isObject(saved["rules"])) return {};
  return Object.fromEntries(
    Object.entries(saved["rules"]).map(([id, value]) => [
      id,
      isObject(value)
        ? { off: value["off"] === true, reason: String(value["reason"] ?? "") }
        : { off: false, reason: "" },
    ]),
  );
}

const reasonsOf = ({ reasons }: JsonObject): Record<string, string> =>
  isObject(reasons)
    ? Object.fromEntries(Object.entries(reasons).map(([key, reason]) => [key, String(reason)]))
    : {};

/** A key of the settings that is a limit or a switch, not a map beside them. */
export type LimitKey = keyof typeof settingFields;

/** The limits that a file sets otherwise than the default, in the order of the table. */
export const limitsChanged: (document: StillhotDocument) => readonly LimitKey[] = perObject(
  (document: StillhotDocument) => {
    const settings = settingsOf(document);
    return (Object.keys(settingFields) as LimitKey[]).filter(
      (key) => settings[key] !== DEFAULT_SETTINGS[key],
    );
  },
);

/** The unit of a limit; nothing for a switch. */
export function unitOfLimit(key: LimitKey): string | undefined {
  const { input } = settingFields[key];
  return "unit" in input ? input.unit : undefined;
}

/** The work points of a job, each with its id. */
export const workPointsOf = (document: StillhotDocument): (readonly [WorkPointId, WorkPoint])[] =>
  Object.entries(jobOf(document).workPoints) as [WorkPointId, WorkPoint][];

const EMPTY_JOB: Job = {
  ...(Object.fromEntries(Object.entries(jobFields).map(([key, { fallback }]) => [key, fallback])) as Complete<
    typeof jobFields
  >),
  workPoints: {},
  tools: [],
  leave: {},
  steps: [],
};

/** The job of a file with every default filled in; an empty one where the file has none. */
export const jobOf: (document: StillhotDocument) => Job = perObject((document: StillhotDocument) => ({
  ...EMPTY_JOB,
  ...document.job,
}));
