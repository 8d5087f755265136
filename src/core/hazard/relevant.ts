import { type Circuit, circuitOf, EARTH, Islands } from "../network";
import { bondsAt, workNodesOf } from "./outcome";
import type { UpsetSet } from "./search";
import { MOST_STRENGTH } from "./tolerances";
import { type DrawnUpset, effectOf } from "./upsets";
import type { Question } from "./types";

/** Which upsets can matter to a work point, and which sets of them hang together with it. */
export interface Relevant {
  /** indices of upsets, increasing */
  readonly upsets: readonly number[];
  /** Whether each upset of a set changes something that the work point is connected to, once the others have happened. */
  connects(set: UpsetSet): boolean;
}

/**
 * Earth is the reference, so parts of a drawing that share no more than earth do nothing to each other. An upset counts
 * only where it changes the part in which the work point lies, or what other upsets have joined to it: a set with another
 * one in it does the same without, and is not minimal.
 */
export function relevantTo({ system, workPoint }: Question, upsets: readonly DrawnUpset[]): Relevant {
  const circuit = circuitOf(system);
  const parts = partsOf(circuit);
  const touches = upsets.map((it) => touchedParts(circuit, parts, it));
  const nodes = [...workNodesOf(circuit, workPoint), ...bondsAt(circuit, workPoint.at)];
  const start = new Set(nodes.filter((it) => it !== EARTH).map((it) => parts.labelOf(it)));
  const isClose = touches.map((it) => it.some((part) => start.has(part)));
  const least = leastToReach(start, touches, upsets);
  return {
    upsets: [...upsets.keys()].filter((it) => least[it]! <= MOST_STRENGTH),
    connects(set) {
      if (set.every((it) => isClose[it])) return true;
      const joined = new Set(start);
      let left = set;
      while (left.length > 0) {
        const met = left.filter((it) => touches[it]!.some((part) => joined.has(part)));
        if (met.length === 0) return false;
        for (const it of met) for (const part of touches[it]!) joined.add(part);
        left = left.filter((it) => !met.includes(it));
      }
      return true;
    },
  };
}

/** Nodes that anything but earth connects as drawn, drawn together. */
function partsOf(circuit: Circuit): Islands {
  const parts = new Islands(circuit.nodeCount);
  const together = (nodes: readonly number[]) => {
    const real = nodes.filter((it) => it !== EARTH);
    for (const it of real) parts.join(real[0]!, it);
  };
  const { joins } = circuit;
  for (let k = 0; k < joins.count; k++)
    if (joins.closed[k] === 1) together([joins.from[k]!, joins.to[k]!, joins.common[k]!]);
  for (const { from, to } of circuit.stretches) together([...from, ...to]);
  for (const { windings } of circuit.units) together(windings.flat());
  for (const { from, to } of circuit.branches) together([from, to]);
  for (const { part, legs, star } of circuit.emfs) if (part.on) together([...legs, star]);
  return parts;
}

function touchedParts(circuit: Circuit, parts: Islands, upset: DrawnUpset): number[] {
  const { joins, rejoined, emfs } = effectOf(circuit, upset);
  const nodes = [
    ...joins.flatMap((k) => [circuit.joins.from[k]!, circuit.joins.to[k]!, circuit.joins.common[k]!]),
    ...rejoined.map(({ stretch, letter }) => circuit.stretches[stretch]!.from[letter]!),
    ...emfs.flatMap(({ emf }) => [...circuit.emfs[emf]!.legs, circuit.emfs[emf]!.star]),
  ];
  return [...new Set(nodes.filter((it) => it !== EARTH).map((it) => parts.labelOf(it)))];
}

/** The least strength of a set that hangs together with the work point and holds each upset; infinite above the most. */
function leastToReach(
  start: ReadonlySet<number>,
  touches: readonly (readonly number[])[],
  upsets: readonly DrawnUpset[],
): number[] {
  const far = new Map([...start].map((part) => [part, 0]));
  const least = upsets.map(() => Infinity);
  for (let strength = 1; strength <= MOST_STRENGTH; strength++)
    upsets.forEach((upset, index) => {
      if (least[index]! < Infinity) return;
      const before = Math.min(...touches[index]!.map((part) => far.get(part) ?? Infinity));
      if (before + upset.strength !== strength) return;
      least[index] = strength;
      for (const part of touches[index]!) if (!far.has(part)) far.set(part, strength);
    });
  return least;
}
