import { expect, test } from "vitest";
import { draw, TAP } from "../../../../tests/support/jobNotation";
import { rehearse } from "./rehearse";

test("work that takes down all that hung at its own point is played to its end", () => {
  const { steps } = rehearse(
    draw(
      `${TAP}
      sp9 span p4-p9 A leave=gone
      w1  work p9 A does=sp9`,
      "open c1; work w1; close c1",
    ),
  );
  expect(steps.at(-1)!.state.document.system.elements).not.toHaveProperty("sp9");
  expect(steps.at(-1)!.state.notDone).toBeUndefined();
});
