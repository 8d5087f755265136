import type { Sketch } from "../sketch";

/** A capacitor bank behind its cutouts on the last pole of the sideline. */
export function hangCapacitor(sketch: Sketch): void {
  const { chance, words } = sketch;
  const spot = sketch.sideline.at(-1)!;
  const { phases } = spot;
  const units = sketch.pointOn(spot.structure);
  sketch.add("c", "cutout", {
    label: words.capacitorCutout(spot.pole),
    phases,
    from: spot.point,
    to: units,
    fuse: { type: "K", amps: 25 },
  });
  sketch.add("cap", "capacitor", {
    label: words.capacitor(spot.pole),
    phases,
    at: units,
    kvar: phases.length * chance.oneOf([50, 100]),
    kvLL: sketch.kvLL,
    connection: "wye",
  });
}
