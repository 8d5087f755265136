import { deflateSync, strToU8 } from "fflate";
import decodeQR from "qr/decode.js";
import { describe, expect, test, vi } from "vitest";
import { AnsweringWorker, workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import { codePicture, codeTexts, intoSvg, linkTo, type StillhotDocument, writeDocument } from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { codeOf } from "./codes";
import { fingerprint } from "./fingerprint";
import { fragmentOf, readBytes, readCodes, readLink } from "./link";
import { intoPng, linkOfPng } from "../worker/png";

const demos = demoDrawings();

/** The smallest picture that there is: one grey pixel. */
const pixel = Uint8Array.from(
  atob("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg=="),
  (it) => it.charCodeAt(0),
);
const svg = '<svg xmlns="http://www.w3.org/2000/svg"><title>x</title></svg>\n';
const bytes = (text: string) => new TextEncoder().encode(text);
const problemsOf = async (opening: ReturnType<typeof readBytes>) => {
  const opened = await opening;
  if ("document" in opened) throw new Error("it was read");
  return opened.problems;
};
const same = async (opening: ReturnType<typeof readBytes>, document: StillhotDocument) => {
  const opened = await opening;
  if (!("document" in opened)) throw new Error(opened.problems.join());
  expect(writeDocument(opened.document)).toBe(writeDocument(document));
};
const opening = (given: Uint8Array) => readBytes(given, "it");
const base64url = (data: Uint8Array) => Buffer.from(data).toString("base64url");

describe.each(demos)("%s comes back", (_, document) => {
  test("from a link, whole or by itself", async () => {
    await same(readLink(linkTo(document)), document);
    await same(opening(bytes(`https://example.org/a/?b#${linkTo(document)}\n`)), document);
  });
  test("from an SVG", () => same(opening(bytes(intoSvg(svg, linkTo(document)))), document));
  test("from a PNG, which is still a picture", async () => {
    const carrying = intoPng(pixel, linkTo(document));
    await same(opening(carrying), document);
    expect([...carrying.slice(-12)]).toEqual([...pixel.slice(-12)]);
  });
  test("from a file", () => same(opening(bytes(writeDocument(document))), document));
  test("from its printed codes, in whatever order", async () => {
    const letters = await fingerprint(document);
    const texts = codeTexts(document, letters, "https://example.org/");
    for (const text of texts) {
      const { size, dark } = codePicture(text);
      expect(scanned(size, dark)).toBe(text);
    }
    await same(readCodes(texts.toReversed()), document);
    if (texts.length > 1) {
      expect(await problemsOf(readCodes(texts.slice(1)))).toHaveLength(1);
      expect((await problemsOf(readLink(fragmentOf(texts[0]!)!)))[0]).toMatch(/code 1 of \d/);
    }
    for (const text of texts) expect(codeOf(text).size).toBeGreaterThan(20);
  });
});

test.each([["n1p.x.y.z.1"], ["n1p.AAAABBBB.3.2.1"], ["n1p.AAAABBBB.1.9.1"], ["n1p.AAAABBBB.1.2"], ["n1p."]])(
  "an odd link %s is damaged, and names no code that there cannot be",
  async (fragment) => {
    expect(await problemsOf(readLink(fragment))).toEqual([
      expect.stringMatching(/damaged|cut off|not whole/i),
    ]);
  },
);

/** Reads a code as a scanner does, from pixels. */
function scanned(size: number, isDark: (x: number, y: number) => boolean): string {
  const [module, quiet] = [4, 4];
  const side = (size + 2 * quiet) * module;
  const data = new Uint8Array(side * side * 4).fill(255);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const [column, row] = [Math.floor(x / module) - quiet, Math.floor(y / module) - quiet];
      if (column >= 0 && row >= 0 && column < size && row < size && isDark(column, row))
        data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    }
  return decodeQR({ width: side, height: side, data });
}

test("the fingerprint has eight letters that are told apart by voice, and follows what is drawn", async () => {
  const [one, other] = [demos[0]![1], { ...demos[0]![1], title: "another" }];
  expect(await fingerprint(one)).toMatch(/^[A-HJ-NP-Z2-9]{4} [A-HJ-NP-Z2-9]{4}$/);
  expect(await fingerprint(one)).toBe(await fingerprint(JSON.parse(JSON.stringify(one)) as StillhotDocument));
  expect(await fingerprint(one)).not.toBe(await fingerprint(other));
});

describe("what anyone may send is refused in one sentence", () => {
  const link = linkTo(demos[0]![1]);
  const bomb = `d1.${base64url(deflateSync(new Uint8Array(50_000_000), { level: 9 }))}`;
  const deep = `d1.${base64url(deflateSync(strToU8("[".repeat(200_000))))}`;
  const cases: readonly (readonly [string, Uint8Array | string])[] = [
    ["a link cut off", link.slice(0, -40)],
    ["a link with letters changed", link.replace(/.{30}$/, "A".repeat(30))],
    ["a link that unpacks to fifty megabytes", bomb],
    ["a link of nothing but brackets", deep],
    ["a link longer than any", `d1.${"A".repeat(2_000_000)}`],
    ["an unknown codec", "d9.AAAA"],
    ["a picture without a drawing", pixel],
    ["a picture cut off in its drawing", intoPng(pixel, link).slice(0, 200)],
    ["a picture whose drawing was damaged", damaged(intoPng(pixel, link))],
    ["a picture that says it is longer than it is", longer(pixel)],
    ["an SVG without a drawing, with a script", "<svg><script>alert(1)</script></svg>"],
    ["an SVG with markup where the link was", intoSvg(svg, "<script>alert(1)</script>")],
    ["an SVG full of half-open tags", "<svg>" + "<stillhot:drawing".repeat(200_000)],
    ["a photograph", Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 74, 70])],
    ["an empty file", ""],
    ["a page", "<!doctype html><html><script>alert(1)</script></html>"],
    ["another program's JSON", '{"type":"drawing","elements":[]}'],
  ];
  test.each(cases)("%s", async (_, given) => {
    const problems = await problemsOf(opening(typeof given === "string" ? bytes(given) : given));
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.length).toBeLessThan(21);
    for (const it of problems) {
      expect(it).not.toMatch(/[{}]|undefined|\[object/);
      expect(it.length).toBeLessThan(300);
    }
  });

  test("a chunk of another program with our keyword is not taken for ours", () => {
    const compressed = intoPng(pixel, link);
    compressed[33 + 8 + 9] = 1; // says compressed, and the checksum no longer fits either
    expect(linkOfPng(compressed)).toBeUndefined();
  });
});

describe("a link of a few letters that unpacks to three thousand switches", () => {
  workersAnswerByHand();

  const elements = Object.fromEntries(
    Array.from({ length: 3000 }, (_, n) => [
      `d${n}`,
      { kind: "disconnect", from: "p1", to: "p2", phases: "ABC", label: `Switch ${n}`, ratedAmps: 600 },
    ]),
  );
  const many = { ...emptyDrawing, system: { points: { p1: {}, p2: {} }, elements } } as never;
  const link = linkTo(many);

  test.each([
    ["a link", () => readLink(link)],
    ["a file that holds it", () => opening(bytes(link))],
    ["a picture that carries it", () => opening(intoPng(pixel, link))],
  ])("is read beside the page: %s", async (_, open) => {
    const reading = open();
    await vi.waitFor(() => expect(AnsweringWorker.all).toHaveLength(1));
    const [worker] = AnsweringWorker.all;
    expect(worker!.asked).toEqual([expect.objectContaining({ to: "read", as: "drawing" })]);
    worker!.answer({ read: { document: many, warnings: [] } });
    expect(await reading).toHaveProperty("document", many);
  });
});

test("a label that ends a tag or a text stays a label", async () => {
  const document = { ...emptyDrawing, title: `</metadata><script>"'&]]>` };
  await same(opening(bytes(intoSvg(svg, linkTo(document)))), document);
});

function damaged(png: Uint8Array): Uint8Array {
  const copy = png.slice();
  copy[100]! ^= 1;
  return copy;
}

function longer(png: Uint8Array): Uint8Array {
  const copy = png.slice();
  new DataView(copy.buffer).setUint32(33, 0xfffffff0);
  return copy;
}
