import type { Sketch, HangingSpot } from "../sketch";

/** Line regulators on a pole of the main line, a few steps up. */
export function regulatorOn(sketch: Sketch, spot: HangingSpot): HangingSpot {
  const beyond = sketch.beyond(spot, spot.phases);
  const step = () => sketch.chance.between(1, 6);
  sketch.add("vr", "regulator", {
    label: sketch.words.regulators(spot.pole),
    phases: spot.phases,
    from: spot.point,
    to: beyond.point,
    taps: Object.fromEntries([...spot.phases].map((it) => [it, step()])),
  });
  return beyond;
}
