import type { Sketch, HangingSpot } from "./sketch";
import { linkOver } from "./sizes";

/** How a sideline leaves the main line. */
export type Leaving = "cutout" | "solid" | "clamp" | "clamp-and-cutout" | "switch" | "gang" | "recloser";

/** The device or devices by which a sideline leaves a pole of the main line, and what stands below them. */
export function leave(
  sketch: Sketch,
  from: HangingSpot,
  phases: string,
  by: Leaving,
  kva: number,
): HangingSpot {
  const { words } = sketch;
  const { pole } = from;
  const hang = (
    prefix: string,
    kind: Parameters<Sketch["add"]>[1],
    label: string,
    above: HangingSpot,
    more: object,
  ) => {
    const below = sketch.beyond(above, phases);
    sketch.add(prefix, kind, { label, phases, from: above.point, to: below.point, ...more });
    return below;
  };
  const fuse = linkOver(kva / (phases.length === 3 ? Math.sqrt(3) * sketch.kvLL : sketch.kvToNeutral));
  switch (by) {
    case "cutout":
      return hang("c", "cutout", words.sidelineCutout(pole), from, { fuse });
    case "solid":
      return hang("c", "cutout", words.sidelineCutout(pole), from, { fuse: "solid" });
    case "clamp":
      return hang("k", "clamp", words.sidelineClamp(pole), from, {});
    case "clamp-and-cutout": {
      const below = hang("k", "clamp", words.sidelineClamp(pole), from, {});
      return hang("c", "cutout", words.sidelineCutout(pole), below, { fuse });
    }
    case "switch":
      return hang("d", "disconnect", words.sidelineSwitch(pole), from, {});
    case "gang":
      return hang("d", "disconnect", words.sidelineSwitch(pole), from, { gang: true, loadBreakAmps: 600 });
    case "recloser": {
      const below = hang("d", "disconnect", words.sidelineSwitch(pole), from, {});
      return hang("r", "recloser", words.recloser(pole), below, {
        interruptingAmps: 6000,
        ...(sketch.chance.percent(50) ? { remote: true } : {}),
      });
    }
  }
}

/** Poles one after another, from what the sideline leaves by. */
export function drawSideline(sketch: Sketch, head: HangingSpot, poles: number): void {
  const { chance } = sketch;
  sketch.head = head;
  const conductor = chance.oneOf(["1/0 ACSR", "2 6/1 ACSR"]);
  let last = head;
  for (let count = 0; count < poles; count++) {
    const pole = sketch.newPole(head.phases);
    sketch.sidelineSpans.push(
      sketch.add("sp", "span", {
        phases: head.phases,
        from: last.point,
        to: pole.point,
        lengthM: 5 * chance.between(9, 19),
        conductor,
        neutralConductor: conductor,
      }),
    );
    sketch.sideline.push(pole);
    last = pole;
  }
}
