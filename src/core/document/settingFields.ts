import { field } from "../devices";

/** Keys of the settings, each with its range and why it has its default. Rules are a map beside them. */
export const settingFields = {
  /**
   * volts to earth from which a conductor counts as hot; 29 CFR 1910.269 treats 50 V and more as hazardous. Never above
   * the leg of a service, or a house's own generator would be called dead
   */
  hazardVolts: field.amount("V", 50, { above: 0, max: 120 }),
  /** never above what 116 mA/√t leaves through 1000 Ω for 15 cycles (IEEE 80 and IEEE 1048, from memory): 232 V */
  exposureLimitVolts: field.amount("V", 50, { above: 0, max: 232 }),
  /** one common procedure for a bare cutout; common practice, no source */
  openWithoutLoadBreakAmps: field.amount("A", 10, { min: 0, max: 1e6 }),
  /** what a tap clamp may carry; common practice, no source */
  tapClampMaxAmps: field.amount("A", 100, { min: 0, max: 1e6 }),
  assumeGenerators: field.flag(true),
  /** portable generators are hardly made smaller; less would only hide what one does (common practice, no source) */
  assumedGeneratorKva: field.amount("kVA", 7.5, { min: 1, max: 1e6 }),
  bodyOhms: field.amount("Ω", 1000, { above: 0, max: 1e9 }),
  clearingSeconds: field.amount("s", 0.5, { above: 0, max: 1e6 }),
  /** 6 mA through 500 Ω, 29 CFR 1910.269(q)(2) note */
  inducedLimitVolts: field.amount("V", 3, { min: 0, max: 1e6 }),
  /** charging and exciting current only; common practice, no source */
  clampBreakAmps: field.amount("A", 0.5, { min: 0, max: 1e6 }),
  /** one crew, every opening visible, at the work and under its own control: 29 CFR 1910.269(m)(2)(iii) */
  singleCrew: field.flag(false),
  /** days after which what was seen counts as known from the map; 0: never. A matter of the company: no source */
  seenDays: field.amount("d", 0, { min: 0, max: 36_500 }),
};

/** Keys of a rule's entry under `rules`. */
export const ruleFields = { off: field.flag(false), reason: field.text() };

/** Keys under `reasons`: a sentence for each limit that is not the default. */
export const reasonFields = Object.fromEntries(
  Object.keys(settingFields).map((key) => [key, field.text()]),
) as Readonly<Record<keyof typeof settingFields, ReturnType<typeof field.text>>>;
