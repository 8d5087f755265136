import { apartOf, isConductor, isLine } from "../devices";
import { complete, conductorNames, elementsOfKind, nameIn, type System } from "../document";
import type { Circuit } from "../network";
import { voltsAt } from "../phasor";
import {
  complex,
  conductorId,
  type ElementId,
  type Finding,
  type Letter,
  lettersOf,
  partsOfConductor,
  say,
} from "../terms";
import { closedBetween, regulatorsBypassed } from "./closedBetween";
import type { View } from "./view";
import { LEAST_MEAN, MOST_OVER, MOST_UNBALANCE } from "./tolerances";

const citation = "common practice, no source";

/**
 * What is wrong as things stand, whoever works where: broken wires that are live, open neutrals, legs that have gone apart, motors on two phases,
 * two supplies joined that do not stand together, regulators bypassed off neutral.
 */
export const wrongAsFound = (system: System, circuit: Circuit, view: View): Finding[] => [
  ...brokenThings(system, circuit, view),
  ...legVolts(system, circuit, view),
  ...motorsShortOfAPhase(system, circuit, view),
  ...closedBetween(system, circuit),
  ...regulatorsBypassed(system, circuit),
];

/** Parted conductors with a live end, and neutrals that are open beside live conductors of their own line. */
function brokenThings(system: System, circuit: Circuit, view: View): Finding[] {
  return (Object.keys(system.elements) as ElementId[]).flatMap((id) => {
    const it = complete(system.elements[id]!);
    if (!isConductor(it) || it.planned === true) return [];
    const apart = apartOf(it);
    if (apart === "") return [];
    const isLive = (letter: Letter) =>
      [it.from, it.to].some((point) => {
        const node = circuit.nodeOf.get(conductorId(point, letter));
        return node !== undefined && ["energized", "backfed", "faulted"].includes(view.state(node));
      });
    const name = nameIn({ system }, id);
    const down = isLine(it) ? lettersOf(apart.replace("N", "")).filter(isLive) : [];
    // What is apart all through is two lines; a phase that goes through has lost its way back.
    const isOpenNeutral =
      apart.includes("N") && lettersOf(it.phases).some((letter) => !apart.includes(letter) && isLive(letter));
    const isService = lettersOf(it.phases).some((letter) => letter === "1" || letter === "2");
    return [
      ...(down.length === 0
        ? []
        : [
            {
              rule: "broken-energized",
              severity: "danger" as const,
              where: id,
              message: say("hazard.brokenEnergized", { name, phases: down.join(" ") }),
              help: say("hazard.brokenEnergized.help"),
              citation,
            },
          ]),
      ...(isOpenNeutral
        ? [
            {
              rule: "open-neutral",
              severity: isService ? ("danger" as const) : ("warning" as const),
              where: id,
              message: say("hazard.openNeutral", { name }),
              help: say("hazard.openNeutral.help"),
              citation,
            },
          ]
        : []),
    ];
  });
}

/** Legs of a service that stand too high over their neutral, as where it is open. The highest of each place. */
function legVolts(system: System, circuit: Circuit, view: View): Finding[] {
  const [drawn] = view.solutions;
  return circuit.conductorIds.flatMap((id, node): Finding[] => {
    const { point, letter } = partsOfConductor(id);
    if (letter !== "1" && letter !== "2") return [];
    const neutral = circuit.nodeOf.get(conductorId(point, "N"));
    const nominal = circuit.nominalVolts[node]! / 2;
    if (neutral === undefined || nominal === 0) return [];
    const volts = complex.magnitude(complex.subtract(voltsAt(drawn, node), voltsAt(drawn, neutral)));
    if (!(volts > MOST_OVER * nominal) || view.state(node) === "isolated") return [];
    return [
      {
        rule: "leg-volts",
        severity: "danger",
        where: id,
        message: say("hazard.legVolts", {
          where: conductorNames({ system }, [id]),
          volts: Math.round(volts),
          nominal: Math.round(nominal),
        }),
        help: say("hazard.legVolts.help"),
        citation,
      },
    ];
  });
}

/**
 * Three-phase motors whose volts between phases are too far apart to run on, as where a link has blown and the phase comes back
 * through the windings of a bank.
 */
function motorsShortOfAPhase(system: System, circuit: Circuit, view: View): Finding[] {
  const [drawn] = view.solutions;
  return elementsOfKind(system, "load").flatMap(([id, { at, connection, phases, kw, kvar }]): Finding[] => {
    if (connection !== "delta" || phases.length !== 3 || (kw === 0 && kvar === 0)) return [];
    const nodes = lettersOf(phases).map((letter) => circuit.nodeOf.get(conductorId(at, letter))!);
    const volts = nodes.map((node, nth) =>
      complex.magnitude(
        complex.subtract(voltsAt(drawn, node), voltsAt(drawn, nodes[(nth + 1) % nodes.length]!)),
      ),
    );
    const mean = volts.reduce((sum, it) => sum + it, 0) / volts.length;
    if (!(mean > LEAST_MEAN * circuit.nominalVolts[nodes[0]!]!)) return [];
    const [least, most] = [Math.min(...volts), Math.max(...volts)];
    if (!(Math.max(most - mean, mean - least) > MOST_UNBALANCE * mean)) return [];
    return [
      {
        rule: "single-phasing",
        severity: "warning",
        where: id,
        message: say("hazard.singlePhasing", {
          name: nameIn({ system }, id),
          least: Math.round(least),
          most: Math.round(most),
        }),
        help: say("hazard.singlePhasing.help"),
        citation,
      },
    ];
  });
}
