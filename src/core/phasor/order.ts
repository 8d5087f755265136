import { type Circuit, EARTH } from "../network";

/**
 * The order in which unknowns are eliminated: from the leaves of the drawing to its root, point by point, so that a
 * radial system fills in nothing but the conductors of one point. Unknowns are the nodes, then one current for each join.
 *
 * A join's current comes after the conductors of all its ends but one, and of all of them where it closes a loop of the
 * drawing: so at every moment the joins that are gone form a forest on the conductors that are gone with them, which is
 * when no pivot vanishes (docs/decisions/0004).
 *
 * @returns unknowns in the order of elimination, length `nodeCount + joins.count`
 */
export function eliminationOrder(circuit: Circuit): Int32Array {
  const { pointIds, elementIds, nodeCount, joins, pointOfNode, ownerOfNode } = circuit;
  const pointCount = pointIds.length;
  const groupCount = pointCount + elementIds.length;

  const unknowns = countedLists(groupCount, nodeCount + joins.count, (unknown) =>
    unknown < nodeCount
      ? pointOfNode[unknown] === -1
        ? pointCount + ownerOfNode[unknown]!
        : pointOfNode[unknown]!
      : pointCount + joins.element[unknown - nodeCount]!,
  );

  const touched: number[][] = Array.from({ length: groupCount }, () => []);
  const link = (a: number, b: number) => {
    if (a === b) return;
    touched[a]!.push(b);
    touched[b]!.push(a);
  };
  const groupOf = (node: number) =>
    pointOfNode[node] === -1 ? pointCount + ownerOfNode[node]! : pointOfNode[node]!;
  const linkAll = (nodes: readonly number[]) => {
    const groups = [...new Set(nodes.filter((it) => it !== EARTH).map(groupOf))];
    groups.forEach((a, i) => groups.slice(i + 1).forEach((b) => link(a, b)));
  };
  for (let k = 0; k < joins.count; k++)
    for (const node of [joins.from[k]!, joins.to[k]!, joins.common[k]!])
      if (node !== EARTH) link(pointCount + joins.element[k]!, groupOf(node));
  for (const { from, to } of circuit.stretches) {
    if (from.length > 0) link(groupOf(from[0]!), groupOf(to[0]!));
  }
  for (const { windings } of circuit.units) linkAll(windings.flat());
  for (const { from, to } of circuit.branches) linkAll([from, to]);
  for (const { legs, star } of circuit.emfs) linkAll([...legs, star]);

  const order = new Int32Array(nodeCount + joins.count);
  let placed = 0;
  const place = (group: number) => {
    for (let at = unknowns.start[group]!; at < unknowns.start[group + 1]!; at++)
      order[placed++] = unknowns.items[at]!;
  };

  const metAt = new Int32Array(groupCount).fill(-1);
  const isPlaced = new Uint8Array(groupCount);
  const nextNeighbour = new Int32Array(groupCount);
  /** elements that wait until a point is gone */
  const waiting: number[][] = Array.from({ length: groupCount }, () => []);
  const isElement = (group: number) => group >= pointCount;
  /** An element's last point to go is the one met first. */
  const waitForLastPoint = (element: number) => {
    const last = touched[element]!.reduce((first, it) => (metAt[it]! < metAt[first]! ? it : first));
    waiting[last]!.push(element);
  };
  const placeAll = (group: number) => {
    place(group);
    isPlaced[group] = 1;
    waiting[group]!.forEach(place);
  };
  let met = 0;
  const walkFrom = (root: number) => {
    const stack = [root];
    metAt[root] = met++;
    while (stack.length > 0) {
      const group = stack.at(-1)!;
      const neighbours = touched[group]!;
      if (nextNeighbour[group]! < neighbours.length) {
        const next = neighbours[nextNeighbour[group]!++]!;
        if (metAt[next] !== -1) continue;
        metAt[next] = met++;
        if (isElement(next) && touched[next]!.every((it) => metAt[it] !== -1)) waitForLastPoint(next);
        else stack.push(next);
        continue;
      }
      stack.pop();
      const pointsLeft = new Set(isElement(group) ? touched[group]!.filter((it) => isPlaced[it] === 0) : []);
      if (pointsLeft.size > 1) waitForLastPoint(group);
      else placeAll(group);
    }
  };
  // Utility sources last of all: a solidly earthed neutral among the leaves would leave its neighbours' pivots to rounding.
  const isRoot = ({ part, star }: Circuit["emfs"][number]) => part.role === "utility" && star !== EARTH;
  const roots = [...circuit.emfs.filter(isRoot), ...circuit.emfs];
  for (const { legs } of roots) if (metAt[groupOf(legs[0]!)] === -1) walkFrom(groupOf(legs[0]!));
  for (let group = 0; group < pointCount; group++) if (metAt[group] === -1) walkFrom(group);
  for (let group = pointCount; group < groupCount; group++) if (metAt[group] === -1) walkFrom(group);
  return order;
}

/** Items sorted into lists by their key, in compressed rows. */
function countedLists(listCount: number, itemCount: number, keyOf: (item: number) => number) {
  const start = new Int32Array(listCount + 1);
  for (let item = 0; item < itemCount; item++) start[keyOf(item) + 1]!++;
  for (let list = 0; list < listCount; list++) start[list + 1]! += start[list]!;
  const next = start.slice();
  const items = new Int32Array(itemCount);
  for (let item = 0; item < itemCount; item++) items[next[keyOf(item)]!++] = item;
  return { start, items };
}
