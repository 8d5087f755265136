import type { Sketch, HangingSpot } from "./sketch";
import { regulatorOn } from "./patterns/regulator";

/** The main line from the station: so many poles with all three phases. */
export function drawFeeder(
  sketch: Sketch,
  { poles, hasRegulator }: { readonly poles: number; readonly hasRegulator: boolean },
): void {
  const { chance, words } = sketch;
  const name = chance.oneOf(words.stations);
  const { point } = sketch.newStation(name);
  sketch.add("s", "source", {
    label: words.bus(name),
    phases: "ABC",
    at: point,
    kvLL: sketch.kvLL,
    z1Ohms: [0.2, chance.oneOf([0.9, 1.1, 1.4])],
    z0Ohms: [0.4, chance.oneOf([2, 2.4, 3])],
  });
  let last: HangingSpot | undefined;
  for (let count = 0; count < poles; count++) {
    const pole = sketch.newPole("ABC");
    sketch.add("sp", "span", {
      phases: "ABC",
      from: last?.point ?? point,
      to: pole.point,
      lengthM: last === undefined ? 100 * chance.between(9, 30) : 5 * chance.between(9, 18),
      conductor: "336.4 26/7 ACSR",
      neutralConductor: "4/0 ACSR",
      rodsPerKm: 2.5,
    });
    last = hasRegulator && count === 0 ? regulatorOn(sketch, pole) : pole;
    sketch.feeder.push(last);
  }
}
