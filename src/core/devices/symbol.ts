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

/** A circle through which what lies below it shows. */
export const ring = (x: number, y: number, radius: number): Mark => arc(x, y, radius, 0, 360);

/** A hinged blade from (x, 0), `degrees` away from the line, as long as the gap it closes. */
export function blade(x: number, length: number, degrees: number): Mark {
  const angle = (-degrees * Math.PI) / 180;
  return line(x, 0, x + length * Math.cos(angle), length * Math.sin(angle));
}

/** A fuse barrel on a blade hinged at (x, 0): its outline, `degrees` away from the line. */
export function barrel(x: number, length: number, degrees: number): Mark[] {
  const angle = (-degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const at = (along: number, across: number) => [x + along * cos - across * sin, along * sin + across * cos];
  const [near, far] = [length * 0.2, length * 0.8];
  return [
    line(x, 0, x + length * cos, length * sin),
    outline(...at(near, -4.5), ...at(far, -4.5), ...at(far, 4.5), ...at(near, 4.5)),
    line(...at(near, 0), ...at(far, 0)),
  ];
}

/** The earth mark: three bars of falling length across the element, from x on. */
export const earthMark = (x: number): Mark[] => [
  line(x, -10, x, 10),
  line(x + 5, -6.5, x + 5, 6.5),
  line(x + 10, -3, x + 10, 3),
];
