import { expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import { jobOf } from "../../document";
import type { ElementId } from "../../terms";
import { actsFor } from "./acts";
import { elementOf } from "../job/names";
import { beginJob } from "../job/state";
import { toolFor } from "../job/tools";

const document = draw(`
  s1  source      p1     A  kvLL=12.47
  c1  cutout      p1-p2  A
  d1  disconnect  p2-p3  A
  e1  elbow       p3-p4  A
  k1  clamp       p4-p5  A`);

test.each(["c1", "d1", "e1", "k1"])("what is offered for %s is the tool that the planner takes", (id) => {
  const offered = actsFor(beginJob(document), { of: "element", id: id as ElementId })[0]!.step.with;
  expect(offered).toBe(toolFor(elementOf(document.system, id)!, jobOf(document).tools, true));
});
