import {
  type CircuitElement,
  deviceOf,
  type End,
  isMachine,
  isSupply,
  isTransformer,
  lettersAtEnd,
  partsOf,
  type DevicePlace,
} from "../devices";
import { type ConductorId, conductorId, type Letter } from "../terms";

/** Line-to-line volts (leg to leg on a split secondary) at each conductor; 0 where nothing says. */
export type NominalVolts = Float64Array;

interface Drawn {
  readonly elements: readonly CircuitElement[];
  readonly endPoints: readonly Readonly<Partial<Record<End, string>>>[];
  readonly nodeOf: ReadonlyMap<ConductorId, number>;
  readonly conductorCount: number;
}

/**
 * Nominal volts spread from the sources outward through whatever joins conductors, open or closed, and change at
 * transformers to the rating of the other side. What no source touches takes the ratings of its transformers, then of
 * its generators.
 */
export function nominalVoltsOf({ elements, endPoints, nodeOf, conductorCount }: Drawn): NominalVolts {
  const volts = new Float64Array(conductorCount);
  /** neighbours of a conductor as a chain: `first[node]` leads to an entry, and each entry to the next */
  const first = new Int32Array(conductorCount).fill(-1);
  const neighbour: number[] = [];
  const after: number[] = [];
  const link = (a: number, b: number) => {
    neighbour.push(b);
    after.push(first[a]!);
    first[a] = neighbour.length - 1;
  };
  /** of each transformer its sides, the primary first */
  const crossings: { readonly nodes: readonly number[]; readonly volts: number }[][] = [];
  const crossingsAt = new Map<number, number[]>();
  const nodeAt = (index: number, end: End, letter: string): number | undefined => {
    const point = endPoints[index]![end];
    return point === undefined ? undefined : nodeOf.get(conductorId(point, letter as Letter));
  };
  const nodesAt = (index: number, end: End, phases: string): number[] =>
    [...phases].flatMap((letter) => nodeAt(index, end, letter) ?? []);

  elements.forEach((element, index) => {
    const phases = (element as { phases?: string }).phases ?? "";
    if (isTransformer(element)) {
      const unit = partsOf(element, NOWHERE).find((part) => part.part === "unit");
      if (unit === undefined) return; // one that is still to be hung
      const { primary, lows } = unit.lineToLineVolts;
      const [first, ...beyond] = deviceOf(element.kind).ends;
      crossings.push([
        { nodes: nodesAt(index, first!, phases), volts: primary },
        ...beyond.map((end, nth) => ({
          nodes: nodesAt(index, end, lettersAtEnd(element, end).join("")),
          volts: lows[nth]!,
        })),
      ]);
      for (const node of crossings.at(-1)!.flatMap(({ nodes }) => nodes))
        crossingsAt.set(node, [...(crossingsAt.get(node) ?? []), crossings.length - 1]);
      return;
    }
    const ends = deviceOf(element.kind).ends;
    if (ends.length < 2) return;
    for (let k = 0; k < phases.length; k++) {
      const from = nodeAt(index, ends[0]!, phases[k]!);
      for (let end = 1; end < ends.length; end++) {
        const to = nodeAt(index, ends[end]!, phases[k]!);
        if (from === undefined || to === undefined) continue;
        link(from, to);
        link(to, from);
      }
    }
  });

  const queue: number[] = [];
  const seed = (node: number, value: number) => {
    if (volts[node] !== 0) return;
    volts[node] = value;
    queue.push(node);
  };
  const spread = () => {
    for (const node of queue) {
      for (let at = first[node]!; at !== -1; at = after[at]!) seed(neighbour[at]!, volts[node]!);
      for (const index of crossingsAt.get(node) ?? [])
        for (const side of crossings[index]!)
          if (crossings[index]!.some((it) => it !== side && it.nodes.includes(node)))
            side.nodes.forEach((it) => seed(it, side.volts));
    }
    queue.length = 0;
  };

  elements.forEach((element, index) => {
    if (isSupply(element))
      nodesAt(index, "at", element.phases).forEach((it) => seed(it, element.kvLL * 1000));
  });
  spread();
  for (const sides of crossings) {
    for (const { nodes, volts: rated } of sides) nodes.forEach((it) => seed(it, rated));
    spread();
  }
  elements.forEach((element, index) => {
    if (isMachine(element)) nodesAt(index, "at", element.phases).forEach((it) => seed(it, element.volts));
  });
  spread();
  return volts;
}

/** A place that tells nothing: enough for what depends on ratings alone. */
const NOWHERE: DevicePlace = { frequencyHz: 60, hasNeutral: () => false, nominalVolts: () => 0 };
