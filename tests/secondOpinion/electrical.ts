/**
 * Volts and amperes of a plain drawing: modified nodal analysis, dense rows, Gaussian elimination with pivoting. Every
 * series impedance keeps its current as an unknown, so that a thousandth of an ohm and a nanosiemens live side by side.
 */
import transformers from "../../shared/reference/transformers.json";
import {
  CABLE_FARAD_PER_M,
  cableSeriesOf,
  maxwellOf,
  mutualOf,
  type Ohms as C,
  placesOf,
  seriesOf,
  wiresOf,
} from "../simulator/line";
import {
  at,
  beyond,
  conductorsOf,
  groupsOf,
  joinsOf,
  named,
  num,
  openOf,
  phasesOf,
  type Plain,
  type Record_,
  ROOT3,
  runsOf,
  text,
  twoLetters,
  isBank,
  starsOf,
  unitsOf,
  yes,
} from "./plain";

const plus = (a: C, b: C): C => [a[0] + b[0], a[1] + b[1]];
const minus = (a: C, b: C): C => [a[0] - b[0], a[1] - b[1]];
const times = (a: C, b: C): C => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const scaled = (a: C, k: number): C => [a[0] * k, a[1] * k];
const polar = (size: number, degrees: number): C => [
  size * Math.cos((degrees * Math.PI) / 180),
  size * Math.sin((degrees * Math.PI) / 180),
];
const size = (a: C): number => Math.hypot(a[0], a[1]);
const TURN: Record<string, number> = { A: 0, B: -120, C: 120 };

export interface PlainSolution {
  readonly settled: boolean;
  /** by load and leg: how many times its impedance's admittance each load is */
  readonly held: readonly number[];
  /** machines at a set output were taken as volts of their own, since their output did not settle */
  readonly outputsHold: boolean;
  /** conductor, or bar of a ground set (`bar g1`) → volts to earth */
  readonly volts: ReadonlyMap<string, C>;
  /** element → letter → amperes; those of a loop of ideal joins are left out */
  readonly amps: ReadonlyMap<string, ReadonlyMap<string, C>>;
}

/** Rows of complex equations and their right sides. */
class Equations {
  readonly re: Float64Array[] = [];
  readonly im: Float64Array[] = [];
  constructor(readonly unknowns: number) {
    for (let i = 0; i < unknowns; i++) {
      this.re.push(new Float64Array(unknowns + 1));
      this.im.push(new Float64Array(unknowns + 1));
    }
  }
  add(row: number, column: number, [re, im]: C): void {
    if (row < 0 || column < 0) return;
    this.re[row]![column]! += re;
    this.im[row]![column]! += im;
  }
  right(row: number, value: C): void {
    if (row >= 0) this.add(row, this.unknowns, value);
  }
  /** Elimination with pivoting, then twice the residual's own solution, for what floats on a nanosiemens. */
  solve(): C[] {
    const { unknowns: n } = this;
    const re = this.re.map((row) => row.slice());
    const im = this.im.map((row) => row.slice());
    const order = re.map((_, i) => i);
    const countFrom = (row: number, from: number) => {
      let count = 0;
      for (let c = from; c < n; c++) if (re[row]![c] !== 0 || im[row]![c] !== 0) count++;
      return count;
    };
    for (let c = 0; c < n; c++) {
      let largest = 0;
      for (let r = c; r < n; r++) largest = Math.max(largest, Math.abs(re[r]![c]!) + Math.abs(im[r]![c]!));
      if (largest === 0) throw new Error("singular");
      let best = -1;
      let fewest = Infinity;
      for (let r = c; r < n; r++) {
        if (Math.abs(re[r]![c]!) + Math.abs(im[r]![c]!) < 0.1 * largest) continue;
        const count = countFrom(r, c);
        if (count < fewest) [best, fewest] = [r, count];
      }
      for (const rows of [re, im]) [rows[c], rows[best]] = [rows[best]!, rows[c]!];
      [order[c], order[best]] = [order[best]!, order[c]!];
      const [pr, pi] = [re[c]!, im[c]!];
      const where: number[] = [];
      for (let k = c + 1; k < n; k++) if (pr[k] !== 0 || pi[k] !== 0) where.push(k);
      const d = pr[c]! ** 2 + pi[c]! ** 2;
      for (let r = c + 1; r < n; r++) {
        const [rr, ri] = [re[r]!, im[r]!];
        if (rr[c] === 0 && ri[c] === 0) continue;
        const fr = (rr[c]! * pr[c]! + ri[c]! * pi[c]!) / d;
        const fi = (ri[c]! * pr[c]! - rr[c]! * pi[c]!) / d;
        rr[c] = fr;
        ri[c] = fi;
        for (const k of where) {
          rr[k]! -= fr * pr[k]! - fi * pi[k]!;
          ri[k]! -= fr * pi[k]! + fi * pr[k]!;
        }
      }
    }
    const sparse = (row: number, from: number, to: number, [r, i]: readonly Float64Array[][]) => {
      const list: (readonly [k: number, value: C])[] = [];
      for (let k = from; k < to; k++)
        if (r![row]![k] !== 0 || i![row]![k] !== 0) list.push([k, [r![row]![k]!, i![row]![k]!]]);
      return list;
    };
    const rowsOf = (from: (row: number) => number, to: (row: number) => number, of: Float64Array[][]) =>
      order.map((_, row) => sparse(row, from(row), to(row), of));
    const lower = rowsOf(
      () => 0,
      (row) => row,
      [re, im],
    );
    const upper = rowsOf(
      (row) => row + 1,
      () => n,
      [re, im],
    );
    const whole = rowsOf(
      () => 0,
      () => n,
      [this.re, this.im],
    );
    const substitute = (right: readonly C[]): C[] => {
      const x: C[] = order.map((it) => right[it]!);
      for (let r = 0; r < n; r++) for (const [k, a] of lower[r]!) x[r] = minus(x[r]!, times(a, x[k]!));
      for (let r = n - 1; r >= 0; r--) {
        for (const [k, a] of upper[r]!) x[r] = minus(x[r]!, times(a, x[k]!));
        const [a, b] = [re[r]![r]!, im[r]![r]!];
        const d = a * a + b * b;
        x[r] = times(x[r]!, [a / d, -b / d]);
      }
      return x;
    };
    const right = this.re.map((row, i): C => [row[n]!, this.im[i]![n]!]);
    let x = substitute(right);
    for (let round = 0; round < 2; round++) {
      const residual = right.map((it, r) =>
        whole[r]!.reduce((left, [k, a]) => minus(left, times(a, x[k]!)), it),
      );
      const more = substitute(residual);
      x = x.map((it, i) => plus(it, more[i]!));
    }
    return x;
  }
}

/** What is written down before it is numbered: `""` is earth; other names are nodes. */
interface Series {
  readonly ends: readonly (readonly [string, string])[];
  readonly z: readonly (readonly C[])[];
  /** V(a) − V(b) = z·I + drop */
  readonly drop: readonly C[];
  /** where each current is counted: element, letter, sign */
  readonly meters: readonly (readonly [string, string, number] | undefined)[];
}
interface Shunt {
  readonly a: string;
  readonly b: string;
  readonly y: () => C;
  readonly meters: readonly (readonly [string, string, number])[];
}
interface Core {
  readonly id: string;
  readonly high: readonly [string, string];
  readonly lows: readonly { ends: readonly [string, string]; ratio: number; z: C }[];
  readonly z: C;
  readonly y: C;
  readonly letters: readonly [string, string];
}
interface Ratio {
  readonly id: string;
  readonly letter: string;
  readonly from: string;
  readonly to: string;
  readonly common: string;
  readonly ratio: number;
}

/** Only some of what drives a drawing, the others' volts at zero, and loads as they were found to be. */
export interface Alone {
  readonly drives: (id: string) => boolean;
  readonly held: readonly number[];
  readonly outputsHold: boolean;
}

/** Solves one drawing. `loadsOff` leaves every load out. */
export function solvePlain(
  plain: Plain,
  nominal: ReadonlyMap<string, number>,
  loadsOff: boolean,
  alone?: Alone,
  outputsHold = alone?.outputsHold ?? false,
): PlainSolution {
  const runs = runsOf(plain);
  const driven = (id: string, volts: C): C => (alone === undefined || alone.drives(id) ? volts : [0, 0]);
  const { elements, points, frequencyHz } = plain;
  const omega = 2 * Math.PI * frequencyHz;
  const conductors = conductorsOf(plain);
  const known = new Set(conductors);
  const ideal = joinsOf(plain, known).filter(([, , id]) => {
    const e = elements[id]!;
    return e.kind !== "span" && e.kind !== "regulator";
  });
  for (const [id, e] of Object.entries(elements)) {
    if (e.kind === "source" && e["earthed"] !== false) ideal.push(["", at(text(e, "at"), "N"), ""]);
    if (e.kind !== "regulator") continue;
    const open = openOf(e);
    for (const it of phasesOf(e))
      if (!open.includes(it) && ratioOf(e, it) === 1)
        ideal.push([at(text(e, "from"), it), at(text(e, "to"), it), id]);
    if (e["neutral"] !== false) ideal.push([at(text(e, "from"), "N"), at(text(e, "to"), "N"), id]);
  }
  const group = groupsOf(["", ...conductors], ideal);
  const earthGroup = group.get("")!;

  const series: Series[] = [];
  const shunts: Shunt[] = [];
  const cores: Core[] = [];
  const ratios: Ratio[] = [];
  const pushes: { to: string; amps: C; meter?: readonly [string, string, number] }[] = [];
  let inner = 0;
  const inside = (): string => `inside ${inner++}`;
  const branch = (a: string, b: string, z: C, meter?: readonly [string, string, number], drop: C = [0, 0]) =>
    series.push({ ends: [[a, b]], z: [[z]], drop: [drop], meters: [meter] });
  const shunt = (a: string, b: string, y: C | (() => C), meters: Shunt["meters"] = []) =>
    shunts.push({ a, b, y: typeof y === "function" ? y : () => y, meters });

  for (const it of conductors) shunt(it, "", [1e-9, 0]);
  for (const [point, { earthOhms }] of Object.entries(points))
    if (earthOhms !== undefined && known.has(at(point, "N"))) branch(at(point, "N"), "", [earthOhms, 0]);

  const bars: [string, string][] = [];
  const models: { y: C; held: number }[] = [];
  const loads: { a: string; b: string; rated: number; model: string; y: C; index: number }[] = [];

  for (const [id, e] of Object.entries(elements)) {
    const here = (letter: string) => at(text(e, "at"), letter);
    const own = phasesOf(e);
    switch (e.kind) {
      case "source": {
        if (!yes(e, "on", true)) break;
        const z1 = (e["z1Ohms"] as C) ?? [0.05, 0.5];
        const z0 = (e["z0Ohms"] as C) ?? [0.05, 0.5];
        const self = scaled(plus(scaled(z1, 2), z0), 1 / 3);
        const mutual = scaled(minus(z0, z1), 1 / 3);
        series.push({
          ends: own.map((it) => [here(it), here("N")]),
          z: own.map((_, i) => own.map((_unused, j) => (i === j ? self : mutual))),
          drop: own.map((it) =>
            driven(id, polar((1000 * num(e, "kvLL")) / ROOT3, num(e, "angleDeg") + TURN[it]!)),
          ),
          meters: own.map((it) => [id, it, 1]),
        });
        break;
      }
      case "contact": {
        const span = elements[text(e, "span")]!;
        for (const it of phasesOf(span))
          for (const end of named(span, "parted").includes(it) ? ["from", "to"] : ["from"])
            branch(
              at(text(span, end), end === "to" ? beyond(span, it) : it),
              "",
              [0.05, 0.5],
              undefined,
              driven(id, [(1000 * num(e, "kvLL")) / ROOT3, 0]),
            );
        break;
      }
      case "span":
        writeSpan(id, e);
        break;
      case "regulator": {
        const open = openOf(e);
        const from = text(e, "from");
        for (const it of own)
          if (!open.includes(it) && ratioOf(e, it) !== 1)
            ratios.push({
              id,
              letter: it,
              from: at(from, it),
              to: at(text(e, "to"), it),
              common: known.has(at(from, "N")) ? at(from, "N") : "",
              ratio: ratioOf(e, it),
            });
        break;
      }
      case "transformer":
      case "threeWinding":
        writeBank(id, e);
        break;
      case "load": {
        if (loadsOff) break;
        const lineToLine =
          e["ratedKv"] === undefined ? nominal.get(text(e, "at"))! : 1000 * num(e, "ratedKv");
        for (const [a, b, rated] of legsOf(e, lineToLine)) {
          const legs = legsOf(e, 1).length;
          // Where nothing says which volts, a load is nothing.
          const y: C =
            rated === 0
              ? [0, 0]
              : [(1000 * num(e, "kw")) / legs / rated ** 2, (-1000 * num(e, "kvar")) / legs / rated ** 2];
          const index = models.push({ y, held: alone?.held[models.length] ?? 1 }) - 1;
          loads.push({ a: here(a), b: here(b), rated, model: text(e, "model", "Z"), y, index });
          shunt(here(a), here(b), () => scaled(y, models[index]!.held), [
            [id, a, 1],
            [id, b, -1],
          ]);
        }
        break;
      }
      case "generator": {
        if (!runs.has(id) && !yes(e, "unknown")) break;
        const volts = num(e, "volts");
        if (runs.get(id) === "following" && !outputsHold) {
          const isSplit = own.some((it) => "12".includes(it));
          const between = own.length === 2 && !isSplit;
          const legs: [string, string][] = between ? [[own[0]!, own[1]!]] : own.map((it) => [it, "N"]);
          const rated = between ? volts : isSplit ? volts / 2 : volts / ROOT3;
          for (const [a, b] of legs) {
            const y: C = [
              (-1000 * num(e, "outputKw")) / legs.length / rated ** 2,
              (1000 * num(e, "outputKvar")) / legs.length / rated ** 2,
            ];
            const index = models.push({ y, held: alone?.held[models.length] ?? 0 }) - 1;
            loads.push({ a: here(a), b: here(b), rated, model: "PQ", y, index });
            shunt(here(a), here(b), () => scaled(y, models[index]!.held), [
              [id, a, 1],
              ...(b === "N" ? [] : [[id, b, -1] as const]),
            ]);
          }
          break;
        }
        const x = ((num(e, "xPercent", 20) / 100) * volts ** 2) / (1000 * num(e, "kva"));
        // An unknown one, where nobody drew a neutral, has a star of its own.
        const star = known.has(here("N")) ? here("N") : inside();
        const leg = (a: string, b: string, emf: C, ohms: number) =>
          series.push({
            ends: [[here(a), b === "N" ? star : here(b)]],
            z: [[[0, ohms]]],
            drop: [driven(id, emf)],
            meters: [[id, a, 1]],
          });
        if (own.some((it) => "12".includes(it)))
          for (const it of own) leg(it, "N", [it === "1" ? volts / 2 : -volts / 2, 0], x / 2);
        else if (own.length === 3) for (const it of own) leg(it, "N", polar(volts / ROOT3, TURN[it]!), x);
        else if (own.length === 2) {
          const between = minus(polar(1, TURN[own[0]!]!), polar(1, TURN[own[1]!]!));
          leg(own[0]!, own[1]!, scaled(between, volts / ROOT3), x);
        } else leg(own[0]!, "N", polar(volts / ROOT3, TURN[own[0]!]!), x / 3);
        break;
      }
      case "capacitor": {
        const legs = legsOf(e, 1000 * num(e, "kvLL"));
        const lifted = new Map(named(e, "open").map((it) => [it, inside()]));
        for (const it of lifted.values()) shunt(it, "", [1e-13, 0]);
        for (const [a, b, rated] of legs)
          shunt(
            lifted.get(a) ?? here(a),
            lifted.get(b) ?? here(b),
            [0, (1000 * num(e, "kvar")) / legs.length / rated ** 2],
            [
              ...(lifted.has(a) ? [] : [[id, a, 1] as const]),
              ...(lifted.has(b) ? [] : [[id, b, -1] as const]),
            ],
          );
        break;
      }
      case "arrester":
        for (const it of named(e, "failed")) branch(here(it), here("N"), [0.01, 0], [id, it, 1]);
        break;
      case "fault": {
        const ohms: C = [num(e, "ohms", 0.01), 0];
        const to = text(e, "to", "neutral");
        if (to === "phases")
          for (const [a, b] of twoLetters(own)) {
            const middle = inside();
            branch(here(a), middle, scaled(ohms, 0.5), [id, a, 1]);
            branch(here(b), middle, scaled(ohms, 0.5), [id, b, 1]);
          }
        else for (const it of own) branch(here(it), to === "earth" ? "" : here("N"), ohms, [id, it, 1]);
        break;
      }
      case "ground": {
        const to = text(e, "to", "neutral");
        const bar = to === "earth" ? `bar ${id}` : here("N");
        bars.push([`bar ${id}`, bar]);
        for (const it of own) branch(here(it), bar, [num(e, "ohms", 0.001), 0], [id, it, 1]);
        if (to !== "neutral") branch(bar, "", [num(e, "earthOhms", 25), 0]);
        break;
      }
      // A person in circuit: what this second implementation puts there to see what goes through.
      case "body":
        branch(text(e, "one"), text(e, "other"), [num(e, "ohms"), 0], [id, "body", 1]);
        break;
    }
  }

  // ——— numbers for the unknowns
  const numbers = new Map<string, number>();
  const node = (name: string): number => {
    const root = group.get(name) ?? name;
    if (root === earthGroup) return -1;
    if (!numbers.has(root)) numbers.set(root, numbers.size);
    return numbers.get(root)!;
  };
  for (const it of conductors) node(it);
  for (const it of series) for (const end of it.ends) end.forEach(node);
  for (const it of shunts) [it.a, it.b].forEach(node);
  for (const it of cores) [it.high, ...it.lows.map(({ ends }) => ends)].forEach((ends) => ends.forEach(node));
  for (const it of ratios) [it.from, it.to, it.common].forEach(node);
  const nodes = numbers.size;
  const total =
    nodes +
    series.reduce((sum, it) => sum + it.ends.length, 0) +
    cores.reduce((sum, it) => sum + 2 + it.lows.length, 0) +
    ratios.length;

  const solveOnce = () => {
    const eq = new Equations(total);
    const one: C = [1, 0];
    const less: C = [-1, 0];
    let next = nodes;
    /** a current from a to b */
    const current = (a: string, b: string, share: C = one): number => {
      const index = next++;
      eq.add(node(a), index, share);
      eq.add(node(b), index, scaled(share, -1));
      return index;
    };
    for (const { a, b, y } of shunts) {
      const [i, j, value] = [node(a), node(b), y()];
      eq.add(i, i, value);
      eq.add(j, j, value);
      eq.add(i, j, scaled(value, -1));
      eq.add(j, i, scaled(value, -1));
    }
    for (const { to, amps } of pushes) eq.right(node(to), amps);
    const seriesAt = series.map(({ ends, z, drop }) => {
      const rows = ends.map(([a, b]) => current(a, b));
      ends.forEach(([a, b], i) => {
        const row = rows[i]!;
        eq.add(row, node(a), one);
        eq.add(row, node(b), less);
        rows.forEach((column, j) => eq.add(row, column, scaled(z[i]![j]!, -1)));
        eq.right(row, drop[i]!);
      });
      return rows;
    });
    const coresAt = cores.map(({ high, lows, z, y }) => {
      const inner_ = next++;
      const main = current(high[0], high[1]);
      // V(high) = z·I + U
      eq.add(main, node(high[0]), one);
      eq.add(main, node(high[1]), less);
      eq.add(main, main, scaled(z, -1));
      eq.add(main, inner_, less);
      // I = y·U + Σ ratio·J
      eq.add(inner_, main, one);
      eq.add(inner_, inner_, scaled(y, -1));
      for (const { ends, ratio, z: own } of lows) {
        // J leaves at ends[0]: V(ends) = ratio·U − z·J
        const j = current(ends[1], ends[0]);
        eq.add(inner_, j, [-ratio, 0]);
        eq.add(j, node(ends[0]), one);
        eq.add(j, node(ends[1]), less);
        eq.add(j, inner_, [-ratio, 0]);
        eq.add(j, j, own);
      }
      return main;
    });
    const ratiosAt = ratios.map(({ from, to, common, ratio }) => {
      const index = next++;
      eq.add(node(to), index, less);
      eq.add(node(from), index, [ratio, 0]);
      eq.add(node(common), index, [1 - ratio, 0]);
      eq.add(index, node(to), one);
      eq.add(index, node(common), [ratio - 1, 0]);
      eq.add(index, node(from), [-ratio, 0]);
      return index;
    });
    const x = eq.solve();
    const voltsAt = (name: string): C => {
      const index = node(name);
      return index < 0 ? [0, 0] : x[index]!;
    };
    return { x, seriesAt, coresAt, ratiosAt, voltsAt };
  };

  let settled = true;
  let result = solveOnce();
  if (alone === undefined && loads.some(({ model }) => model !== "Z")) {
    settled = false;
    // Where a round moves them hardly less than the one before, only a part of each step is taken.
    let [step, before] = [1, Infinity];
    for (let round = 0; round < 100 && !settled; round++) {
      let worst = 0;
      for (const { a, b, rated, model, index } of loads) {
        if (model === "Z" || rated === 0) continue;
        const share = Math.max(size(minus(result.voltsAt(a), result.voltsAt(b))) / rated, 0.7);
        const wanted = model === "I" ? 1 / share : 1 / share ** 2;
        const held = models[index]!.held;
        worst = Math.max(worst, Math.abs(wanted - held));
        models[index]!.held = held + step * (wanted - held);
      }
      if (worst > 0.9 * before) step = Math.max(step / 2, 1 / 16);
      before = worst;
      settled = worst < 1e-9;
      if (!settled) result = solveOnce();
    }
    if (!settled && !outputsHold && [...runs.values()].includes("following"))
      return { ...solvePlain(plain, nominal, loadsOff, undefined, true), settled: false };
    if (!settled) {
      for (const it of models) it.held = 1;
      result = solveOnce();
    }
  }

  // ——— amperes
  const amps = new Map<string, Map<string, C>>();
  /** what leaves each conductor by anything that is not an ideal join */
  const leaving = new Map<string, C>();
  const leave = (name: string, value: C) => leaving.set(name, plus(leaving.get(name) ?? [0, 0], value));
  const count = (id: string, letter: string, value: C) => {
    const own = amps.get(id) ?? new Map<string, C>();
    own.set(letter, plus(own.get(letter) ?? [0, 0], value));
    amps.set(id, own);
  };
  const { x, voltsAt } = result;
  series.forEach(({ ends, meters }, k) =>
    ends.forEach(([a, b], i) => {
      const value = x[result.seriesAt[k]![i]!]!;
      leave(a, value);
      leave(b, scaled(value, -1));
      const meter = meters[i];
      if (meter !== undefined) count(meter[0], meter[1], scaled(value, meter[2]));
    }),
  );
  for (const { a, b, y, meters } of shunts) {
    const value = times(y(), minus(voltsAt(a), voltsAt(b)));
    leave(a, value);
    leave(b, scaled(value, -1));
    for (const [id, letter, sign] of meters) count(id, letter, scaled(value, sign));
  }
  for (const { to, amps: value, meter } of pushes) {
    leave(to, scaled(value, -1));
    if (meter !== undefined) count(meter[0], meter[1], scaled(value, -meter[2]));
  }
  cores.forEach(({ id, high, lows, letters, y }, k) => {
    const value = x[result.coresAt[k]!]!;
    leave(high[0], value);
    leave(high[1], scaled(value, -1));
    if (letters[0] !== "N") count(id, letters[0], value);
    if (letters[1] !== "N" && letters[1] !== "*") count(id, letters[1], scaled(value, -1));
    lows.forEach(({ ends }, i) => {
      const own = x[result.coresAt[k]! + 1 + i]!;
      leave(ends[0], scaled(own, -1));
      leave(ends[1], own);
    });
    void y;
  });
  ratios.forEach(({ id, letter, from, to, common, ratio }, k) => {
    const value = x[result.ratiosAt[k]!]!;
    leave(to, scaled(value, -1));
    leave(from, scaled(value, ratio));
    leave(common, scaled(value, 1 - ratio));
    count(id, letter, scaled(value, ratio));
    if (common !== "") count(id, "N", scaled(value, 1 - ratio));
  });
  // An ideal join that is the only way between two sides carries what one side lacks.
  for (const [index, [a, b, id]] of ideal.entries()) {
    if (id === "" || isBank(elements[id]!)) continue;
    const side = new Set<string>([a]);
    for (let again = true; again;) {
      again = false;
      ideal.forEach(([p, q], other) => {
        if (other === index || side.has(p) === side.has(q)) return;
        side.add(p).add(q);
        again = true;
      });
    }
    if (side.has(b)) {
      count(id, a.split("/")[1]!, [NaN, NaN]);
      continue;
    }
    const earthSide = side.has("");
    let into: C = [0, 0];
    if (!earthSide) for (const it of side) into = minus(into, leaving.get(it) ?? [0, 0]);
    else {
      const far = new Set<string>([b]);
      for (let again = true; again;) {
        again = false;
        ideal.forEach(([p, q], other) => {
          if (other === index || far.has(p) === far.has(q)) return;
          far.add(p).add(q);
          again = true;
        });
      }
      for (const it of far) into = plus(into, leaving.get(it) ?? [0, 0]);
    }
    const letter = a.split("/")[1]!;
    const e = elements[id]!;
    // Into `from`: only a join that touches it counts.
    if (a.split("/")[0] === text(e, "from")) count(id, letter, into);
  }
  return {
    settled,
    held: models.map(({ held }) => held),
    outputsHold,
    volts: new Map([
      ...conductors.map((it): [string, C] => [it, voltsAt(it)]),
      ...bars.map(([name, bar]): [string, C] => [name, voltsAt(bar)]),
    ]),
    amps,
  };

  function writeSpan(id: string, e: Record_): void {
    const own = phasesOf(e);
    const letters = e["neutral"] === false ? own : [...own, "N"];
    const length = num(e, "lengthM", 50);
    const parted = named(e, "parted");
    const near = (it: string) => at(text(e, "from"), it);
    const far = (it: string) => at(text(e, "to"), beyond(e, it));
    const construction = text(e, "construction", "overhead");
    if (letters.includes("N") && num(e, "rodsPerKm") > 0)
      for (const end of [near, far])
        shunt(
          end("N"),
          "",
          [(num(e, "rodsPerKm") * length) / 1000 / num(e, "rodOhms", 25) / 2, 0],
          end === near ? [[id, "N", 1]] : [],
        );
    const wires = wiresOf(
      letters,
      construction,
      e["conductor"] as string | undefined,
      e["neutralConductor"] as string | undefined,
    );
    const explicitZ = e["zOhmsPerKm"] as C[][] | undefined;
    const explicitB = e["bMicroSPerKm"] as number[][] | undefined;
    let drop: C[] = letters.map(() => [0, 0]);
    for (const [beside, nearby] of Object.entries(elements)) {
      if (alone !== undefined && !alone.drives(beside)) continue;
      if (nearby.kind !== "nearby" || nearby["span"] !== id || !yes(nearby, "on", true)) continue;
      if (nearby["relation"] === "crossing") continue;
      const { pushed, induced } = alongside(nearby, e, letters, wires);
      drop = drop.map((it, i) => plus(it, induced[i]!));
      letters.forEach((it, i) => {
        pushes.push({ to: near(it), amps: scaled(pushed[i]!, 0.5), meter: [id, it, 1] });
        pushes.push({ to: far(it), amps: scaled(pushed[i]!, 0.5) });
      });
    }
    const cable = construction === "cable";
    if (explicitB !== undefined || !cable) {
      const b =
        explicitB?.map((row) => row.map((it) => (it * 1e-6 * length) / 2000)) ??
        maxwellOf(wires).map((row) => row.map((it) => (it * omega * length) / 2));
      for (const [end, metered] of [
        [near, true],
        [far, false],
      ] as const)
        letters.forEach((it, i) => {
          const toEarth = b[i]!.reduce((sum, value) => sum + value, 0);
          shunt(end(it), "", [0, toEarth], metered ? [[id, it, 1]] : []);
          for (let j = 0; j < i; j++)
            shunt(
              end(it),
              end(letters[j]!),
              [0, -b[i]![j]!],
              metered
                ? [
                    [id, it, 1],
                    [id, letters[j]!, -1],
                  ]
                : [],
            );
        });
    } else
      for (const it of own)
        for (const [end, metered] of [
          [near, true],
          [far, false],
        ] as const)
          shunt(
            end(it),
            letters.includes("N") ? end("N") : "",
            [0, (omega * CABLE_FARAD_PER_M * length) / 2],
            metered ? [[id, it, 1], ...(letters.includes("N") ? [[id, "N", -1] as const] : [])] : [],
          );
    if (explicitZ === undefined && cable) {
      const n = own.length;
      const lanes = [...Array(2 * n).keys()].filter((k) => k >= n || !parted.includes(own[k]!));
      const z = cableSeriesOf(n, frequencyHz);
      const loose = parted.includes("N") ? inside() : undefined;
      const bond = (of: (it: string) => string) => (letters.includes("N") ? of("N") : "");
      series.push({
        ends: lanes.map((k) => (k < n ? [near(own[k]!), far(own[k]!)] : [bond(near), loose ?? bond(far)])),
        z: lanes.map((i) => lanes.map((j) => scaled(z[i]![j]!, length))),
        drop: lanes.map((k) => (k < n ? drop[k]! : letters.includes("N") ? drop.at(-1)! : [0, 0])),
        meters: lanes.map((k) =>
          k < n ? [id, own[k]!, 1] : letters.includes("N") ? [id, "N", 1] : undefined,
        ),
      });
      return;
    }
    const z = explicitZ?.map((row) => row.map((it) => scaled(it, 1e-3))) ?? seriesOf(wires, frequencyHz);
    const whole = letters.map((_, i) => i).filter((i) => !parted.includes(letters[i]!));
    series.push({
      ends: whole.map((i) => [near(letters[i]!), far(letters[i]!)]),
      z: whole.map((i) => whole.map((j) => scaled(z[i]![j]!, length))),
      drop: whole.map((i) => drop[i]!),
      meters: whole.map((i) => [id, letters[i]!, 1]),
    });
  }

  function alongside(
    nearby: Record_,
    span: Record_,
    letters: readonly string[],
    wires: readonly { x: number; y: number; radius: number }[],
  ): { pushed: C[]; induced: C[] } {
    const places = placesOf(letters).filter((_, i) => letters[i] !== "N");
    const outward = places.at(-1)![0] < places[0]![0] ? -1 : 1;
    const spacing = num(nearby, "spacingM");
    const above = nearby["relation"] === "underbuild";
    const nearest = [...places].sort((p, q) => (above ? q[1] - p[1] : (q[0] - p[0]) * outward))[0]!;
    const live = [0, 1, 2].map((k) => ({
      x: nearest[0] + (above ? 0 : outward * spacing) + outward * 0.9 * k,
      y: nearest[1] + (above ? spacing : 0),
      radius: 0.0055,
    }));
    const c = maxwellOf([...wires, ...live]);
    const length = num(nearby, "lengthM", num(span, "lengthM", 50));
    const sum = (list: readonly C[]) => list.reduce(plus, [0, 0] as C);
    return {
      pushed: wires.map((_, i) =>
        sum(
          live.map((_unused, k) =>
            times(
              [0, -omega * length * c[i]![wires.length + k]!],
              polar((1000 * num(nearby, "kvLL")) / ROOT3, -120 * k),
            ),
          ),
        ),
      ),
      induced: wires.map(({ x: wx, y: wy }) =>
        sum(
          live.map((it, k) =>
            times(
              scaled(mutualOf(Math.hypot(wx - it.x, wy - it.y), frequencyHz), length),
              polar(num(nearby, "amps"), -120 * k),
            ),
          ),
        ),
      ),
    };
  }

  function writeBank(id: string, t: Record_): void {
    const units = unitsOf(t);
    const kva = num(t, "kva") / units.length;
    const row = [...transformers.rows].sort((p, q) => Math.abs(p.kva - kva) - Math.abs(q.kva - kva))[0]!;
    const percent: C = [num(t, "rPercent", row.percentR), num(t, "xPercent", row.percentX)];
    // Any two windings have between them what was measured; of two windings each has half.
    const pair = (of: string): C => [
      num(t, `r${of}Percent`, percent[0]),
      num(t, `x${of}Percent`, percent[1]),
    ];
    const [ps, pt, st] = [percent, pair("Third"), pair("Between")];
    const total = (list: readonly C[]): C => list.reduce(plus, [0, 0] as C);
    const own: C[] =
      t.kind === "threeWinding"
        ? [total([ps, pt, scaled(st, -1)]), total([ps, st, scaled(pt, -1)]), total([pt, st, scaled(ps, -1)])]
        : [percent, percent];
    const ohms = (side: number, volts: number): C =>
      scaled(own[side]!, (0.5 / 100) * (volts ** 2 / (1000 * kva)));
    const ends = ["from", "to", "alt"];
    const stars = ends.map(() => inside());
    const place = (side: number, it: string) => (it === "*" ? stars[side]! : at(text(t, ends[side]!), it));
    const high = (it: string) => place(0, it);
    starsOf(id, t).forEach(({ point, ohms: z }, k) => {
      if (point === undefined || z === undefined) return;
      const square = z[0] ** 2 + z[1] ** 2;
      shunt(stars[k]!, at(point, "N"), [z[0] / square, -z[1] / square]);
    });
    for (const unit of units) {
      const { high: h, highVolts } = unit;
      const exciting = ((num(t, "excitingPercent", 0.5) / 100) * kva * 1000) / highVolts ** 2;
      const loss = ((num(t, "coreLossPercent") / 100) * kva * 1000) / highVolts ** 2;
      cores.push({
        id,
        high: [high(h[0]), high(h[1])],
        letters: h,
        z: ohms(0, highVolts),
        y: [loss, -exciting],
        lows: unit.lows.flatMap(({ low: l, centre, lowVolts }, nth) => {
          const low = (it: string) => place(nth + 1, it);
          const share = (of: readonly [string, string], part: number) => ({
            ends: of,
            ratio: (part * lowVolts) / highVolts,
            z: scaled(ohms(nth + 1, lowVolts), part),
          });
          return centre
            ? [share([low(l[0]), low("N")], 0.5), share([low("N"), low(l[1])], 0.5)]
            : [share([low(l[0]), low(l[1])], 1)];
        }),
      });
    }
  }
}

const ratioOf = (regulator: Record_, letter: string): number =>
  yes(regulator, "bypassed")
    ? 1
    : 1 + 0.00625 * ((regulator["taps"] as Record<string, number> | undefined)?.[letter] ?? 0);

/** Legs of a wye or a delta, and rated volts across each. */
function legsOf(e: Record_, lineToLine: number): [string, string, number][] {
  const own = phasesOf(e);
  if (text(e, "connection", "wye") === "delta") return twoLetters(own).map(([a, b]) => [a, b, lineToLine]);
  const secondary = own.some((it) => "12".includes(it));
  return own.map((it) => [it, "N", secondary ? lineToLine / 2 : lineToLine / ROOT3]);
}
