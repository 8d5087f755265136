import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawing, files, line, tap } from "./line";

const lane = new URL("../../shared/demos/quarry-lane.stillhot.json", import.meta.url);
const job = (...steps: object[]) =>
  tap({}, { job: { workPoints: { w1: { at: "p2", conductors: "A" } }, steps } });

const file = files({
  "lane.json": readFileSync(lane, "utf8"),
  "blind.json": job({ do: "brief" }, { do: "work", at: "w1" }),
  "left.json": job({ do: "brief" }, { do: "open", element: "c1", phases: "A", with: "load-break-tool" }),
  "nothing.json": drawing(),
  "newer.json": { ...drawing(), weather: "rain" },
});

const json = async (name: string) => {
  const { code, out } = await line(["rehearse", file(name), "--json"]);
  return { code, ...JSON.parse(out) };
};

test("a job that breaks no rule: ok, exit code 0, a verdict after each step", async () => {
  const { code, ok, steps, final, ...rest } = await json("lane.json");
  expect({ code, ok }).toEqual({ code: 0, ok: true });
  expect(Object.keys(rest)).toEqual(["file", "customers", "findings"]);
  expect(steps.map((it: { n: number }) => it.n)).toEqual(steps.map((_: unknown, at: number) => at + 1));
  expect(Object.keys(steps[0])).toEqual(["n", "do", "findings", "consequence", "workPoints"]);
  expect(steps[0].workPoints).toEqual({ w1: { verdict: "live", margin: 0 } });
  expect(steps.at(-1)).toMatchObject({ do: "work", workPoints: { w1: { verdict: "grounded" } } });
  expect(final.workPoints.w1.verdict).toBe("grounded");
  expect(final.conductors["p1b/A"].state).toBe("grounded");
});

test("hands on a live lead: a shock with its volts, not ok, exit code 1", async () => {
  const { code, ok, steps } = await json("blind.json");
  expect({ code, ok }).toEqual({ code: 1, ok: false });
  const [, { findings, consequence }] = steps;
  expect(findings.map((it: { rule: string }) => it.rule)).toContain("work-not-safe");
  expect(consequence).toMatchObject({ kind: "shock", volts: expect.any(Number), text: expect.any(String) });
  expect(consequence.volts).toBeGreaterThan(7000);
});

test("C2 what was warned of on reading is a finding and code 1, and the steps are ok all the same", async () => {
  const { code, ok, findings } = await json("newer.json");
  expect({ code, ok }).toEqual({ code: 1, ok: true });
  expect(findings.map((it: { rule: string }) => it.rule)).toEqual(["unknown-key"]);
});

test("something left otherwise than found is said at the end", async () => {
  const { findings } = await json("left.json");
  expect(findings.map((it: { rule: string }) => it.rule)).toContain("left-behind");
});

test("a file without steps plays nothing", async () => {
  expect(await json("nothing.json")).toMatchObject({ code: 0, ok: true, steps: [], findings: [] });
  expect((await line(["rehearse", file("nothing.json")])).out).toContain("no steps under job.steps");
});

test("told to a person: the sum first, findings with the step, the verdict, the cautions last", async () => {
  const { code, out } = await line(["rehearse", file("blind.json")]);
  expect(code).toBe(1);
  const lines = out.trimEnd().split("\n");
  expect(lines[0]).toMatch(/^.*blind\.json: 2 steps, \d+ danger/);
  expect(out).toMatch(/^danger, .*blind\.json, step 2 \(work-not-safe\)\n {2}\S/m);
  expect(out).toMatch(/After the last step:\nLIVE: pole without a number, below the Tap cutout, A\n/);
  expect(lines.at(-1)).toMatch(/sketch is not the pole/i);
});
