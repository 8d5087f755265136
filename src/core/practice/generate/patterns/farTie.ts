import type { Sketch } from "../sketch";

/** At the far end of the sideline a switch that is normally open, and another station's line behind it. */
export function farTie(sketch: Sketch): void {
  const { chance, words } = sketch;
  const end = sketch.sideline.at(-1)!;
  const { phases } = end;
  const beyond = sketch.beyond(end, phases);
  sketch.add("d", "disconnect", {
    label: words.tie(end.pole),
    phases,
    from: end.point,
    to: beyond.point,
    open: phases,
    normallyOpen: true,
    ...(phases.length === 3 && chance.percent(50) ? { gang: true, loadBreakAmps: 600 } : {}),
  });
  const name = chance.oneOf(words.stations.filter((it) => !sketch.isStation(it)));
  const { point } = sketch.newStation(name);
  sketch.add("s", "source", {
    label: words.bus(name),
    phases: "ABC",
    at: point,
    kvLL: sketch.kvLL,
    z1Ohms: [0.3, 1.5],
    z0Ohms: [0.5, 2.9],
  });
  const span = { phases, conductor: "1/0 ACSR", neutralConductor: "1/0 ACSR", rodsPerKm: 2.5 };
  if (chance.percent(50)) {
    const pole = sketch.newPole(phases);
    const below = sketch.beyond(pole, phases);
    sketch.add("sp", "span", { ...span, from: point, to: pole.point, lengthM: 100 * chance.between(12, 26) });
    sketch.add("r", "recloser", {
      label: words.recloser(pole.pole),
      phases,
      from: pole.point,
      to: below.point,
      interruptingAmps: 6000,
    });
    sketch.add("sp", "span", {
      ...span,
      from: below.point,
      to: beyond.point,
      lengthM: 20 * chance.between(8, 30),
    });
  } else
    sketch.add("sp", "span", {
      ...span,
      from: point,
      to: beyond.point,
      lengthM: 100 * chance.between(12, 30),
    });
}
