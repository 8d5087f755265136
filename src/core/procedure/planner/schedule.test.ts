import { expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import { say } from "../../terms";
import { type PlannedGroup, inOrder } from "./schedule";

const { system } = draw(`
  sp1  span  p1-p2  A
  sp2  span  p2-p3  A
`);

const action = (
  text: string,
  rank: number,
  after: readonly PlannedGroup[] = [],
  at?: string,
): PlannedGroup => ({
  rank,
  after,
  steps: [{ do: "note", text, why: say("why.brief") }],
  ...(at === undefined ? {} : { at }),
});
const order = (...actions: PlannedGroup[]): string =>
  inOrder(system, actions)
    .map(({ text }) => text)
    .join(" ");

test("the lower rank goes first, whatever the order of the list", () => {
  expect(order(action("b", 2), action("a", 1))).toBe("a b");
});

test("what it waits for goes first, whatever its rank", () => {
  const a = action("a", 2);
  expect(order(action("b", 1, [a]), a)).toBe("a b");
});

test("of equals the nearest goes first", () => {
  expect(order(action("start", 0, [], "p1"), action("far", 1, [], "p3"), action("near", 1, [], "p2"))).toBe(
    "start near far",
  );
});

test("what can be done where one stands is done before one walks on", () => {
  const far = action("far", 1, [], "p3");
  const later = [action("near later", 2, [], "p1"), action("far later", 3, [far], "p3")];
  expect(order(action("near", 1, [], "p1"), far, ...later)).toBe("near near later far far later");
});

test("where a way back can be saved one goes to the far place first", () => {
  const near = action("near", 1, [], "p1");
  const far = action("far", 1, [], "p3");
  const work = action("work", 2, [near, far], "p1");
  expect(order(near, far, work)).toBe("far near work");
});

test("what waits for something that is never done is a mistake of the planner", () => {
  expect(() => order(action("a", 1, [action("never", 1)]))).toThrow(/circle of note/);
});
