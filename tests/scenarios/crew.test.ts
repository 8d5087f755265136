import { expect, test } from "vitest";
import {
  act,
  type Action,
  type Attempt,
  handOver,
  isJobStep,
  isRefusal,
  readHandOver,
  roleOf,
  scenarioOf,
  scoreOf,
  startAttempt,
  takeOver,
  variantOf,
} from "../../src/core";
import { scenarioFile } from "./library";

const storm = variantOf(scenarioFile("larkfield-storm"), 7);
const answer = scenarioOf(storm).answer as readonly Action[];

const done = (attempt: Attempt, action: Action): Attempt => {
  const acted = act(attempt, action);
  if (isRefusal(acted)) throw new Error(`${action.do} is refused`);
  return acted.attempt;
};
const taken = (code: string, here?: Attempt) => takeOver(readHandOver(code)!, storm, here);

test("two phones that hand one attempt to and fro play what one phone plays, entry by entry", () => {
  const begun = startAttempt(storm, { who: "Kim and Sam", startedAt: "2026-05-04T07:00:00Z" });
  let turns = 0;
  let role: "worker" | "operator" = "worker";
  const phones = { worker: begun, operator: begun };
  for (const action of answer) {
    const next = isJobStep(action) ? roleOf(action.do) : "worker";
    if (next !== role) {
      const code = handOver(phones[role], next);
      const attempt = taken(code, phones[next]);
      if (isRefusal(attempt)) throw new Error("it is not taken over");
      phones[next] = attempt;
      role = next;
      turns++;
    }
    phones[role] = done(phones[role], action);
  }
  const alone = answer.reduce(done, begun);
  expect(turns).toBeGreaterThan(1);
  expect(phones[role].log).toEqual(alone.log);
  expect(phones[role].checksum).toBe(alone.checksum);
  const { earned, of } = scoreOf(done(phones[role], { do: "finish" }));
  expect(earned).toBe(of);
});

test("an old code takes nothing back, another scenario and damage are refused", () => {
  const begun = startAttempt(storm, { startedAt: "2026-05-04T07:00:00Z" });
  const old = handOver(begun, "operator");
  const further = done(begun, answer[0]!);
  expect(isRefusal(taken(old, further))).toBe(true);
  expect(taken(handOver(further, "worker"), begun)).toEqual(further);
  // Another attempt at the same scenario is no earlier state of this one.
  expect(isRefusal(taken(old, startAttempt(storm, { startedAt: "2026-05-05T07:00:00Z" })))).toBe(false);
  expect(isRefusal(takeOver(readHandOver(old)!, scenarioFile("larkfield-storm")))).toBe(true);
  expect(isRefusal(taken(`${old.slice(0, -8)}AAAAAAAA`))).toBe(true);
  for (const text of ["", "stillhot-crew.boss.000000000000.0.AA", "https://example.org"])
    expect(readHandOver(text)).toBeUndefined();
});

test("a whole job fits into one code that a phone reads", () => {
  const whole = answer.reduce(done, startAttempt(storm, { startedAt: "2026-05-04T07:00:00Z" }));
  expect(handOver(whole, "operator").length).toBeLessThan(1800);
});
