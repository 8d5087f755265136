/** A complex number as the file writes it: `[re, im]`. */
export type Complex = readonly [re: number, im: number];

/** Arithmetic of complex numbers as pairs of real and imaginary part. */
export const complex = {
  zero: [0, 0] as Complex,
  add: (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]],
  subtract: (a: Complex, b: Complex): Complex => [a[0] - b[0], a[1] - b[1]],
  times: (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]],
  scale: (a: Complex, by: number): Complex => [a[0] * by, a[1] * by],
  conjugate: (a: Complex): Complex => [a[0], -a[1]],
  /** 1/a; of zero it is infinite, and the caller must have refused zero. */
  inverse: (a: Complex): Complex => {
    const square = a[0] * a[0] + a[1] * a[1];
    return [a[0] / square, -a[1] / square];
  },
  magnitude: (a: Complex): number => Math.hypot(a[0], a[1]),
  angleDegrees: (a: Complex): number => (Math.atan2(a[1], a[0]) * 180) / Math.PI,
  /** magnitude at an angle in degrees */
  polar: (magnitude: number, degrees: number): Complex => [
    magnitude * Math.cos((degrees * Math.PI) / 180),
    magnitude * Math.sin((degrees * Math.PI) / 180),
  ],
};
