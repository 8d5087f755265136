/** One stroke or letter of a device's symbol, in units of the drawing; x along the element, y across it. */
export type Mark =
  | {
      readonly mark: "line";
      readonly points: readonly number[];
      readonly closed?: boolean;
      readonly filled?: boolean;
    }
  | {
      readonly mark: "circle";
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly filled?: boolean;
    }
  | {
      readonly mark: "arc";
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly fromDegrees: number;
      readonly toDegrees: number;
    }
  | { readonly mark: "letters"; readonly x: number; readonly y: number; readonly text: string };

export const line = (...points: number[]): Mark => ({ mark: "line", points });
export const outline = (...points: number[]): Mark => ({ mark: "line", points, closed: true });
export const filled = (...points: number[]): Mark => ({ mark: "line", points, closed: true, filled: true });
export const circle = (x: number, y: number, radius: number): Mark => ({ mark: "circle", x, y, radius });
export const dot = (x: number, y: number, radius: number): Mark => ({
  mark: "circle",
  x,
  y,
  radius,
  filled: true,
});
export const arc = (x: number, y: number, radius: number, fromDegrees: number, toDegrees: number): Mark => ({
  mark: "arc",
  x,
  y,
  radius,
  fromDegrees,
  toDegrees,
});
export const inscribed = (x: number, y: number, text: string): Mark => ({ mark: "letters", x, y, text });

/** A hinged blade from (x, 0), `degrees` away from the line, as long as the gap it closes. */
export function blade(x: number, length: number, degrees: number): Mark {
  const angle = (-degrees * Math.PI) / 180;
  return line(x, 0, x + length * Math.cos(angle), length * Math.sin(angle));
}

/** The earth mark: three bars of falling length, hanging from (x, y). */
export const earthMark = (x: number, y: number): Mark[] => [
  line(x, y, x, y + 8),
  line(x - 8, y + 8, x + 8, y + 8),
  line(x - 5, y + 12, x + 5, y + 12),
  line(x - 2, y + 16, x + 2, y + 16),
];
