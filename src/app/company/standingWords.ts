import { limitsChanged, rulesOff, type StillhotDocument } from "../../core";
import { t } from "../words/words";

/** How many rules are off in a drawing, and how many limits are not the usual ones: a sentence each, none for none. */
export function standingWords(document: StillhotDocument): string[] {
  const off = rulesOff(document).length;
  const limits = limitsChanged(document).length;
  return [
    ...(off === 0 ? [] : [t(off === 1 ? "company.rulesOff.one" : "company.rulesOff", { count: off })]),
    ...(limits === 0 ? [] : [t(limits === 1 ? "company.limits.one" : "company.limits", { count: limits })]),
  ];
}
