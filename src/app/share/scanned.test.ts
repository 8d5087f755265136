import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  codeTexts,
  fingerprintLetters,
  fingerprintOf,
  linkTo,
  readDocument,
  type StillhotDocument,
  writeDocument,
} from "../../core";
import { likeness, type ScanOutcome, Scanned } from "./scanned";

const read = (file: string): StillhotDocument => {
  const found = readDocument(readFileSync(file, "utf8"));
  if (!("document" in found)) throw new Error(`${file} does not read`);
  return found.document;
};
const small = read("shared/demos/transformer-tap.stillhot.json");
const scenario = read("shared/scenarios/first-cutout.stillhot.json");
const lettersOf = (document: StillhotDocument) => fingerprintLetters(fingerprintOf(document));

/** A drawing that takes several codes: names that do not repeat. */
function large(title: string): StillhotDocument {
  const points: Record<string, object> = {};
  for (let k = 0; k < 60; k++)
    points[`p${k}`] = {
      label: fingerprintLetters(fingerprintOf({ title: `${title} ${k}` } as never)),
      x: k * 40,
      y: 0,
    };
  const text = JSON.stringify({
    format: "stillhot",
    formatVersion: 1,
    title,
    notes: Array.from({ length: 40 }, (_, k) => fingerprintOf({ title: `${title}/${k}` } as never)).join(" "),
    system: { points, elements: {} },
  });
  const found = readDocument(text);
  if (!("document" in found)) throw new Error("the large drawing does not read");
  return found.document;
}

const written = (outcome: ScanOutcome) =>
  "document" in outcome ? writeDocument(outcome.document) : JSON.stringify(outcome);

describe("codes as they are scanned", () => {
  test("K4 one code is the drawing, with or without an address before it, and so is a link in a code", async () => {
    const [text] = codeTexts(small, lettersOf(small), "https://example.org/app/");
    for (const it of [text!, text!.slice(text!.indexOf("#")), `https://example.org/#${linkTo(small)}`])
      expect(written(await new Scanned().take(it))).toBe(writeDocument(small));
  });

  test("K4 several codes are told one by one and make the drawing in whatever order, twice or once", async () => {
    const document = large("Long line");
    const texts = codeTexts(document, lettersOf(document));
    expect(texts.length).toBeGreaterThan(1);
    const scanned = new Scanned();
    const [first, ...rest] = texts.toReversed();
    expect(await scanned.take(first!)).toEqual({ count: texts.length, have: [texts.length] });
    expect(await scanned.take(first!)).toEqual({ count: texts.length, have: [texts.length] });
    let outcome: ScanOutcome | undefined;
    for (const it of rest) outcome = await scanned.take(it);
    expect(written(outcome!)).toBe(writeDocument(document));
  });

  test("K4 codes of two drawings do not mix, and codes that lie about their fingerprint are refused", async () => {
    const [one, other] = [large("One"), large("Other")];
    const [oneTexts, otherTexts] = [one, other].map((it) => codeTexts(it, lettersOf(it)));
    const mixed = new Scanned();
    await mixed.take(oneTexts![0]!);
    expect(await mixed.take(otherTexts![1]!)).toHaveProperty("problem");
    const lying = new Scanned();
    const forged = oneTexts!.map((it) => it.replace(/n1p\.[A-Z0-9]{8}/, "n1p.AAAABBBB"));
    let last: ScanOutcome | undefined;
    for (const it of forged) last = await lying.take(it);
    expect(last).toHaveProperty("problem");
  });

  test.each([
    ["an address of somebody else", "https://example.com/pay?amount=100"],
    ["a script", "javascript:alert(1)"],
    ["a network to join", "WIFI:S:crew;T:WPA;P:pass;;"],
    ["nothing", ""],
    ["a damaged drawing", "#n1.123456789"],
    ["a code of no drawing", "#n1p.AAAABBBB.1.1.99999"],
    ["a link that does not unpack", "#d1.AAAA"],
  ])("%s is refused with one sentence", async (_, text) => {
    const outcome = await new Scanned().take(text);
    expect(outcome).toEqual({ problem: expect.stringMatching(/^[^\n]{10,300}$/) as string });
  });
});

describe("paper beside the screen", () => {
  const renamed = { ...small, title: "Another line" } as StillhotDocument;
  const changed = { ...small, notes: "changed since it was printed" } as StillhotDocument;

  test("the very same drawing, also where the screen has what a scenario hides", () => {
    expect(likeness(small, small).is).toBe("same");
    const { scenario: _, ...printed } = scenario;
    expect(likeness(printed as StillhotDocument, scenario).is).toBe("same");
  });

  test("a drawing of its name in another state is stale paper, and both fingerprints are told", () => {
    const { is, paper, here } = likeness(small, changed);
    expect([is, paper, here]).toEqual(["stale", lettersOf(small), lettersOf(changed)]);
  });

  test("a drawing of another name is another one", () => {
    expect(likeness(renamed, small).is).toBe("other");
  });
});
