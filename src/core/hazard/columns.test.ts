import { expect, test } from "vitest";
import { readDocument, type StillhotDocument } from "../document";
import { assess, fromColumns, STATES, statesByReach, statesUntold, toColumns } from ".";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";

const drawings: StillhotDocument[] = Array.from({ length: draws(150) }, (_, seed) =>
  readDocument(JSON.stringify(randomDocument(seed + 8000, { parts: 16 }))),
).flatMap((read) => ("document" in read ? [read.document] : []));

const HOT = ["energized", "backfed", "induced", "faulted"];

test("H6 what reach alone tells never calls a conductor dead, and calls it energized or neutral only where volts leave it so", () => {
  const said = new Map<string, number>();
  for (const document of drawings) {
    const { conductors } = assess(document);
    const { ids, states } = statesByReach(document.system);
    expect(new Set(ids)).toEqual(new Set(Object.keys(conductors)));
    ids.forEach((id, row) => {
      const state = STATES[states[row]!]!;
      said.set(state, (said.get(state) ?? 0) + 1);
      expect(["unknown", "energized", "backfed", "faulted", "neutral"], id).toContain(state);
      if (state === "energized" || state === "neutral") expect(conductors[id]!.state, id).toBe(state);
      // What volts show to be live without a source, such as what is induced, was not called known before.
      if (HOT.includes(conductors[id]!.state)) expect([...HOT, "unknown"], id).toContain(state);
    });
  }
  for (const state of ["unknown", "energized", "backfed", "faulted", "neutral"])
    expect(said.get(state), state).toBeGreaterThan(0);
});

test("H6 of a drawing that was not looked at since an edit, nothing is called dead", () => {
  for (const document of drawings.slice(0, 20)) {
    const before = toColumns(assess(document));
    const { states } = statesUntold({ ids: before.ids.conductors, states: before.columns.states });
    for (const code of states) expect([...HOT, "unknown"]).toContain(STATES[code]);
  }
});

test("an assessment comes back from its columns as it was", () => {
  let ids: ReturnType<typeof toColumns>["ids"] | undefined;
  for (const document of drawings.slice(0, draws(40))) {
    const assessment = assess(document);
    const sent = toColumns(assessment, ids);
    const back = fromColumns(structuredClone(sent.columns), ids);
    expect(back.assessment).toEqual(assessment);
    expect({ ...back.assessment.conductors }).toEqual(assessment.conductors);
    expect(back.assessment.conductors["nothing/A" as never]).toBeUndefined();
    const again = fromColumns(structuredClone(toColumns(assessment, sent.ids).columns), back.ids);
    expect(again.assessment).toEqual(assessment);
    expect(again.ids.conductors).toBe(back.ids.conductors);
    ids = sent.ids;
  }
});
