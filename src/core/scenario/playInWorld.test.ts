import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import type { ElementId } from "../terms";
import { isRefusal } from "../terms";
import { act, startAttempt, worldOf } from "./act";
import type { Action } from "./actions";
import type { Attempt } from "./attempt";
import { scoreOf } from "./scoring";

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

test("an order that is repeated back with no words is not correct", () => {
  const asked = played(startAttempt(drawn), { do: "request-permit" }, { do: "receive-permit" });
  const mute = played(asked, { do: "confirm", text: " " });
  expect(mute.log.at(-1)!.result.done).toBe(false);
  expect(mute.log.some(({ verb }) => verb === "correct")).toBe(false);
  const said = played(mute, { do: "confirm", text: "permit received" });
  expect(said.log.some(({ verb }) => verb === "correct")).toBe(true);
});

test("whoever says at once that the job is done earns nothing, not even for what never happened", () => {
  const { earned, of, passed } = scoreOf(played(startAttempt(drawn), { do: "finish" }));
  expect({ earned, passed }).toEqual({ earned: 0, passed: false });
  expect(of).toBeGreaterThan(0);
});

function played(attempt: Attempt, ...actions: readonly Action[]): Attempt {
  return actions.reduce((before, action) => {
    const acted = act(before, action);
    if (isRefusal(acted)) throw new Error("refused");
    return acted.attempt;
  }, attempt);
}
