/** Orders ids as a person counts: p2 before p10. Different texts never tie, so a sorted list has one order only. */
export function naturalOrder(a: string, b: string): number {
  const left = a.match(/\d+|\D+/g) ?? [];
  const right = b.match(/\d+|\D+/g) ?? [];
  for (let k = 0; k < Math.min(left.length, right.length); k++) {
    const [one, other] = [left[k]!, right[k]!];
    if (one === other) continue;
    const difference = Number(one) - Number(other);
    if (!Number.isNaN(difference) && difference !== 0) return difference;
    return one < other ? -1 : 1;
  }
  return left.length - right.length;
}
