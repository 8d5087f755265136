import { perObject } from "../document";
import { type Circuit, EARTH } from "../network";
import { complex, type Complex } from "../terms";
import { loopCurrents } from "./loops";
import { type Factor, solveInPlace } from "./ldlt";
import { assemble, type Assembled, isPresent, type Nodal, nodalOf, type Variant } from "./nodal";
import {
  KCL_TOLERANCE,
  LEAST_LOAD_STEP,
  LOAD_AT_REST,
  LOAD_FLOOR,
  LOAD_SETTLED,
  MOST_LOAD_ROUNDS,
  SLOW_SHARE,
  SOLID_EARTH_SIEMENS,
} from "./tolerances";

/** Loads as drawn, grounds and faults in place: what stands on the poles. */
export const AS_DRAWN: Variant = { loads: true, grounds: true, faults: true };

/** Volts and currents of one circuit in one variant. Nothing here is scaled: volts, amperes. */
export interface Solution {
  readonly nodal: Nodal;
  readonly variant: Variant;
  readonly factor: Factor;
  readonly assembled: Assembled;
  /** volts to earth at each node */
  readonly voltsRe: Float64Array;
  readonly voltsIm: Float64Array;
  /** current of each join: what leaves `to` into it; through it from `from` this is negative */
  readonly joinRe: Float64Array;
  readonly joinIm: Float64Array;
  /** current that each branch takes beyond its impedance at rated volts, by the load's model */
  readonly extraAmps: ReadonlyMap<number, Complex>;
  /** false where the loads' models did not settle and constant impedance stands in */
  readonly settled: boolean;
  /** the unknown at which the equations were singular; −1 for none. Then nothing here may be believed. */
  readonly singularAt: number;
}

const keyOf = (variant: Variant): string => `${variant.loads}${variant.grounds}${variant.faults}`;

const solutionsOf = perObject((_circuit: Circuit) => new Map<string, Solution>());

/** The solution of a circuit; each variant is solved once. Variants that differ in nothing that is drawn are one. */
export function solutionOf(circuit: Circuit, variant: Variant = AS_DRAWN): Solution {
  const known = solutionsOf(circuit);
  const has = rolesOf(circuit);
  const asked = keyOf({
    loads: variant.loads || !has.load,
    grounds: variant.grounds || !has.ground,
    faults: variant.faults || !has.fault,
  });
  const found = known.get(asked);
  if (found !== undefined) return found;
  const fresh = solve(nodalOf(circuit), variant);
  known.set(asked, fresh);
  return fresh;
}

const rolesOf = perObject(({ branches, emfs }: Circuit) => {
  const has = (role: "load" | "ground" | "fault") => branches.some(({ part }) => part.role === role);
  return {
    load: has("load") || emfs.some(({ part }) => part.unloaded !== undefined),
    ground: has("ground"),
    fault: has("fault"),
  };
});

/** Factors and solves; loads that are not impedances are iterated from rated volts as currents beside their impedance. */
export function solve(nodal: Nodal, variant: Variant): Solution {
  const assembled = assemble(nodal, variant);
  const factor = nodal.factorizer.factor(assembled.re, assembled.im);
  const solution = solveFactored(nodal, variant, assembled, factor);
  if (solution.settled || variant.outputsHold === true || outputs(nodal.circuit).length === 0)
    return solution;
  return { ...solve(nodal, { ...variant, outputsHold: true }), settled: false };
}

/** Solves with factors that are there already. */
function solveFactored(nodal: Nodal, variant: Variant, assembled: Assembled, factor: Factor): Solution {
  const { circuit } = nodal;
  const linear = solveOnce(nodal, assembled, factor, assembled.injectedRe, assembled.injectedIm);
  const models = [
    ...(variant.loads ? nonlinearLoads(circuit) : []),
    ...(variant.outputsHold === true ? [] : outputs(circuit)),
  ];
  let { xRe, xIm } = linear;
  let extraAmps: ReadonlyMap<number, Complex> = new Map();
  let settled = true;
  if (models.length > 0 && factor.singularAt === -1) {
    const iterated = iterateLoads(nodal, assembled, factor, models, xRe, xIm);
    settled = iterated !== undefined;
    if (iterated !== undefined) ({ xRe, xIm, extraAmps } = iterated);
  }
  const voltsRe = new Float64Array(circuit.nodeCount);
  const voltsIm = new Float64Array(circuit.nodeCount);
  const joinRe = new Float64Array(circuit.joins.count);
  const joinIm = new Float64Array(circuit.joins.count);
  for (let node = 0; node < circuit.nodeCount; node++) {
    const place = nodal.placeOf[node]!;
    voltsRe[node] = xRe[place]!;
    voltsIm[node] = xIm[place]!;
  }
  const { joins } = circuit;
  for (let k = 0; k < joins.count; k++) {
    if (joins.closed[k] === 0) continue;
    if (joins.to[k] === EARTH) {
      joinRe[k] = -SOLID_EARTH_SIEMENS * voltsRe[joins.from[k]!]!;
      joinIm[k] = -SOLID_EARTH_SIEMENS * voltsIm[joins.from[k]!]!;
    } else if (assembled.redundant[k] !== 1) {
      const lead = nodal.leads[k]!;
      const share = (joins.from[k] === joins.from[lead] ? 1 : -1) / assembled.sharers[lead]!;
      const place = nodal.placeOf[circuit.nodeCount + lead]!;
      joinRe[k] = share * xRe[place]!;
      joinIm[k] = share * xIm[place]!;
    }
  }
  loopCurrents(circuit, assembled.redundant, joinRe, joinIm);
  return {
    nodal,
    variant,
    factor,
    assembled,
    voltsRe,
    voltsIm,
    joinRe,
    joinIm,
    extraAmps,
    settled,
    singularAt: factor.singularAt,
  };
}

/** One solve, refined once where it leaves more current over than the tolerance allows. */
export function solveOnce(
  nodal: Nodal,
  assembled: Assembled,
  factor: Factor,
  bRe: Float64Array,
  bIm: Float64Array,
): { xRe: Float64Array; xIm: Float64Array } {
  const xRe = bRe.slice();
  const xIm = bIm.slice();
  solveInPlace(factor, xRe, xIm);
  const left = leftOver(nodal, assembled, bRe, bIm, xRe, xIm);
  if (left.worst > KCL_TOLERANCE) {
    solveInPlace(factor, left.re, left.im);
    for (let k = 0; k < xRe.length; k++) {
      xRe[k]! += left.re[k]!;
      xIm[k]! += left.im[k]!;
    }
  }
  return { xRe, xIm };
}

/** b − A x, and its worst entry relative to what flows in that row. */
function leftOver(
  { symbolic, size }: Nodal,
  { re: aRe, im: aIm }: Assembled,
  bRe: Float64Array,
  bIm: Float64Array,
  xRe: Float64Array,
  xIm: Float64Array,
) {
  const { start, row } = symbolic.pattern;
  const re = bRe.slice();
  const im = bIm.slice();
  const flow = new Float64Array(size);
  const take = (at: number, vRe: number, vIm: number, p: number) => {
    const amRe = aRe[p]! * vRe - aIm[p]! * vIm;
    const amIm = aRe[p]! * vIm + aIm[p]! * vRe;
    re[at]! -= amRe;
    im[at]! -= amIm;
    flow[at]! += Math.abs(amRe) + Math.abs(amIm);
  };
  for (let column = 0; column < size; column++)
    for (let p = start[column]!; p < start[column + 1]!; p++) {
      const at = row[p]!;
      take(at, xRe[column]!, xIm[column]!, p);
      if (at !== column) take(column, xRe[at]!, xIm[at]!, p);
    }
  let worst = 0;
  for (let k = 0; k < size; k++) {
    const most = flow[k]!;
    if (most > 0) worst = Math.max(worst, (Math.abs(re[k]!) + Math.abs(im[k]!)) / most);
  }
  return { re, im, worst };
}

interface ModelledLoad {
  readonly branch: number;
  readonly from: number;
  readonly to: number;
  readonly siemens: Complex;
  readonly va: Complex;
  readonly volts: number;
  readonly model: "I" | "PQ";
}

const nonlinearLoads = perObject((circuit: Circuit) =>
  modelled(circuit, (it) => circuit.branches[it]!.part.role === "load"),
);

/** What machines feed in that run at a set output as drawn. */
const outputs = perObject((circuit: Circuit) =>
  modelled(circuit, (it) => circuit.branches[it]!.part.role === "output" && isPresent(circuit, it, AS_DRAWN)),
);

const modelled = (circuit: Circuit, isAsked: (branch: number) => boolean): ModelledLoad[] =>
  circuit.branches.flatMap(({ part, from, to }, branch) => {
    const { demand } = part;
    return demand === undefined || demand.model === "Z" || demand.volts === 0 || !isAsked(branch)
      ? []
      : [
          {
            branch,
            from,
            to,
            siemens: part.siemens,
            va: demand.va,
            volts: demand.volts,
            model: demand.model,
          },
        ];
  });

/** Whether every load is a constant impedance and no machine has a set output, so that volts follow the sources in proportion. */
export const isLinear = (circuit: Circuit): boolean =>
  nonlinearLoads(circuit).length === 0 && circuit.emfs.every(({ part }) => part.withoutGrid === undefined);

/**
 * What a load draws for each volt across it at some magnitude [S]: constant current keeps its magnitude and its angle to the
 * volts, constant power its volt-amperes; below the floor both are the impedance that draws at the floor what the model draws there.
 */
function modelSiemensScale({ volts: ratedVolts, model }: ModelledLoad, magnitude: number): number {
  const share = magnitude / ratedVolts;
  if (share < LOAD_FLOOR) return (model === "I" ? LOAD_FLOOR : 1) / (LOAD_FLOOR * ratedVolts) ** 2;
  return (model === "I" ? share : 1) / (share * ratedVolts) ** 2;
}

/** What a load draws for each volt across it beyond its impedance, with volts of this magnitude across it [S]. */
function siemensBeyond(load: ModelledLoad, magnitude: number): Complex {
  const scale = modelSiemensScale(load, magnitude);
  return [scale * load.va[0] - load.siemens[0], -scale * load.va[1] - load.siemens[1]];
}

/**
 * What each load that is no impedance, and each machine at a set output, is beyond its impedance as it stands in a solution
 * [S], by branch. By its model and not by its current over its volts, which say nothing where both are nearly none.
 */
export function modelsBeyond(solution: Solution): ReadonlyMap<number, Complex> {
  const { extraAmps, nodal } = solution;
  const { circuit } = nodal;
  const models = [...nonlinearLoads(circuit), ...outputs(circuit)].filter(({ branch }) =>
    extraAmps.has(branch),
  );
  return new Map(
    models.map((load) => {
      const across = complex.subtract(voltsAt(solution, load.from), voltsAt(solution, load.to));
      return [load.branch, siemensBeyond(load, complex.magnitude(across))];
    }),
  );
}

/**
 * Currents of the loads beyond their impedances, from round to round, until no load's volts move. Where a round moves them
 * hardly less than the one before, only a part of each step is taken from there on: a load behind much impedance answers
 * a step by more than itself, turned about (below the floor a `PQ` load draws twice its rated impedance).
 */
function iterateLoads(
  nodal: Nodal,
  assembled: Assembled,
  factor: Factor,
  loads: readonly ModelledLoad[],
  startRe: Float64Array,
  startIm: Float64Array,
) {
  const places = loads.map(({ from, to }) => [placeIn(nodal, from), placeIn(nodal, to)] as const);
  let [xRe, xIm] = [startRe, startIm];
  let across = voltsAcross(places, xRe, xIm);
  const extraRe = new Float64Array(loads.length);
  const extraIm = new Float64Array(loads.length);
  let step = 1;
  let movedBefore = Infinity;
  let isSettled = false;
  const answer = () => ({
    xRe,
    xIm,
    extraAmps: new Map(loads.map(({ branch }, k): [number, Complex] => [branch, [extraRe[k]!, extraIm[k]!]])),
  });
  for (let round = 0; round < MOST_LOAD_ROUNDS; round++) {
    const bRe = assembled.injectedRe.slice();
    const bIm = assembled.injectedIm.slice();
    loads.forEach((load, k) => {
      const [vRe, vIm] = [across.re[k]!, across.im[k]!];
      const [beyondRe, beyondIm] = siemensBeyond(load, Math.hypot(vRe, vIm));
      extraRe[k]! += step * (beyondRe * vRe - beyondIm * vIm - extraRe[k]!);
      extraIm[k]! += step * (beyondRe * vIm + beyondIm * vRe - extraIm[k]!);
      const [from, to] = places[k]!;
      if (from !== -1) {
        bRe[from]! -= extraRe[k]!;
        bIm[from]! -= extraIm[k]!;
      }
      if (to !== -1) {
        bRe[to]! += extraRe[k]!;
        bIm[to]! += extraIm[k]!;
      }
    });
    ({ xRe, xIm } = solveOnce(nodal, assembled, factor, bRe, bIm));
    const before = across;
    across = voltsAcross(places, xRe, xIm);
    const moved = loads.reduce(
      (most, { volts }, k) =>
        Math.max(most, Math.hypot(across.re[k]! - before.re[k]!, across.im[k]! - before.im[k]!) / volts),
      0,
    );
    if (moved < LOAD_AT_REST * step) return answer();
    if (!Number.isFinite(moved)) return undefined;
    isSettled = moved < LOAD_SETTLED * step;
    if (moved > SLOW_SHARE * movedBefore) step = Math.max(step / 2, LEAST_LOAD_STEP);
    movedBefore = moved;
  }
  return isSettled ? answer() : undefined;
}

/** Where a node stands in the order of elimination, −1 for earth. */
const placeIn = ({ placeOf }: Nodal, node: number): number => (node === EARTH ? -1 : placeOf[node]!);

function voltsAcross(
  places: readonly (readonly [from: number, to: number])[],
  xRe: Float64Array,
  xIm: Float64Array,
): { readonly re: Float64Array; readonly im: Float64Array } {
  const at = (values: Float64Array, place: number) => (place === -1 ? 0 : values[place]!);
  // Written out: each round of the loads of a feeder comes by here.
  const re = new Float64Array(places.length);
  const im = new Float64Array(places.length);
  for (let k = 0; k < places.length; k++) {
    const [from, to] = places[k]!;
    re[k] = at(xRe, from) - at(xRe, to);
    im[k] = at(xIm, from) - at(xIm, to);
  }
  return { re, im };
}

/** Volts to earth at a node. */
export const voltsAt = ({ voltsRe, voltsIm }: Solution, node: number): Complex =>
  node === EARTH ? complex.zero : [voltsRe[node]!, voltsIm[node]!];
