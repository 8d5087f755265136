import { deflateSync, inflateSync, strFromU8, strToU8 } from "fflate";
import type { StillhotDocument } from "../document";
import { writeDocument } from "../document";

/** A drawing as what follows the `#` of a link: it never reaches a server. The prefix names the codec. */
export const linkTo = (document: StillhotDocument): string => `d1.${base64url(packed(document))}`;

/**
 * The same in digits, for a printed code: digits are what such a code holds most of, and a link of digits comes through
 * every scanner as it is.
 */
export const digitsTo = (document: StillhotDocument): string => `n1.${digits(packed(document))}`;

/** Digits that one printed code holds at most, so that a phone still reads it from paper: version 25, least redundancy. */
const MOST_DIGITS = 2900;
const MOST_CODES = 4;

/**
 * Texts of the codes that open a drawing: one, or up to four that name their fingerprint, their place and their number;
 * none where even four do not hold it.
 *
 * @param address of the app, without a `#`; may be empty, and then only the app's own scanner knows what to do with it
 * @param fingerprint as `fingerprintLetters` gives it
 */
export function codeTexts(document: StillhotDocument, fingerprint: string, address = ""): string[] {
  const whole = digitsTo(document);
  if (whole.length <= MOST_DIGITS) return [`${address}#${whole}`];
  const bare = whole.slice(3);
  const count = Math.ceil(bare.length / MOST_DIGITS);
  if (count > MOST_CODES) return [];
  const name = fingerprint.replaceAll(" ", "");
  return Array.from({ length: count }, (_, at) => {
    const part = bare.slice(
      Math.floor((at * bare.length) / count),
      Math.floor(((at + 1) * bare.length) / count),
    );
    return `${address}#n1p.${name}.${at + 1}.${count}.${part}`;
  });
}

/** Scanned codes put together again, in whatever order; nothing while one is missing or where two do not belong together. */
export function linkOfCodes(texts: readonly string[]): string | undefined {
  const fragments = texts.map((it) => it.slice(it.indexOf("#") + 1));
  if (fragments.length === 1 && fragments[0]!.startsWith("n1.")) return fragments[0];
  const parts = fragments.map((it) => /^n1p\.([A-Z0-9]{8})\.(\d)\.(\d)\.(\d+)$/.exec(it));
  const [first] = parts;
  if (first == null || parts.some((it) => it == null || it[1] !== first[1] || it[3] !== first[3]))
    return undefined;
  const digitsByPlace = new Map(parts.map((it) => [it![2]!, it![4]!]));
  if (digitsByPlace.size !== Number(first[3])) return undefined;
  return `n1.${[...digitsByPlace.keys()]
    .sort()
    .map((it) => digitsByPlace.get(it)!)
    .join("")}`;
}

/** The text of a file from what follows the `#` of a link, in either form; nothing where it is neither, or damaged. */
export function textOfLink(fragment: string): string | undefined {
  const [prefix, payload] = [fragment.slice(0, 3), fragment.slice(3)];
  try {
    const bytes =
      prefix === "d1." ? fromBase64url(payload) : prefix === "n1." ? fromDigits(payload) : undefined;
    if (bytes === undefined) return undefined;
    const text = inflateSync(bytes, { out: new Uint8Array(MOST_BYTES) });
    return text.length === MOST_BYTES ? undefined : strFromU8(text);
  } catch {
    return undefined;
  }
}

/** More than any drawing that fits into a link: a few letters must not grow into all of the memory. */
const MOST_BYTES = 4_000_000;

const packed = (document: StillhotDocument): Uint8Array =>
  deflateSync(strToU8(JSON.stringify(JSON.parse(writeDocument(document)))), { level: 9 });

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/** Bytes as letters that every address and form takes (RFC 4648, section 5), without padding. */
export function base64url(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 3) {
    const [a, b, c] = [bytes[at]!, bytes[at + 1], bytes[at + 2]];
    const word = (a << 16) | ((b ?? 0) << 8) | (c ?? 0);
    const letters = [18, 12, 6, 0].map((by) => ALPHABET[(word >> by) & 63]!);
    text += letters.slice(0, b === undefined ? 2 : c === undefined ? 3 : 4).join("");
  }
  return text;
}

/** The bytes of such letters; nothing where they are damaged. */
export function fromBase64url(text: string): Uint8Array | undefined {
  const values = [...text].map((it) => ALPHABET.indexOf(it));
  if (values.includes(-1) || values.length % 4 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor((values.length * 3) / 4));
  let word = 0;
  let at = 0;
  values.forEach((value, index) => {
    word = ((word << 6) | value) & 0xffffff;
    if (index % 4 !== 0) bytes[at++] = (word >> (6 - 2 * (index % 4))) & 255;
  });
  return bytes;
}

/** 31 bytes are 248 bits, which 75 digits hold with hardly anything to spare. */
const BLOCK = 31;
/** digits for so many bytes, by index */
const DIGITS = Array.from({ length: BLOCK + 1 }, (_, bytes) => Math.ceil(bytes * 8 * Math.log10(2)));

function digits(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += BLOCK) {
    const block = bytes.subarray(at, at + BLOCK);
    const value = block.reduce((sum, it) => (sum << 8n) | BigInt(it), 0n);
    text += value.toString().padStart(DIGITS[block.length]!, "0");
  }
  return text;
}

function fromDigits(text: string): Uint8Array | undefined {
  if (!/^\d*$/.test(text)) return undefined;
  const bytes: number[] = [];
  for (let at = 0; at < text.length; at += DIGITS[BLOCK]!) {
    const block = text.slice(at, at + DIGITS[BLOCK]!);
    const length = DIGITS.indexOf(block.length);
    if (length === -1) return undefined;
    let value = BigInt(block);
    const own = new Array<number>(length);
    for (let k = length - 1; k >= 0; k--) {
      own[k] = Number(value & 255n);
      value >>= 8n;
    }
    if (value !== 0n) return undefined;
    bytes.push(...own);
  }
  return Uint8Array.from(bytes);
}

/** Letters of a fingerprint: those that are not taken for another when they are said or written. */
const SAID = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";

/** Eight letters of a SHA-256 in hexadecimal, so that paper and screen can be matched by voice. */
export function fingerprintLetters(sha256: string): string {
  let bits = BigInt(`0x${sha256.slice(0, 10)}`);
  let letters = "";
  for (let k = 0; k < 8; k++) {
    letters = SAID[Number(bits & 31n)]! + letters;
    bits >>= 5n;
  }
  return `${letters.slice(0, 4)} ${letters.slice(4)}`;
}
