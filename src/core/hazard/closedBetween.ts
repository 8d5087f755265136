import { elementsOfKind, nameIn, perObject, type System } from "../document";
import { type Circuit, EDGE, floodFrom, isPhase, meetingsOf, reachGraphOf } from "../network";
import { type Solution, solutionOf, voltsAt } from "../phasor";
import {
  complex,
  type Complex,
  conductorId,
  type ElementId,
  type Finding,
  type Letter,
  lettersOf,
  type Message,
  say,
} from "../terms";
import { degreesApart, standApart, type VoltsToEarth, voltsApart } from "./apart";

const citation = "common practice, no source";

/**
 * What is drawn closed between two supplies that do not stand together, and transformers in parallel that give other volts:
 * what closing them would be told for. Two feeds that meet have one voltage as drawn, so each is looked at apart.
 */
export const closedBetween = (system: System, circuit: Circuit): Finding[] =>
  [...worstOfEach(circuit)].map(([element, apart]) => ({
    rule: "phase-check",
    severity: "danger",
    where: circuit.elementIds[element]!,
    message: sentence(nameIn({ system }, circuit.elementIds[element]!), apart),
    help: say(apart.isOutOfStep ? "hazard.closedBetween.notInStep.help" : "hazard.closedBetween.help"),
    citation,
  }));

const sentence = (name: Message | string, { one, other, letter, isOutOfStep }: Apart) =>
  isOutOfStep
    ? say("hazard.closedBetween.notInStep", { name, volts: Math.round(one.volts + other.volts) })
    : say("hazard.closedBetween", {
        name,
        letter: letter === "1" || letter === "2" ? say("name.leg.one", { letters: letter }) : letter,
        volts: Math.round(voltsApart(one, other)),
        degrees: Math.round(degreesApart(one, other)),
      });

/** Regulators off neutral whose ends something beside them joins as drawn: their series windings are shorts through it. */
export function regulatorsBypassed(system: System, circuit: Circuit): Finding[] {
  const graph = reachGraphOf(circuit);
  return elementsOfKind(system, "regulator").flatMap(([id, { from, to, phases, open, bypassed, taps }]) => {
    const index = circuit.elementIds.indexOf(id);
    const isBeside = (edge: number) =>
      graph.kind[edge] === EDGE.metallic && graph.on[edge] === 1 && graph.element[edge] !== index;
    const short = lettersOf(phases).filter((letter) => {
      if (bypassed || open.includes(letter) || (taps[letter as "A"] ?? 0) === 0) return false;
      const [start, end] = [from, to].map((point) => circuit.nodeOf.get(conductorId(point, letter)));
      return start !== undefined && floodFrom(graph, [start], isBeside).nodes.includes(end!);
    });
    if (short.length === 0) return [];
    return [
      {
        rule: "regulator-neutral",
        severity: "danger",
        where: id,
        message: say("hazard.regulatorBypassed", { name: nameIn({ system }, id), phases: short.join(" ") }),
        help: say("hazard.regulatorBypassed.help"),
        citation,
      },
    ];
  });
}

/** What stands closed between feeds that do not stand together, each as it stands without the other. */
export const feedsApart = (circuit: Circuit): ReadonlyMap<ElementId, Apart> =>
  new Map([...worstOfEach(circuit)].map(([element, apart]) => [circuit.elementIds[element]!, apart]));

/** Two feeds that meet, each as it stands without the other. */
export interface Apart {
  readonly letter: Letter;
  readonly one: VoltsToEarth;
  readonly other: VoltsToEarth;
  readonly isOutOfStep: boolean;
}

/** Of each element the phase on which its two feeds are farthest apart, if any are. */
const worstOfEach = perObject((circuit: Circuit): ReadonlyMap<number, Apart> => {
  const { joined, inParallel } = meetingsOf(circuit);
  const worst = new Map<number, Apart>();
  if (joined.length === 0 && inParallel.size === 0) return worst;
  const { from, to, element } = reachGraphOf(circuit);
  const solution = solutionOf(takenApart(circuit), { loads: false, grounds: false, faults: false });
  const add = (index: number, apart: Apart) => {
    if (!apart.isOutOfStep && !standApart(apart.one, apart.other)) return;
    const known = worst.get(index);
    if (known === undefined || voltsApart(apart.one, apart.other) > voltsApart(known.one, known.other))
      worst.set(index, apart);
  };
  for (const { edge, isOutOfStep } of joined)
    add(element[edge]!, {
      letter: circuit.letterOfNode[from[edge]!] as Letter,
      one: toEarthOf(voltsAt(solution, from[edge]!)),
      other: toEarthOf(voltsAt(solution, to[edge]!)),
      isOutOfStep,
    });
  for (const { element: index, part, windings } of circuit.units) {
    const meeting = inParallel.get(index);
    if (meeting === undefined) continue;
    const turns = part.primary[0]!;
    const across = acrossWinding(solution, windings[0]!);
    part.secondary.forEach((winding, nth) => {
      const low = windings[part.primary.length + nth]!;
      add(index, {
        letter: circuit.letterOfNode[
          low.find((node) => node < circuit.conductorCount && isPhase(circuit, node))!
        ] as Letter,
        one: toEarthOf(complex.scale(across, winding.volts / turns.volts)),
        other: toEarthOf(acrossWinding(solution, low)),
        isOutOfStep: meeting.isOutOfStep,
      });
    });
  }
  return worst;
});

const acrossWinding = (solution: Solution, [plus, minus]: readonly [number, number]): Complex =>
  complex.subtract(voltsAt(solution, plus), voltsAt(solution, minus));

const toEarthOf = (volts: Complex): VoltsToEarth => ({
  volts: complex.magnitude(volts),
  angleDeg: complex.angleDegrees(volts),
});

/** The circuit with nothing joined where feeds meet, without the transformers that others hold from behind, and no machine on. */
function takenApart(circuit: Circuit): Circuit {
  const { joined, inParallel } = meetingsOf(circuit);
  const { edgeOfJoin, edgesOfStretch } = reachGraphOf(circuit);
  const apart = new Set(joined.map(({ edge }) => edge));
  return {
    ...circuit,
    values: {},
    structure: inParallel.size === 0 ? circuit.structure : {},
    joins: {
      ...circuit.joins,
      closed: circuit.joins.closed.map((closed, k) => (apart.has(edgeOfJoin[k]!) ? 0 : closed)),
    },
    stretches: circuit.stretches.map((it, stretch) => {
      const parted = it.part.letters.filter((_, i) => apart.has(edgesOfStretch[stretch]![i]!));
      return parted.length === 0
        ? it
        : { ...it, part: { ...it.part, parted: [...it.part.parted, ...parted] } };
    }),
    units: circuit.units.filter(({ element }) => !inParallel.has(element)),
    emfs: circuit.emfs.map((it) =>
      it.part.role === "utility" ? it : { ...it, part: { ...it.part, on: false } },
    ),
  };
}
