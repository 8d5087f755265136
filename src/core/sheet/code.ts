import { strToU8 } from "fflate";
import encodeQR from "qr";

/** A printed code as its modules; true is dark. */
export interface CodePicture {
  readonly size: number;
  dark(x: number, y: number): boolean;
}

/** The code of a text, with the least redundancy: it is kept clean, and fewer modules are read from farther away. */
export function codePicture(text: string): CodePicture {
  const [, words = "", digits = ""] = /^(.*?)(\d*)$/s.exec(text)!;
  const isMixed = words !== "" && digits.length > FEW_DIGITS;
  const rows = isMixed ? wordsAndDigits(words, digits) : modules((ecc) => encodeQR(text, "raw", ecc));
  return { size: rows.length, dark: (x, y) => rows[y]![x]! };
}

/** So many digits take no more room as letters of one kind with what stands before them [digits]. */
const FEW_DIGITS = 8;

type Rows = readonly (readonly boolean[])[];

/**
 * The code of words that end in digits, as two segments: digits then take two fifths of the room that they take as bytes.
 *
 * The library writes one segment only. But error correction and the mask are linear (ISO/IEC 18004:2015, 7.5 and 7.8), so three codes of one
 * size laid over each other by exclusive or are the code of their data laid over each other, and what is the same in all three, as the
 * finders are, stays. The first has all that is wanted, except that it gives the number of its bytes where that of the words belongs. In
 * the second and the third, which have no content but what fills a code up, everything is alike but these two numbers.
 */
function wordsAndDigits(words: string, digits: string): Rows {
  const head = strToU8(words);
  const wanted = [10, 12, 14]
    .map((countBits) => bytesOf(head, digits, countBits))
    .find((it, at) => versionOf(ofBytes(it)) <= LAST_VERSION[at]!)!;
  const first = ofBytes(wanted);
  const alike = { version: versionOf(first), mask: maskOf(first) };
  const filled = wanted.map((_, at) => fillingAt(at - head.length));
  const others = [filled, new Uint8Array(head.length)].map((it) => ofBytes(it, alike));
  return first.map((row, y) =>
    row.map((it, x) => others.reduce((sum, { [y]: other }) => sum !== other![x]!, it)),
  );
}

/** The last version whose count of digits has so many bits, of each of the three lengths (Table 3). */
const LAST_VERSION = [9, 26, 40];

/** What stands behind the count of a code of bytes: the words, the digits in their mode, and the end of all. */
function bytesOf(head: Uint8Array, digits: string, countBits: number): Uint8Array {
  const threes = digits.match(/\d{1,3}/g)!;
  const bits = [
    ...[...head].map((it) => bitsOf(it, 8)),
    bitsOf(NUMERIC, 4),
    bitsOf(digits.length, countBits),
    ...threes.map((it) => bitsOf(Number(it), [0, 4, 7, 10][it.length]!)),
    bitsOf(END, 4),
  ].join("");
  return Uint8Array.from(bits.match(/[01]{1,8}/g)!, (it) => parseInt(it.padEnd(8, "0"), 2));
}

const [NUMERIC, END] = [0b0001, 0b0000];
const bitsOf = (value: number, length: number): string => value.toString(2).padStart(length, "0");

/** What a code of bytes is filled up with, so many bytes behind them, seen half a byte early: where its own bytes lie. */
function fillingAt(behind: number): number {
  if (behind < 0) return 0;
  return behind === 0 ? 0x0e : behind % 2 === 1 ? 0xc1 : 0x1e;
}

const ofBytes = (bytes: Uint8Array, alike: { version?: number; mask?: number } = {}): Rows =>
  modules((least) => encodeQR("", "raw", { ...least, ...alike, encoding: "byte", textEncoder: () => bytes }));

/** Without the margin, which the library always draws. */
function modules(drawn: (least: { readonly ecc: "low"; readonly border: number }) => Rows): Rows {
  return drawn({ ecc: "low", border: 1 })
    .slice(1, -1)
    .map((row) => row.slice(1, -1));
}

const versionOf = (rows: Rows): number => (rows.length - 17) / 4;

/** Which mask the library found best: it stands in three modules below the first finder (7.9.1). */
const maskOf = (rows: Rows): number => [2, 3, 4].reduce((sum, x) => 2 * sum + Number(rows[8]![x]), 0) ^ 0b101;
