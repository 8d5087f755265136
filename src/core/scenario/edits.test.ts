import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  type Change,
  type Edit,
  readDocument,
  scenarioOf,
  type StillhotDocument,
  writeDocument,
} from "../document";
import { isRefusal } from "../terms";
import { canBeSolved, planned, truthOf } from ".";
import { comeLater, forget, hide, makeStuck, makeTrue, notThere, unhide } from "./edits";
import { spell } from "../../../tests/support/words";

const demo = readDocument(
  readFileSync(new URL("../../../shared/demos/quarry-lane.stillhot.json", import.meta.url), "utf8"),
) as { document: StillhotDocument };

function edited(before: StillhotDocument, edit: Edit): Change {
  const outcome = edit(before);
  if (isRefusal(outcome)) throw new Error(spell(outcome.refused));
  expect(readDocument(writeDocument(outcome.after))).toMatchObject({ document: outcome.after, warnings: [] });
  return outcome;
}

describe("an instructor hides and changes things by one edit each", () => {
  test("what is hidden stays true, leaves the map with what it alone carried, and comes back", () => {
    const hidden = edited(demo.document, hide(["tie", "far", "s2"], "The far source"));
    expect(Object.keys(hidden.after.system.elements)).not.toContain("tie");
    expect(Object.keys(hidden.after.system.points)).not.toContain("sub2");
    expect(hidden.after.job?.["steps"]).toBeUndefined();
    expect(scenarioOf(hidden.after).answer).toEqual(demo.document.job!["steps"]);
    expect(truthOf(hidden.after).system).toEqual(demo.document.system);
    const [fact] = hidden.made!;
    expect(edited(hidden.after, unhide(fact!)).after.system).toEqual(demo.document.system);
    expect(Object.keys(truthOf(edited(hidden.after, forget(fact!)).after).system.elements)).not.toContain(
      "tie",
    );
  });

  test.each([
    ["the place of work itself", ["p1b"]],
    ["all that leads to it", ["k1", "c1"]],
  ])("what is worked on stays on the map: %s is not hidden, and the refusal names the place", (_, ids) => {
    const refused = hide(ids, "gone")(demo.document);
    if (!isRefusal(refused)) throw new Error("it was hidden");
    expect(refused.refused).toMatchObject({ key: "scenario.edit.workThere" });
    expect(spell(refused.refused)).toContain("Pole Q1");
  });

  test("what comes only in the middle is on no map and not true before", () => {
    const later = edited(demo.document, comeLater(["tie", "far", "s2"], { step: 4 }, "The tie is put back"));
    const [inject] = Object.values(scenarioOf(later.after).injects!);
    expect(inject).toMatchObject({ label: "The tie is put back", after: { step: 4 } });
    expect(Object.keys(inject!.add!.elements!)).toContain("tie");
    expect(Object.keys(truthOf(later.after).system.elements)).not.toContain("tie");
  });

  test("what the map shows may not be there at all", () => {
    const gone = edited(demo.document, notThere("tie", "The tie is gone"));
    expect(Object.keys(gone.after.system.elements)).toContain("tie");
    expect(Object.keys(truthOf(gone.after).system.elements)).not.toContain("tie");
  });

  test("another position, a stuck clamp, a welded blade", () => {
    const closed = edited(demo.document, makeTrue("tie", { open: "" }, "The tie is closed"));
    expect(truthOf(closed.after).system.elements["tie" as never]).toMatchObject({ open: "" });
    expect(closed.after.system).toBe(demo.document.system);
    const stuck = edited(closed.after, makeStuck("k1", "seized", true, "tap clamp is seized"));
    expect(scenarioOf(stuck.after).truth![stuck.made![0]!]).toEqual({
      label: "tap clamp is seized",
      seized: { k1: true },
    });
    expect(
      Object.keys(
        scenarioOf(edited(stuck.after, makeStuck("tie", "fused", "A", "a blade is welded")).after).truth!,
      ),
    ).toHaveLength(3);
  });

  test("what cannot be done is refused in words", () => {
    const refusal = (edit: Edit) => {
      const outcome = edit(demo.document);
      return isRefusal(outcome) ? spell(outcome.refused) : "";
    };
    expect(refusal(hide(["nothing"], ""))).toBe("there is no nothing in this drawing");
    expect(refusal(unhide("f9"))).toBe("there is no hidden fact f9");
    expect(refusal(makeTrue("tie", { open: "Q" }, "Q"))).toContain(
      "the drawing as it truly stands would not be readable",
    );
  });

  test("a scenario made from a drawing in two edits is solved by the planner, and its trap springs", () => {
    const { job, ...rest } = demo.document;
    const { steps: _steps, ...task } = job!;
    const drawing = { ...rest, job: task } as StillhotDocument;
    const scenario = edited(drawing, makeTrue("tie", { open: "" }, "The tie is closed")).after;
    const { solved, why } = canBeSolved(scenario, planned);
    expect(why.map((it) => spell(it))).toEqual([]);
    expect(solved).toBe(true);
  });
});
