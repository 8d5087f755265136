import { describe, expect, test } from "vitest";
import { draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { beginJob } from "../job/state";
import type { Step } from "../../document";
import type { WorkPointId } from "../../terms";
import { type ControlSheet, controlsFor } from "./controls";

const AT = "w1" as WorkPointId;
const DRAWING = draw(`${TAP}\n  w1 work p4 A`);
const stateAfter = (steps: string) =>
  playAll(DRAWING, parseSteps(steps, Object.keys(DRAWING.system.points))).at(-1)?.state ?? beginJob(DRAWING);
const sheetFor = (steps: string, ticked: readonly string[] = []): ControlSheet =>
  controlsFor(stateAfter(steps), AT, ticked)!;
const offered = (sheet: ControlSheet) => sheet.threats.flatMap((it) => it.controls);
const verbsOf = ({ steps }: { readonly steps: readonly Step[] }) => steps.map((it) => it.do).join(" ");

describe("What could take a threat away", () => {
  test("a ground on what is live is not among it", () => {
    const controls = offered(sheetFor(""));
    expect(controls.length).toBeGreaterThan(0);
    expect(controls.filter((it) => verbsOf(it).includes("ground"))).toEqual([]);
  });

  test("once the line is open, it is", () => {
    const controls = offered(sheetFor("open c1 with load-break-tool"));
    expect(controls.map(verbsOf)).toContain("ground");
  });

  test("nothing that is offered brings an arc, a fault or a shock about", () => {
    for (const steps of ["", "open c1 with load-break-tool", "open c2 with load-break-tool"])
      for (const control of offered(sheetFor(steps))) {
        const played = playAll(stateAfter(steps).document, control.steps);
        expect(played.map((it) => it.consequence.kind)).toEqual(control.steps.map(() => "none"));
      }
  });

  test("what was ticked in an order that does harm says which harm", () => {
    const open = "open c1 with load-break-tool";
    const ground = offered(sheetFor(open)).find((it) => verbsOf(it) === "ground")!;
    const tickedAlone = offered(sheetFor("", [ground.id])).find((it) => it.id === ground.id)!;
    expect(tickedAlone.harm?.key).toMatch(/^consequence\./);
  });

  test("what was ticked stays in the list, however little it is worth beside the rest", () => {
    const open = "open c1 with load-break-tool";
    for (const { id } of offered(sheetFor(open)))
      expect(offered(sheetFor(open, [id])).map((it) => it.id)).toContain(id);
  });
});
