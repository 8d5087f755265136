import type { Settings, System, WorkPoint } from "../document";
import { type Circuit, circuitOf, EARTH, standingOf } from "../network";
import {
  type Carried,
  Carrier,
  idealGroups,
  isLinear,
  portsOfRejoin,
  type Solution,
  solutionOf,
  type Variant,
} from "../phasor";
import { conductorId, type Letter } from "../terms";
import { conductorsOf, type Outcome, referenceNode, withstandOf } from "./outcome";
import type { UpsetSet } from "./search";
import { type DrawnUpset, type Effect, effectOf, rejoinsNeutral } from "./upsets";
import { liveBy, viewOf } from "./view";
import { WaysToReach } from "./waysToReach";

/** One way for current to enter the network that an upset opens: where, behind what, driven by what. */
interface Port {
  readonly terms: readonly (readonly [node: number, re: number, im: number])[];
  /** ports of one block share impedance; of different ones they do not */
  readonly block: string;
  readonly place: number;
  readonly ohms: readonly (readonly (readonly [number, number])[])[];
  readonly volts: readonly [number, number];
  /** the two groups of ideally joined nodes that an ideal join would make one; undefined for what has impedance */
  readonly joins?: readonly [number, number];
}

/** Above this the way back from a port is leaks and little else: factors of a network of ohms keep it to a few digits only [Ω]. */
const FLOATING_OHMS = 1e6;

/** A network solved once, asked for the volts of a few nodes as ports are opened. */
class Machine {
  private work = new Float64Array(32);
  private readonly carrier: Carrier;
  private readonly carriedPorts: (Carried | undefined)[];
  private readonly carriedNodes: Carried[];
  /** by pair of ports; made when it is asked, since thousands of customers are millions of pairs */
  private readonly between = new Map<number, readonly [number, number]>();
  private readonly toNodes: (Float64Array | undefined)[];
  private readonly acrossPorts: (readonly [number, number] | undefined)[];

  constructor(
    readonly solution: Solution,
    private readonly ports: readonly Port[],
    private readonly nodes: readonly number[],
  ) {
    this.carrier = new Carrier(solution.factor);
    this.carriedPorts = ports.map(() => undefined);
    this.toNodes = ports.map(() => undefined);
    this.acrossPorts = ports.map(() => undefined);
    this.carriedNodes = nodes.map((node) => this.carry([[node, 1, 0]]));
  }

  private carry(terms: Port["terms"]): Carried {
    const { placeOf } = this.solution.nodal;
    return this.carrier.carry(
      terms.filter(([node]) => node !== EARTH).map(([node, re, im]) => [placeOf[node]!, re, im]),
    );
  }

  private port(index: number): Carried {
    return (this.carriedPorts[index] ??= this.carry(this.ports[index]!.terms));
  }

  /** Volts at one port for a current at another, with the impedance that the ports of one block share. */
  private impedance(a: number, b: number): readonly [number, number] {
    const pair = Math.min(a, b) * this.ports.length + Math.max(a, b);
    const known = this.between.get(pair);
    if (known !== undefined) return known;
    const [one, other] = [this.ports[a]!, this.ports[b]!];
    let [re, im] = this.carrier.between(this.port(a), this.port(b));
    if (one.block === other.block) {
      const own = one.ohms[one.place]![other.place]!;
      re += own[0];
      im += own[1];
    }
    const impedance = [re, im] as const;
    this.between.set(pair, impedance);
    return impedance;
  }

  /** Whether a port stands on conductors that float: their volts rest on leaks alone, and rounding shows in them. */
  floats(index: number): boolean {
    return Math.hypot(...this.impedance(index, index)) > FLOATING_OHMS;
  }

  /** Volts across a port before anything is opened. */
  private across(index: number): readonly [number, number] {
    return (this.acrossPorts[index] ??= this.ports[index]!.terms.reduce<readonly [number, number]>(
      ([re, im], [node, cRe, cIm]) => {
        if (node === EARTH) return [re, im];
        const [vRe, vIm] = [this.solution.voltsRe[node]!, this.solution.voltsIm[node]!];
        return [re + cRe * vRe - cIm * vIm, im + cRe * vIm + cIm * vRe];
      },
      [0, 0],
    ));
  }

  private ontoNodes(index: number): Float64Array {
    return (this.toNodes[index] ??= Float64Array.from(
      this.carriedNodes.flatMap((node) => this.carrier.between(node, this.port(index))),
    ));
  }

  /** Volts at the nodes asked for, re and im by turns, with these ports opened. Undefined where the ports contradict each other. */
  voltsWith(open: readonly number[]): Float64Array | undefined {
    const volts = new Float64Array(2 * this.nodes.length);
    this.nodes.forEach((node, i) => {
      volts[2 * i] = node === EARTH ? 0 : this.solution.voltsRe[node]!;
      volts[2 * i + 1] = node === EARTH ? 0 : this.solution.voltsIm[node]!;
    });
    if (open.length === 0) return volts;
    const currents = this.currents(open);
    if (currents === undefined) return undefined;
    open.forEach((port, k) => {
      const onto = this.ontoNodes(port);
      const [iRe, iIm] = [currents[2 * k]!, currents[2 * k + 1]!];
      for (let i = 0; i < onto.length; i += 2) {
        volts[i]! += onto[i]! * iRe - onto[i + 1]! * iIm;
        volts[i + 1]! += onto[i]! * iIm + onto[i + 1]! * iRe;
      }
    });
    return volts;
  }

  /** Solves (CᵀZC + z) I = E − CᵀV by elimination with pivoting, in a square of work space that is kept. */
  private currents(open: readonly number[]): Float64Array | undefined {
    const size = open.length;
    const width = 2 * (size + 1);
    if (this.work.length < size * width) this.work = new Float64Array(size * width);
    const { work } = this;
    for (let row = 0; row < size; row++) {
      const a = open[row]!;
      for (let column = 0; column < size; column++) {
        const impedance = this.impedance(a, open[column]!);
        work[row * width + 2 * column] = impedance[0];
        work[row * width + 2 * column + 1] = impedance[1];
      }
      const across = this.across(a);
      const { volts } = this.ports[a]!;
      work[row * width + 2 * size] = volts[0] - across[0];
      work[row * width + 2 * size + 1] = volts[1] - across[1];
    }
    for (let column = 0; column < size; column++)
      if (!eliminateColumn(work, size, width, column)) return undefined;
    return substituteBack(work, size, width);
  }
}

/** One step of elimination: the largest entry of the column becomes the pivot. False where there is none. */
function eliminateColumn(work: Float64Array, size: number, width: number, column: number): boolean {
  const square = (row: number): number =>
    work[row * width + 2 * column]! ** 2 + work[row * width + 2 * column + 1]! ** 2;
  let best = column;
  for (let row = column + 1; row < size; row++) if (square(row) > square(best)) best = row;
  if (!(square(best) > 0)) return false;
  if (best !== column)
    for (let k = 0; k < width; k++) {
      const kept = work[column * width + k]!;
      work[column * width + k] = work[best * width + k]!;
      work[best * width + k] = kept;
    }
  const pivotRe = work[column * width + 2 * column]!;
  const pivotIm = work[column * width + 2 * column + 1]!;
  const pivotSquare = square(column);
  for (let row = column + 1; row < size; row++) {
    const tRe = work[row * width + 2 * column]!;
    const tIm = work[row * width + 2 * column + 1]!;
    const fRe = (tRe * pivotRe + tIm * pivotIm) / pivotSquare;
    const fIm = (tIm * pivotRe - tRe * pivotIm) / pivotSquare;
    for (let k = 2 * column; k < width; k += 2) {
      const aRe = work[column * width + k]!;
      const aIm = work[column * width + k + 1]!;
      work[row * width + k]! -= fRe * aRe - fIm * aIm;
      work[row * width + k + 1]! -= fRe * aIm + fIm * aRe;
    }
  }
  return true;
}

function substituteBack(work: Float64Array, size: number, width: number): Float64Array {
  const currents = new Float64Array(2 * size);
  for (let row = size - 1; row >= 0; row--) {
    const at = row * width;
    let re = work[at + 2 * size]!;
    let im = work[at + 2 * size + 1]!;
    for (let k = row + 1; k < size; k++) {
      re -= work[at + 2 * k]! * currents[2 * k]! - work[at + 2 * k + 1]! * currents[2 * k + 1]!;
      im -= work[at + 2 * k]! * currents[2 * k + 1]! + work[at + 2 * k + 1]! * currents[2 * k]!;
    }
    const pRe = work[at + 2 * row]!;
    const pIm = work[at + 2 * row + 1]!;
    const square = pRe * pRe + pIm * pIm;
    currents[2 * row] = (re * pRe + im * pIm) / square;
    currents[2 * row + 1] = (im * pRe - re * pIm) / square;
  }
  return currents;
}

/** The nodes whose volts a work point asks for, in one list. */
interface Asked {
  readonly letters: readonly Letter[];
  readonly nodes: readonly number[];
  readonly reference: number;
  readonly jumpers: readonly { readonly at: number; readonly siemens: number; readonly most: number }[];
}

/**
 * Outcomes of sets of upsets on one work point by low-rank changes of the network as drawn: what closes or starts is a
 * port or a few, and only the volts of the work point and of the ground sets are asked for. `undefined` where this way
 * does not hold (a neutral that ties, a jumper that parts, an untied neutral as work conductor) and the plain one must be
 * asked.
 */
export class LowRank {
  private readonly circuit: Circuit;
  private readonly ports: Port[] = [];
  private readonly portsOf: number[][];
  private readonly effects: Effect[];
  private readonly asked: Asked;
  private readonly lifted: readonly Machine[];
  private readonly inPlace: readonly Machine[];
  private readonly shortsLifted: readonly Machine[];
  /** how each work conductor is reached */
  readonly reach: readonly WaysToReach[];
  private readonly usable: boolean;
  private readonly groups: Int32Array;
  /** whether a regulator stands off neutral: a loop of ideal joins through it is a short circuit and no loop of nothing */
  private readonly stepsVolts: boolean;

  constructor(
    system: System,
    private readonly settings: Settings,
    workPoint: WorkPoint,
    private readonly upsets: readonly DrawnUpset[],
  ) {
    const circuit = (this.circuit = circuitOf(system));
    this.effects = upsets.map((it) => effectOf(circuit, it));
    this.groups = idealGroups(circuit);
    this.stepsVolts = circuit.joins.ratio.some((it) => it !== 1);
    this.portsOf = this.effects.map((effect, index) => this.openPorts(effect, index));
    const letters = conductorsOf(workPoint);
    const workNodes = letters.map((letter) => circuit.nodeOf.get(conductorId(workPoint.at, letter))!);
    const reference = referenceNode(circuit, settings, workPoint.at);
    const jumpers = circuit.branches.filter(({ part, to }) => part.role === "ground" && to !== EARTH);
    this.asked = {
      letters,
      nodes: [...workNodes, reference, ...jumpers.flatMap(({ from, to }) => [from, to])],
      reference,
      jumpers: jumpers.map(({ element, part }, index) => ({
        at: 2 * (workNodes.length + 1 + 2 * index),
        siemens: part.siemens[0],
        most: withstandOf(system, circuit.elementIds[element]!, settings),
      })),
    };
    const lifted = viewOf(circuit, settings, { groundsLifted: true });
    this.usable = workNodes.every(
      (node) => circuit.letterOfNode[node] !== "N" || lifted.reach.tied[node] === 1,
    );
    const hasFaults = circuit.branches.some(({ part }) => part.role === "fault");
    const machines = new Map<Solution, Machine>();
    const pair = (variant: Omit<Variant, "loads">): Machine[] => {
      const both = [true, false].map((loads) => {
        const solution = solutionOf(circuit, { ...variant, loads });
        const known = machines.get(solution) ?? new Machine(solution, this.ports, this.asked.nodes);
        machines.set(solution, known);
        return known;
      });
      return [...new Set(both)];
    };
    this.lifted = pair({ grounds: false, faults: true });
    this.inPlace = pair({ grounds: true, faults: true });
    this.shortsLifted = hasFaults ? pair({ grounds: false, faults: false }) : [];
    const question = {
      circuit,
      standing: standingOf(circuit),
      upsets,
      effects: this.effects,
      groundsLifted: true,
    };
    this.reach = workNodes.map((node) => new WaysToReach(question, node));
  }

  /** How much it takes to ask for a set, in multiplications: the square of its ports. */
  costOf(set: UpsetSet): number {
    return set.reduce((sum, upset) => sum + this.portsOf[upset]!.length, 0) ** 2;
  }

  /** Whether an upset only closes a loop of ideal joins, and so changes nothing. */
  changesNothing(upset: number): boolean {
    const earth = this.groups[this.circuit.nodeCount]!;
    const ports = this.portsOf[upset]!.map((port) => this.ports[port]!.joins);
    if (this.stepsVolts || ports.length === 0) return false;
    return ports.every((joins) => joins !== undefined && joins[0] === joins[1] && joins[0] !== earth);
  }

  /** Whether the loads-as-drawn answers hold to the last digit: constant-impedance loads only. */
  get isExact(): boolean {
    return isLinear(this.circuit);
  }

  /** Whether the answers for a set are only good to a few digits: enough to propose, not to report. */
  isRough(set: UpsetSet): boolean {
    return set.some((upset) =>
      this.portsOf[upset]!.some((port) =>
        [...this.lifted, ...this.inPlace].some((machine) => machine.floats(port)),
      ),
    );
  }

  private openPorts(effect: Effect, upset: number): number[] {
    const opened: number[] = [];
    const open = (port: Port) => {
      opened.push(this.ports.length);
      this.ports.push(port);
    };
    const { circuit } = this;
    const { joins } = circuit;
    for (const join of effect.joins) {
      const group = (node: number) => this.groups[node === EARTH ? circuit.nodeCount : node]!;
      open({
        terms: [
          [joins.to[join]!, 1, 0],
          [joins.from[join]!, -joins.ratio[join]!, 0],
          [joins.common[join]!, joins.ratio[join]! - 1, 0],
        ],
        block: `join ${join}`,
        place: 0,
        ohms: [[[0, 0]]],
        volts: [0, 0],
        joins: [group(joins.from[join]!), group(joins.to[join]!)],
      });
    }
    for (const { stretch, letter } of effect.rejoined) {
      const { parted, ports } = portsOfRejoin(circuit, stretch);
      const { terms, ohms, volts } = ports[parted.indexOf(letter)]!;
      open({ terms, block: `stretch ${stretch}`, place: parted.indexOf(letter), ohms, volts });
    }
    for (const { emf, part } of effect.emfs) {
      const { legs, star } = circuit.emfs[emf]!;
      legs.forEach((node, place) =>
        open({
          terms: [
            [node, 1, 0],
            [star, -1, 0],
          ],
          block: `emf ${emf} ${upset}`,
          place,
          ohms: part.ohms,
          volts: part.legs[place]!.volts,
        }),
      );
    }
    return opened;
  }

  /** Ports of a set, but ideal joins that would only close a loop of ideal joins; undefined where such a loop steps volts. */
  private portsOfSet(set: UpsetSet): number[] | undefined {
    const merged = new Map<number, number>();
    const find = (group: number): number => {
      let at = group;
      while (merged.has(at)) at = merged.get(at)!;
      return at;
    };
    const open: number[] = [];
    for (const upset of set)
      for (const index of this.portsOf[upset]!) {
        const { joins } = this.ports[index]!;
        if (joins !== undefined) {
          const [a, b] = [find(joins[0]), find(joins[1])];
          if (a === b && this.stepsVolts) return undefined;
          if (a === b) continue;
          merged.set(b, a);
        }
        open.push(index);
      }
    return open;
  }

  outcomeAfter(set: UpsetSet): Outcome | undefined {
    if (!this.usable || set.some((upset) => rejoinsNeutral(this.upsets[upset]!))) return undefined;
    if (this.touchesWhatRejoins(set)) return undefined;
    const open = this.portsOfSet(set);
    if (open === undefined) return undefined;
    const { asked } = this;
    const lifted = this.lifted.map((machine) => machine.voltsWith(open));
    const inPlace = this.inPlace.map((machine, index) =>
      machine === this.lifted[index] ? lifted[index] : machine.voltsWith(open),
    );
    if ([...lifted, ...inPlace].includes(undefined)) return undefined;
    const groundAmps = this.jumperAmps(inPlace as Float64Array[]);
    if (groundAmps === undefined) return undefined;
    const outcome: Outcome = asked.letters.map((letter, index) => {
      const volts = Math.max(...lifted.map((it) => Math.hypot(it![2 * index]!, it![2 * index + 1]!)));
      const against = (other: number) =>
        Math.max(
          ...inPlace.map((it) =>
            Math.hypot(
              it![2 * index]! - (other < 0 ? 0 : it![other]!),
              it![2 * index + 1]! - (other < 0 ? 0 : it![other + 1]!),
            ),
          ),
        );
      return {
        letter,
        live: this.liveAfter(set, open, index, volts),
        volts,
        exposureVolts: against(asked.reference === EARTH ? -1 : 2 * asked.letters.length),
        exposureToEarthVolts: against(-1),
        groundAmps,
      };
    });
    return outcome.some(({ volts, exposureVolts }) => Number.isNaN(volts) || Number.isNaN(exposureVolts))
      ? undefined
      : outcome;
  }

  /** A live circuit touches a parted conductor at both ends, and a whole one at one: together they are not the sum of both. */
  private touchesWhatRejoins(set: UpsetSet): boolean {
    const kinds = new Set(set.map((upset) => this.upsets[upset]!.kind));
    return kinds.has("contact") && kinds.has("rejoin");
  }

  /** Largest jumper current; undefined where one would part, which changes the network. */
  private jumperAmps(inPlace: readonly Float64Array[]): number | undefined {
    let largest = 0;
    for (const { at, siemens, most } of this.asked.jumpers)
      for (const volts of inPlace) {
        const amps = siemens * Math.hypot(volts[at]! - volts[at + 2]!, volts[at + 1]! - volts[at + 3]!);
        if (amps > most) return undefined;
        largest = Math.max(largest, amps);
      }
    return largest;
  }

  private liveAfter(
    set: UpsetSet,
    open: readonly number[],
    index: number,
    volts: number,
  ): "fed" | "induced" | undefined {
    const view = viewOf(this.circuit, this.settings, { groundsLifted: true });
    const node = this.asked.nodes[index]!;
    if (this.circuit.letterOfNode[node] === "N") return undefined; // tied, or this way would not be used
    const reach = this.reach[index]!;
    if (reach.isReachedForward(set)) return "fed";
    if (!reach.isReached(set)) return liveBy(volts >= this.settings.hazardVolts ? "induced" : "isolated");
    if (volts >= this.settings.hazardVolts) return "fed";
    if (this.shortsLifted.length === 0 || !this.isTiedToFault(set, view.islands, node)) return undefined;
    const without = this.shortsLifted.map((machine) => machine.voltsWith(open)!);
    return without.some((it) => Math.hypot(it[2 * index]!, it[2 * index + 1]!) >= this.settings.hazardVolts)
      ? "fed"
      : undefined;
  }

  private isTiedToFault(set: UpsetSet, islands: Int32Array, node: number): boolean {
    const { joins, stretches } = this.circuit;
    const { faulted } = viewOf(this.circuit, this.settings, { groundsLifted: true }).shorts;
    const links = set.flatMap((upset) => [
      ...this.effects[upset]!.joins.map((join) => [joins.from[join]!, joins.to[join]!]),
      ...this.effects[upset]!.rejoined.map(({ stretch, letter }) => [
        stretches[stretch]!.from[letter]!,
        stretches[stretch]!.to[letter]!,
      ]),
    ]);
    const reached = new Set([islands[node]!]);
    for (let round = 0; round < links.length; round++)
      for (const [a, b] of links) {
        if (a === EARTH || b === EARTH) continue;
        if (reached.has(islands[a!]!)) reached.add(islands[b!]!);
        if (reached.has(islands[b!]!)) reached.add(islands[a!]!);
      }
    return [...reached].some((island) => faulted.has(island));
  }
}
