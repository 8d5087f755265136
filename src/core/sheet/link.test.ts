import fc from "fast-check";
import { expect, test } from "vitest";
import { readDocument, type StillhotDocument, writeDocument } from "../document";
import { codeTexts, digitsTo, fingerprintLetters, linkOfCodes, linkTo, textOfLink } from "./link";

/** A drawing of some poles with labels of any letters. */
const drawing = (labels: readonly string[]): StillhotDocument => {
  const points = Object.fromEntries(labels.map((label, at) => [`p${at}`, { label, x: 60 * at, y: 0 }]));
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "Links",
      system: { points, elements: {} },
    }),
  );
  if (!("document" in read)) throw new Error("not read");
  return read.document;
};

const again = (fragment: string | undefined): string | undefined => {
  const text = fragment === undefined ? undefined : textOfLink(fragment);
  const read = text === undefined ? undefined : readDocument(text);
  return read !== undefined && "document" in read ? writeDocument(read.document) : undefined;
};

const labels = fc.array(fc.string({ unit: "grapheme", maxLength: 40 }), { maxLength: 60 });

test("B4 a link and a code of digits give back the same bytes", () => {
  fc.assert(
    fc.property(labels, (some) => {
      const document = drawing(some);
      const bytes = writeDocument(document);
      expect(linkTo(document)).toMatch(/^d1\.[A-Za-z0-9_-]+$/);
      expect(digitsTo(document)).toMatch(/^n1\.\d+$/);
      expect(again(linkTo(document))).toBe(bytes);
      expect(again(digitsTo(document))).toBe(bytes);
    }),
    { numRuns: 60 },
  );
});

/** Labels that do not compress, so that one code does not hold them. */
const noise = (count: number): string[] =>
  Array.from(
    { length: count },
    (_, at) => ((at * 2654435761) >>> 0).toString(36).repeat(2) + (at * 40503 + 7).toString(36),
  );

test("several codes are put together in any order, and never with another drawing's", () => {
  const document = drawing(noise(120));
  const codes = codeTexts(document, "ABCD EFGH", "https://example.org/app");
  expect(codes.length).toBeGreaterThan(1);
  for (const code of codes) expect(code).toMatch(/^https:\/\/example\.org\/app#n1p\.ABCDEFGH\.\d\.\d\.\d+$/);
  expect(again(linkOfCodes([...codes].reverse()))).toBe(writeDocument(document));
  expect(linkOfCodes(codes.slice(1))).toBe(undefined);
  expect(linkOfCodes([codes[0]!, codes[1]!.replace("ABCDEFGH", "ABCDEFGJ")])).toBe(undefined);
  expect(linkOfCodes([codes[0]!, codes[0]!])).toBe(undefined);
  expect(linkOfCodes([])).toBe(undefined);
  expect(again(linkOfCodes(codeTexts(drawing(["one"]), "ABCD EFGH")))).toBe(writeDocument(drawing(["one"])));
});

test("what no code holds has none", () => {
  expect(codeTexts(drawing(noise(1500)), "ABCD EFGH")).toEqual([]);
});

test.each([
  "",
  "d1.",
  "n1.",
  "d2.AAAA",
  "d1.!!!",
  "d1.A",
  "n1.12a",
  "n1.999999999999",
  "d1.AAAAAAAA",
  "#d1.AAAA",
])("%j is no drawing, and says so", (fragment) => expect(again(fragment)).toBe(undefined));

test("B4 a damaged link throws nothing", () => {
  const whole = linkTo(drawing(["a", "b", "c"]));
  fc.assert(
    fc.property(fc.nat(whole.length - 1), fc.constantFrom(..."AZaz09-_"), (at, letter) => {
      const damaged = [whole.slice(0, at) + letter + whole.slice(at + 1), whole.slice(0, at)];
      for (const it of damaged) expect(() => textOfLink(it)).not.toThrow();
    }),
  );
});

test("a few letters do not grow into all of the memory", async () => {
  const { deflateSync } = await import("fflate");
  const bomb = deflateSync(new Uint8Array(50_000_000), { level: 9 });
  expect(textOfLink(`d1.${Buffer.from(bomb).toString("base64url")}`)).toBe(undefined);
});

test("a fingerprint is eight letters that are not taken for each other", () => {
  expect(fingerprintLetters("0".repeat(64))).toBe("AAAA AAAA");
  expect(fingerprintLetters("f".repeat(64))).toBe("9999 9999");
  expect(fingerprintLetters("0123456789abcdef".repeat(4))).toMatch(/^[A-HJ-NP-Z2-9]{4} [A-HJ-NP-Z2-9]{4}$/);
});
