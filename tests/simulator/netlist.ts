/**
 * A netlist for a general-purpose circuit simulator, written from a document and the file format's page: a second
 * implementation, which shares nothing with the devices' parts or with `src/core/phasor`.
 *
 * Closed devices have no impedance, so the conductors that they join are one node here. Transformers are ideal pairs of
 * controlled sources with their leakage around them. A matrix is inductors with their couplings, and the mutual
 * resistances are voltages steered by the other conductors' currents.
 */
import { beyond, type Plain, runsOf, type Unit, unitsOf } from "../secondOpinion/plain";
import transformers from "../../shared/reference/transformers.json";
import {
  CABLE_FARAD_PER_M,
  cableSeriesOf,
  maxwellOf,
  mutualOf,
  type Ohms,
  placesOf,
  seriesOf,
  wiresOf,
} from "./line";

export type Element = { readonly kind: string; readonly [key: string]: unknown };

export interface Drawing {
  readonly frequencyHz: number;
  readonly points: Readonly<Record<string, { readonly earthOhms?: number }>>;
  readonly elements: Readonly<Record<string, Element>>;
}

export interface NetlistOptions {
  /** put before every name, so that several drawings fit into one netlist */
  readonly prefix: string;
  /** line to line at a point (leg to leg on a split secondary), as who drew it knows [V] */
  readonly nominalVolts: (point: string) => number;
  /**
   * Volts between two conductors in the solution under test. The simulator has no constant-current or constant-power
   * loads: each stands as the impedance that the model is at these volts, so that a solution is confirmed or not. Undefined
   * where the models did not settle: then all loads are impedances.
   */
  readonly volts: ((plus: string, minus: string) => Ohms) | undefined;
}

export interface Netlist {
  readonly lines: readonly string[];
  /** the simulator's node of each conductor; `0` for one that is ideally earthed */
  readonly nodeOf: ReadonlyMap<string, string>;
}

const ROOT3 = Math.sqrt(3);
const SWITCHES = [
  "clamp",
  "cutout",
  "disconnect",
  "recloser",
  "breaker",
  "sectionalizer",
  "elbow",
  "meter",
  "main",
];
const TWO_ENDED = ["span", "lead", "transfer", "regulator", ...SWITCHES];

const text = (element: Element, key: string, fallback = ""): string => (element[key] as string) ?? fallback;
const number = (element: Element, key: string, fallback = 0): number => (element[key] as number) ?? fallback;
const phasesOf = (element: Element): string => text(element, "phases");
/** Phases that a key names: all of the element's own where it says `true`. */
const named = (element: Element, key: string): string =>
  element[key] === true ? phasesOf(element) : element[key] === undefined ? "" : (element[key] as string);

const usesPrimaryNeutral = (t: Element): boolean =>
  t["connection"] === "single"
    ? phasesOf(t).length === 1
    : ["Yg-Yg", "Yg-D", "Yg-Y", "openY-openD"].includes(text(t, "connection"));
const usesSecondaryNeutral = (t: Element): boolean =>
  ["single", "Yg-Yg", "D-Yg"].includes(text(t, "connection")) || t["midTap"] !== undefined;
const secondaryPhases = (t: Element): string => {
  if (t["connection"] !== "single") return "ABC";
  return text(t, "secondary", "split") === "split" ? "12" : phasesOf(t)[0]!;
};

/** The conductors of every point, by the format's rules of who brings which. */
function conductorsOf({ points, elements }: Drawing): Set<string> {
  const brought = new Set<string>();
  const bring = (point: unknown, letters: string) => {
    for (const letter of letters) brought.add(`${point as string}/${letter}`);
  };
  for (const element of Object.values(elements)) {
    const { kind } = element;
    const phases = phasesOf(element);
    if (TWO_ENDED.includes(kind))
      for (const end of ["from", "alt", "to"])
        if (element[end] !== undefined)
          bring(element[end], element["neutral"] === false ? phases : `${phases}N`);
    if (kind === "transformer") {
      bring(element["from"], usesPrimaryNeutral(element) ? `${phases}N` : phases);
      bring(element["to"], `${secondaryPhases(element)}${usesSecondaryNeutral(element) ? "N" : ""}`);
    }
    if (kind === "threeWinding") {
      const sides = text(element, "connection").split("-");
      const single = sides.length === 1;
      const [{ high, lows }] = unitsOf(element as never) as [Unit];
      bring(element["from"], single ? high.join("") : sides[0] === "Yg" ? "ABCN" : "ABC");
      for (const [nth, { end, low, centre }] of lows.entries())
        bring(
          element[end],
          single ? (centre ? "12N" : low.join("")) : sides[nth + 1] === "Yg" ? "ABCN" : "ABC",
        );
    }
    if (kind === "source") bring(element["at"], `${phases}N`);
    if (kind === "generator" && !/^[ABC]{2}$/.test(phasesOf(element))) bring(element["at"], "N");
    if ((kind === "load" || kind === "capacitor") && text(element, "connection", "wye") === "wye")
      bring(element["at"], "N");
  }
  return new Set([...brought].filter((it) => it.split("/")[0]! in points));
}

/** Angles of the letters, and of the difference of two of them. */
const DEGREES: Readonly<Record<string, number>> = { A: 0, B: -120, C: 120 };
const BETWEEN: Readonly<Record<string, number>> = { AB: 30, BC: -90, AC: -30 };

/** Which winding of the high side shares a core with which of the low side, by the format's own table. */
const PAIRS: Readonly<Record<string, readonly (readonly [primary: string, secondary: string])[]>> = {
  "Yg-Yg": [
    ["A*", "A*"],
    ["B*", "B*"],
    ["C*", "C*"],
  ],
  "D-Yg down": [
    ["AC", "A*"],
    ["BA", "B*"],
    ["CB", "C*"],
  ],
  "D-Yg up": [
    ["AB", "A*"],
    ["BC", "B*"],
    ["CA", "C*"],
  ],
  "Y-D down": [
    ["A*", "AB"],
    ["B*", "BC"],
    ["C*", "CA"],
  ],
  "Y-D up": [
    ["A*", "AC"],
    ["B*", "BA"],
    ["C*", "CB"],
  ],
  "D-D": [
    ["AB", "AB"],
    ["BC", "BC"],
    ["CA", "CA"],
  ],
};

function pairsOf(t: Element): readonly (readonly [string, string])[] {
  const connection = text(t, "connection");
  const up = number(t, "secondaryV") > 1000 * number(t, "primaryKv") ? "up" : "down";
  const key =
    connection === "D-Yg"
      ? `D-Yg ${up}`
      : ["Y-D", "Yg-D", "openY-openD"].includes(connection)
        ? `Y-D ${up}`
        : connection.startsWith("Y")
          ? "Yg-Yg"
          : connection;
  const all = PAIRS[key]!;
  return connection === "openY-openD" ? all.filter(([primary]) => phasesOf(t).includes(primary[0]!)) : all;
}

export function netlistOf(drawing: Drawing, { prefix, nominalVolts, volts }: NetlistOptions): Netlist {
  const { frequencyHz, points, elements } = drawing;
  const omega = 2 * Math.PI * frequencyHz;
  const conductors = conductorsOf(drawing);
  const runs = runsOf(drawing as Plain);
  const has = (point: string, letter: string) => conductors.has(`${point}/${letter}`);

  // ——— ideal joins: conductors that are one node
  const parent = new Map<string, string>();
  const find = (it: string): string => {
    let root = it;
    while (parent.has(root)) root = parent.get(root)!;
    return root;
  };
  const join = (a: string, b: string) => {
    const [rootA, rootB] = [find(a), find(b)];
    if (rootA === rootB) return;
    if (rootA === "earth") parent.set(rootB, rootA);
    else parent.set(rootA, rootB);
  };
  const isPlain = (r: Element, letter: string) =>
    r["bypassed"] === true || ((r["taps"] as Record<string, number>)?.[letter] ?? 0) === 0;
  for (const element of Object.values(elements)) {
    const { kind } = element;
    const phases = phasesOf(element);
    const [from, to, alt] = [text(element, "from"), text(element, "to"), text(element, "alt")];
    const through = (letters: string, near = from, far = to) => {
      for (const letter of letters)
        join(`${near}/${letter}`, `${far}/${far === to ? beyond(element, letter) : letter}`);
    };
    const neutral = element["neutral"] !== false;
    if (SWITCHES.includes(kind)) {
      const open = named(element, "open") + named(element, "blown") + named(element, "removed");
      through([...phases].filter((it) => !open.includes(it)).join(""));
      if (neutral) through("N");
    }
    if (kind === "lead") {
      const cut = named(element, "cut");
      through([...phases, ...(neutral ? "N" : "")].filter((it) => !cut.includes(it)).join(""));
    }
    if (kind === "transfer") {
      const bridged = element["bridged"] === true;
      const position = text(element, "position", "utility");
      if (bridged || position === "utility") through(phases);
      if (bridged || position === "generator") through(phases, alt);
      if (neutral) {
        through("N");
        through("N", alt);
      }
    }
    if (kind === "regulator") {
      const open = element["bypassed"] === true ? "" : named(element, "open");
      through([...phases].filter((it) => !open.includes(it) && isPlain(element, it)).join(""));
      if (neutral) through("N");
    }
    if (kind === "transformer" && neutral && has(from, "N") && has(to, "N")) through("N");
    if (kind === "threeWinding" && neutral)
      for (const end of [to, alt]) if (has(from, "N") && has(end, "N")) through("N", from, end);
    if (kind === "source" && element["earthed"] !== false) join(`${text(element, "at")}/N`, "earth");
  }

  // ——— nodes and parts of the netlist
  const names = new Map<string, string>();
  const node = (conductor: string): string => {
    const root = find(conductor);
    if (root === "earth") return "0";
    const known = names.get(root);
    if (known !== undefined) return known;
    const fresh = `${prefix}n${names.size}`;
    names.set(root, fresh);
    return fresh;
  };
  const lines: string[] = [];
  let serial = 0;
  const part = (letter: string, rest: string): string => {
    const name = `${letter}${prefix}${serial++}`;
    lines.push(`${name} ${rest}`);
    return name;
  };
  const inside = (): string => `${prefix}m${serial++}`;
  const resistor = (a: string, b: string, ohms: number) => {
    if (a !== b) part("R", `${a} ${b} ${ohms}`);
  };
  const inductor = (a: string, b: string, ohms: number) => part("L", `${a} ${b} ${ohms / omega}`);
  const capacitor = (a: string, b: string, siemens: number) => {
    if (a !== b && siemens !== 0) part("C", `${a} ${b} ${siemens / omega}`);
  };
  const ammeter = (a: string, b: string) => part("V", `${a} ${b} DC 0 AC 0`);
  const emf = (plus: string, minus: string, [magnitude, degrees]: readonly [number, number]) =>
    part("V", `${plus} ${minus} DC 0 AC ${magnitude} ${degrees}`);
  /** An impedance in series, a piece of wire where it has none. */
  const impedance = (a: string, b: string, [r, x]: Ohms) => {
    const middle = r !== 0 && x !== 0 ? inside() : b;
    if (r !== 0) resistor(a, middle, r);
    if (x !== 0) inductor(r === 0 ? a : middle, b, x);
    if (r === 0 && x === 0) ammeter(a, b);
  };
  /** An admittance between two nodes, as its two parts beside each other. */
  const admittance = (a: string, b: string, [g, minusB]: Ohms) => {
    if (a === b) return;
    if (g !== 0) resistor(a, b, 1 / g);
    if (minusB < 0) inductor(a, b, -1 / minusB);
    if (minusB > 0) capacitor(a, b, minusB);
  };
  /** Coupled conductors with an impedance matrix, and volts in series with each where something induces them. */
  const coupled = (
    from: readonly string[],
    to: readonly string[],
    z: readonly (readonly Ohms[])[],
    induced: readonly Ohms[] = [],
  ) => {
    const metered = from.map((a) => ({ a, inner: inside() }));
    const meters = metered.map(({ a, inner }) => ammeter(a, inner));
    const coils = from.map((_, i) => {
      let at = metered[i]!.inner;
      const step = () => (at = inside());
      const before = () => at;
      if (z[i]![i]![0] !== 0) {
        const near = before();
        resistor(near, step(), z[i]![i]![0]);
      }
      from.forEach((_unused, j) => {
        if (i === j || z[i]![j]![0] === 0) return;
        const near = before();
        part("H", `${near} ${step()} ${meters[j]!} ${z[i]![j]![0]}`);
      });
      const drop = induced[i];
      if (drop !== undefined && Math.hypot(...drop) > 0) {
        const near = before();
        emf(near, step(), polar(drop));
      }
      return inductor(at, to[i]!, z[i]![i]![1]);
    });
    coils.forEach((a, i) =>
      coils.slice(0, i).forEach((b, j) => {
        const k = z[i]![j]![1] / Math.sqrt(z[i]![i]![1] * z[j]![j]![1]);
        if (k !== 0) part("K", `${a} ${b} ${k}`);
      }),
    );
  };
  /** Capacitors that make a nodal matrix of susceptances. */
  const susceptances = (at: readonly string[], b: readonly (readonly number[])[]) =>
    at.forEach((near, i) => {
      const toEarth = b[i]!.reduce((sum, it) => sum + it, 0);
      if (Math.abs(toEarth) > 1e-9 * b[i]![i]!) capacitor(near, "0", toEarth);
      at.slice(0, i).forEach((far, j) => capacitor(near, far, -b[i]![j]!));
    });

  const winding = (
    [plus, minus]: readonly [string, string],
    primaryVolts: number,
    primaryOhms: Ohms,
    secondaries: readonly { ends: readonly [string, string]; volts: number; ohms: Ohms }[],
    excitingVa: number,
    coreWatts: number,
  ) => {
    const core = inside();
    impedance(plus, core, primaryOhms);
    if (excitingVa > 0) inductor(core, minus, primaryVolts ** 2 / excitingVa);
    if (coreWatts > 0) resistor(core, minus, primaryVolts ** 2 / coreWatts);
    for (const { ends, volts: own, ohms } of secondaries) {
      const ratio = own / primaryVolts;
      const [top, metered] = [inside(), inside()];
      part("E", `${top} ${ends[1]} ${core} ${minus} ${ratio}`);
      const meter = ammeter(top, metered);
      part("F", `${core} ${minus} ${meter} ${ratio}`);
      impedance(metered, ends[0], ohms);
    }
  };

  for (const conductor of conductors) resistor(node(conductor), "0", 1e9);
  for (const [point, { earthOhms }] of Object.entries(points))
    if (earthOhms !== undefined && has(point, "N")) resistor(node(`${point}/N`), "0", earthOhms);

  const nearbyOf = (span: string) =>
    Object.values(elements).filter(
      (it) =>
        it.kind === "nearby" && it["span"] === span && it["on"] !== false && it["relation"] !== "crossing",
    );

  for (const [id, element] of Object.entries(elements)) {
    const phases = phasesOf(element);
    const at = text(element, "at");
    const here = (letter: string) => node(`${at}/${letter}`);
    switch (element.kind) {
      case "source":
        if (element["on"] !== false) writeSource(element, here);
        break;
      case "span":
        writeSpan(id, element);
        break;
      case "regulator":
        writeRegulator(element);
        break;
      case "transformer":
        writeTransformer(element);
        break;
      case "threeWinding":
        writeThreeWinding(element);
        break;
      case "load":
        writeLoad(element, here);
        break;
      case "generator":
        if (runs.get(id) === "following" && volts !== undefined) writeOutput(element, here);
        else if (runs.has(id)) writeGenerator(element, here);
        break;
      case "capacitor":
        writeCapacitor(element, here);
        break;
      case "arrester":
        for (const letter of named(element, "failed")) resistor(here(letter), here("N"), 0.01);
        break;
      case "fault": {
        const ohms = number(element, "ohms", 0.01);
        const to = text(element, "to", "neutral");
        if (to === "phases") for (const [a, b] of pairs(phases)) resistor(here(a), here(b), ohms);
        else for (const letter of phases) resistor(here(letter), to === "earth" ? "0" : here("N"), ohms);
        break;
      }
      case "ground": {
        const to = text(element, "to", "neutral");
        const bar = to === "earth" ? inside() : here("N");
        for (const letter of phases) resistor(here(letter), bar, number(element, "ohms", 0.001));
        if (to !== "neutral") resistor(bar, "0", number(element, "earthOhms", 25));
        break;
      }
    }
  }
  return { lines, nodeOf: new Map([...conductors].map((it) => [it, node(it)])) };

  function writeSource(element: Element, here: (letter: string) => string): void {
    const letters = [...phasesOf(element)];
    const z1 = (element["z1Ohms"] as Ohms) ?? [0.05, 0.5];
    const z0 = (element["z0Ohms"] as Ohms) ?? [0.05, 0.5];
    const own: Ohms = [(z0[0] + 2 * z1[0]) / 3, (z0[1] + 2 * z1[1]) / 3];
    const mutual: Ohms = [(z0[0] - z1[0]) / 3, (z0[1] - z1[1]) / 3];
    const behind = letters.map((letter) => {
      const top = inside();
      const turned = { A: 0, B: -120, C: 120 }[letter]!;
      const volts = (1000 * number(element, "kvLL")) / ROOT3;
      emf(top, here("N"), [volts, number(element, "angleDeg") + turned]);
      return top;
    });
    coupled(
      behind,
      letters.map(here),
      letters.map((_, i) => letters.map((_unused, j) => (i === j ? own : mutual))),
    );
  }

  function writeSpan(id: string, element: Element): void {
    const letters = [...phasesOf(element), ...(element["neutral"] === false ? "" : "N")];
    const [from, to] = [text(element, "from"), text(element, "to")];
    const construction = text(element, "construction", "overhead");
    const length = number(element, "lengthM", 50);
    const parted = named(element, "parted");
    const near = (letter: string) => node(`${from}/${letter}`);
    const far = (letter: string) => node(`${to}/${beyond(element, letter)}`);
    const explicitZ = element["zOhmsPerKm"] as Ohms[][] | undefined;
    const explicitB = element["bMicroSPerKm"] as number[][] | undefined;
    const wires = wiresOf(
      letters,
      construction,
      element["conductor"] as string | undefined,
      element["neutralConductor"] as string | undefined,
    );
    const isCable = construction === "cable";

    const alongside = nearbyOf(id).map((it) => coupling(it, element, letters, wires));
    const induced = letters.map((_, i) => sumOf(alongside.map((it) => it.induced[i]!)));
    letters.forEach((letter, i) => {
      const amps = sumOf(alongside.map((it) => it.pushed[i]!));
      if (Math.hypot(...amps) === 0) return;
      const [magnitude, degrees] = polar([amps[0] / 2, amps[1] / 2]);
      for (const end of [near(letter), far(letter)])
        if (end !== "0") part("I", `0 ${end} DC 0 AC ${magnitude} ${degrees}`);
    });

    // Shunt: half at each end, also of what is parted.
    if (explicitB !== undefined || !isCable) {
      const b =
        explicitB?.map((row) => row.map((it) => (it * 1e-6 * length) / 1000 / 2)) ??
        maxwellOf(wires).map((row) => row.map((it) => (it * omega * length) / 2));
      susceptances(letters.map(near), b);
      susceptances(letters.map(far), b);
    } else
      for (const letter of phasesOf(element))
        for (const end of [near, far])
          capacitor(
            end(letter),
            letters.includes("N") ? end("N") : "0",
            (omega * CABLE_FARAD_PER_M * length) / 2,
          );

    // Series: only what is whole carries current.
    const whole = letters.map((_, i) => i).filter((i) => !parted.includes(letters[i]!));
    if (explicitZ === undefined && isCable) {
      // Each cable's own neutral stands here by itself, bonded to the others (or to earth) at both ends. The file has them
      // as one conductor: where that is parted, they stay bonded to each other on both sides of the gap.
      const count = phasesOf(element).length;
      const lanes = [...Array(2 * count).keys()].filter(
        (lane) => lane >= count || !parted.includes(letters[lane]!),
      );
      const z = cableSeriesOf(count, frequencyHz);
      const loose = parted.includes("N") ? inside() : undefined;
      const bond = (of: (letter: string) => string) => (letters.includes("N") ? of("N") : "0");
      const end = (of: (letter: string) => string, lane: number) =>
        lane < count ? of(letters[lane]!) : of === far ? (loose ?? bond(of)) : bond(of);
      coupled(
        lanes.map((lane) => end(near, lane)),
        lanes.map((lane) => end(far, lane)),
        lanes.map((i) => lanes.map((j) => [z[i]![j]![0] * length, z[i]![j]![1] * length])),
      );
      return;
    }
    const z =
      explicitZ?.map((row) => row.map(([r, x]): Ohms => [r / 1000, x / 1000])) ??
      seriesOf(wires, frequencyHz);
    coupled(
      whole.map((i) => near(letters[i]!)),
      whole.map((i) => far(letters[i]!)),
      whole.map((i) => whole.map((j): Ohms => [z[i]![j]![0] * length, z[i]![j]![1] * length])),
      whole.map((i) => induced[i]!),
    );
  }

  function coupling(
    nearby: Element,
    span: Element,
    letters: readonly string[],
    wires: readonly { x: number; y: number; radius: number }[],
  ): { pushed: Ohms[]; induced: Ohms[] } {
    const places = placesOf(letters).filter((_, i) => letters[i] !== "N");
    const outward = places.at(-1)![0] < places[0]![0] ? -1 : 1;
    const spacing = number(nearby, "spacingM");
    const nearest =
      nearby["relation"] === "underbuild"
        ? places.reduce((best, it) => (it[1] > best[1] ? it : best))
        : places.reduce((best, it) => (it[0] * outward > best[0] * outward ? it : best));
    const first =
      nearby["relation"] === "underbuild"
        ? [nearest[0], nearest[1] + spacing]
        : [nearest[0] + outward * spacing, nearest[1]];
    const live = [0, 1, 2].map((k) => ({ x: first[0]! + outward * 0.9 * k, y: first[1]!, radius: 0.0055 }));
    const c = maxwellOf([...wires, ...live]);
    const length = number(nearby, "lengthM", number(span, "lengthM", 50));
    const turned = [0, -120, 120].map((it) => (it * Math.PI) / 180);
    const phaseVolts = (1000 * number(nearby, "kvLL")) / ROOT3;
    const amps = number(nearby, "amps");
    return {
      // −jωC V, C negative between the two circuits
      pushed: wires.map((_, i) =>
        sumOf(
          turned.map((angle, k): Ohms => {
            const s = -omega * length * c[i]![wires.length + k]! * phaseVolts;
            return [-s * Math.sin(angle), s * Math.cos(angle)];
          }),
        ),
      ),
      induced: wires.map(({ x, y }) =>
        sumOf(
          turned.map((angle, k): Ohms => {
            const [r, reactance] = mutualOf(Math.hypot(x - live[k]!.x, y - live[k]!.y), frequencyHz);
            const [re, im] = [amps * length * Math.cos(angle), amps * length * Math.sin(angle)];
            return [r * re - reactance * im, r * im + reactance * re];
          }),
        ),
      ),
    };
  }

  function writeRegulator(element: Element): void {
    const [from, to] = [text(element, "from"), text(element, "to")];
    const common = has(from, "N") ? node(`${from}/N`) : "0";
    const open = named(element, "open");
    for (const letter of phasesOf(element)) {
      if (isPlain(element, letter) || open.includes(letter)) continue;
      const ratio = 1 + 0.00625 * (element["taps"] as Record<string, number>)[letter]!;
      const top = inside();
      part("E", `${top} ${common} ${node(`${from}/${letter}`)} ${common} ${ratio}`);
      const meter = ammeter(top, node(`${to}/${letter}`));
      part("F", `${node(`${from}/${letter}`)} ${common} ${meter} ${ratio}`);
    }
  }

  function writeTransformer(t: Element): void {
    const [from, to] = [text(t, "from"), text(t, "to")];
    const connection = text(t, "connection");
    const units = connection === "single" ? 1 : connection === "openY-openD" ? phasesOf(t).length : 3;
    const unitKva = number(t, "kva") / units;
    const row = transformers.rows.reduce((best, it) =>
      Math.abs(it.kva - unitKva) < Math.abs(best.kva - unitKva) ? it : best,
    );
    const percent = [number(t, "rPercent", row.percentR), number(t, "xPercent", row.percentX)] as const;
    /** half of the leakage on this side's own volts, and a part of that */
    const halfOn = (own: number, share = 1): Ohms => {
      const base = (own * own) / (unitKva * 1000);
      return [(share * 0.5 * percent[0] * base) / 100, (share * 0.5 * percent[1] * base) / 100];
    };
    const excitingVa = (number(t, "excitingPercent", 0.5) / 100) * unitKva * 1000;
    const coreWatts = (number(t, "coreLossPercent") / 100) * unitKva * 1000;
    const low = (letter: string) => node(`${to}/${letter}`);
    const high = (letter: string) => node(`${from}/${letter}`);
    const halves = (plus: string, minus: string, own: number) => [
      { ends: [plus, low("N")] as const, volts: own / 2, ohms: halfOn(own, 0.5) },
      { ends: [low("N"), minus] as const, volts: own / 2, ohms: halfOn(own, 0.5) },
    ];
    if (connection === "single") {
      const [first, second] = [...phasesOf(t)];
      const ends = [high(first!), second === undefined ? high("N") : high(second)] as const;
      const primaryVolts = 1000 * number(t, "primaryKv");
      const own = number(t, "secondaryV");
      const secondaries =
        text(t, "secondary", "split") === "split"
          ? halves(low("1"), low("2"), own)
          : [{ ends: [low(first!), low("N")] as const, volts: own, ohms: halfOn(own) }];
      winding(ends, primaryVolts, halfOn(primaryVolts), secondaries, excitingVa, coreWatts);
      return;
    }
    /** the point's neutral, or a node of the bank's own: tied to nothing, or through an impedance to the neutral */
    const starAt = (floats: boolean, ohms: unknown, neutral: () => string): string => {
      if (!floats && ohms === undefined) return neutral();
      const own = inside();
      // A core without exciting current leaves a floating star where it will: what cannot be measured holds it.
      if (floats) resistor(own, "0", 1e13);
      else impedance(own, neutral(), ohms as Ohms);
      return own;
    };
    const wye = (side: string) => connection.split("-")[side === "high" ? 0 : 1]!;
    const star = wye("high").endsWith("D")
      ? ""
      : starAt(wye("high") === "Y", t["primaryStarOhms"], () => high("N"));
    const lowStar = wye("low").endsWith("D")
      ? ""
      : starAt(wye("low") === "Y", t["secondaryStarOhms"], () => low("N"));
    const tap = t["midTap"] === undefined ? "" : [...text(t, "midTap").toUpperCase()].sort().join("");
    for (const [primary, secondary] of pairsOf(t)) {
      const isWye = primary[1] === "*";
      const primaryVolts = (1000 * number(t, "primaryKv")) / (isWye ? ROOT3 : 1);
      const minus = isWye ? star : high(primary[1]!);
      const lowWye = secondary[1] === "*";
      const own = number(t, "secondaryV") / (lowWye ? ROOT3 : 1);
      const secondaries =
        tap !== "" && [...secondary].sort().join("") === tap
          ? halves(low(secondary[0]!), low(secondary[1]!), own)
          : [
              {
                ends: [low(secondary[0]!), lowWye ? lowStar : low(secondary[1]!)] as const,
                volts: own,
                ohms: halfOn(own),
              },
            ];
      winding(
        [high(primary[0]!), minus],
        primaryVolts,
        halfOn(primaryVolts),
        secondaries,
        excitingVa,
        coreWatts,
      );
    }
  }

  /**
   * A core with three sides: any two windings have between them what was measured, which is the star of three shares, one
   * of which may be below zero.
   */
  function writeThreeWinding(t: Element): void {
    const units = unitsOf(t as never);
    const unitKva = number(t, "kva") / units.length;
    const row = transformers.rows.reduce((best, it) =>
      Math.abs(it.kva - unitKva) < Math.abs(best.kva - unitKva) ? it : best,
    );
    const pair = (of: string): Ohms => [
      number(t, `r${of}Percent`, number(t, "rPercent", row.percentR)),
      number(t, `x${of}Percent`, number(t, "xPercent", row.percentX)),
    ];
    const [ps, pt, st] = [pair(""), pair("Third"), pair("Between")];
    const shares = [0, 1].map((k) => [
      ps[k]! + pt[k]! - st[k]!,
      ps[k]! + st[k]! - pt[k]!,
      pt[k]! + st[k]! - ps[k]!,
    ]);
    const ohms = (side: number, own: number, part = 1): Ohms => {
      const base = (part * 0.5 * own * own) / (unitKva * 1000) / 100;
      return [shares[0]![side]! * base, shares[1]![side]! * base];
    };
    const ends = ["from", "to", "alt"] as const;
    const sides = text(t, "connection").split("-");
    const stars = ["primaryStarOhms", "secondaryStarOhms", "thirdStarOhms"].map((key, side) => {
      if (sides[side] !== "Y" && t[key] === undefined) return "";
      const own = inside();
      if (sides[side] === "Y") resistor(own, "0", 1e13);
      else impedance(own, node(`${text(t, ends[side]!)}/N`), t[key] as Ohms);
      return own;
    });
    const place = (side: number, it: string) =>
      it === "*" ? stars[side]! : node(`${text(t, ends[side]!)}/${it}`);
    const va = unitKva * 1000;
    for (const { high, highVolts, lows } of units)
      winding(
        [place(0, high[0]), place(0, high[1])],
        highVolts,
        ohms(0, highVolts),
        lows.flatMap(({ low, centre, lowVolts }, nth) => {
          const at = (it: string) => place(nth + 1, it);
          return centre
            ? [
                {
                  ends: [at("1"), at("N")] as const,
                  volts: lowVolts / 2,
                  ohms: ohms(nth + 1, lowVolts, 0.5),
                },
                {
                  ends: [at("N"), at("2")] as const,
                  volts: lowVolts / 2,
                  ohms: ohms(nth + 1, lowVolts, 0.5),
                },
              ]
            : [{ ends: [at(low[0]), at(low[1])] as const, volts: lowVolts, ohms: ohms(nth + 1, lowVolts) }];
        }),
        (number(t, "excitingPercent", 0.5) / 100) * va,
        (number(t, "coreLossPercent") / 100) * va,
      );
  }

  /** Branches of a wye or a delta, and the rated volts across each. */
  function legsOf(element: Element, lineToLine: number): (readonly [string, string, number])[] {
    const phases = phasesOf(element);
    if (text(element, "connection", "wye") === "delta")
      return pairs(phases).map(([a, b]) => [a, b, lineToLine]);
    const toNeutral = /[12]/.test(phases) ? lineToLine / 2 : lineToLine / ROOT3;
    return [...phases].map((letter) => [letter, "N", toNeutral]);
  }

  function writeLoad(element: Element, here: (letter: string) => string): void {
    const at = text(element, "at");
    const legs = legsOf(element, nominalVolts(at));
    const model = text(element, "model", "Z");
    for (const [a, b, rated] of legs) {
      const p = (1000 * number(element, "kw")) / legs.length;
      const q = (1000 * number(element, "kvar")) / legs.length;
      const share = volts === undefined ? 1 : Math.hypot(...volts(`${at}/${a}`, `${at}/${b}`)) / rated;
      const held = Math.max(share, 0.7);
      // Of rated admittance: 1 for an impedance, 1/share for a current, 1/share² for a power, none less than at 0.7.
      const times = model === "Z" || volts === undefined ? 1 : model === "I" ? 1 / held : 1 / held ** 2;
      admittance(here(a), here(b), [(times * p) / rated ** 2, (-times * q) / rated ** 2]);
    }
  }

  /** A machine at its set output, as the impedance that this is at the volts under test: one that gives power. */
  function writeOutput(element: Element, here: (letter: string) => string): void {
    const at = text(element, "at");
    const phases = phasesOf(element);
    const isBetween = /^[ABC]{2}$/.test(phases);
    const legs = isBetween ? [[phases[0]!, phases[1]!]] : [...phases].map((it) => [it, "N"]);
    const rated = number(element, "volts") / (isBetween ? 1 : /[12]/.test(phases) ? 2 : ROOT3);
    for (const [a, b] of legs) {
      const held = Math.max(Math.hypot(...volts!(`${at}/${a!}`, `${at}/${b!}`)), 0.7 * rated);
      const [p, q] = ["outputKw", "outputKvar"].map((it) => (1000 * number(element, it)) / legs.length);
      admittance(here(a!), here(b!), [-p! / held ** 2, q! / held ** 2]);
    }
  }

  function writeCapacitor(element: Element, here: (letter: string) => string): void {
    const legs = legsOf(element, 1000 * number(element, "kvLL"));
    const open = named(element, "open");
    const lifted = new Map([...open].map((letter) => [letter, inside()]));
    for (const [a, b, rated] of legs) {
      const siemens = (1000 * number(element, "kvar")) / legs.length / rated ** 2;
      capacitor(lifted.get(a) ?? here(a), lifted.get(b) ?? here(b), siemens);
    }
    for (const loose of lifted.values()) resistor(loose, "0", 1e13);
  }

  function writeGenerator(element: Element, here: (letter: string) => string): void {
    const letters = [...phasesOf(element)];
    const own = number(element, "volts");
    const whole = ((number(element, "xPercent", 20) / 100) * own ** 2) / (1000 * number(element, "kva"));
    const leg = (plus: string, minus: string, phasor: readonly [number, number], ohms: number) => {
      const top = inside();
      emf(top, minus, phasor);
      inductor(top, plus, ohms);
    };
    if (/[12]/.test(phasesOf(element)))
      for (const letter of letters)
        leg(here(letter), here("N"), [own / 2, letter === "1" ? 0 : 180], whole / 2);
    else if (letters.length === 3)
      for (const letter of letters) leg(here(letter), here("N"), [own / ROOT3, DEGREES[letter]!], whole);
    else if (letters.length === 2)
      leg(here(letters[0]!), here(letters[1]!), [own, BETWEEN[letters.join("")]!], whole);
    else leg(here(letters[0]!), here("N"), [own / ROOT3, DEGREES[letters[0]!]!], whole / 3);
  }
}

/** All three pairs of a delta, or the one that two letters make. */
const pairs = (phases: string): (readonly [string, string])[] => {
  const [a, b, c] = [...phases];
  if (c !== undefined)
    return [
      [a!, b!],
      [b!, c],
      [c, a!],
    ];
  return b === undefined ? [] : [[a!, b]];
};

const polar = ([re, im]: Ohms): readonly [number, number] => [
  Math.hypot(re, im),
  (Math.atan2(im, re) * 180) / Math.PI,
];

const sumOf = (list: readonly Ohms[]): Ohms =>
  list.reduce<Ohms>((sum, it) => [sum[0] + it[0], sum[1] + it[1]], [0, 0]);
