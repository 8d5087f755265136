import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import decode from "qr/decode.js";
import { expect, test } from "vitest";
import { linkOfCodes, textOfLink } from "../../src/core";
import { folder, files, groundedTap, line } from "./line";

const file = files({
  "tap.stillhot.json": groundedTap(),
  "newer.json": { ...groundedTap(), weather: "rain" },
});
const lane = fileURLToPath(new URL("../../shared/demos/quarry-lane.stillhot.json", import.meta.url));

/** What a scanner reads from the printed codes of a page. */
function scanned(html: string): string[] {
  return [
    ...html.matchAll(/<figure class="code"><svg [^>]*viewBox="0 0 (\d+) \d+".*?<path d="([^"]*)"/g),
  ].map(([, size, path]) => {
    const scale = 4;
    const side = Number(size) * scale;
    const data = new Uint8ClampedArray(side * side * 4).fill(255);
    for (const [, x, y, run] of path!.matchAll(/M(\d+) (\d+)h(\d+)v1/g))
      for (let dy = 0; dy < scale; dy++)
        for (let dx = 0; dx < Number(run) * scale; dx++)
          data.fill(
            0,
            ((Number(y) * scale + dy) * side + Number(x) * scale + dx) * 4,
            ((Number(y) * scale + dy) * side + Number(x) * scale + dx) * 4 + 3,
          );
    return decode({ width: side, height: side, data });
  });
}

test("sheet prints one page of HTML, whatever it says of the line", async () => {
  const { code, out, err } = await line(["sheet", lane]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toMatch(/^<!doctype html>\n<html lang="en">/);
  expect(out).toContain("As drawn, now: LIVE");
  const newer = await line(["sheet", file("newer.json")]);
  expect(newer.code).toBe(1);
  expect(newer.err).toContain("(unknown-key)");
});

test("sheet -o, --large, --drawn and --json", async () => {
  const at = folder();
  const { out } = await line([
    "sheet",
    file("tap.stillhot.json"),
    "-o",
    at,
    "--large",
    "--drawn",
    "Tuesday <7:30>",
    "--json",
  ]);
  expect(JSON.parse(out)).toMatchObject({
    ok: true,
    fingerprint: expect.stringMatching(/^\w{4} \w{4}$/),
    out: join(at, "tap.html"),
  });
  const html = readFileSync(join(at, "tap.html"), "utf8");
  expect(html).toContain("Tuesday &lt;7:30&gt;");
  expect(html).toContain("13.5pt");
});

test("a camera reads the address and the drawing from the printed code", async () => {
  const { out } = await line(["sheet", file("tap.stillhot.json"), "--app", "https://example.org/stillhot/"]);
  const codes = scanned(out);
  expect(codes).toHaveLength(1);
  expect(codes[0]).toMatch(/^https:\/\/example\.org\/stillhot\/#n1\.\d+$/);
  const text = textOfLink(linkOfCodes(codes)!)!;
  expect(JSON.parse(text).system).toMatchObject(groundedTap().system);
});

test("a larger drawing takes several codes, each with its fingerprint, place and number", async () => {
  const planned = await line(["plan", lane]);
  const { out } = await line(["sheet", "-"], { stdin: [planned.out] });
  const codes = scanned(out);
  expect(codes.length).toBeGreaterThan(1);
  const fingerprint = /<b>(\w{4}) (\w{4})<\/b>/.exec(out)!.slice(1).join("");
  codes.forEach((it, at) =>
    expect(it).toMatch(new RegExp(`^#n1p\\.${fingerprint}\\.${at + 1}\\.${codes.length}\\.`)),
  );
  expect(JSON.parse(textOfLink(linkOfCodes(codes)!)!)).toEqual(JSON.parse(planned.out));
});

test.each(["example.org", "javascript:alert(1)", "https://example.org/#x", "https://a b"])(
  "--app %s is refused",
  async (app) => {
    const { code, out, err } = await line(["sheet", lane, "--app", app]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("is not an address");
  },
);
