import type { Sketch } from "../sketch";

/** Another circuit at a span of the sideline: across it, beside it or above it. */
export function drawCrossing(sketch: Sketch): void {
  const { chance } = sketch;
  const relation = chance.oneOf(["crossing", "parallel", "underbuild"] as const);
  const kvLL = relation === "crossing" ? sketch.kvLL : chance.oneOf([12.47, 34.5]);
  sketch.add("n", "nearby", {
    label: sketch.words.crossing(kvLL),
    span: chance.oneOf(sketch.sidelineSpans),
    relation,
    kvLL,
    spacingM: relation === "parallel" ? chance.between(8, 20) : chance.between(2, 4),
    ...(relation === "crossing" ? {} : { lengthM: chance.between(30, 45), amps: 20 * chance.between(2, 8) }),
  });
}
