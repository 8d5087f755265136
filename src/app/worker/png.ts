import { MOST_LINK_LETTERS } from "../../core";

const KEYWORD = "stillhot";

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Pixels along the longer side of a PNG at most: beyond it browsers give an empty picture. */
const LONGEST_SIDE = 8192;
const SCALE = 2;

/** Pixels of a PNG for each unit of its picture. */
export const pixelsPerUnit = (width: number, height: number): number =>
  Math.min(SCALE, LONGEST_SIDE / Math.max(width, height));

/** Whether bytes are a PNG picture. */
export const isPng = (bytes: Uint8Array): boolean => SIGNATURE.every((it, at) => bytes[at] === it);

/**
 * A PNG with the drawing's link in a text chunk of its own, right after its header.
 *
 * @see PNG specification (third edition), 11.3.3.4 iTXt
 */
export function intoPng(png: Uint8Array, link: string): Uint8Array {
  const headerEnd = SIGNATURE.length + 25; // length, type, 13 bytes and checksum of IHDR
  // keyword, end, not compressed, method, no language, no translated keyword, text
  const data = latin(`${KEYWORD}\0\0\0\0\0${link}`);
  const chunk = new Uint8Array(12 + data.length);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, data.length);
  chunk.set(latin("iTXt"), 4);
  chunk.set(data, 8);
  view.setUint32(8 + data.length, crc32(chunk.subarray(4, 8 + data.length)));
  const whole = new Uint8Array(png.length + chunk.length);
  whole.set(png.subarray(0, headerEnd));
  whole.set(chunk, headerEnd);
  whole.set(png.subarray(headerEnd), headerEnd + chunk.length);
  return whole;
}

/** The same of a file. */
export async function withLink(png: Blob, link: string): Promise<Blob> {
  const whole = intoPng(new Uint8Array(await png.arrayBuffer()), link);
  return new Blob([whole as Uint8Array<ArrayBuffer>], { type: "image/png" });
}

/** The link that a PNG carries: nothing where it carries none, or where the chunk was damaged on the way. */
export function linkOfPng(png: Uint8Array): string | undefined {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  for (let at = SIGNATURE.length; at + 12 <= png.length;) {
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > png.length) return undefined;
    const data = png.subarray(at + 8, at + 8 + length);
    if (text(png.subarray(at + 4, at + 8)) === "iTXt" && text(data.subarray(0, 9)) === `${KEYWORD}\0`) {
      const isWhole = crc32(png.subarray(at + 4, at + 8 + length)) === view.getUint32(at + 8 + length);
      // Ours has neither compression, language nor translation: four bytes of nothing before the text.
      const isOurs = data.subarray(9, 13).every((it) => it === 0);
      return isWhole && isOurs && length <= MOST_LINK_LETTERS ? text(data.subarray(13)) : undefined;
    }
    at = end;
  }
  return undefined;
}

const latin = (words: string): Uint8Array => Uint8Array.from(words, (it) => it.charCodeAt(0));

function text(bytes: Uint8Array): string {
  let words = "";
  for (let at = 0; at < bytes.length; at += 8192)
    words += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return words;
}

let table: Uint32Array | undefined;

/** Checksum of a PNG chunk. @see PNG specification (third edition), annex D */
function crc32(bytes: Uint8Array): number {
  table ??= Uint32Array.from({ length: 256 }, (_, n) => {
    let c = n;
    for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
    return c;
  });
  let crc = 0xffffffff;
  for (const byte of bytes) crc = table[(crc ^ byte) & 255]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
