import type { Settings } from "../document";
import {
  type Circuit,
  circuitOf,
  EARTH,
  FewIslands,
  groupsAsDrawn,
  standingOf,
  type StepGroup,
  type StepGroups,
  stepGroups,
  isFollowed,
} from "../network";
import {
  type GroupVolts,
  idealGroups,
  isLinear,
  portsOfRejoin,
  type Solution,
  solutionOf,
  type Variant,
  voltsByGroup,
} from "../phasor";
import type { Letter } from "../terms";
import { CarriedImpedances, type Drive, type Impedances, type Port, SweptImpedances } from "./impedances";
import {
  bondsAt,
  type ConductorOutcome,
  conductorsOf,
  type Outcome,
  withstandOf,
  workNodesOf,
} from "./outcome";
import type { UpsetSet } from "./search";
import { type DrawnUpset, type Effect, effectOf, rejoinsNeutral, isTouched, rejoins } from "./upsets";
import { type LiveBy, viewOf } from "./view";
import { type WaysToReach, waysToReach } from "./waysToReach";
import type { Question } from "./types";
import { CLOSE, FAR_BAND, FLOATING_OHMS, MODEL_BAND, ROUGH_BAND } from "./tolerances";

/** A network solved once, asked for the volts of a few nodes as ports are opened. */
class Machine {
  private work = new Float64Array(32);
  private readonly own: (readonly [number, number] | undefined)[];
  private readonly ohms: (number | undefined)[];
  private readonly acrossPorts: (Float64Array | undefined)[];
  private readonly base: readonly GroupVolts[];
  private readonly alone = new Map<Opened, { readonly currents: Float64Array | undefined }>();

  constructor(
    solution: Solution,
    private readonly ports: readonly Port[],
    private readonly nodes: readonly number[],
    private readonly network: Impedances,
  ) {
    this.base = voltsByGroup(solution);
    this.own = ports.map(() => undefined);
    this.ohms = ports.map(() => undefined);
    this.acrossPorts = ports.map(() => undefined);
  }

  /** Volts at one port for a current at another, with the impedance that the ports of one block share. */
  private impedance(a: number, b: number): readonly [number, number] {
    return a === b ? (this.own[a] ??= this.workedOut(a, a)) : this.workedOut(a, b);
  }

  private workedOut(a: number, b: number): readonly [number, number] {
    const [one, other] = [this.ports[a]!, this.ports[b]!];
    const between = this.network.between(a, b);
    if (one.block !== other.block) return between;
    const own = one.ohms[one.place]![other.place]!;
    return [between[0] + own[0], between[1] + own[1]];
  }

  /** Whether a port stands on conductors that float: their volts rest on leaks alone, and rounding shows in them. */
  floats(index: number): boolean {
    return this.ohmsOf(index) > FLOATING_OHMS;
  }

  /** Volts across a port before anything is opened, by base group, re and im by turns. */
  private across(index: number): Float64Array {
    const known = this.acrossPorts[index];
    if (known !== undefined) return known;
    const across = new Float64Array(2 * this.base.length);
    this.base.forEach(({ voltsRe, voltsIm }, of) => {
      for (const [node, cRe, cIm] of this.ports[index]!.terms) {
        if (node === EARTH) continue;
        across[2 * of]! += cRe * voltsRe[node]! - cIm * voltsIm[node]!;
        across[2 * of + 1]! += cRe * voltsIm[node]! + cIm * voltsRe[node]!;
      }
    });
    this.acrossPorts[index] = across;
    return across;
  }

  /** Volts at the nodes asked for with these ports opened. Undefined where the ports contradict each other. */
  voltsWith(opened: Opened): GroupedVolts | undefined {
    const { ports: open, grouping } = opened;
    const width = 2 * this.nodes.length;
    const volts = new Float64Array(width * grouping.count);
    this.base.forEach(({ voltsRe, voltsIm }, of) => {
      const at = width * grouping.ofBase[of]!;
      this.nodes.forEach((node, i) => {
        if (node === EARTH) return;
        volts[at + 2 * i]! += voltsRe[node]!;
        volts[at + 2 * i + 1]! += voltsIm[node]!;
      });
    });
    if (open.length === 0) return new GroupedVolts(volts, width);
    const currents = this.currentsIn(opened);
    if (currents === undefined) return undefined;
    open.forEach((port, k) => {
      const onto = this.network.ontoNodes(port);
      for (let group = 0; group < grouping.count; group++) {
        const at = 2 * (k * grouping.count + group);
        const [iRe, iIm] = [currents[at]!, currents[at + 1]!];
        for (let i = 0; i < width; i += 2) {
          volts[group * width + i]! += onto[i]! * iRe - onto[i + 1]! * iIm;
          volts[group * width + i + 1]! += onto[i]! * iIm + onto[i + 1]! * iRe;
        }
      }
    });
    return new GroupedVolts(volts, width);
  }

  /** The most by which these ports, opened, move the volts at a node asked for, the worst over angles [V]; NaN where they contradict each other. */
  mostMoved(opened: Opened): number {
    const currents = this.currentsIn(opened);
    if (currents === undefined) return NaN;
    const { ports: open, grouping } = opened;
    return this.nodes.reduce(
      (most, node, i) =>
        node === EARTH
          ? most
          : Math.max(
              most,
              driven(currents, grouping.count, (k) => this.network.ontoNodes(open[k]!), 2 * i),
            ),
      0,
    );
  }

  /** Volts that some ports, opened, put across another that stays shut, the worst over angles [V]. */
  movedAcross(port: number, opened: Opened): number {
    const currents = this.currentsIn(opened);
    if (currents === undefined) return NaN;
    const { ports: open, grouping } = opened;
    return driven(currents, grouping.count, (k) => this.impedance(port, open[k]!), 0);
  }

  /** How close two ports are: the square of what they share over what each has to itself; 1 where they are one. */
  closeness(a: number, b: number): number {
    return Math.hypot(...this.impedance(a, b)) ** 2 / (this.ohmsOf(a) * this.ohmsOf(b));
  }

  /** Magnitude of what a port sees of the network, with its own [Ω]. */
  private ohmsOf(port: number): number {
    return (this.ohms[port] ??= Math.hypot(...this.impedance(port, port)));
  }

  /** Current through the last of these ports, the worst over angles that nothing fixes [A]. */
  ampsInLast(opened: Opened): number | undefined {
    const currents = this.currentsIn(opened);
    if (currents === undefined) return undefined;
    const { ports: open, grouping } = opened;
    let sum = 0;
    for (let at = 2 * (open.length - 1) * grouping.count; at < currents.length; at += 2)
      sum += Math.hypot(currents[at]!, currents[at + 1]!);
    return sum;
  }

  /** What one upset drives alone is asked again beside each other one. */
  private currentsIn(opened: Opened): Float64Array | undefined {
    if (!opened.isOfOne) return this.currents(opened);
    let known = this.alone.get(opened);
    if (known === undefined) this.alone.set(opened, (known = { currents: this.currents(opened) }));
    return known.currents;
  }

  /** Solves (CᵀZC + z) I = E − CᵀV for each group by elimination with pivoting, in a square of work space that is kept. */
  private currents({ ports: open, grouping }: Opened): Float64Array | undefined {
    const size = open.length;
    const width = 2 * (size + grouping.count);
    if (this.work.length < size * width) this.work = new Float64Array(size * width);
    const { work } = this;
    for (let row = 0; row < size; row++) {
      const a = open[row]!;
      for (let column = 0; column < size; column++) {
        const impedance = this.impedance(a, open[column]!);
        work[row * width + 2 * column] = impedance[0];
        work[row * width + 2 * column + 1] = impedance[1];
      }
      const right = row * width + 2 * size;
      work.fill(0, right, right + 2 * grouping.count);
      const across = this.across(a);
      for (let of = 0; of < this.base.length; of++) {
        const at = right + 2 * grouping.ofBase[of]!;
        work[at]! -= across[2 * of]!;
        work[at + 1]! -= across[2 * of + 1]!;
      }
      for (const drive of this.ports[a]!.drives) {
        const at = right + 2 * grouping.of(drive);
        work[at]! += drive.volts[0];
        work[at + 1]! += drive.volts[1];
      }
    }
    for (let column = 0; column < size; column++)
      if (!eliminateColumn(work, size, width, column)) return undefined;
    return substituteBack(work, size, width, grouping.count);
  }
}

/** Volts by the currents of some ports through impedances to one place: the magnitudes of each group of sources, summed [V]. */
function driven(
  currents: Float64Array,
  groups: number,
  impedances: (port: number) => ArrayLike<number>,
  place: number,
): number {
  let sum = 0;
  for (let group = 0; group < groups; group++) {
    let [re, im] = [0, 0];
    for (let k = 0; k < currents.length / (2 * groups); k++) {
      const z = impedances(k);
      const [zRe, zIm] = [z[place]!, z[place + 1]!];
      const at = 2 * (k * groups + group);
      re += zRe * currents[at]! - zIm * currents[at + 1]!;
      im += zRe * currents[at + 1]! + zIm * currents[at]!;
    }
    sum += Math.hypot(re, im);
  }
  return sum;
}

/** The ports that a set of upsets opens, and how the sources behind them keep step. */
interface Opened {
  readonly ports: readonly number[];
  readonly grouping: Grouping;
  /** whether one upset opens them all */
  readonly isOfOne: boolean;
}

/** How the sources behind a set of ports keep step: numbers of groups, from nought. */
interface Grouping {
  readonly count: number;
  /** of each group as drawn, the one that it is in now */
  readonly ofBase: readonly number[];
  of(drive: Drive): number;
}

/** Volts of a few nodes by group of sources that keep step: `width` figures a group, re and im by turns. */
class GroupedVolts {
  constructor(
    private readonly volts: Float64Array,
    private readonly width: number,
  ) {}

  /** Volts between two of the nodes, by their place; to earth where the other is −1. The worst over angles. */
  between(node: number, other: number): number {
    let sum = 0;
    for (let at = 0; at < this.volts.length; at += this.width) {
      const [re, im] = other < 0 ? [0, 0] : [this.volts[at + 2 * other]!, this.volts[at + 2 * other + 1]!];
      sum += Math.hypot(this.volts[at + 2 * node]! - re, this.volts[at + 2 * node + 1]! - im);
    }
    return sum;
  }

  /** Volts by which what stands between two of the nodes differs from the same of another solution. */
  changeFrom(before: GroupedVolts, node: number, other: number): number {
    const change = this.volts.map((it, k) => it - before.volts[k]!);
    return new GroupedVolts(change, this.width).between(node, other);
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

/** Currents of each port, by group of sources, re and im by turns. */
function substituteBack(work: Float64Array, size: number, width: number, groups: number): Float64Array {
  const currents = new Float64Array(2 * size * groups);
  for (let row = size - 1; row >= 0; row--) {
    const at = row * width;
    const pRe = work[at + 2 * row]!;
    const pIm = work[at + 2 * row + 1]!;
    const square = pRe * pRe + pIm * pIm;
    for (let group = 0; group < groups; group++) {
      let re = work[at + 2 * (size + group)]!;
      let im = work[at + 2 * (size + group) + 1]!;
      for (let k = row + 1; k < size; k++) {
        const known = 2 * (k * groups + group);
        re -= work[at + 2 * k]! * currents[known]! - work[at + 2 * k + 1]! * currents[known + 1]!;
        im -= work[at + 2 * k]! * currents[known + 1]! + work[at + 2 * k + 1]! * currents[known]!;
      }
      currents[2 * (row * groups + group)] = (re * pRe + im * pIm) / square;
      currents[2 * (row * groups + group) + 1] = (im * pRe - re * pIm) / square;
    }
  }
  return currents;
}

/** How sources as drawn keep step after something joined, and numbers of their groups. */
interface Joined {
  readonly steps: StepGroups;
  /** of each group as drawn, the one that it is in now */
  readonly became: ReadonlyMap<StepGroup, StepGroup>;
  readonly numbers: ReadonlyMap<StepGroup, number>;
}

/** The nodes whose volts a work point asks for, in one list. */
interface AskedNodes {
  readonly letters: readonly Letter[];
  readonly nodes: readonly number[];
  /** places among the nodes of what the worker may be bonded to; −1 for earth */
  readonly bonds: readonly number[];
  readonly jumpers: readonly { readonly at: number; readonly siemens: number; readonly most: number }[];
}

/** The solved networks of a question, loads on and off, by what of ground sets and faults is in place. */
interface Machines {
  readonly lifted: readonly Machine[];
  readonly inPlace: readonly Machine[];
  readonly shortsLifted: readonly Machine[];
  readonly all: readonly Machine[];
}

/** A list of what is all there; undefined where one of them is not. */
const allOf = <Value>(list: readonly (Value | undefined)[]): readonly Value[] | undefined =>
  list.includes(undefined) ? undefined : (list as readonly Value[]);

const orInfinite = (volts: number): number => (Number.isNaN(volts) ? Infinity : volts);

/** The port of a body between a conductor and itself. */
const NOTHING = -1;

/** One group of sources as drawn, or none, and nothing that starts. */
const ONE_GROUP: Grouping = { count: 1, ofBase: [0], of: () => 0 };

/**
 * Outcomes of sets of upsets on one work point by low-rank changes of the network as drawn: what closes or starts is a
 * port or a few, and only the volts of the work point and of the ground sets are asked for. `undefined` where this way
 * does not hold (a neutral that ties, a jumper that parts, an untied neutral as work conductor) and the plain one must be
 * asked.
 */
export class LowRank {
  /** whether the loads-as-drawn answers hold to the last digit: constant-impedance loads only */
  readonly isExact: boolean;
  private readonly circuit: Circuit;
  private readonly ports: Port[] = [];
  private readonly portsOf: number[][];
  /** by work conductor and bond: the port of a body between them; none from a neutral to itself */
  private readonly bodyPorts: readonly (readonly number[])[];
  private readonly drawnGroups: ReturnType<typeof groupsAsDrawn>;
  private readonly effects: Effect[];
  private readonly asked: AskedNodes;
  /** right to the last digit, for what is told */
  private readonly exact: Machines;
  /** the same of many ports at once, for what is far from every limit */
  private readonly swept: Machines;
  /** how each work conductor is reached */
  readonly reach: readonly WaysToReach[];
  private readonly settings: Settings;
  private readonly openedAlone: ({ readonly it: Opened | undefined } | undefined)[] = [];
  private readonly joined = new Map<string, Joined>();
  private readonly movedBy: number[] = [];
  /** by upset, by the upset that puts volts across it [V]; NaN where nobody has asked */
  private readonly putAcross: Float64Array[] = [];
  private readonly usable: boolean;
  private readonly groups: Int32Array;
  /** whether a regulator stands off neutral: a loop of ideal joins through it is a short circuit and no loop of nothing */
  private readonly stepsVolts: boolean;

  constructor(
    { system, settings, workPoint }: Question,
    private readonly upsets: readonly DrawnUpset[],
  ) {
    this.settings = settings;
    const circuit = (this.circuit = circuitOf(system));
    this.isExact = isLinear(circuit);
    this.effects = upsets.map((it) => effectOf(circuit, it));
    this.groups = idealGroups(circuit);
    this.stepsVolts = circuit.joins.ratio.some((it) => it !== 1);
    this.portsOf = this.effects.map((effect, index) => this.openPorts(effect, index));
    const letters = conductorsOf(workPoint);
    const workNodes = workNodesOf(circuit, workPoint);
    const bonds = bondsAt(circuit, workPoint.at);
    const jumpers = circuit.branches.filter(({ part, to }) => part.role === "ground" && to !== EARTH);
    this.asked = {
      letters,
      nodes: [...workNodes, ...bonds, ...jumpers.flatMap(({ from, to }) => [from, to])],
      bonds: bonds.map((node, index) => (node === EARTH ? -1 : workNodes.length + index)),
      jumpers: jumpers.map(({ element, part }, index) => ({
        at: workNodes.length + bonds.length + 2 * index,
        siemens: part.siemens[0],
        most: withstandOf(system, circuit.elementIds[element]!, settings),
      })),
    };
    const { tied } = viewOf(circuit, settings, { groundsLifted: true }).reach;
    this.usable = workNodes.every((node) => circuit.letterOfNode[node] !== "N" || tied[node] === 1);
    this.bodyPorts = workNodes.map((node) =>
      bonds.map((bond) => {
        this.ports.push({
          terms: [
            [node, 1, 0],
            [bond, -1, 0],
          ],
          block: `body ${node} ${bond}`,
          place: 0,
          ohms: [[[settings.bodyOhms, 0]]],
          drives: [],
          isOfSupply: false,
        });
        return node === bond ? NOTHING : this.ports.length - 1;
      }),
    );
    this.drawnGroups = groupsAsDrawn(circuit);
    const hasFaults = circuit.branches.some(({ part }) => part.role === "fault");
    const solutions = (variant: Omit<Variant, "loads">): Solution[] => [
      ...new Set([true, false].map((loads) => solutionOf(circuit, { ...variant, loads }))),
    ];
    const lifted = solutions({ grounds: false, faults: true });
    const inPlace = solutions({ grounds: true, faults: true });
    const shortsLifted = hasFaults ? solutions({ grounds: false, faults: false }) : [];
    const carried = new Map(
      [...lifted, ...inPlace, ...shortsLifted].map((it) => [
        it,
        new CarriedImpedances(it, this.ports, this.asked.nodes),
      ]),
    );
    const machines = (impedances: (solution: Solution) => Impedances): Machines => {
      const of = new Map(
        [...carried.keys()].map((it) => [it, new Machine(it, this.ports, this.asked.nodes, impedances(it))]),
      );
      const each = (some: readonly Solution[]) => some.map((it) => of.get(it)!);
      return {
        lifted: each(lifted),
        inPlace: each(inPlace),
        shortsLifted: each(shortsLifted),
        all: [...of.values()],
      };
    };
    this.exact = machines((it) => carried.get(it)!);
    this.swept = machines((it) => new SweptImpedances(it, this.ports, this.asked.nodes, carried.get(it)!));
    const question = {
      circuit,
      standing: standingOf(circuit),
      upsets,
      effects: this.effects,
      groundsLifted: true,
    };
    this.reach = waysToReach(question, workNodes);
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

  /** The largest conductance of a ground set's jumper [S]; none where there is no set. */
  get mostJumperSiemens(): number {
    return Math.max(0, ...this.asked.jumpers.map(({ siemens }) => siemens));
  }

  /**
   * About how much a set moves the volts asked for, where its upsets have little to do with each other: what each moves
   * alone, and what each puts across the others [V]. Infinite where two of them hang together, or this way does not hold.
   */
  mostMoved(set: UpsetSet): number {
    let sum = 0;
    for (const upset of set) {
      sum += this.movedBy[upset] ??= this.movedAlone(upset);
      if (sum === Infinity) return sum;
    }
    for (const other of set) {
      const row = (this.putAcross[other] ??= new Float64Array(this.upsets.length).fill(NaN));
      for (const upset of set) {
        if (upset === other) continue;
        if (Number.isNaN(row[upset]!)) row[upset] = this.across(other, upset);
        sum += row[upset]!;
        if (sum === Infinity) return sum;
      }
    }
    return sum;
  }

  private movedAlone(upset: number): number {
    const what = this.upsets[upset]!;
    const opened = this.stepsVolts ? undefined : this.openedBy([upset]);
    if (opened === undefined || isTouched(what) || rejoins(what)) return Infinity;
    return orInfinite(Math.max(...this.swept.all.map((machine) => machine.mostMoved(opened))));
  }

  /** What an upset puts across the ports of another [V]; infinite where they are close. */
  private across(other: number, upset: number): number {
    const [{ ports }, opened] = [this.openedBy([other])!, this.openedBy([upset])!];
    const areClose = this.swept.all.some((machine) =>
      ports.some((a) => opened.ports.some((b) => !(machine.closeness(a, b) < CLOSE))),
    );
    if (areClose) return Infinity;
    const volts = this.swept.all.flatMap((machine) => ports.map((port) => machine.movedAcross(port, opened)));
    return orInfinite(Math.max(0, ...volts));
  }

  /** Whether the answers for a set are only good to a few digits: enough to propose, not to report. */
  isRough(set: UpsetSet, { lifted, inPlace }: Machines = this.exact): boolean {
    return set.some((upset) =>
      this.portsOf[upset]!.some((port) => [...lifted, ...inPlace].some((machine) => machine.floats(port))),
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
        drives: [],
        isOfSupply: false,
        joins: [group(joins.from[join]!), group(joins.to[join]!)],
      });
    }
    for (const { stretch, letter } of effect.rejoined) {
      const { parted, ports } = portsOfRejoin(circuit, stretch);
      const { terms, ohms, volts: drives } = ports[parted.indexOf(letter)]!;
      open({
        terms,
        block: `stretch ${stretch}`,
        place: parted.indexOf(letter),
        ohms,
        drives,
        isOfSupply: false,
      });
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
          drives: [{ volts: part.legs[place]!.volts, emf }],
          isOfSupply: true,
        }),
      );
    }
    return opened;
  }

  /** Ports of a set, but ideal joins that would only close a loop of ideal joins; undefined where such a loop steps volts. */
  private portsOfSet(set: UpsetSet): number[] | undefined {
    const joined = new FewIslands();
    const open: number[] = [];
    for (const upset of set)
      for (const index of this.portsOf[upset]!) {
        const { joins } = this.ports[index]!;
        if (joins !== undefined && !joined.join(joins[0], joins[1])) {
          if (this.stepsVolts) return undefined;
          continue;
        }
        open.push(index);
      }
    return open;
  }

  /**
   * About what a set does, for a search that asks for thousands: many digits and not the last. Undefined where this way does not
   * hold, and where conductors float.
   */
  estimateAfter(set: UpsetSet): Outcome | undefined {
    return this.isRough(set, this.swept) ? undefined : this.outcomeAfter(set, this.swept);
  }

  outcomeAfter(set: UpsetSet, machines: Machines = this.exact): Outcome | undefined {
    const opened = this.openedBy(set);
    if (opened === undefined) return undefined;
    const { asked } = this;
    const lifted = allOf(machines.lifted.map((machine) => machine.voltsWith(opened)));
    const inPlace = allOf(
      machines.inPlace.map((machine, index) =>
        machine === machines.lifted[index] ? lifted?.[index] : machine.voltsWith(opened),
      ),
    );
    if (lifted === undefined || inPlace === undefined) return undefined;
    const band = machines === this.swept ? FAR_BAND : ROUGH_BAND;
    const groundAmps = this.jumperAmps(inPlace, band);
    if (groundAmps === undefined) return undefined;
    const outcome: ConductorOutcome[] = [];
    for (const [index, letter] of asked.letters.entries()) {
      const volts = Math.max(...lifted.map((it) => it.between(index, -1)));
      const live = this.liveAfter(set, opened, { index, volts }, machines, band);
      if (live === "near") return undefined;
      const against = (others: readonly number[]) => {
        let most = -Infinity;
        for (const it of inPlace) for (const other of others) most = Math.max(most, it.between(index, other));
        return most;
      };
      outcome.push({
        letter,
        live,
        volts,
        exposureVolts: against(asked.bonds),
        exposureToEarthVolts: against([-1]),
        groundAmps,
        settled: true,
      });
    }
    return outcome.some(({ volts, exposureVolts }) => Number.isNaN(volts) || Number.isNaN(exposureVolts))
      ? undefined
      : outcome;
  }

  /** Current through a body between each work conductor and what the worker is bonded to, grounds in place [A]; undefined as above. */
  bodyAmpsAfter(set: UpsetSet): readonly number[] | undefined {
    const opened = this.openedBy(set);
    if (opened === undefined) return undefined;
    const inPlace = allOf(this.exact.inPlace.map((machine) => machine.voltsWith(opened)));
    if (inPlace === undefined || this.jumperAmps(inPlace, ROUGH_BAND) === undefined) return undefined;
    return allOf(
      this.bodyPorts.map((ports) => {
        const amps = allOf(
          this.exact.inPlace.flatMap((machine) =>
            ports.map((port) =>
              port === NOTHING
                ? 0
                : machine.ampsInLast({ ...opened, ports: [...opened.ports, port], isOfOne: false }),
            ),
          ),
        );
        return amps === undefined ? undefined : Math.max(...amps);
      }),
    );
  }

  /** What a set opens; undefined where this way does not hold. That of one upset is asked again beside each other one. */
  private openedBy(set: UpsetSet): Opened | undefined {
    if (set.length !== 1) return this.freshlyOpened(set);
    return (this.openedAlone[set[0]!] ??= { it: this.freshlyOpened(set) }).it;
  }

  private freshlyOpened(set: UpsetSet): Opened | undefined {
    if (!this.usable || set.some((upset) => rejoinsNeutral(this.upsets[upset]!))) return undefined;
    const ports = this.touchesWhatRejoins(set) ? undefined : this.portsOfSet(set);
    if (ports === undefined) return undefined;
    return { ports, grouping: this.groupedBy(set), isOfOne: set.length === 1 };
  }

  /** What is joined as drawn stays so, and what the set joins is joined too. */
  private groupedBy(set: UpsetSet): Grouping {
    const { all } = this.drawnGroups;
    const started = set.flatMap((upset) => this.effects[upset]!.emfs.map(({ emf }) => emf));
    if (started.length === 0 && all.length < 2) return ONE_GROUP;
    const { steps, became, numbers: known } = this.joinedBy(set, started);
    const numbers = new Map(known);
    const number = (group: StepGroup) => {
      if (!numbers.has(group)) numbers.set(group, numbers.size);
    };
    for (const emf of started) number(steps.groupOf(emf));
    for (const upset of set)
      for (const port of this.portsOf[upset]!)
        for (const drive of this.ports[port]!.drives) if ("group" in drive) number(drive.group);
    return {
      count: Math.max(1, numbers.size),
      ofBase: all.map((group) => numbers.get(became.get(group)!)!),
      of: (drive) => numbers.get("emf" in drive ? steps.groupOf(drive.emf) : drive.group)!,
    };
  }

  /** How the sources as drawn keep step once a set has joined what it joins: asked once for all supplies that start beside it. */
  private joinedBy(set: UpsetSet, started: readonly number[]): Joined {
    const followed = started.filter((emf) => isFollowed(this.circuit, emf));
    const joining = set.filter((upset) => {
      const { joins, rejoined } = this.effects[upset]!;
      return joins.length > 0 || rejoined.length > 0;
    });
    const key = `${joining.join()} ${followed.join()}`;
    const found = this.joined.get(key);
    if (found !== undefined) return found;
    const { ofEmf, all } = this.drawnGroups;
    const { joins, stretches } = this.circuit;
    const links = joining.flatMap((upset) => [
      ...this.effects[upset]!.joins.map((join) => [joins.from[join]!, joins.to[join]!] as const),
      ...this.effects[upset]!.rejoined.map(
        ({ stretch, letter }) =>
          [stretches[stretch]!.from[letter]!, stretches[stretch]!.to[letter]!] as const,
      ),
    ]);
    const steps = stepGroups(this.circuit, [...ofEmf.keys(), ...followed], links);
    const became = new Map(all.map((group) => [group, group]));
    for (const [emf, group] of ofEmf) became.set(group, steps.of.get(emf)!);
    const numbers = new Map<StepGroup, number>();
    for (const group of became.values()) if (!numbers.has(group)) numbers.set(group, numbers.size);
    const fresh = { steps, became, numbers };
    this.joined.set(key, fresh);
    return fresh;
  }

  /** A live circuit touches a parted conductor at both ends, and a whole one at one: together they are not the sum of both. */
  private touchesWhatRejoins(set: UpsetSet): boolean {
    const kinds = new Set(set.map((upset) => this.upsets[upset]!.kind));
    return kinds.has("contact") && kinds.has("rejoin");
  }

  /**
   * Largest jumper current; undefined where one would part, which changes the network, or may part: within a band of its
   * withstand, or where loads take more than impedances do. Then all of the volts are on the worker, however far from the limit they were.
   */
  private jumperAmps(inPlace: readonly GroupedVolts[], band: number): number | undefined {
    const [drawn, loadsOff] = inPlace;
    let largest = 0;
    for (const { at, siemens, most } of this.asked.jumpers) {
      const byLoads =
        this.isExact || loadsOff === undefined ? 0 : siemens * drawn!.changeFrom(loadsOff, at, at + 1);
      for (const volts of inPlace) {
        const amps = siemens * volts.between(at, at + 1);
        if (band * amps + (MODEL_BAND - 1) * byLoads > most) return undefined;
        largest = Math.max(largest, amps);
      }
    }
    return largest;
  }

  /** What makes a work conductor live; `near` where that hangs on volts with faults lifted that come near to the limit. */
  private liveAfter(
    set: UpsetSet,
    opened: Opened,
    { index, volts }: { readonly index: number; readonly volts: number },
    { shortsLifted }: Machines,
    band: number,
  ): LiveBy | "near" | undefined {
    const view = viewOf(this.circuit, this.settings, { groundsLifted: true });
    const node = this.asked.nodes[index]!;
    if (this.circuit.letterOfNode[node] === "N") return undefined; // tied, or this way would not be used
    const reach = this.reach[index]!;
    if (reach.isReachedForward(set)) return "energized";
    const isHot = volts >= this.settings.hazardVolts;
    if (!reach.isReached(set)) return isHot ? "induced" : undefined;
    if (isHot) return "fed";
    if (shortsLifted.length === 0 || !this.isTiedToFault(set, view.islands, node)) return undefined;
    const without = Math.max(
      ...shortsLifted.map((machine) => machine.voltsWith(opened)?.between(index, -1) ?? NaN),
    );
    const { hazardVolts } = this.settings;
    const sure = band * (this.isExact ? 1 : MODEL_BAND);
    if (without >= sure * hazardVolts) return "fed";
    return sure * without <= hazardVolts ? undefined : "near";
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
