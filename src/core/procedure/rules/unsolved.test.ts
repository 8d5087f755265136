import { expect, test, vi } from "vitest";
import type { Finding } from "../../terms";
import type { JobState } from "../job/state";
import { unsolved } from "./unsolved";

// No drawing is known whose equations cannot be solved, so the rule is shown assessments made by hand.
vi.mock("../job/seen", () => ({
  asItStands: ({ document }: { document: { findings: Finding[] } }) => document,
}));

const found = { rule: "unsolved", severity: "danger", where: "system" } as Finding;
const state = (played: number, ...findings: Finding[]) =>
  ({ played: Array<string>(played).fill("brief"), document: { findings } }) as unknown as JobState;

test.each([
  ["at the first step", state(0, found), state(1, found), 1],
  ["where a step makes it so", state(3), state(4, found), 1],
  ["not again at each step after", state(3, found), state(4, found), 0],
  ["never where everything is solved", state(0), state(1), 0],
])(
  "unsolved: common practice: no number is believed that could not be had; %s",
  (_why, before, after, count) => {
    expect(unsolved.check!({ do: "brief" }, before, after)).toHaveLength(count);
  },
);
