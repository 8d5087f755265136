import { describe, expect, test } from "vitest";
import { draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { elementOf } from "../job/names";
import { seen } from "../job/seen";
import { spell } from "../../../../tests/support/words";

const playedOn = (drawing: string, steps: string) => playAll(draw(drawing), parseSteps(steps, []));

/** How things stand after some steps: links blown by cutout, and the state of one conductor. */
function asItStands(drawing: string, steps: string, conductor: string): string {
  const { state } = playedOn(drawing, steps).at(-1)!;
  const blown = ["c1", "c2"].map((id) => {
    const element = elementOf(state.document.system, id);
    return element?.kind === "cutout" ? `${id} ${element.blown || "-"}` : "";
  });
  return [...blown, seen(state).conductors[conductor as never]!.state].join(", ");
}

const FAULT = `${TAP}\nf1 fault p5 A`;
const BANK = `
  s1  source      sub    ABC  kvLL=12.47
  sp1 span        sub-p1 ABC  lengthM=2000
  c1  cutout      p1-p2  ABC  fuse=K25
  f1  fault       p2     ABC
  w1  work        p2     ABC
`;
const GENERATOR = `${TAP}\ngx generator h1 12 kva=6 volts=240`;

describe("Links blow on the fault that a step makes", () => {
  test.each([
    ["closed onto a fault: the nearest link", FAULT, "open c2; close c2", "p5/A", "c1 -, c2 A, isolated"],
    [
      "closed onto the crew's own ground",
      TAP,
      "open c1; ground p3 A; close c1",
      "p3/A",
      "c1 A, c2 -, grounded",
    ],
    ["a ground put onto the live line", TAP, "ground p3 A", "p3/A", "c1 A, c2 -, grounded"],
    [
      "a fault so small that the link may hold leaves it whole, and the line live",
      `${FAULT} ohms=350`,
      "open c2; close c2",
      "p5/A",
      "c1 -, c2 -, faulted",
    ],
    [
      "a generator has no link",
      GENERATOR,
      "open c2; ground p5 A as g1; start gx",
      "p5/A",
      "c1 -, c2 -, faulted",
    ],
    [
      "a fault that was there before the step blows nothing by itself",
      FAULT,
      "tag c1",
      "p5/A",
      "c1 -, c2 -, faulted",
    ],
    ["every pole that feeds it", BANK, "open c1; close c1", "p2/B", "c1 ABC, , isolated"],
  ])("%s", (_why, drawing, steps, conductor, wanted) =>
    expect(asItStands(drawing, steps, conductor)).toBe(wanted),
  );

  test("the step that made it is still told with the current that flowed", () => {
    const { consequence, findings } = playedOn(TAP, "open c1; ground p3 A; close c1").at(-1)!;
    expect(consequence.kind).toBe("fault");
    expect(consequence.amps).toBeGreaterThan(1000);
    expect(findings.map(({ rule }) => rule)).toEqual(
      expect.arrayContaining(["grounds-left", "fuse-on-close", "all-clear-first"]),
    );
  });

  test("its barrel hangs open: a new link, then it closes", () => {
    const [, , closed, again, renewed, back] = playedOn(
      TAP,
      "open c1; ground p3 A as g1; close c1; close c1; refuse c1; close c1",
    );
    expect(closed!.state.notDone).toBeUndefined();
    expect(spell(again!.state.notDone!)).toMatch(/link of cutout at pole with tap clamp is blown/);
    expect(renewed!.state.notDone).toBeUndefined();
    expect(back!.consequence.kind).toBe("fault");
  });

  test("what was tested before it does not count after it", () => {
    const [, tested, grounded] = playedOn(
      `${TAP}\nc3 cutout p1-p9 B open=B`,
      "check-detector; test p9 B; ground p3 A",
    );
    expect(tested!.state.tested.size).toBe(1);
    const { state } = grounded!;
    expect(state.readings.size).toBe(0);
    expect(state.tested.size).toBe(0);
  });
});
