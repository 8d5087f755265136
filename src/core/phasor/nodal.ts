import { perObject } from "../document";
import {
  type Circuit,
  EARTH,
  type EmfAt,
  groupsAsDrawn,
  running,
  RUNS,
  Islands,
  neutralsOf,
  type StepGroup,
  type UnitAt,
} from "../network";
import { complex, type Complex } from "../terms";
import { analyse, Factorizer, type Symbolic, type UpperPattern } from "./ldlt";
import { invertOhms, times } from "./matrix";
import { eliminationOrder } from "./order";
import { type StretchElectrical, stretchElectrical } from "./stretch";
import {
  CONTRADICTION_OHMS,
  INNER_LEAK_SIEMENS,
  LEAK_SIEMENS,
  SAME_RATIO,
  SOLID_EARTH_SIEMENS,
} from "./tolerances";

/** What of a drawing is solved: the loads as drawn or off, the temporary grounds and the faults in place or lifted. */
export interface Variant {
  readonly loads: boolean;
  readonly grounds: boolean;
  readonly faults: boolean;
  /** machines at a set output as volts of their own: what stands in where their output does not settle */
  readonly outputsHold?: true;
}

/** A small dense admittance between unknowns, with what it injects. Its entries are found once, its values often. */
interface AdmittanceStamp {
  readonly nodes: readonly number[];
  readonly slots: Int32Array;
}

/** Everything of the equations that depends on how the parts lie and not on their values: kept for circuits that lie alike. */
interface Skeleton {
  readonly size: number;
  /** place of each unknown in the order of elimination */
  readonly placeOf: Int32Array;
  readonly symbolic: Symbolic;
  readonly factorizer: Factorizer;
  readonly diagonal: Int32Array;
  readonly joinSlots: readonly JoinSlots[];
  /** by join: the first one that joins the same two nodes; they lie in parallel and are one unknown */
  readonly leads: Int32Array;
  readonly stretches: readonly AdmittanceStamp[];
  readonly units: readonly AdmittanceStamp[];
  readonly branches: readonly AdmittanceStamp[];
  readonly emfs: readonly AdmittanceStamp[];
}

/** Where a join's equation stands: a slot for each of its places, −1 where that is earth. */
interface JoinSlots {
  readonly to: number;
  readonly from: number;
  readonly common: number;
  readonly diagonal: number;
}

/**
 * The nodal equations of a circuit, with a current for each ideal join: rows are the nodes and then the joins, in the
 * order of elimination. A closed join k holds Σ c·V = 0 (V_to = ratio·V_from, both against `common`); an open one i = 0.
 */
export interface Nodal extends Omit<Skeleton, "stretches" | "units" | "emfs"> {
  readonly circuit: Circuit;
  readonly stretches: readonly { readonly stamp: AdmittanceStamp; readonly electrical: StretchElectrical }[];
  readonly units: readonly {
    readonly stamp: AdmittanceStamp;
    readonly siemens: readonly (readonly Complex[])[];
  }[];
  /** each asked what it is only where it is on: of a feeder's customers nearly none has a machine that runs */
  readonly emfs: readonly { readonly stamp: AdmittanceStamp; readonly at: EmfAt }[];
}

/** What a supply is in a variant: with its loads as drawn or, where loads stand behind it, with them off. */
export function emfIn({ at }: Nodal["emfs"][number], { loads }: Variant): EmfElectrical {
  const { drawn, unloaded } = emfElectrical(at);
  return loads ? drawn : unloaded;
}

interface EmfElectrical {
  readonly siemens: readonly (readonly Complex[])[];
  readonly injected: readonly Complex[];
}

const skeletons = new WeakMap<object, Skeleton>();

/** The equations of a circuit; what circuits that lie alike share is made once. */
export const nodalOf: (circuit: Circuit) => Nodal = perObject((circuit: Circuit): Nodal => {
  let skeleton = skeletons.get(circuit.structure);
  if (skeleton === undefined) skeletons.set(circuit.structure, (skeleton = buildSkeleton(circuit)));
  const { stretches, units, emfs } = skeleton;
  return {
    ...skeleton,
    circuit,
    stretches: circuit.stretches.map((it, index) => ({
      stamp: stretches[index]!,
      electrical: stretchElectrical(it.part, it.alongside, circuit.frequencyHz),
    })),
    units: circuit.units.map((it, index) => ({ stamp: units[index]!, siemens: unitSiemens(it) })),
    emfs: circuit.emfs.map((at, index) => ({ stamp: emfs[index]!, at })),
  };
});

/** The nodes and coefficients of a join's equation, earth left out. */
export function joinTerms({ joins }: Circuit, k: number): { node: number; coefficient: number }[] {
  const terms = [
    { node: joins.to[k]!, coefficient: 1 },
    { node: joins.from[k]!, coefficient: -joins.ratio[k]! },
    { node: joins.common[k]!, coefficient: joins.ratio[k]! - 1 },
  ];
  return terms.filter(({ node }) => node !== EARTH);
}

/** Entries of the upper triangle collected as they come, then sorted into compressed columns. */
class PatternBuilder {
  private low: Int32Array;
  private high: Int32Array;
  private count = 0;
  constructor(private readonly size: number) {
    this.low = new Int32Array(8 * size + 64);
    this.high = new Int32Array(8 * size + 64);
  }
  /** Asks for an entry; the number that comes back leads to its slot once all are known. */
  ask(a: number, b: number): number {
    if (this.count === this.low.length) {
      this.low = grown(this.low);
      this.high = grown(this.high);
    }
    this.low[this.count] = Math.min(a, b);
    this.high[this.count] = Math.max(a, b);
    return this.count++;
  }
  finish(): { pattern: UpperPattern; slotOf: Int32Array } {
    const { size, low, high, count } = this;
    // Two counting sorts, by row and then by column, leave every column's rows increasing.
    const byRow = countingSort(size, low, count, null);
    const byColumn = countingSort(size, high, count, byRow);
    const start = new Int32Array(size + 1);
    const row = new Int32Array(count);
    const slotOf = new Int32Array(count);
    let slots = 0;
    let lastColumn = -1;
    let lastRow = -1;
    for (const entry of byColumn) {
      if (high[entry] !== lastColumn || low[entry] !== lastRow) {
        lastColumn = high[entry]!;
        lastRow = low[entry]!;
        row[slots++] = lastRow;
        start[lastColumn + 1]!++;
      }
      slotOf[entry] = slots - 1;
    }
    for (let column = 0; column < size; column++) start[column + 1]! += start[column]!;
    return { pattern: { size, start, row: row.slice(0, slots) }, slotOf };
  }
}

function grown(list: Int32Array): Int32Array {
  const larger = new Int32Array(2 * list.length);
  larger.set(list);
  return larger;
}

function countingSort(size: number, keys: Int32Array, count: number, before: Int32Array | null): Int32Array {
  const next = new Int32Array(size + 1);
  for (let at = 0; at < count; at++) next[keys[at]! + 1]!++;
  for (let key = 0; key < size; key++) next[key + 1]! += next[key]!;
  const sorted = new Int32Array(count);
  for (let at = 0; at < count; at++) {
    const entry = before === null ? at : before[at]!;
    sorted[next[keys[entry]!]!++] = entry;
  }
  return sorted;
}

function buildSkeleton(circuit: Circuit): Skeleton {
  const { nodeCount, joins } = circuit;
  const size = nodeCount + joins.count;
  const order = eliminationOrder(circuit);
  const placeOf = new Int32Array(size);
  order.forEach((unknown, place) => (placeOf[unknown] = place));

  const builder = new PatternBuilder(size);
  const diagonalAsked = Array.from({ length: size }, (_, place) => builder.ask(place, place));
  const ask = (a: number, b: number): number =>
    a === EARTH || b === EARTH ? -1 : builder.ask(placeOf[a]!, placeOf[b]!);
  /** A stamp whose slots are what was asked until `found` puts the slots there. */
  const askStamp = (nodes: readonly number[]): AdmittanceStamp => {
    const asked = new Int32Array((nodes.length * (nodes.length + 1)) / 2);
    let next = 0;
    for (let i = 0; i < nodes.length; i++)
      for (let j = 0; j <= i; j++) asked[next++] = ask(nodes[i]!, nodes[j]!);
    return { nodes, slots: asked };
  };
  const leads = leadingJoins(circuit);
  const joinsAsked = Array.from({ length: joins.count }, (_, k) =>
    leads[k] === k
      ? {
          to: ask(joins.to[k]!, nodeCount + k),
          from: ask(joins.from[k]!, nodeCount + k),
          common: ask(joins.common[k]!, nodeCount + k),
        }
      : NO_SLOTS,
  );
  const stretches = circuit.stretches.map(({ from, to }) => askStamp([...from, ...to]));
  const units = circuit.units.map((unit) => askStamp(unitNodes(unit)));
  const branches = circuit.branches.map(({ from, to }) => askStamp([from, to]));
  const emfs = circuit.emfs.map(({ legs, star }) => askStamp([...legs, star]));

  const { pattern, slotOf } = builder.finish();
  const slot = (asked: number): number => (asked === -1 ? -1 : slotOf[asked]!);
  const found = (stamp: AdmittanceStamp): AdmittanceStamp => {
    for (let at = 0; at < stamp.slots.length; at++) stamp.slots[at] = slot(stamp.slots[at]!);
    return stamp;
  };
  const diagonal = Int32Array.from(diagonalAsked, slot);
  const symbolic = analyse(pattern);
  return {
    size,
    placeOf,
    symbolic,
    factorizer: new Factorizer(symbolic),
    diagonal,
    leads,
    joinSlots: joinsAsked.map(({ to, from, common }, k) => ({
      to: slot(to),
      from: slot(from),
      common: slot(common),
      diagonal: diagonal[placeOf[nodeCount + k]!]!,
    })),
    stretches: stretches.map(found),
    units: units.map(found),
    branches: branches.map(found),
    emfs: emfs.map(found),
  };
}

const NO_SLOTS = { to: -1, from: -1, common: -1 };

/**
 * By join: the first of those that lie in parallel with it, itself included. Each with an unknown of its own would fill in
 * the square of their number; what they carry together is one unknown, and how it divides is asked afterwards. What can
 * step volts, and what goes to earth, stands alone.
 */
function leadingJoins({ joins, nodeCount }: Circuit): Int32Array {
  const first = new Map<number, number>();
  return Int32Array.from({ length: joins.count }, (_, k) => {
    const [from, to] = [joins.from[k]!, joins.to[k]!];
    if (joins.steps[k] === 1 || from === EARTH || to === EARTH) return k;
    const between = Math.min(from, to) * nodeCount + Math.max(from, to);
    if (!first.has(between)) first.set(between, k);
    return first.get(between)!;
  });
}

function unitNodes({ windings }: UnitAt): number[] {
  const nodes: number[] = [];
  for (const ends of windings) for (const node of ends) if (!nodes.includes(node)) nodes.push(node);
  return nodes;
}

const emfElectrical = perObject(({ part }: EmfAt): { drawn: EmfElectrical; unloaded: EmfElectrical } => {
  const drawn = behindOhms(
    part.ohms,
    part.legs.map(({ volts }) => volts),
  );
  const { unloaded } = part;
  return { drawn, unloaded: unloaded === undefined ? drawn : behindOhms(unloaded.ohms, unloaded.volts) };
});

function behindOhms(ohms: readonly (readonly Complex[])[], volts: readonly Complex[]): EmfElectrical {
  const inner = invertOhms(ohms);
  return { siemens: aboutStar(inner), injected: withStar(times(inner, volts)) };
}

/**
 * Admittance of one transformer unit between its terminals, its core's flux eliminated: with winding volts U_k and leakage
 * z_k, all windings share e (per unit of rated volts), i_k = (v_k − e U_k)/z_k, and Σ U_k i_k = Y_m e with Y_m the
 * exciting admittance in volt-amperes.
 * Source: the transformer's equivalent circuit with the exciting branch between the windings' leakages (any textbook).
 */
const unitSiemens = perObject((unit: UnitAt): Complex[][] => {
  const nodes = unitNodes(unit);
  const windings = [...unit.part.primary, ...unit.part.secondary];
  const y = windings.map(({ ohms }) => complex.inverse(ohms));
  const weighted = windings.map(({ volts }, k) => complex.scale(y[k]!, volts));
  const total = windings.reduce<Complex>(
    (sum, { volts }, k) => complex.add(sum, complex.scale(weighted[k]!, volts)),
    [unit.part.coreWatts, -unit.part.excitingVa],
  );
  const flux = complex.inverse(total);
  const matrix: [number, number][][] = nodes.map(() => nodes.map(() => [0, 0]));
  unit.windings.forEach((ends, k) =>
    unit.windings.forEach((otherEnds, m) => {
      const shared = complex.times(complex.times(weighted[k]!, weighted[m]!), flux);
      const [re, im] = k === m ? complex.subtract(y[k]!, shared) : complex.scale(shared, -1);
      for (let i = 0; i < 2; i++)
        for (let j = 0; j < 2; j++) {
          const entry = matrix[nodes.indexOf(ends[i]!)]![nodes.indexOf(otherEnds[j]!)]!;
          const sign = i === j ? 1 : -1;
          entry[0] += sign * re;
          entry[1] += sign * im;
        }
    }),
  );
  return matrix;
});

/** Admittance between legs and their star, from the legs' own: every row and column sums to nothing. */
function aboutStar(inner: readonly (readonly Complex[])[]): Complex[][] {
  const rows = inner.map((row) => withStar(row));
  const star = rows[0]!.map((_, column) =>
    rows.reduce<Complex>((sum, row) => complex.subtract(sum, row[column]!), complex.zero),
  );
  return [...rows, star];
}

/** Adds what the star takes back. */
const withStar = (legs: readonly Complex[]): Complex[] => [
  ...legs,
  legs.reduce<Complex>((sum, it) => complex.subtract(sum, it), complex.zero),
];

/** Values of the equations for one variant, in the pattern's order, and the currents injected at the nodes. */
export interface Assembled {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly injectedRe: Float64Array;
  readonly injectedIm: Float64Array;
  /** 1 for joins that are closed but already joined through others: they carry what the loop gives them, not an equation; 2 where the loop says otherwise */
  readonly redundant: Uint8Array;
  /** by join: how many joins have their current in its unknown */
  readonly sharers: Int32Array;
}

/** The equations of a circuit as one variant of it stands: entries and injected currents in the order of elimination [S, A]. */
export function assemble(nodal: Nodal, variant: Variant): Assembled {
  const { circuit, size } = nodal;
  const { redundant, sharers, ...inEach } = inEachVariant(nodal);
  const re = inEach.re.slice();
  const im = inEach.im.slice();
  const injectedRe = new Float64Array(size);
  const injectedIm = new Float64Array(size);
  circuit.branches.forEach(({ part }, index) => {
    if (!isPresent(circuit, index, variant)) return;
    const [from, between, to] = nodal.branches[index]!.slots;
    const [siemens, siemensIm] = part.siemens;
    const add = (slot: number, sign: number) => {
      if (slot === -1) return;
      re[slot]! += sign * siemens;
      im[slot]! += sign * siemensIm;
    };
    add(from!, 1);
    add(between!, -1);
    add(to!, 1);
  });
  circuit.emfs.forEach((_, index) => {
    if (!holdsVolts(circuit, index, variant)) return;
    const { siemens } = emfIn(nodal.emfs[index]!, variant);
    addStamp(re, im, nodal.emfs[index]!.stamp, (row, column) => siemens[row]![column]!);
  });
  injectInto(nodal, variant, injectedRe, injectedIm);
  return { re, im, injectedRe, injectedIm, redundant, sharers };
}

/** What of the equations is the same in each variant: all but branches and supplies. Made once, since most circuits are solved in four. */
const inEachVariant = perObject((nodal: Nodal): Pick<Assembled, "re" | "im" | "redundant" | "sharers"> => {
  const { circuit, symbolic, placeOf } = nodal;
  const entries = symbolic.pattern.row.length;
  const re = new Float64Array(entries);
  const im = new Float64Array(entries);
  const { joins } = circuit;
  const redundant = redundantJoins(circuit);

  for (let node = 0; node < circuit.nodeCount; node++)
    re[nodal.diagonal[placeOf[node]!]!]! += node < circuit.conductorCount ? LEAK_SIEMENS : INNER_LEAK_SIEMENS;
  for (let k = 0; k < joins.count; k++) {
    if (joins.closed[k] === 0) continue;
    const at = nodal.diagonal[placeOf[joins.from[k]!]!]!;
    if (joins.to[k] === EARTH) re[at]! += SOLID_EARTH_SIEMENS;
    // A node inside that is joined to a conductor leaks as a share of the conductor's own: what floats must not feel it.
    else if (joins.to[k]! >= circuit.conductorCount) re[at]! -= INNER_LEAK_SIEMENS;
  }
  for (const { node, ohms } of circuit.rods) re[nodal.diagonal[placeOf[node]!]!]! += 1 / ohms;

  const sharers = new Int32Array(joins.count);
  const contradicts = new Uint8Array(joins.count);
  for (let k = 0; k < joins.count; k++) {
    if (joins.closed[k] === 0 || redundant[k] === 1 || joins.to[k] === EARTH) continue;
    sharers[nodal.leads[k]!]!++;
    if (redundant[k] === 2) contradicts[nodal.leads[k]!] = 1;
  }
  nodal.joinSlots.forEach(({ to, from, common, diagonal }, k) => {
    if (sharers[k] === 0) {
      re[diagonal]! -= 1;
      return;
    }
    if (to !== -1) re[to]! += 1;
    if (from !== -1) re[from]! -= joins.ratio[k]!;
    if (common !== -1) re[common]! += joins.ratio[k]! - 1;
    if (contradicts[k] === 1) re[diagonal]! -= CONTRADICTION_OHMS / sharers[k]!;
  });

  nodal.stretches.forEach(({ stamp, electrical }, index) => {
    addStretch(re, im, stamp.slots, electrical);
    const { rodSiemens } = circuit.stretches[index]!.part;
    if (rodSiemens > 0)
      for (const node of neutralsOf(circuit.stretches[index]!))
        re[nodal.diagonal[placeOf[node]!]!]! += rodSiemens;
  });
  for (const { stamp, siemens } of nodal.units)
    addStamp(re, im, stamp, (row, column) => siemens[row]![column]!);
  return { re, im, redundant, sharers };
});

function addStamp(
  re: Float64Array,
  im: Float64Array,
  { nodes, slots }: AdmittanceStamp,
  at: (row: number, column: number) => Complex,
): void {
  let next = 0;
  for (let row = 0; row < nodes.length; row++)
    for (let column = 0; column <= row; column++) {
      const slot = slots[next++]!;
      if (slot === -1) continue;
      const value = at(row, column);
      re[slot]! += value[0];
      im[slot]! += value[1];
    }
}

/** Series admittance from end to end, and half of the shunt at each. Written out: it is most of what a network is. */
function addStretch(
  re: Float64Array,
  im: Float64Array,
  slots: Int32Array,
  { seriesSiemens, halfShuntSiemens }: StretchElectrical,
): void {
  const half = seriesSiemens.length;
  let next = 0;
  for (let row = 0; row < 2 * half; row++)
    for (let column = 0; column <= row; column++) {
      const slot = slots[next++]!;
      const series = seriesSiemens[row % half]![column % half]!;
      if (row < half === column < half) {
        re[slot]! += series[0];
        im[slot]! += series[1] + halfShuntSiemens[row % half]![column % half]!;
      } else {
        re[slot]! -= series[0];
        im[slot]! -= series[1];
      }
    }
}

/** Adds the currents that the sources push into the nodes [A]: all of them, or only those of one group that keeps step. */
export function injectInto(
  nodal: Nodal,
  variant: Variant,
  re: Float64Array,
  im: Float64Array,
  only?: StepGroup,
): void {
  const { circuit, placeOf } = nodal;
  const inject = (node: number, [amRe, amIm]: Complex) => {
    if (node === EARTH) return;
    re[placeOf[node]!]! += amRe;
    im[placeOf[node]!]! += amIm;
  };
  const { ofEmf } = groupsAsDrawn(circuit);
  circuit.emfs.forEach((_, index) => {
    if (!holdsVolts(circuit, index, variant) || (only !== undefined && ofEmf.get(index) !== only)) return;
    const { stamp } = nodal.emfs[index]!;
    const { injected } = emfIn(nodal.emfs[index]!, variant);
    stamp.nodes.forEach((node, i) => inject(node, injected[i]!));
  });
  circuit.stretches.forEach(({ part, from, to, alongside }, index) => {
    const beside = only === undefined ? alongside : alongside.filter(({ element }) => element === only);
    if (beside.length === 0) return;
    const { seriesSiemens, inducedVolts, pushedAmps } =
      beside.length === alongside.length
        ? nodal.stretches[index]!.electrical
        : stretchElectrical(part, beside, circuit.frequencyHz);
    const driven = times(seriesSiemens, inducedVolts);
    from.forEach((node, i) => inject(node, complex.add(pushedAmps[i]!, driven[i]!)));
    to.forEach((node, i) => inject(node, complex.subtract(pushedAmps[i]!, driven[i]!)));
  });
}

/** Whether a supply runs on volts of its own in a variant. */
export function holdsVolts(circuit: Circuit, emf: number, { outputsHold }: Variant): boolean {
  const as = running(circuit)[emf];
  return as === RUNS.holding || (as === RUNS.following && outputsHold === true);
}

/** Elements that feed in a set output as drawn. */
const followers = perObject(
  (circuit: Circuit): ReadonlySet<number> =>
    new Set(
      circuit.emfs.flatMap(({ element }, emf) => (running(circuit)[emf] === RUNS.following ? [element] : [])),
    ),
);

/** Whether a branch takes part in a variant; capacitors, and what star points stand on, always do. */
export function isPresent(circuit: Circuit, branch: number, variant: Variant): boolean {
  const { element, part } = circuit.branches[branch]!;
  switch (part.role) {
    case "load":
      return variant.loads;
    case "ground":
      return variant.grounds;
    case "fault":
      return variant.faults;
    case "output":
      return variant.outputsHold !== true && followers(circuit).has(element);
    default:
      return true;
  }
}

/**
 * Closed ideal joins taken together: which are one equation too many, and which nodes they make one. A loop around which
 * the ratios do not cancel, such as a switch closed beside a regulator off neutral, is a short circuit: its last join is 2.
 */
const idealJoins = perObject((circuit: Circuit) => {
  const { joins, nodeCount } = circuit;
  const islands = new Islands(nodeCount + 1);
  const redundant = new Uint8Array(joins.count);
  const index = (node: number) => (node === EARTH ? nodeCount : node);
  for (let k = 0; k < joins.count; k++) {
    if (joins.closed[k] === 0) continue;
    const ratio = joins.ratio[k]!;
    const known = islands.join(index(joins.from[k]!), index(joins.to[k]!), ratio);
    if (known !== undefined) redundant[k] = Math.abs(known - ratio) < SAME_RATIO ? 1 : 2;
  }
  return { redundant, groups: islands.labels() };
});

/** Marks the closed joins that close a loop of ideal joins (earth among them): one equation fewer than joins there. */
const redundantJoins = (circuit: Circuit): Uint8Array => idealJoins(circuit).redundant;

/** Label of the ideally joined nodes that each node is one of; earth's own stands last. */
export const idealGroups = (circuit: Circuit): Int32Array => idealJoins(circuit).groups;
