/** Small random drawings with everything in them that can feed, tie, induce, ground or break: seeded, so that a failure can be run again. */

export type Draw = {
  readonly between: (low: number, high: number) => number;
  readonly oneOf: <T>(items: readonly T[]) => T;
  readonly chance: (of: number) => boolean;
};

/** A linear congruential generator (Numerical Recipes' constants): enough for drawings, the same everywhere. */
export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const between = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  return {
    between,
    oneOf: (items) => items[between(0, items.length - 1)]!,
    chance: (of) => next() < of,
  };
}

type Saved = Record<string, unknown>;

/** Kinds that stand where a recloser may, moved by one handle. */
const SISTERS = ["recloser", "breaker", "sectionalizer"] as const;

export interface RandomSystem {
  readonly points: Record<string, Saved>;
  readonly elements: Record<string, Saved>;
}

/** Options for what a drawing may hold. */
export interface Ingredients {
  /** how many parts are hung on the tree, about */
  readonly parts: number;
  readonly nonlinearLoads?: boolean;
}

/** A radial drawing of two feeders at most, with taps, banks, secondaries, customers, ties, and things left open. */
export function randomSystem(seed: number, { parts, nonlinearLoads = false }: Ingredients): RandomSystem {
  const draw = drawFrom(seed);
  const points: Record<string, Saved> = {};
  const elements: Record<string, Saved> = {};
  /** places that something more can hang on: a point and its phases */
  const primary: { point: string; phases: string }[] = [];
  const secondary: { point: string; phases: string; volts: number }[] = [];
  let count = 0;
  const newPoint = (): string => {
    const id = `p${++count}`;
    points[id] = {
      x: 100 * count,
      y: 0,
      kind: "pole",
      ...(draw.chance(0.6) ? { earthOhms: draw.oneOf([1, 10, 25, 100]) } : {}),
    };
    return id;
  };
  /** A bank, every now and then with a third winding and what hangs on it, as above. */
  const addBank = (count: number, record: Saved) => {
    const third = thirdInTurn(count, record);
    if (third === undefined) return void add("t", record);
    const at = `third${count}`;
    points[at] = {};
    add("tw", { ...record, ...third, alt: at });
    const phases = third["third"] === "split" ? "12" : String(record["phases"]);
    if (count % 2 === 0)
      add("ld", {
        kind: "load",
        at,
        phases,
        connection: phases === "ABC" ? "delta" : "wye",
        kw: 3,
        kvar: 1,
        customers: 1,
      });
    else add("gen", { kind: "generator", at, phases, kva: 20, volts: third["thirdV"] });
  };
  const add = (prefix: string, record: Saved): string => {
    const id = `${prefix}${Object.keys(elements).length + 1}`;
    elements[id] = record;
    return id;
  };
  const someOf = (phases: string): string => {
    const chosen = [...phases].filter(() => draw.chance(0.6)).join("");
    return chosen === "" ? draw.oneOf([...phases]) : chosen;
  };
  const opened = (phases: string, often: number): Saved =>
    draw.chance(often) ? { open: draw.chance(0.5) ? phases : someOf(phases) } : {};
  const marks = (): Saved => ({
    ...(draw.chance(0.3) ? { tagged: true } : {}),
    ...(draw.chance(0.2) ? { blocked: true } : {}),
  });

  const feed = (point: string) =>
    add("s", {
      kind: "source",
      at: point,
      phases: "ABC",
      kvLL: 12.47,
      z1Ohms: [0.2, 1],
      z0Ohms: [0.4, 2],
      ...(draw.chance(0.1) ? { on: false } : {}),
      ...(draw.chance(0.3) ? { angleDeg: draw.oneOf([0, 5, -3]) } : {}),
    });

  const root = newPoint();
  feed(root);
  primary.push({ point: root, phases: "ABC" });

  const hang: (() => void)[] = [
    function spanOn() {
      const from = draw.oneOf(primary);
      const to = newPoint();
      const phases = draw.chance(0.5) ? from.phases : someOf(from.phases);
      const neutral = !draw.chance(0.1);
      const id = add("sp", {
        kind: "span",
        from: from.point,
        to,
        phases,
        lengthM: draw.between(40, 3000),
        construction: draw.chance(0.15) ? "cable" : "overhead",
        ...(neutral ? {} : { neutral: false }),
        ...(draw.chance(0.12) ? { parted: draw.chance(0.2) && neutral ? "N" : someOf(phases) } : {}),
      });
      elements[id] = { ...elements[id]!, ...swapInTurn(Object.keys(elements).length, phases) };
      primary.push({ point: to, phases });
      if (draw.chance(0.12))
        add("nb", {
          kind: "nearby",
          span: id,
          relation: draw.oneOf(["crossing", "parallel", "underbuild"]),
          kvLL: draw.oneOf([12.47, 34.5]),
          spacingM: draw.between(1, 3),
          lengthM: draw.between(40, 400),
          amps: draw.oneOf([0, 100]),
        });
    },
    function switchOn() {
      const from = draw.oneOf(primary);
      const to = newPoint();
      const phases = draw.chance(0.6) ? from.phases : someOf(from.phases);
      const drawn = draw.oneOf(["cutout", "disconnect", "clamp", "recloser", "elbow", "lead", "regulator"]);
      // Its sisters take its place in turn.
      const kind = drawn === "recloser" ? SISTERS[primary.length % SISTERS.length]! : drawn;
      const gang = drawn === "recloser" || (kind === "disconnect" && draw.chance(0.4));
      add("d", {
        kind,
        from: from.point,
        to,
        phases,
        ...(kind === "lead"
          ? {
              ...(draw.chance(0.3) ? { cut: someOf(phases) } : {}),
              ...swapInTurn(Object.keys(elements).length, phases),
            }
          : {
              ...(kind === "regulator" ? {} : swapInTurn(Object.keys(elements).length, phases)),
              ...(gang ? (draw.chance(0.5) ? { open: phases } : {}) : opened(phases, 0.5)),
              ...marks(),
            }),
        ...(kind === "disconnect" && gang ? { gang: true } : {}),
        ...(kind === "disconnect" && draw.chance(0.2) ? { remote: true } : {}),
        ...(kind === "regulator" ? { taps: { [phases[0]!]: draw.between(-8, 8) } } : {}),
      });
      primary.push({ point: to, phases });
    },
    function transformerOn() {
      const from = draw.oneOf(primary);
      const to = newPoint();
      if (from.phases === "ABC" && draw.chance(0.6)) {
        const connection = draw.oneOf(["Yg-Yg", "Y-D", "Yg-D", "D-Yg", "D-D", "openY-openD"]);
        const phases = connection === "openY-openD" ? draw.oneOf(["AB", "BC", "AC"]) : "ABC";
        const volts = draw.oneOf([208, 240, 480]);
        const count = Object.keys(elements).length;
        addBank(count, {
          kind: "transformer",
          from: from.point,
          to,
          phases,
          ...starsInTurn(connection, count),
          kva: draw.oneOf([45, 75, 150]),
          primaryKv: 12.47,
          secondaryV: volts,
        });
        secondary.push({ point: to, phases: "ABC", volts });
        return;
      }
      const phase = draw.oneOf([...from.phases]);
      const isTwoWire = draw.chance(0.2);
      addBank(Object.keys(elements).length, {
        kind: "transformer",
        from: from.point,
        to,
        phases: phase,
        connection: "single",
        kva: draw.oneOf([10, 25, 50]),
        primaryKv: 7.2,
        secondaryV: isTwoWire ? 277 : 240,
        ...(isTwoWire ? { secondary: "two-wire" } : {}),
      });
      secondary.push(
        isTwoWire
          ? { point: to, phases: phase, volts: 277 * Math.sqrt(3) }
          : { point: to, phases: "12", volts: 240 },
      );
    },
    function customerOn() {
      const from = draw.oneOf(secondary.length === 0 ? [{ ...primary[0]!, volts: 12470 }] : secondary);
      let at = from.point;
      if (draw.chance(0.6)) {
        const to = newPoint();
        const kind = draw.oneOf(["meter", "main"]);
        add("m", {
          kind,
          from: at,
          to,
          phases: from.phases,
          ...(draw.chance(0.3) ? { open: from.phases } : {}),
          ...marks(),
        });
        at = to;
      }
      if (draw.chance(0.8))
        add("ld", {
          kind: "load",
          at,
          phases: from.phases,
          kw: draw.between(0, 20),
          kvar: draw.between(0, 8),
          connection: from.phases.length > 1 ? draw.oneOf(["wye", "delta"]) : "wye",
          customers: draw.between(0, 2),
          ...(nonlinearLoads ? { model: draw.oneOf(["Z", "I", "PQ"]) } : {}),
        });
      if (draw.chance(0.25))
        add("g", {
          kind: "generator",
          at,
          phases: from.phases,
          kva: draw.between(5, 30),
          volts: from.volts,
          ...(draw.chance(0.3) ? { on: true } : {}),
          ...(nonlinearLoads ? {} : outputInTurn(Object.keys(elements).length, 5)),
        });
    },
    function bankedSecondary() {
      const ties = secondary.filter((it) => it.phases === "12");
      if (ties.length < 2) return;
      const [a, b] = [draw.oneOf(ties), draw.oneOf(ties)];
      if (a.point === b.point) return;
      add("ss", {
        kind: "span",
        from: a.point,
        to: b.point,
        phases: "12",
        construction: "secondary",
        lengthM: draw.between(10, 80),
      });
    },
    function capacitorOn() {
      const at = draw.oneOf(primary);
      add("cp", {
        kind: "capacitor",
        at: at.point,
        phases: at.phases,
        kvar: 50 * at.phases.length,
        kvLL: 12.47,
        connection: at.phases.length === 3 ? draw.oneOf(["wye", "delta"]) : "wye",
        ...opened(at.phases, 0.3),
      });
    },
    function farTie() {
      if (Object.values(elements).filter(({ kind }) => kind === "source").length > 1) return;
      const from = draw.oneOf(primary);
      const far = newPoint();
      feed(far);
      add("tie", {
        kind: "disconnect",
        from: far,
        to: from.point,
        phases: from.phases,
        gang: draw.chance(0.5),
        open: from.phases,
        normallyOpen: true,
        ...marks(),
      });
    },
    function groundOn() {
      const at = draw.oneOf(primary);
      add("gs", {
        kind: "ground",
        at: at.point,
        phases: draw.chance(0.7) ? at.phases : someOf(at.phases),
        to: "earth",
        ...(draw.chance(0.5) ? { cable: draw.oneOf(["2", "1/0", "2/0"]) } : {}),
      });
    },
    function faultOn() {
      if (!draw.chance(0.3)) return;
      const at = draw.oneOf(primary);
      add("f", {
        kind: "fault",
        at: at.point,
        phases: at.phases.length > 1 ? at.phases : someOf(at.phases),
        to: at.phases.length > 1 ? draw.oneOf(["phases", "earth"]) : "earth",
        ohms: draw.oneOf([0.01, 10, 40]),
      });
    },
  ];
  const weights = [4, 5, 4, 4, 1, 1, 1, 2, 1];
  const bag = hang.flatMap((it, index) => Array.from({ length: weights[index]! }, () => it));
  for (let part = 0; part < parts; part++) draw.oneOf(bag)();
  return { points, elements };
}

/**
 * What a bank's stars stand on, every now and then something else than was drawn: tied to nothing, or through an impedance,
 * with losses in the core. It follows from how much is drawn already, so that no draw after it changes.
 */
export function starsInTurn(
  connection: string,
  count: number,
): { connection: string; [key: string]: unknown } {
  const turn = count % 4;
  if (turn === 0) return { connection, coreLossPercent: 0.3 };
  if (turn === 1 && connection === "Yg-Yg") return { connection: "Yg-Y" };
  if (turn === 1 && connection === "Y-D") return { connection: "Yg-D", primaryStarOhms: [2, 10] };
  if (turn === 2 && connection === "Yg-Yg") return { connection: "Y-Y" };
  if (turn === 3 && connection === "Yg-Yg") return { connection, primaryStarOhms: [0.5, 3] };
  if (turn === 3 && connection === "D-Yg") return { connection, secondaryStarOhms: [0, 0.4] };
  return { connection };
}

/** Every now and then a bank has a third winding; its leakages may be those of a real one, the middle winding's below zero. */
export function thirdInTurn(count: number, { connection, midTap }: Saved): Saved | undefined {
  if (count % 5 !== 1 || connection === "openY-openD" || midTap !== undefined) return undefined;
  const turn = count % 3;
  const reactances = { xPercent: 4, xThirdPercent: 9, xBetweenPercent: 4 };
  const leakage =
    turn === 0 ? {} : { ...reactances, rPercent: 0.8, rThirdPercent: 1.1, rBetweenPercent: 0.9 };
  const core = turn === 0 ? { excitingPercent: 0.9, coreLossPercent: 0.4 } : {};
  const neutral = turn === 0 && connection !== "single" ? { neutral: false } : {};
  const some = { kind: "threeWinding", ...leakage, ...core, ...neutral };
  if (connection === "single")
    return { ...some, thirdV: turn === 1 ? 240 : 277, third: turn === 1 ? "split" : "two-wire" };
  const wound = `${String(connection)}-${["D", "Yg", "Y"][turn]!}`;
  const stars = {
    ...(wound.split("-")[1] === "Yg" && turn > 0 ? { secondaryStarOhms: [0.3, 1.2] } : {}),
    ...(turn === 1 ? { thirdStarOhms: [0.2, 0.8] } : {}),
  };
  return { ...some, ...stars, connection: wound, thirdV: 480 };
}

/** Every now and then a line, a lead or a switch swaps its phases among themselves. It follows from how much is drawn already, as above. */
export function swapInTurn(count: number, phases: string): Saved {
  const turned = `${phases.slice(1)}${phases[0]!}`;
  return count % 5 === 2 && phases.length > 1 ? { toPhases: turned } : {};
}

/**
 * Every now and then a machine runs at a set output: it stops without the grid, or goes on. It follows from how much is
 * drawn already, as above.
 */
export function outputInTurn(count: number, kva: number): Saved {
  const turn = count % 5;
  if (turn === 1) return { outputKw: 0.3 * kva, outputKvar: 0.05 * kva, on: true };
  if (turn === 2) return { outputKw: 0.2 * kva, on: true, withoutGrid: "carries-on" };
  if (turn === 3) return { outputKw: -0.2 * kva, outputKvar: 0.1 * kva, withoutGrid: "stops" };
  return {};
}

/** A document of a random system with a work point on one of its conductors. */
export function randomDocument(seed: number, ingredients: Ingredients) {
  const draw = drawFrom(seed ^ 0x5bd1e995);
  const { points, elements } = randomSystem(seed, ingredients);
  const spots = Object.values(elements).flatMap((it) =>
    typeof it["to"] === "string" &&
    typeof it["phases"] === "string" &&
    it["kind"] !== "transformer" &&
    it["kind"] !== "threeWinding" &&
    typeof points[it["to"]] === "object"
      ? [{ at: it["to"], conductors: it["phases"] }]
      : [],
  );
  const spot = spots.length === 0 ? { at: "p1", conductors: "A" } : draw.oneOf(spots);
  return {
    format: "stillhot" as const,
    formatVersion: 1 as const,
    title: `random ${seed}`,
    system: { frequencyHz: 60 as const, points, elements },
    job: { task: "", workPoints: { w1: spot }, tools: [], permit: "none", steps: [] },
  };
}
