import { carriedToWork } from "../job/carried";
import { defineRule } from "./rule";

/** A mistake elsewhere would lift the pole, the truck and the rods; people are kept clear of them. Found by the assessment of the drawing, and said when work begins. */
export const stepTouch = defineRule({
  id: "step-touch",
  severity: "warning",
  citation: "29 CFR 1910.269 Appendix C",
  check: (step, _before, after) => carriedToWork("step-touch", step, after),
});
