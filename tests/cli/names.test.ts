import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type StillhotDocument, writeDocument } from "../../src/core";
import { isLong } from "../support/long";
import { type Drawn, MADE } from "../support/madeDrawings";
import { files, line, saidBadly } from "./line";

/** Every demo and scenario, and the ids of its file that no label and no word of a language could hold. */
const FILES = ["demos", "scenarios"].flatMap((folder) =>
  readdirSync(`shared/${folder}`)
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => `shared/${folder}/${it}`),
);

interface Saved {
  readonly system: Readonly<
    Record<string, Readonly<Record<string, { readonly label?: string; readonly [key: string]: unknown }>>>
  >;
  readonly job?: { readonly workPoints?: Readonly<Record<string, { readonly label?: string }>> };
}

/** The words of a page or a picture, without what it carries for programs. */
const asRead = (text: string): string =>
  text.replaceAll(/<(style|metadata).*?<\/\1>/gs, " ").replaceAll(/<[^>]*>/g, " ");

/** Ids of a file that are found in a text outside of the labels of that file. */
function idsIn(text: string, { system, job }: Saved): string[] {
  const { points = {}, elements = {}, structures = {} } = system;
  const records = { ...points, ...elements, ...structures, ...job?.workPoints };
  const labels = Object.values(records).map((it) => it.label ?? "");
  const words = text.replaceAll(/\s+/g, " ");
  const bare = labels
    .filter((it) => it !== "")
    .sort((a, b) => b.length - a.length)
    .reduce((rest, label) => rest.replaceAll(label, "…"), words);
  return Object.keys(records).filter(
    (id) => /\d/.test(id) && new RegExp(`(?<![\\w-])${id}(?![\\w-])`).test(bare),
  );
}

/** Made drawings of every sort; the law of their names itself is asked of all of them. */
const ASKED = ["level 4 seed 12", "level 6 seed 13", "job 2", "job 6", "drawing 1", "the import of a map"];
const made = MADE.filter(([name]) => ASKED.includes(name) || name.endsWith("ieee13-assets"));

/** A drawing as a file, with work where its first line ends if nothing is to be done yet. */
function asFile(drawn: Drawn): Saved & { readonly text: string } {
  const document = drawn as StillhotDocument;
  const line = Object.values(document.system.elements).find(({ kind }) => kind === "span") as
    | { readonly to: string; readonly phases: string }
    | undefined;
  const hasWork = Object.keys(document.job?.workPoints ?? {}).length > 0;
  const at = { at: line?.to, conductors: line?.phases.replace(/[^ABC]/g, "") };
  const text = writeDocument(
    hasWork || line === undefined ? document : ({ ...document, job: { workPoints: { w1: at } } } as never),
  );
  return { ...(JSON.parse(text) as Saved), text };
}

const COMMANDS = ["check", "rehearse", "plan", "sheet", "draw"];

/**
 * What is asked of the `nth` file: all in the long run, else one of them. A check, which looks where a drawing may be wrong,
 * takes longer than all the rest.
 */
function askedOfFile(nth: number): readonly string[] {
  if (isLong) return ["check", "rehearse", "sheet"];
  return [nth % 6 === 1 ? "check" : nth % 2 === 0 ? "rehearse" : "sheet"];
}

describe("D13 No id is part of a sentence", () => {
  test.each(FILES.map((path, nth) => [path, nth] as const))("%s", async (path, nth) => {
    const saved = JSON.parse(readFileSync(path, "utf8")) as Saved;
    // An id stands in a sentence of every language or of none: each command is asked in one and the other in turn.
    const told = new Map<string, string>();
    for (const [turn, command] of askedOfFile(nth).entries()) {
      const language = (nth + turn) % 2 === 0 ? "en" : "fr";
      const { out, err } = await line([command, path, "--language", language]);
      expect([err, out.length > 300]).toEqual(["", true]);
      expect(idsIn(asRead(out), saved), `${command} in ${language}`).toEqual([]);
      told.set(`${command} in ${language}`, out);
    }
    // C3: check calls nothing safe, and says nothing without its numbers; tests/cli/check.test.ts asks it of other drawings.
    const checked = told.get("check in en") ?? (isLong ? (await line(["check", path])).out : undefined);
    if (checked !== undefined) expect(saidBadly(checked)).toEqual([]);
  });

  test.each(made)("nor of what is told of %s, on either way out", async (which, drawn) => {
    const { text, ...saved } = asFile(drawn);
    const at = files({ "made.json": text });
    const turn = made.findIndex(([name]) => name === which) % COMMANDS.length;
    for (const [nth, command] of COMMANDS.entries()) {
      if (!isLong && nth !== turn) continue;
      // Each drawing is asked in one language and the other in turn.
      const language = (nth + Object.keys(saved.system["points"]!).length) % 2 === 0 ? "en" : "fr";
      // A plan is told where its order is written to a file.
      const elsewhere = command === "plan" ? ["-o", at("planned.json")] : [];
      const { out, err } = await line([command, at("made.json"), "--language", language, ...elsewhere]);
      const told = asRead(`${out} ${err}`).replaceAll(at(""), "");
      expect(told.length).toBeGreaterThan(50);
      expect(idsIn(told, saved), `${command} in ${language}`).toEqual([]);
    }
  });

  test.each(["draw", "sheet"])("what %s warns of on the way is told by names too", async (command) => {
    const twice = {
      format: "stillhot",
      formatVersion: 1,
      system: {
        structures: { s1: { label: "Pole 7" }, s2: { label: "pole 7" } },
        points: { p1: { on: "s1" }, p2: { on: "s2" } },
        elements: { sp1: { kind: "span", phases: "A", from: "p1", to: "p2" } },
      },
    };
    const at = files({ "twice.json": twice });
    const { err } = await line([command, at("twice.json")]);
    expect(err).toMatch(/name-twice/);
    expect(idsIn(err.replaceAll(at(""), ""), twice)).toEqual([]);
  });

  test("an id in a text is found, and one in a label is not", () => {
    const saved = { system: { elements: { c1: { label: "Cutout c1" }, t1: {} } } };
    expect(idsIn("Cutout c1 and (t1) at ct1", saved)).toEqual(["t1"]);
  });
});
