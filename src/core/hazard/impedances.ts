import { EARTH, type StepGroup } from "../network";
import { type Carried, Carrier, solveInPlace, type Solution, type SparseVector } from "../phasor";

/** Volts behind a port, and who drives them: a supply by its number, or a circuit alongside by its element's group. */
export type Drive = { readonly volts: readonly [number, number] } & (
  | { readonly emf: number }
  | { readonly group: StepGroup }
);

/** One way for current to enter the network that an upset opens: where, behind what, driven by what. */
export interface Port {
  readonly terms: readonly (readonly [node: number, re: number, im: number])[];
  /** ports of one block share impedance; of different ones they do not */
  readonly block: string;
  /** which of its block it is; those of one supply stand in a row */
  readonly place: number;
  readonly ohms: readonly (readonly (readonly [number, number])[])[];
  readonly drives: readonly Drive[];
  /** a leg of a supply: of these there are many, of all else few */
  readonly isOfSupply: boolean;
  /** the two groups of ideally joined nodes that an ideal join would make one; undefined for what has impedance */
  readonly joins?: readonly [number, number];
}

/** What currents at ports do to a solved network: volts at ports and at the nodes that are asked for, by ampere [Ω]. */
export interface Impedances {
  /** volts at one port for a current at another, without what ports of one block share */
  between(a: number, b: number): readonly [number, number];
  /** volts at each node asked for by a current at a port, re and im by turns */
  ontoNodes(port: number): Float64Array;
}

/** Each port carried down the tree of elimination by itself: right to the last digit, and as long as the way is deep. */
export class CarriedImpedances implements Impedances {
  private readonly carrier: Carrier;
  private readonly carriedPorts: (Carried | undefined)[] = [];
  private carriedNodes: readonly Carried[] | undefined;
  /** by pair of ports; made when it is asked, since thousands of customers are millions of pairs */
  private readonly pairs = new Map<number, readonly [number, number]>();
  /** the same of each port with itself, which every set and every pair asks for */
  private readonly own: (readonly [number, number] | undefined)[] = [];
  private readonly toNodes: (Float64Array | undefined)[] = [];

  constructor(
    private readonly solution: Solution,
    private readonly ports: readonly Port[],
    private readonly nodes: readonly number[],
  ) {
    this.carrier = new Carrier(solution.factor);
  }

  between(a: number, b: number): readonly [number, number] {
    if (a === b) return (this.own[a] ??= this.workedOut(a, a));
    const pair = Math.min(a, b) * this.ports.length + Math.max(a, b);
    const known = this.pairs.get(pair);
    if (known !== undefined) return known;
    const impedance = this.workedOut(a, b);
    this.pairs.set(pair, impedance);
    return impedance;
  }

  ontoNodes(port: number): Float64Array {
    const known = this.toNodes[port];
    if (known !== undefined) return known;
    this.carriedNodes ??= this.nodes.map((node) => this.carry([[node, 1, 0]]));
    const carried = this.carried(port);
    const onto = new Float64Array(2 * this.nodes.length);
    this.carriedNodes.forEach((node, at) => onto.set(this.carrier.between(node, carried), 2 * at));
    this.toNodes[port] = onto;
    return onto;
  }

  private workedOut(a: number, b: number): readonly [number, number] {
    return this.carrier.between(this.carried(a), this.carried(b));
  }

  private carried(port: number): Carried {
    return (this.carriedPorts[port] ??= this.carry(this.ports[port]!.terms));
  }

  /** The same of each leg of a supply with each, all of them in one walk: volts at them by an ampere into each, leg by leg. */
  amongLegs(legs: readonly Port[]): Float64Array | undefined {
    return this.carrier.among(legs.map(({ terms }) => this.vectorOf(terms)));
  }

  private carry(terms: Port["terms"]): Carried {
    return this.carrier.carry(this.vectorOf(terms));
  }

  private vectorOf(terms: Port["terms"]): SparseVector {
    const { placeOf } = this.solution.nodal;
    return terms.filter(([node]) => node !== EARTH).map(([node, re, im]) => [placeOf[node]!, re, im]);
  }
}

/**
 * The same of what is joined, and of the nodes that are asked for, with all ports at once by one solution for each: a crew's few
 * switches beside the thousands of customers that could feed. A supply with itself is carried, its legs together; an inverse swept over the
 * factors would give all of them in one go, and was off by factors where something floats. Other digits at the end than
 * carried: for what is far from every limit, and for no figure that is told.
 */
export class SweptImpedances implements Impedances {
  /** by port that is of no supply: volts at every port, re and im by turns */
  private readonly rows: (Float64Array | undefined)[] = [];
  /** by first port of a supply, see `amongLegs` */
  private readonly supplies: ({ readonly among: Float64Array | undefined } | undefined)[] = [];
  /** of each node asked for, volts at every port */
  private nodeRows: readonly Float64Array[] | undefined;
  private readonly toNodes: (Float64Array | undefined)[] = [];

  constructor(
    private readonly solution: Solution,
    private readonly ports: readonly Port[],
    private readonly nodes: readonly number[],
    private readonly carried: CarriedImpedances,
  ) {}

  between(a: number, b: number): readonly [number, number] {
    const [one, other] = [this.ports[a]!, this.ports[b]!];
    if (!one.isOfSupply) return entryOf((this.rows[a] ??= this.row(one.terms)), b);
    if (!other.isOfSupply) return entryOf((this.rows[b] ??= this.row(other.terms)), a);
    const legs = one.ohms.length;
    const among = one.block === other.block ? this.legsOf(a - one.place, legs) : undefined;
    return among === undefined ? this.carried.between(a, b) : entryOf(among, one.place * legs + other.place);
  }

  ontoNodes(port: number): Float64Array {
    const known = this.toNodes[port];
    if (known !== undefined) return known;
    this.nodeRows ??= this.nodes.map((node) => this.row([[node, 1, 0]]));
    const onto = new Float64Array(2 * this.nodes.length);
    this.nodeRows.forEach((row, at) => {
      onto[2 * at] = row[2 * port]!;
      onto[2 * at + 1] = row[2 * port + 1]!;
    });
    this.toNodes[port] = onto;
    return onto;
  }

  private legsOf(first: number, count: number): Float64Array | undefined {
    const known = this.supplies[first];
    if (known !== undefined) return known.among;
    const among = this.carried.amongLegs(this.ports.slice(first, first + count));
    this.supplies[first] = { among };
    return among;
  }

  /** Volts at every port by an ampere that enters as these terms say. */
  private row(terms: Port["terms"]): Float64Array {
    const { placeOf, size } = this.solution.nodal;
    const re = new Float64Array(size);
    const im = new Float64Array(size);
    for (const [node, cRe, cIm] of terms) {
      if (node === EARTH) continue;
      re[placeOf[node]!]! += cRe;
      im[placeOf[node]!]! += cIm;
    }
    solveInPlace(this.solution.factor, re, im);
    const row = new Float64Array(2 * this.ports.length);
    this.ports.forEach((port, index) => {
      for (const [node, cRe, cIm] of port.terms) {
        if (node === EARTH) continue;
        const place = placeOf[node]!;
        row[2 * index]! += cRe * re[place]! - cIm * im[place]!;
        row[2 * index + 1]! += cRe * im[place]! + cIm * re[place]!;
      }
    });
    return row;
  }
}

const entryOf = (list: Float64Array, at: number): readonly [number, number] => [
  list[2 * at]!,
  list[2 * at + 1]!,
];
