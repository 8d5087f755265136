import { copyFileSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { COMMANDS } from "../../src/cli/run";
import { writeDocument } from "../../src/core";
import { draw } from "../support/jobNotation";
import { NEW_AND_MOVED_JOBS } from "../trade/newAndMoved";
import { drawing, files, folder, line, saidBadly, tap } from "./line";

const demos = fileURLToPath(new URL("../../shared/demos/", import.meta.url));
const DEMOS = readdirSync(demos).filter((it) => it.endsWith(".stillhot.json"));
const lane = join(demos, "quarry-lane.stillhot.json");

const file = files({
  "drawing.json": drawing(),
  "turned.json": writeDocument(
    draw(NEW_AND_MOVED_JOBS.find(({ job }) => job.includes("not in step"))!.drawing),
  ),
  // Nothing on this drawing opens: the source is at the work point itself.
  "stuck.json": tap(
    {},
    { job: { workPoints: { w1: { at: "p1", conductors: "A" } }, steps: [{ do: "brief" }] } },
  ),
});

test("P1 plan prints the file with an order of steps that rehearses without a danger or a warning", async () => {
  const { code, out, err } = await line(["plan", lane]);
  expect(code).toBe(0);
  expect(JSON.parse(out).system).toEqual(JSON.parse(readFileSync(lane, "utf8")).system);
  expect(JSON.parse(out).job.steps.length).toBeGreaterThan(20);
  expect(out).not.toContain('"why"');
  expect(err).toMatch(
    /\d+ steps: customers without supply: 0 as found, \d+ at the worst, 0 while work goes on, 0 at the end;\s+operations: \d+\./,
  );
  const played = await line(["rehearse", "-", "--json"], { stdin: [out] });
  expect({ code: played.code, ok: JSON.parse(played.out).ok }).toEqual({ code: 0, ok: true });
});

test("plan --json gives each step its reason, and the price", async () => {
  const { code, out, err } = await line(["plan", lane, "--json"]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  const answer = JSON.parse(out);
  expect(answer).toMatchObject({ file: lane, ok: true, customersOut: 0, uncontrolled: [], findings: [] });
  expect(answer.operations).toBeGreaterThan(0);
  for (const step of answer.steps)
    expect(step).toMatchObject({ do: expect.any(String), why: expect.any(String) });
  expect(answer.alternatives[0]).toMatchObject({
    summary: expect.any(String),
    customersOut: expect.any(Number),
  });
});

test("plan -o writes the file and tells the order with its reasons", async () => {
  const at = folder();
  const { code, out, err } = await line(["plan", lane, "-o", at]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toContain("Lift tap clamp, A, with the clamp stick (");
  const written = join(at, "quarry-lane.stillhot.json");
  expect((await line(["validate", written])).code).toBe(0);
});

test("two files of one name never take each other's place in a folder", async () => {
  const [here, there, at] = [folder(), folder(), folder()];
  for (const place of [here, there]) copyFileSync(lane, join(place, "lane.stillhot.json"));
  const pair = [join(here, "lane.stillhot.json"), join(there, "lane.stillhot.json")];
  for (const command of ["plan", "draw", "sheet"]) {
    const { code, out, err } = await line([command, ...pair, "-o", at]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    for (const name of [...pair, "would both be written to"]) expect(err).toContain(name);
    expect(readdirSync(at)).toEqual([]);
  }
});

test("a file without a work point cannot be planned for", async () => {
  const { code, out, err } = await line(["plan", file("drawing.json")]);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain("no work point to plan for");
});

test("a file without a work point whose switches are to be left otherwise is planned by switching alone", async () => {
  const { code, out, err } = await line(["plan", file("turned.json")]);
  expect(code).toBe(0);
  const { job } = JSON.parse(out);
  expect(
    job.steps.map((it: { do: string; element?: string }) => [it.do, it.element ?? ""].join(" ").trim()),
  ).toEqual([
    "brief",
    "request-permit",
    "receive-permit",
    "confirm",
    "open sw1",
    "close tie",
    "release-permit",
  ]);
  expect(err).toContain("0 as found, 60 at the worst, 0 while work goes on, 0 at the end");
});

test("without an order nothing is printed in place of the file, and what has no control is told", async () => {
  const { code, out, err } = await line(["plan", file("stuck.json")]);
  expect({ code, out }).toEqual({ code: 1, out: "" });
  expect(err).toMatch(/No order of steps was found/);
  const json = JSON.parse((await line(["plan", file("stuck.json"), "--json"])).out);
  expect(json).toMatchObject({ ok: false, steps: [] });
  expect(json.uncontrolled[0]).toMatchObject({ conductor: "A", control: expect.any(String) });
});

// What check says of the demos is held to the same in names.test.ts, where it is worked out anyway.
test.each(
  COMMANDS.filter((it) => it.takesFiles && !["check", "draw", "sheet"].includes(it.name)).map(
    ({ name }) => name,
  ),
)("C3 %s calls nothing in the demos safe, and says nothing without its numbers", async (name) => {
  const { out, err } = await line([name, ...DEMOS.map((it) => join(demos, it))]);
  expect(saidBadly(`${out}${err}`)).toEqual([]);
});
