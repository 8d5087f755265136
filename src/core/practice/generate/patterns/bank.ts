import type { Sketch, HangingSpot } from "../sketch";
import { bankKva, kvarOf, linkFor } from "../sizes";

/** Connections of a bank and what comes out of it [V, line to line]. */
const BANKS = [
  { connection: "Yg-Yg", volts: 208, load: "wye" },
  { connection: "Y-D", volts: 480, load: "delta" },
  { connection: "Yg-D", volts: 240, load: "delta" },
  { connection: "D-Yg", volts: 208, load: "wye" },
  { connection: "D-D", volts: 480, load: "delta" },
  { connection: "openY-openD", volts: 240, load: "delta" },
] as const;

/** A three-phase bank for a works, on a pole of the sideline. */
export function hangBank(sketch: Sketch, spot: HangingSpot): void {
  const { chance, words } = sketch;
  const { connection, volts, load } = chance.oneOf(BANKS);
  const kw = 5 * chance.between(5, 20);
  const kva = bankKva(kw);
  const phases = connection === "openY-openD" ? chance.oneOf(["AB", "BC", "AC"]) : "ABC";
  const name = words.bank(spot.pole);
  const bushing = sketch.pointOn(spot.structure);
  const secondary = sketch.pointOn(spot.structure);
  sketch.add("c", "cutout", {
    label: words.cutoutOf(name),
    phases,
    from: spot.point,
    to: bushing,
    fuse: linkFor(kva / (Math.sqrt(3) * sketch.kvLL)),
  });
  sketch.add("t", "transformer", {
    label: name,
    phases,
    from: bushing,
    to: secondary,
    connection,
    kva,
    primaryKv: sketch.kvLL,
    secondaryV: volts,
  });
  const works = sketch.placeCalled(chance.oneOf(words.works));
  const panel = sketch.pointOn(works.structure, { kind: "service" });
  const hasNeutral = load === "wye";
  sketch.add("m", "meter", {
    label: words.meterOf(works.name),
    phases: "ABC",
    from: secondary,
    to: panel,
    on: works.structure,
    ...(hasNeutral ? {} : { neutral: false }),
  });
  sketch.add("ld", "load", {
    label: words.motorsOf(works.name),
    phases: "ABC",
    at: panel,
    kw,
    kvar: Math.round(2 * kvarOf(kw)),
    connection: load,
    customers: 1,
    evidence: "told",
  });
  const bank = { name, spot, phases, bushing, secondary, letters: "ABC", hasArrester: false };
  sketch.banks.push(bank);
}
