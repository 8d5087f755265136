import { join } from "node:path";
import { expect, test } from "vitest";
import { folder, line } from "./line";

const DEMO = "shared/demos/quarry-lane.stillhot.json";

test.each([["rehearse"], ["plan", "-o", join(folder(), "planned.json")], ["sheet"]])(
  "%s says what the region says, and its code stays",
  async (command, ...more) => {
    const usual = await line([command, DEMO, ...more]);
    const said = await line([command, DEMO, ...more, "--region", "us"]);
    expect(usual.out).toMatch(/the permit/);
    expect(usual.out).not.toMatch(/\b(clearance|fuse door)s?\b/i);
    expect(said.out).toMatch(/the clearance/);
    expect(said.out).not.toMatch(/(?<!-)\b(permit|barrel|tailboard)s?\b(?!-)/i);
    expect(said.code).toBe(usual.code);
  },
);

test("names of rules and verbs stay as they are in any region", async () => {
  const [usual, said] = await Promise.all(
    [[], ["--region=us"]].map((more) => line(["plan", DEMO, "--json", ...more])),
  );
  const verbs = (out: string) => [...out.matchAll(/"(?:do|rule)":\s*"([\w-]+)"/g)].map(([, it]) => it);
  expect(verbs(said!.out)).toEqual(verbs(usual!.out));
  expect(verbs(said!.out)).toContain("request-permit");
});

test.each([
  [["--region", "mars"], /there is no region mars; there are us/],
  [["--region"], /--region needs a value: --region REGION/],
  [["--region", "us", "--region=us"], /--region is given twice/],
  [
    ["--region", "us", "--language", "fr"],
    /--region us says whose English is meant, and --language fr is none/,
  ],
])("%j is refused", async (flags, why) => {
  const { err, out, code } = await line(["plan", DEMO, ...flags]);
  expect(err).toMatch(why);
  expect(out).toBe("");
  expect(code).toBe(2);
});
