// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { type ConductorId, type ElementId, seen } from "../../core";
import { Player, stateAfter } from "../worker/player";
import { JobViewing } from "./jobViewing.svelte";

const TAP = `
  s1 source p1 ABC kvLL=12.47
  c1 disconnect p1-p2 ABC open=ABC
  sp1 span p2-p3 ABC
  g1 ground p3 ABC to=neutral
  w1 work p3 ABC
`;

const looksOf = (viewing: JobViewing) => {
  const { shapes } = viewing.scene.elements.get("sp1" as ElementId)!;
  return new Set(
    shapes.flatMap((it) => ("look" in it ? (it.look ?? []) : [])).filter((it) => it !== "neutral"),
  );
};
const state = stateAfter(new Player().play(draw(TAP)), 0);
const job = { state, look: { assessment: seen(state) } };

test("the drawing of a job shows the states that the job has, and not what reach alone would tell", () => {
  expect(seen(state).conductors["p3/A" as ConductorId]!.state).toBe("grounded");
  expect([...looksOf(new JobViewing(job))]).toEqual(["grounded"]);
});

test("where voltage was found that the drawing does not know of, it shows no state, and every work point is live", () => {
  const viewing = new JobViewing(job, () => true);
  expect([...looksOf(viewing)]).toEqual(["unknown"]);
  expect(viewing.workPoint?.report?.verdict).toBe("live");
});

test("while nothing is known of it, it shows no state, and says that it is worked out", () => {
  const viewing = new JobViewing({ state, look: undefined });
  expect([...looksOf(viewing)]).toEqual(["unknown"]);
  expect(viewing.isStale).toBe(true);
  expect(viewing.workPoint?.report).toBeUndefined();
});
