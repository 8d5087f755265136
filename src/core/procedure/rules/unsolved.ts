import { COMMON_PRACTICE } from "../../reference";
import { asItStands } from "../job/seen";
import { defineRule } from "./rule";
import { carriedAsNew } from "../job/carried";

/** Where the drawing's equations cannot be solved no number may be believed: said at the first step, and where a step makes it so. */
export const unsolved = defineRule({
  id: "unsolved",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check: (_step, before, after) =>
    before.played.length === 0
      ? asItStands(after).findings.filter((it) => it.rule === "unsolved")
      : carriedAsNew("unsolved", before, after),
});
