import { inOrder, letterOf } from "./phases";
import { nameOf } from "./model";
import type { Reading } from "./reading";

const DEGREES = 180 / Math.PI;

/** Supplies: volts behind impedance, three phases. */
export function readSources(reading: Reading): void {
  const { model } = reading;
  for (const source of model.all("EnergySource", "ExternalNetworkInjection")) {
    const ends = reading.topology.endsOf(source, 1);
    if (ends === undefined || reading.isOut(source)) continue;
    const volts =
      model.volts(source, "voltageMagnitude") ??
      model.volts(source, "nominalVoltage") ??
      model.baseVolts(source);
    if (volts === undefined || volts <= 0) {
      model.ledger.error("importing.error.sourceVolts", { object: reading.named(source) });
      continue;
    }
    if (model.number(source, "voltageMagnitude") === undefined)
      model.ledger.note("assumed", "sourceVolts", nameOf(source));
    const number = (name: string) => model.number(source, name);
    const [r, x, r0, x0] = [number("r"), number("x"), number("r0"), number("x0")];
    if (r === undefined && x === undefined) model.ledger.note("assumed", "sourceOhms", nameOf(source));
    else if (r0 === undefined && x0 === undefined) model.ledger.note("assumed", "sourceZero", nameOf(source));
    const letters = model
      .pointingTo(source, "EnergySource")
      .flatMap((it) => letterOf(model.choice(it, "phase")) ?? []);
    const angleDeg = (number("voltageAngle") ?? 0) * DEGREES;
    reading.add(source, {
      ends,
      keys: {
        kind: "source",
        phases: letters.length === 0 ? "ABC" : inOrder(letters),
        kvLL: volts / 1000,
        ...(r === undefined && x === undefined
          ? {}
          : { z1Ohms: [r ?? 0, x ?? 0], z0Ohms: [r0 ?? r ?? 0, x0 ?? x ?? 0] }),
        ...(angleDeg === 0 ? {} : { angleDeg }),
      },
    });
  }
}
