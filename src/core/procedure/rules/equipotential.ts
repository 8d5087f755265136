import { citationOf } from "../../reference";
import { carriedToWork } from "../job/carried";
import { defineRule } from "./rule";

/** The work point has a ground set of its own, on a pole that is bonded. Found by the assessment of the drawing, and said when work begins. */
export const equipotential = defineRule({
  id: "equipotential",
  severity: "warning",
  citation: citationOf("n3-epz"),
  check: (step, _before, after) => carriedToWork("equipotential", step, after),
});
