import type { PlacedNote } from "./notes";
import type { Palette } from "./palettes";
import type { Look } from "./shapes";

/** How a note is framed. */
export interface Frame {
  readonly fill: string;
  readonly edge: string | undefined;
  readonly ink: string;
  readonly dash: readonly number[];
  readonly radius: number;
  readonly weight: number;
}

/** The frame of a note: badges by state as the legend shows them, labels on bare paper. */
export function frameOf(kind: PlacedNote["note"]["kind"], look: Look, palette: Palette): Frame {
  switch (kind) {
    case "work":
      return frame(palette.accent, undefined, palette.paper, { radius: 3 });
    case "open":
      return frame(palette.paper, palette.ink, palette.ink);
    case "tag":
      return frame(palette.ink, palette.ink, palette.paper);
    case "letter":
      return frame(palette.paper, undefined, palette.ink, { radius: 6 });
    case "badge":
      switch (look) {
        case "induced":
          return frame(palette.paper, palette.hot, palette.hot);
        case "isolated":
          return frame(palette.paper, palette.isolated, palette.ink, { dash: [3, 2] });
        case "grounded":
          return frame(palette.paper, palette.grounded, palette.grounded, { radius: 8 });
        case "unknown":
          return frame(palette.band, palette.bandInk, palette.bandInk);
        case "faulted":
          return frame(palette.hot, palette.ink, palette.paper);
        default:
          return frame(palette.hot, undefined, palette.paper);
      }
    default:
      return frame(palette.paper, undefined, palette.ink, { weight: 500 });
  }
}

const frame = (fill: string, edge: string | undefined, ink: string, rest: Partial<Frame> = {}): Frame => ({
  fill,
  edge,
  ink,
  dash: [],
  radius: 2,
  weight: 700,
  ...rest,
});
