import { type ElementId, withoutTurns } from "../terms";
import { frameOf, linesIn, outlinesOf } from "./frames";
import { NOTE_SIZES, type NoteSizes, type PlacedNote, placeNotes, ringAt } from "./notes";
import {
  alongOf,
  type Palette,
  QUIET_WIDTH,
  ringStrokesOf,
  spotsAlong,
  strokesOf,
  widthFactor,
  WORST_FIRST,
} from "./palettes";
import type { Scene } from "./scene";
import { type Box, breadthOf, type Look, type Note, type Shape, type Strand, isFlag } from "./shapes";
import { TYPEFACE, widthOf } from "./widths";

/** What a picture is called and shows of a scene. */
export interface SvgOptions {
  readonly title: string;
  /** what the picture tells, for a reader who cannot see it */
  readonly description: string;
  /** elements whose path is lit */
  readonly lit?: readonly ElementId[];
  /** the part of the drawing that is shown, where that is not all of it: what reaches beyond is cut */
  readonly part?: Box;
  /** at which scale the scene is drawn: lines of a small one are thinner, as on the canvas */
  readonly scale?: number;
  readonly sizes?: NoteSizes;
}

/** A reader's device may have wider letters than ours. */
const WIDEN = 1.1;

/** From so many strands on those that look alike are one path: a browser that lays out each by itself stands still for long. */
const MANY_STRANDS = 1000;

/** The whole drawing as an SVG file, without a script, a link or a font of its own. */
export function toSvg(
  scene: Scene,
  palette: Palette,
  { title, description, lit = [], part, scale = 1, sizes = NOTE_SIZES }: SvgOptions,
): string {
  const box = part ?? scene.bounds ?? { left: 0, top: 0, right: 320, bottom: 120 };
  const placed = placeNotes(scene, 1, { ...sizes, widen: WIDEN });
  const left = Math.floor(Math.min(box.left, ...placed.map((it) => it.x - it.width / 2)) - 16);
  const top = Math.floor(Math.min(box.top, ...placed.map((it) => it.y - it.height / 2)) - 16);
  const right = Math.ceil(Math.max(box.right, ...placed.map((it) => it.x + it.width / 2)) + 16);
  const bottom = Math.ceil(Math.max(box.bottom, ...placed.map((it) => it.y + it.height / 2)) + 16);
  const [width, height] = [right - left, bottom - top];
  const halo = lit.flatMap((id) => {
    const piece = scene.elements.get(id);
    return piece === undefined ? [] : [piece];
  });
  // An outline in two passes, so that the states on a lit path stay readable.
  const litBy = (colour: string, less: number) =>
    halo.map((it) => polyline(it.spine, colour, breadthOf(it) - less, []));
  const factor = widthFactor(scale, scene.text);
  const shapes = scene.pieces.flatMap((it) => it.shapes);
  const strands = shapes.filter((it) => it.shape === "strand");
  const grounds = shapes.filter((it) => it.shape === "ground");
  const marks = shapes.filter(
    (it) => it.shape !== "strand" && it.shape !== "ground" && !("onScreenOnly" in it),
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${left} ${top} ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="title desc" font-family="${TYPEFACE}">`,
    `<title id="title">${escapeXml(title)}</title>`,
    `<desc id="desc">${escapeXml(description)}</desc>`,
    `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${palette.paper}"/>`,
    ...grounds.map(({ box }) => groundSvg(box, palette)),
    ...litBy(palette.accent, 0),
    ...litBy(palette.paper, 7),
    ...(strands.length > MANY_STRANDS
      ? pathsOf(strands, palette, factor)
      : strands.map((it) => shapeSvg(it, palette, factor))),
    // Over lines, among which it would be lost on paper, and under every symbol, so that it hides none.
    ...placed.filter(({ note }) => isFlag(note)).map(({ note }) => ring(note, palette)),
    ...marks.map((it) => shapeSvg(it, palette, factor)),
    ...placed.map((it) => noteSvg(it, palette, sizes)),
    "</svg>",
    "",
  ].join("\n");
}

/** Markup in a label stays text, turns nothing around, and letters that XML cannot hold or a terminal obeys are left out. */
export const escapeXml = (text: string): string =>
  withoutTurns(text)
    // eslint-disable-next-line no-control-regex -- these are the letters that XML 1.0 forbids, and those that draw nothing
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/g, "")
    .replace(
      /[&<>"']/g,
      (it) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" })[it]!,
    );

const round = (value: number) => Math.round(value * 100) / 100;

const coordinates = (points: readonly number[]) => {
  const pairs = [];
  for (let k = 0; k + 1 < points.length; k += 2) pairs.push(`${round(points[k]!)},${round(points[k + 1]!)}`);
  return pairs.join(" ");
};

const polyline = (
  points: readonly number[],
  colour: string,
  width: number,
  dash: readonly number[],
  join = "round",
) =>
  `<polyline points="${coordinates(points)}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linejoin="${join}"${
    dash.length > 0 ? ` stroke-dasharray="${dash.join(" ")}"` : ""
  }/>`;

function shapeSvg(shape: Shape, palette: Palette, factor: number): string {
  switch (shape.shape) {
    case "strand":
      return [
        ...strokesOf(shape.look).map(({ colour, width, dash }) =>
          polyline(
            shape.points,
            palette[colour],
            round(width * factor),
            dash.map((it) => round(it * factor)),
          ),
        ),
        ...alongSvg(shape.points, shape.look, shape.feed, palette, factor),
      ].join("\n");
    case "stroke": {
      const tag = shape.closed ? "polygon" : "polyline";
      const metal = shape.isHot ? palette.hot : palette.ink;
      const fill = shape.closed ? (shape.filled ? metal : palette.paper) : "none";
      const dash = shape.dashed ? ' stroke-dasharray="4 4"' : "";
      const [ink, width] = shape.isQuiet ? [palette.isolated, QUIET_WIDTH] : [metal, 2.5];
      return `<${tag} points="${coordinates(shape.points)}" fill="${fill}" stroke="${ink}" stroke-width="${round(width * factor)}" stroke-linejoin="round"${dash}/>`;
    }
    case "disc": {
      const metal = shape.isHot ? palette.hot : palette.ink;
      return `<circle cx="${round(shape.x)}" cy="${round(shape.y)}" r="${round(shape.radius)}" fill="${
        shape.filled ? metal : palette.paper
      }" stroke="${metal}" stroke-width="${round(2.5 * factor)}"/>`;
    }
    case "ground":
      return groundSvg(shape.box, palette);
    case "inscription":
      return text(shape.x, shape.y, shape.text, shape.size, palette.ink, 700);
  }
}

/** Strands by how they look, the worst on top. */
const pathsOf = (strands: readonly Strand[], palette: Palette, factor: number): string[] =>
  WORST_FIRST.toReversed().flatMap((look) => {
    const alike = strands.filter((it) => it.look === look);
    if (alike.length === 0) return [];
    const way = [...new Set(alike.map(({ points }) => `M${coordinates(points)}`))].join("");
    return [
      ...strokesOf(look).map(({ colour, width, dash }) => path(way, palette[colour], width, dash, factor)),
      ...alike.flatMap((it) => alongSvg(it.points, look, it.feed, palette, factor)),
    ];
  });

const path = (way: string, colour: string, width: number, dash: readonly number[], factor: number) =>
  `<path d="${way}" fill="none" stroke="${colour}" stroke-width="${round(width * factor)}" stroke-linejoin="round"${
    dash.length > 0 ? ` stroke-dasharray="${dash.map((it) => round(it * factor)).join(" ")}"` : ""
  }/>`;

function alongSvg(
  points: readonly number[],
  look: Look,
  feed: number,
  palette: Palette,
  factor: number,
): string[] {
  const along = alongOf(look);
  if (along === undefined || (along.mark === "arrow" && feed === 0)) return [];
  return spotsAlong(points, along.every).map(({ x, y, dx, dy }) => {
    const at = (forward: number, aside: number) => [
      x + (dx * forward - dy * aside) * factor,
      y + (dy * forward + dx * aside) * factor,
    ];
    const width = round(2.5 * factor);
    return along.mark === "arrow"
      ? `<polygon points="${coordinates([...at(9 * feed, 0), ...at(-5 * feed, 8), ...at(-5 * feed, -8)])}" fill="${palette.hot}" stroke="${palette.paper}" stroke-width="1.5"/>`
      : `${polyline([...at(-6, -6), ...at(6, 6)], palette.ink, width, [])}${polyline([...at(-6, 6), ...at(6, -6)], palette.ink, width, [])}`;
  });
}

/** @param length width that the words take in whatever type a reader's device has [px] */
const text = (
  x: number,
  y: number,
  words: string,
  size: number,
  colour: string,
  weight: number,
  anchor: "start" | "middle" = "middle",
  length?: number,
) =>
  `<text x="${round(x)}" y="${round(y + size * 0.35)}" font-size="${round(size)}" font-weight="${weight}" fill="${colour}" text-anchor="${anchor}"${
    length === undefined ? "" : ` textLength="${round(length)}" lengthAdjust="spacingAndGlyphs"`
  }>${escapeXml(words)}</text>`;

const groundSvg = ({ left, top, right, bottom }: Box, palette: Palette) =>
  `<rect x="${round(left)}" y="${round(top)}" width="${round(right - left)}" height="${round(bottom - top)}" rx="10" fill="${palette.plate}" stroke="${palette.plateEdge}" stroke-width="1.2"/>`;

function ring(note: Note, palette: Palette): string {
  const { x, y } = note.ring ?? note;
  const radius = ringAt(note, 1);
  return ringStrokesOf(note.look)
    .map(
      ({ colour, width, dash, inset }) =>
        `<circle cx="${round(x)}" cy="${round(y)}" r="${round(radius - inset)}" fill="none" stroke="${palette[colour]}" stroke-width="${width}"${
          dash.length > 0 ? ` stroke-dasharray="${dash.join(" ")}"` : ""
        }/>`,
    )
    .join("");
}

function noteSvg(placed: PlacedNote, palette: Palette, sizes: NoteSizes): string {
  const { note, x, y, width, height } = placed;
  const { fill, edge, ink, dash, radius } = frameOf(note.kind, note.look, palette);
  const frame =
    fill === undefined
      ? ""
      : `<rect x="${round(x - width / 2)}" y="${round(y - height / 2)}" width="${round(width)}" height="${round(height)}" rx="${radius}" fill="${fill}"` +
        (edge === undefined
          ? "/>"
          : ` stroke="${edge}" stroke-width="1.5"${dash.length > 0 ? ` stroke-dasharray="${dash.join(" ")}"` : ""}/>`);
  const lines = linesIn(placed, sizes, palette);
  const outlines = outlinesOf(placed).map((it) => `M${coordinates(it)}Z`);
  const hung = `<path d="${outlines.join("")}" fill="${fill}" stroke="${edge}" stroke-width="1.5" paint-order="stroke"/>`;
  return `${outlines.length > 0 ? hung : frame}${lines.map((it) => text(it.x, it.y, it.text, it.size, ink, it.weight, it.anchor, isFlag(note) ? widthOf(it.text, it.size) * (it.weight > 500 ? 1.06 : 1) : undefined)).join("")}`;
}
