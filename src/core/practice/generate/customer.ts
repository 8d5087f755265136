import type { Sketch } from "./sketch";
import { kvarOf } from "./sizes";

/** What kind of customer hangs on a secondary. */
export type CustomerSort = "house" | "row" | "portable" | "solar" | "standby";

/** A customer with a service, a meter and a load, and what may feed back from there. */
export function hangCustomer(sketch: Sketch, secondary: string, sort: CustomerSort): { readonly kw: number } {
  switch (sort) {
    case "house":
      return house(sketch, secondary, 1);
    case "row":
      return house(sketch, secondary, sketch.chance.between(2, 4));
    case "portable":
      return withMachine(sketch, secondary, "portable");
    case "solar":
      return withMachine(sketch, secondary, "solar");
    case "standby":
      return standby(sketch, secondary);
  }
}

/** One house, or several that one service stands for. */
function house(sketch: Sketch, secondary: string, houses: number): { readonly kw: number } {
  const { words } = sketch;
  const { structure, name } = sketch.newPlace(houses);
  const panel = sketch.pointOn(structure, { kind: "service" });
  sketch.add("m", "meter", {
    label: words.meterOf(name),
    phases: "12",
    from: serviceTo(sketch, secondary, structure),
    to: panel,
    ...(houses === 1 ? {} : { count: houses }),
  });
  return loadAt(sketch, panel, words.loadOf(name), houses);
}

/** A service drop to a house, in half of the drawings; else the meter stands for it. */
function serviceTo(sketch: Sketch, secondary: string, structure: string): string {
  const base = sketch.pointOn(structure, { kind: "service" });
  sketch.add("sp", "span", {
    phases: "12",
    from: secondary,
    to: base,
    lengthM: sketch.chance.between(14, 40),
    construction: "secondary",
  });
  return base;
}

function loadAt(sketch: Sketch, at: string, label: string, houses: number): { readonly kw: number } {
  const kw = (houses * sketch.chance.between(4, 9)) / 2;
  sketch.add("ld", "load", {
    label,
    phases: "12",
    at,
    kw,
    kvar: kvarOf(kw),
    connection: "delta",
    customers: houses,
    evidence: "assumed",
  });
  return { kw };
}

/** A house behind its main breaker with a machine on its panel: a portable one that is off, or a solar inverter that runs. */
function withMachine(sketch: Sketch, secondary: string, sort: "portable" | "solar"): { readonly kw: number } {
  const { words, chance } = sketch;
  const { structure, name } = sketch.newPlace(1);
  const behind = sketch.pointOn(structure, { kind: "service" });
  const panel = sketch.pointOn(structure, { kind: "service" });
  sketch.add("m", "meter", {
    label: words.meterOf(name),
    phases: "12",
    from: serviceTo(sketch, secondary, structure),
    to: behind,
  });
  sketch.add("mn", "main", { label: words.mainOf(name), phases: "12", from: behind, to: panel });
  sketch.add("gen", "generator", {
    phases: "12",
    at: panel,
    volts: 240,
    evidence: "told",
    ...(sort === "portable"
      ? { label: words.portableOf(name), kva: chance.oneOf([5, 7.5, 9]) }
      : { label: words.solarOf(name), kva: chance.oneOf([5, 7.6]), interface: "inverter", on: true }),
  });
  return loadAt(sketch, panel, words.loadOf(name), 1);
}

/** A customer that may not be left without: a standby set behind a transfer switch. */
function standby(sketch: Sketch, secondary: string): { readonly kw: number } {
  const { words, chance } = sketch;
  const { structure, name } = sketch.placeCalled(chance.oneOf(words.clinics));
  const [base, set, panel] = ["base", "set", "panel"].map(() =>
    sketch.pointOn(structure, { kind: "service" }),
  ) as [string, string, string];
  sketch.add("m", "meter", {
    label: words.meterOf(name),
    phases: "12",
    from: serviceTo(sketch, secondary, structure),
    to: base,
  });
  sketch.add("gen", "generator", {
    label: words.standbyOf(name),
    phases: "12",
    at: set,
    kva: chance.oneOf([20, 30]),
    volts: 240,
    evidence: "told",
  });
  sketch.add("ts", "transfer", {
    label: words.transferOf(name),
    phases: "12",
    from: base,
    alt: set,
    to: panel,
    position: "utility",
  });
  const kw = chance.between(8, 14);
  sketch.add("ld", "load", {
    label: words.loadOf(name),
    phases: "12",
    at: panel,
    kw,
    kvar: kvarOf(kw),
    connection: "delta",
    customers: 1,
    critical: true,
    evidence: "told",
  });
  return { kw };
}
