/** Room for a drawing [px at the drawing's own size of letters]. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

const LEAST_SCALE = 0.05;
const ROUNDS = 7;

/** The drawing as large as its room lets it be; letters and lines have their own size whatever the scale. */
export function largestThatFits(room: Room, draw: (scale: number) => string): string {
  const drawn = (scale: number) => {
    const svg = draw(scale);
    const { width, height } = sizeOf(svg);
    return { svg, fits: width <= room.width && height <= room.height };
  };
  let best = drawn(1);
  let [small, large] = [LEAST_SCALE, 1];
  for (let round = 0; round < ROUNDS && !(round === 0 && best.fits); round++) {
    const scale = round === 0 ? small : (small + large) / 2;
    const tried = drawn(scale);
    if (round === 0 || tried.fits) [best, small] = [tried, scale];
    else large = scale;
  }
  return best.svg;
}

/** How large an SVG drawing is [px]. */
function sizeOf(svg: string): Room {
  const [, width, height] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return { width: Number(width), height: Number(height) };
}
