import { SaxesParser, type SaxesTagPlain } from "saxes";

/** What is painted on, on the page or beside it. */
type Context = OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D;

/** Where a picture lies, in its own units. */
interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Paints a picture that the core wrote as SVG. Browsers paint SVG on the page's own thread alone, which a large drawing holds
 * for seconds; of SVG this knows what such a picture is made of: rectangles, circles, lines through points, and words.
 *
 * @param begin is told where the picture lies, and gives what to paint on, whose units are the picture's
 * @throws Error where the text is no such picture
 */
export function paintSvg(svg: string, begin: (frame: Frame) => Context): void {
  const parser = new SaxesParser();
  let context: Context | undefined;
  let typeface = "";
  let words: { readonly tag: SaxesTagPlain; text: string } | undefined;
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", (tag) => {
    if (tag.name === "svg") {
      const [left, top, width, height] = numbersIn(tag.attributes["viewBox"]!) as [
        number,
        number,
        number,
        number,
      ];
      typeface = tag.attributes["font-family"]!;
      context = begin({ left, top, width, height });
    } else if (tag.name === "text") words = { tag, text: "" };
    else if (context !== undefined) SHAPES[tag.name]?.(context, tag.attributes);
  });
  parser.on("text", (text) => {
    if (words !== undefined) words.text += text;
  });
  parser.on("closetag", ({ name }) => {
    if (name !== "text" || words === undefined || context === undefined) return;
    write(context, words.tag.attributes, words.text, typeface);
    words = undefined;
  });
  parser.write(svg).close();
}

type Attributes = Readonly<Record<string, string>>;

const numbersIn = (text: string): number[] => text.split(/[ ,]+/).filter(Boolean).map(Number);
const number = (attributes: Attributes, name: string): number => Number(attributes[name] ?? 0);

/** How each kind of shape is traced and filled. */
const SHAPES: Readonly<Record<string, (context: Context, attributes: Attributes) => void>> = {
  rect(context, it) {
    context.beginPath();
    const [x, y, width, height] = ["x", "y", "width", "height"].map((name) => number(it, name)) as [
      number,
      number,
      number,
      number,
    ];
    context.roundRect(x, y, width, height, number(it, "rx"));
    ink(context, it);
  },
  circle(context, it) {
    context.beginPath();
    context.arc(number(it, "cx"), number(it, "cy"), number(it, "r"), 0, 2 * Math.PI);
    ink(context, it);
  },
  polyline(context, it) {
    trace(context, numbersIn(it["points"]!));
    ink(context, it);
  },
  polygon(context, it) {
    trace(context, numbersIn(it["points"]!));
    context.closePath();
    ink(context, it);
  },
};

function trace(context: Context, points: readonly number[]): void {
  context.beginPath();
  for (let at = 0; at + 1 < points.length; at += 2) context.lineTo(points[at]!, points[at + 1]!);
}

function ink(context: Context, { fill, stroke, ...it }: Attributes): void {
  if (fill !== undefined && fill !== "none") {
    context.fillStyle = fill;
    context.fill();
  }
  if (stroke === undefined) return;
  context.strokeStyle = stroke;
  context.lineWidth = Number(it["stroke-width"] ?? 1);
  context.lineJoin = it["stroke-linejoin"] === "round" ? "round" : "miter";
  context.setLineDash(numbersIn(it["stroke-dasharray"] ?? ""));
  context.stroke();
}

function write(context: Context, it: Attributes, text: string, typeface: string): void {
  context.font = `${it["font-weight"]} ${it["font-size"]}px ${typeface}`;
  context.fillStyle = it["fill"]!;
  const width = context.measureText(text).width;
  const squeezed = it["textLength"] === undefined || width === 0 ? 1 : number(it, "textLength") / width;
  const before = it["text-anchor"] === "middle" ? (width * squeezed) / 2 : 0;
  context.save();
  context.translate(number(it, "x") - before, number(it, "y"));
  context.scale(squeezed, 1);
  context.fillText(text, 0, 0);
  context.restore();
}
