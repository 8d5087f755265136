import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import type { ElementId } from "../terms";
import { isRefusal } from "../terms";
import { act, startAttempt, worldOf } from "./act";

const drawn = draw(`
  s1  source  p1     A  kvLL=12.47
  c1  cutout  p1-p2  A
  l1  load    p2     A  kw=5
  w1  work    p2     A`);
const trapped = {
  ...drawn,
  scenario: { truth: { f1: { label: "The contact is burned together", fused: { c1: "A" } } } },
};

test.each(["open", "remove-barrel"] as const)(
  "a contact that is fused stays closed, by whichever verb it is opened: %s",
  (verb) => {
    const acted = act(startAttempt(trapped), { do: verb, element: "c1" as ElementId, phases: "A" });
    if (isRefusal(acted)) throw new Error("refused");
    const { truth } = worldOf(acted.attempt);
    expect(truth.document.system.elements["c1" as ElementId]).not.toHaveProperty("open");
    expect(acted.entries.at(-1)!.result.consequence?.text.key).toBe("attempt.handleMoves");
  },
);
