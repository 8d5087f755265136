import decodeQR from "qr/decode.js";
import { expect, test } from "vitest";
import { codePicture } from "./code";

const digitsOf = (count: number) =>
  Array.from({ length: Math.ceil(count / 6) }, (_, at) => String(100_000 + ((at * 7919 + 13) % 900_000)))
    .join("")
    .slice(0, count);

/** What a scanner reads. */
function scanned(text: string): { readonly size: number; readonly read: string } {
  const { size, dark } = codePicture(text);
  const [module, quiet] = [2, 4];
  const side = (size + 2 * quiet) * module;
  const data = new Uint8Array(side * side * 4).fill(255);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const [column, row] = [x, y].map((it) => Math.floor(it / module) - quiet);
      if (column! >= 0 && row! >= 0 && column! < size && row! < size && dark(column!, row!))
        data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    }
  return { size, read: decodeQR({ width: side, height: side, data }) };
}

const address = "https://example.org/stillhot/";

test.each([
  ["an address and few digits", `${address}#n1.1234567`],
  ["no address", `#n1.${digitsOf(500)}`],
  ["digits alone", digitsOf(300)],
  ["letters alone", "v1.kim.B"],
  ["an address that is not of English letters", `https://exämple.org/é/#n1.${digitsOf(99)}`],
  ["lines", `two\nlines ${digitsOf(40)}`],
])("%s is read as it was written", (_, text) => {
  expect(scanned(text).read).toBe(text);
});

test("every size comes back, whatever is left at the end of its last byte", () => {
  const sizes = new Set<number>();
  for (let count = 9; count < 6900; count += count < 60 ? 1 : 197 + (count % 3)) {
    const text = `${address}#n1.${digitsOf(count)}`;
    const { size, read } = scanned(text);
    expect(read).toBe(text);
    sizes.add(size);
  }
  expect(Math.max(...sizes)).toBe(177);
  expect(sizes.size).toBeGreaterThan(25);
});

/** What a code of least redundancy holds [bytes], and the bits of both counts (ISO/IEC 18004:2015, Tables 7 and 3). */
test.each([
  { version: 8, holds: 194, counts: 8 + 10 },
  { version: 25, holds: 1276, counts: 16 + 12 },
  { version: 40, holds: 2956, counts: 16 + 14 },
])("an address and digits fill a code of version $version but for a byte", ({ version, holds, counts }) => {
  const words = `${address}#n1.`;
  const left = 8 * (holds - words.length - 1) - counts - 3 * 4;
  const text = `${words}${digitsOf(Math.floor((left / 10) * 3))}`;
  expect(scanned(text)).toEqual({ size: 17 + 4 * version, read: text });
});
