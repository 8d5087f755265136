import { describe, expect, test } from "vitest";
import { draw, lastMove, parseSteps, playAll } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";
import { isOnCable, isSpiking, isTracing, spikedLive, systemAfterSpike, tracedBy } from "./spiking";

/** A three-phase cable behind cutouts, with a splice in which nothing is bare. */
const CABLE = `
  s1  source p1    ABC kvLL=12.47
  c1  cutout p1-p2 ABC
  ca1 span   p2-p3 ABC construction=cable lengthM=100
  ca2 span   p3-p4 ABC construction=cable lengthM=100
`;
const GROUNDED = "open c1 ABC; ground p2 ABC as g1; ground p4 ABC as g2";

const moved = (steps: string, more = "") => lastMove(draw(`${CABLE}\n${more}`), steps);

describe("A test of a cable, where nothing is bare (docs/format.md, steps)", () => {
  test.each([
    ["a spike", "test p3 A with spike", "spiking on-cable"],
    ["a tracer", "test p3 A with tracer", "tracing on-cable"],
    ["a detector", "test p3 A", ""],
    ["no test at all, whatever is in hand", "open c1 A with spike", ""],
    ["nor with a tracer in hand", "open c1 A with tracer", ""],
  ])("%s", (_why, steps, wanted) => {
    const step = moved(steps)[0];
    const said = [isSpiking(step) && "spiking", isTracing(step) && "tracing", isOnCable(step) && "on-cable"];
    expect(said.filter(Boolean).join(" ")).toBe(wanted);
  });

  test.each([
    ["of a cable that is grounded at its ends", `${GROUNDED}; test p3 ABC with tracer`, "p3/A p3/B p3/C"],
    ["of one phase of it", `${GROUNDED}; test p3 B with tracer`, "p3/B"],
    [
      "of its neutral too, which carries no signal",
      `${GROUNDED}; test p3 ABCN with tracer`,
      "p3/A p3/B p3/C",
    ],
    ["of a dead one that nobody grounded", "open c1 ABC; test p3 ABC with tracer", ""],
    ["of a live one", "test p3 ABC with tracer", ""],
  ])("a trace %s", (_why, steps, wanted) => {
    const [step, state] = moved(steps);
    expect(tracedBy(step as Parameters<typeof tracedBy>[0], state).join(" ")).toBe(wanted);
    const { consequence } = playAll(state.document, [step])[0]!;
    expect(spell(consequence.text)).toMatch(
      wanted === "" ? /no signal .*pole/ : /signal is on .*pole .* phase.*this is the cable that is grounded/,
    );
  });

  test.each([
    ["a live cable", "test p3 ABC with spike", "", "p3/A p3/B p3/C"],
    ["its neutral, which is not supplied", "test p3 AN with spike", "", "p3/A"],
    ["a dead one", "open c1 ABC; test p3 ABC with spike", "", ""],
    ["one that is live on one phase", "open c1 AB; test p3 ABC with spike", "", "p3/C"],
    ["nothing, with a detector", "test p3 ABC", "", ""],
    [
      "one that a customer's machine feeds",
      "open c1 ABC; test p3 A with spike",
      "gx generator p4 A kva=50 volts=12470 on=true",
      "p3/A",
    ],
  ])("a spike into %s", (_why, steps, more, wanted) => {
    const [step, state] = moved(steps, more);
    expect(spikedLive(step, state).join(" ")).toBe(wanted);
    const { system } = state.document;
    const after = systemAfterSpike(step, state);
    if (wanted === "") return expect(after).toBe(system);
    const { spike1, ...others } = after.elements as Record<string, unknown>;
    expect(others).toEqual(system.elements);
    expect(spike1).toEqual({
      kind: "fault",
      at: "p3",
      phases: wanted.replaceAll(/p3\/| /g, ""),
      to: "neutral",
    });
  });

  test("of a cable without a neutral the short is to earth, and is felt as a fault", () => {
    const bare = CABLE.replaceAll("ABC construction", "ABC neutral=false construction").replaceAll(
      "p1-p2 ABC",
      "p1-p2 ABC neutral=false",
    );
    const [step, state] = lastMove(draw(bare), "test p3 B with spike");
    expect((systemAfterSpike(step, state).elements as Record<string, unknown>)["spike1"]).toEqual({
      kind: "fault",
      at: "p3",
      phases: "B",
      to: "earth",
    });
  });

  test("a spike into a live cable is told as the fault that it is", () => {
    const { consequence } = playAll(draw(CABLE), parseSteps("test p3 A with spike", []))[0]!;
    expect(consequence.kind).toBe("fault");
    expect(spell(consequence.text)).toContain("spike");
  });
});
