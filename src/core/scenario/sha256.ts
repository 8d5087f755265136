const primes = (count: number): number[] => {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((it) => n % it !== 0)) found.push(n);
  return found;
};

/** The first 32 bits of a number's fractional part. */
const fraction = (value: number): number => ((value - Math.floor(value)) * 2 ** 32) | 0;

const START = Int32Array.from(primes(8), (prime) => fraction(Math.sqrt(prime)));
const ROUND = Int32Array.from(primes(64), (prime) => fraction(Math.cbrt(prime)));

const turn = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

/**
 * SHA-256 of a text in UTF-8, as 64 hexadecimal digits. Small and without waiting, so that a log can be chained step by
 * step; it keeps no secret.
 *
 * @see FIPS 180-4, sections 4.1.2, 5 and 6.2
 */
export function sha256(text: string): string {
  const bytes = utf8(text);
  const padded = new Uint8Array(((bytes.length + 8) >> 6) * 64 + 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor((bytes.length * 8) / 2 ** 32));
  view.setUint32(padded.length - 4, (bytes.length * 8) >>> 0);

  const state = Int32Array.from(START);
  const w = new Int32Array(64);
  for (let block = 0; block < padded.length; block += 64) {
    for (let t = 0; t < 16; t++) w[t] = view.getInt32(block + 4 * t);
    for (let t = 16; t < 64; t++) {
      const x = w[t - 15]!;
      const y = w[t - 2]!;
      const s0 = turn(x, 7) ^ turn(x, 18) ^ (x >>> 3);
      const s1 = turn(y, 17) ^ turn(y, 19) ^ (y >>> 10);
      w[t] = w[t - 16]! + s0 + w[t - 7]! + s1;
    }
    let a = state[0]!,
      b = state[1]!,
      c = state[2]!,
      d = state[3]!;
    let e = state[4]!,
      f = state[5]!,
      g = state[6]!,
      h = state[7]!;
    for (let t = 0; t < 64; t++) {
      const big1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
      const t1 = (h + big1 + ((e & f) ^ (~e & g)) + ROUND[t]! + w[t]!) | 0;
      const big0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
      const t2 = (big0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      h = g;
      g = f;
      f = e;
      e = (d + t1) | 0;
      d = c;
      c = b;
      b = a;
      a = (t1 + t2) | 0;
    }
    state[0]! += a;
    state[1]! += b;
    state[2]! += c;
    state[3]! += d;
    state[4]! += e;
    state[5]! += f;
    state[6]! += g;
    state[7]! += h;
  }
  return [...state].map((it) => (it >>> 0).toString(16).padStart(8, "0")).join("");
}

/** UTF-8 without `TextEncoder`, which the language itself does not have. */
function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3);
  let n = 0;
  for (let k = 0; k < text.length; k++) {
    let code = text.charCodeAt(k);
    if (code < 0x80) {
      bytes[n++] = code;
      continue;
    }
    if (code >= 0xd800 && code < 0xdc00 && k + 1 < text.length) {
      code = 0x10000 + ((code - 0xd800) << 10) + (text.charCodeAt(++k) - 0xdc00);
    }
    if (code < 0x800) bytes[n++] = 0xc0 | (code >> 6);
    else {
      if (code < 0x10000) bytes[n++] = 0xe0 | (code >> 12);
      else {
        bytes[n++] = 0xf0 | (code >> 18);
        bytes[n++] = 0x80 | ((code >> 12) & 63);
      }
      bytes[n++] = 0x80 | ((code >> 6) & 63);
    }
    bytes[n++] = 0x80 | (code & 63);
  }
  return bytes.subarray(0, n);
}
