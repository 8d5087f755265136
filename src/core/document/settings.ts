import { isObject, type JsonObject } from "../terms";
import { perObject } from "./perObject";
import type { Job, RuleSetting, Settings, StillhotDocument } from "./types";

/** Defaults of the settings, each with why it has that value. */
export const DEFAULT_SETTINGS: Settings = {
  /** volts to earth from which a conductor counts as hot; 29 CFR 1910.269 treats 50 V and more as hazardous */
  hazardVolts: 50,
  exposureLimitVolts: 50,
  /** one common procedure for a bare cutout; common practice, no source */
  openWithoutLoadBreakAmps: 10,
  /** what a tap clamp may carry; common practice, no source */
  tapClampMaxAmps: 100,
  assumeGenerators: true,
  assumedGeneratorKva: 7.5,
  bodyOhms: 1000,
  clearingSeconds: 0.5,
  /** 6 mA through 500 Ω, 29 CFR 1910.269(q)(2) note */
  inducedLimitVolts: 3,
  /** charging and exciting current only; common practice, no source */
  clampBreakAmps: 0.5,
  rules: {},
};

/** The settings of a file with every default filled in. */
export const settingsOf: (document: StillhotDocument) => Settings = perObject((document: StillhotDocument) => {
  const saved = document.settings ?? {};
  return { ...DEFAULT_SETTINGS, ...saved, rules: rulesOf(saved) } as Settings;
});

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

const EMPTY_JOB: Job = { task: "", workPoints: {}, tools: [], permit: "none", steps: [] };

/** The job of a file with every default filled in; an empty one where the file has none. */
export const jobOf: (document: StillhotDocument) => Job = perObject(
  (document: StillhotDocument) => ({ ...EMPTY_JOB, ...document.job }) as unknown as Job,
);
