/** Things drawn together into places, each named by its lowest. */
export class Places {
  private readonly root: Int32Array;

  constructor(count: number) {
    this.root = Int32Array.from({ length: count }, (_, it) => it);
  }

  of(it: number): number {
    const { root } = this;
    while (root[it]! !== it) it = root[it] = root[root[it]!]!; // path halving
    return it;
  }

  join(a: number, b: number): void {
    const [one, other] = [this.of(a), this.of(b)];
    this.root[Math.max(one, other)] = Math.min(one, other);
  }
}
