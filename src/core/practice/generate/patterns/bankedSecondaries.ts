import type { Sketch } from "../sketch";

/** A secondary that runs on from one transformer to the next of the same phase: each feeds the other's customers. */
export function bankSecondaries(sketch: Sketch): void {
  const [one, other] = sketch.transformers;
  if (one === undefined || other === undefined || one.phases !== other.phases) return;
  sketch.add("sp", "span", {
    phases: "12",
    from: one.secondary,
    to: other.secondary,
    lengthM: sketch.chance.between(40, 70),
    construction: "secondary",
  });
}
