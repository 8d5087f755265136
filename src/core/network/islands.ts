/**
 * Numbers that are joined pair by pair, each known by its multiple of the lowest number that it is joined to: nodes of
 * one conductor, or those whose volts ideal joins tie to each other. Near-linear time.
 */
export class Islands {
  readonly #root: Int32Array;
  /** of each number, its multiple of the one that `#root` names */
  readonly #multiple: Float64Array;

  constructor(count: number) {
    this.#root = Int32Array.from({ length: count }, (_, it) => it); // each alone at first
    this.#multiple = new Float64Array(count).fill(1);
  }

  /**
   * Makes two numbers one island, in which `to` is `ratio` times `from`.
   *
   * @returns how many times `from` it already was where they were one before; nothing where they were not
   */
  join(from: number, to: number, ratio = 1): number | undefined {
    const [a, b] = [this.labelOf(from), this.labelOf(to)];
    const [ofA, ofB] = [this.#multipleOf(from), this.#multipleOf(to)];
    if (a === b) return ofB / ofA;
    // The lower number wins, so labels are stable.
    if (a < b) this.#hang(b, a, (ratio * ofA) / ofB);
    else this.#hang(a, b, ofB / (ratio * ofA));
    return undefined;
  }

  /** Of each number the lowest one that it is joined to. */
  labels(): Int32Array {
    return this.#root.map((_, it) => this.labelOf(it));
  }

  #hang(label: number, below: number, multiple: number): void {
    this.#root[label] = below;
    this.#multiple[label] = multiple;
  }

  /** The lowest number that one is joined to. */
  labelOf(number: number): number {
    const [root, multiple] = [this.#root, this.#multiple];
    let at = number;
    while (root[at]! !== at) {
      // Halves the way for whoever comes next.
      multiple[at]! *= multiple[root[at]!]!;
      at = root[at] = root[root[at]!]!;
    }
    return at;
  }

  #multipleOf(number: number): number {
    const [root, multiple] = [this.#root, this.#multiple];
    let product = multiple[number]!;
    for (let at = number; root[at]! !== at; at = root[at]!) product *= multiple[root[at]!]!;
    return product;
  }
}

/** The same of few numbers out of many, without multiples: only those that were joined take room. */
export class FewIslands {
  readonly #above = new Map<number, number>();

  labelOf(number: number): number {
    let at = number;
    for (let above; (above = this.#above.get(at)) !== undefined;) at = above;
    return at;
  }

  /** Makes two numbers one island; false where they were one before. */
  join(one: number, other: number): boolean {
    const [a, b] = [this.labelOf(one), this.labelOf(other)];
    if (a !== b) this.#above.set(b, a);
    return a !== b;
  }
}
