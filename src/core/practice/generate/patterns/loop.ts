import { hangCustomer } from "../customer";
import type { CableEnd, Sketch, HangingSpot } from "../sketch";
import { linkFor, unitKva } from "../sizes";

/** An underground loop between two poles of the main line, parked open at one of its pads. */
export function drawLoop(sketch: Sketch, pads: number): void {
  const { chance, words } = sketch;
  const phase = chance.oneOf(["A", "B", "C"]);
  const parked = chance.between(1, pads - 1);
  const [near, far] = [sketch.feeder.at(-2)!, sketch.feeder.at(-1)!];
  let cable = riser(sketch, near, phase);
  let end: CableEnd | undefined;
  for (let place = 0; place < pads; place++) {
    const { structure, pad } = sketch.newPad();
    const point = (more: object = {}) => sketch.pointOn(structure, { kind: "pad", ...more });
    const [incoming, bus, outgoing, secondary] = [point(), point({ earthOhms: 25 }), point(), point()];
    // Up to the elbow that is parked the loop is fed from its near end, beyond it from the far one.
    const [into, out] = [place <= parked, place < parked];
    cableTo(sketch, phase, inOrder(into, cable, incoming));
    sketch.add("e", "elbow", {
      label: words.elbowIn(pad),
      phases: phase,
      ...inOrder(into, incoming, bus),
      ...(place === parked ? { open: phase, normallyOpen: true } : {}),
    });
    sketch.add("e", "elbow", { label: words.elbowOut(pad), phases: phase, ...inOrder(out, bus, outgoing) });
    const { kw } = hangCustomer(sketch, secondary, "row");
    sketch.add("t", "transformer", {
      label: words.transformer(500 + pad),
      phases: phase,
      from: bus,
      to: secondary,
      connection: "single",
      kva: unitKva(kw),
      primaryKv: sketch.kvToNeutral,
      secondaryV: 240,
    });
    if (end !== undefined) sketch.cables.push([end, { point: incoming, pad, phase }]);
    end = { point: outgoing, pad, phase };
    cable = outgoing;
  }
  cableTo(sketch, phase, inOrder(true, riser(sketch, far, phase), cable));
}

function riser(sketch: Sketch, spot: HangingSpot, phase: string): string {
  const top = sketch.pointOn(spot.structure);
  sketch.add("c", "cutout", {
    label: sketch.words.riserCutout(spot.pole),
    phases: phase,
    from: spot.point,
    to: top,
    fuse: linkFor(15),
  });
  return top;
}

const inOrder = (isOutward: boolean, near: string, far: string) =>
  isOutward ? { from: near, to: far } : { from: far, to: near };

const cableTo = (sketch: Sketch, phases: string, ends: { readonly from: string; readonly to: string }) =>
  sketch.add("sp", "span", {
    phases,
    ...ends,
    lengthM: 10 * sketch.chance.between(6, 18),
    construction: "cable",
  });
