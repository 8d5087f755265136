import { describe, expect, test } from "vitest";
import { run } from "../../src/cli/run";
import { files, tap } from "./line";

/** What a person sees in the line that tells how far it is, before a terminal. */
async function progress(words: readonly string[]): Promise<{ lines: string[]; out: string; code: number }> {
  const lines: string[] = [];
  let out = "";
  const code = await run(words, {
    out: (text) => void (out += text),
    err: () => undefined,
    line: (text) => void lines.push(text),
    stdin: (async function* () {})(),
    untilStopped: () => AbortSignal.abort(),
  });
  return { lines, out, code };
}

describe("how far it is, before a terminal", () => {
  test("which file of how many is being answered; the line is empty where anything else is written, and at the end", async () => {
    const at = files({ "a.stillhot.json": tap(), "b.stillhot.json": tap() });
    const { lines } = await progress(["check", at("a.stillhot.json"), at("b.stillhot.json")]);
    expect(lines).toEqual([`1 of 2: ${at("a.stillhot.json")}`, "", `2 of 2: ${at("b.stillhot.json")}`, ""]);
  });

  test("how much of a model is read, that the drawing is made of it, that a piece is cut", async () => {
    const model = "shared/import/cim/ieee123.xml";
    const { lines, code } = await progress(["import", model, "--around", "150"]);
    expect(code).toBe(0);
    const percents = lines.flatMap((it) => /: (\d+) % read$/.exec(it)?.[1] ?? []).map(Number);
    expect(percents.length).toBeGreaterThan(5);
    expect(percents).toEqual([...percents].sort((a, b) => a - b));
    expect(percents.at(-1)).toBe(100);
    expect(lines.slice(-3)).toEqual([
      `${model}: the drawing is being made`,
      `${model}: the piece is being cut out`,
      "",
    ]);
  });

  test("a file that cannot be read leaves the line empty", async () => {
    const { lines, code } = await progress(["import", "shared/import/cases/broken-1-dangling-node.xml"]);
    expect(code).toBe(2);
    expect(lines.at(-1)).toBe("");
  });
});
