import { hangCustomer, type CustomerSort } from "./customer";
import type { HungTransformer, Sketch, HangingSpot } from "./sketch";
import { linkFor, unitKva } from "./sizes";

/** What a transformer hangs from and who is behind it. */
export interface Hanging {
  readonly phase: string;
  /** from the line by a clamp above its cutout */
  readonly byClamp?: boolean;
  readonly customers: readonly CustomerSort[];
}

/** A single-phase transformer on a pole: cutout, arrester perhaps, unit, and its customers. */
export function hangTransformer(
  sketch: Sketch,
  spot: HangingSpot,
  { phase, byClamp = false, customers }: Hanging,
): HungTransformer {
  const { chance, words } = sketch;
  const name = words.transformer(spot.pole);
  const above = byClamp ? sketch.beyond(spot, phase) : spot;
  if (byClamp)
    sketch.add("k", "clamp", {
      label: words.clampOf(name),
      phases: phase,
      from: spot.point,
      to: above.point,
    });
  const bushing = sketch.pointOn(spot.structure);
  const secondary = sketch.pointOn(spot.structure);
  const kw = customers.length === 0 ? 5 : 0;
  const hung = customers.map((sort) => hangCustomer(sketch, secondary, sort));
  const kva = unitKva(hung.reduce((sum, it) => sum + it.kw, kw));
  sketch.add("c", "cutout", {
    label: words.cutoutOf(name),
    phases: phase,
    from: above.point,
    to: bushing,
    fuse: linkFor(kva / sketch.kvToNeutral),
  });
  sketch.add("t", "transformer", {
    label: name,
    phases: phase,
    from: bushing,
    to: secondary,
    connection: "single",
    kva,
    primaryKv: sketch.kvToNeutral,
    secondaryV: 240,
  });
  const hasArrester = chance.percent(50);
  if (hasArrester) sketch.add("a", "arrester", { label: words.arresterOf(name), phases: phase, at: bushing });
  const transformer = { name, spot, phases: phase, bushing, secondary, letters: "12", hasArrester };
  sketch.transformers.push(transformer);
  return transformer;
}
