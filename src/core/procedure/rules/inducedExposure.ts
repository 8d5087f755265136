import { citationOf } from "../../reference";
import { carriedToWork } from "../job/carried";
import { defineRule } from "./rule";

/** What a neighbouring circuit induces is not felt through the grounds. Found by the assessment of the drawing, and said when work begins. */
export const inducedExposure = defineRule({
  id: "induced-exposure",
  severity: "danger",
  citation: citationOf("q2-induced"),
  check: (step, _before, after) => carriedToWork("induced-exposure", step, after),
});
