/** Random drawings by seed: every kind of element, every connection of transformers, open, parted, faulted and grounded. */
import { outputInTurn, starsInTurn, swapInTurn, thirdInTurn } from "../support/randomSystems";
import { CONDUCTOR_CODES } from "./line";
import type { Drawing, Element } from "./netlist";

/** A number generator that gives the same drawings on every machine (mulberry32, Tommy Ettinger, public domain). */
export function chance(seed: number) {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const round = (low: number, high: number, digits = 3) => Number(between(low, high).toPrecision(digits));
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  const oneOf = <T>(list: readonly T[]): T => list[whole(0, list.length - 1)]!;
  const happens = (share: number) => next() < share;
  const some = (letters: string, share: number) => [...letters].filter(() => happens(share)).join("");
  return { between, round, whole, oneOf, happens, some };
}

/** A point as its maker knows it. */
interface Spot {
  readonly id: string;
  readonly phases: string;
  /** a neutral that is there whatever hangs at the point later */
  readonly neutral: boolean;
  readonly lineToLineVolts: number;
  /** spots of one zone have no regulator between them */
  readonly zone: number;
  readonly level: "primary" | "secondary";
}

export interface RandomSystem {
  readonly drawing: Drawing;
  readonly nominalVolts: (point: string) => number;
}

const SWITCHES = ["clamp", "cutout", "disconnect", "recloser", "breaker", "elbow"];
const CONNECTIONS = ["single", "Yg-Yg", "Y-D", "Yg-D", "D-Yg", "D-D", "openY-openD"];
const PRIMARY_KV = [4.16, 12.47, 13.2, 24.94];

export function randomSystem(seed: number): RandomSystem {
  const { round, whole, oneOf, happens, some } = chance(seed);
  const points: Record<string, { earthOhms?: number }> = {};
  const elements: Record<string, Element> = {};
  const spots: Spot[] = [];
  let zones = 0;

  const addSpot = (spot: Omit<Spot, "id">): Spot => {
    const id = `p${spots.length}`;
    points[id] = spot.neutral && happens(0.35) ? { earthOhms: round(1, 100) } : {};
    const made = { ...spot, id };
    spots.push(made);
    return made;
  };
  const add = (kind: string, keys: Record<string, unknown>) => {
    elements[`e${Object.keys(elements).length}`] = { kind, ...keys };
  };
  /** Letters out of some, in order, at least one. */
  const someOf = (letters: string): string => {
    const chosen = some(letters, 0.6);
    return chosen === "" ? oneOf([...letters]) : chosen;
  };
  const sometimes = (share: number, keys: Record<string, unknown>) => (happens(share) ? keys : {});

  // ——— supply
  const supply = oneOf(PRIMARY_KV);
  const isIsland = happens(0.06);
  const head = addSpot({
    phases: happens(0.85) ? "ABC" : oneOf(["A", "B", "AB", "AC"]),
    neutral: true,
    lineToLineVolts: supply * 1000,
    zone: zones++,
    level: "primary",
  });
  add("source", {
    at: head.id,
    phases: head.phases,
    kvLL: supply,
    ...sometimes(0.5, {
      z1Ohms: [round(0.01, 0.3), round(0.1, 2)],
      z0Ohms: [round(0.01, 0.9), round(0.1, 4)],
    }),
    ...sometimes(0.4, { angleDeg: whole(-180, 180) }),
    ...sometimes(0.15, { earthed: false }),
    ...(isIsland ? { on: false } : {}),
  });

  // ——— the network, branch by branch from spots that are there
  const branches = whole(6, 18);
  for (let k = 0; k < branches; k++) {
    const from = oneOf(spots);
    const chosen = happens(0.3)
      ? "transformer"
      : oneOf(["span", "span", "span", "join", "join", "regulator"]);
    if (chosen === "transformer") addTransformer(from);
    else if (chosen === "span") addSpan(from);
    else if (chosen === "regulator" && from.level === "primary") addRegulator(from);
    else addJoin(from);
  }
  for (let k = 0; k < 2; k++) if (happens(0.4)) addTie();
  const devices = whole(3, 10);
  for (let k = 0; k < devices; k++) addDevice(oneOf(spots));
  if (isIsland) addGenerator(oneOf(spots));
  for (const [id, element] of Object.entries(elements))
    if (element.kind === "span" && element["construction"] !== "cable" && happens(0.12)) addNearby(id);

  for (const [index, [id, it]] of Object.entries(elements).entries())
    if (it.kind === "span" || it.kind === "lead" || SWITCHES.includes(it.kind as never))
      elements[id] = { ...it, ...swapInTurn(index, it["phases"] as string) };
  const bySpot = new Map(spots.map((it) => [it.id, it.lineToLineVolts]));
  for (const [index, [id, it]] of Object.entries(elements).entries()) {
    const third = it.kind === "transformer" ? thirdInTurn(index, it) : undefined;
    if (third === undefined) continue;
    const at = `third${index}`;
    points[at] = {};
    elements[id] = { ...it, ...third, alt: at } as Element;
    const isSingle = it["connection"] === "single";
    const phases = !isSingle ? "ABC" : third["third"] === "split" ? "12" : (it["phases"] as string)[0]!;
    const volts = third["thirdV"] as number;
    bySpot.set(at, isSingle && phases.length === 1 ? volts * Math.sqrt(3) : volts);
    add("load", { at, phases, connection: isSingle ? "wye" : "delta", kw: 4, kvar: 1 });
  }
  return {
    drawing: { frequencyHz: happens(0.8) ? 60 : 50, points, elements },
    nominalVolts: (point) => bySpot.get(point)!,
  };

  function follow(from: Spot, phases: string, neutral: boolean, zone = from.zone): Spot {
    return addSpot({ ...from, phases, neutral, zone });
  }

  function addSpan(from: Spot): void {
    const phases = someOf(from.phases);
    const neutral = from.neutral ? happens(0.9) : happens(0.2);
    const to = follow(from, phases, neutral);
    const construction =
      from.level === "secondary" ? "secondary" : phases.length > 0 && happens(0.25) ? "cable" : "overhead";
    const size = phases.length + (neutral ? 1 : 0);
    add("span", {
      from: from.id,
      to: to.id,
      phases,
      lengthM: from.level === "secondary" ? round(5, 80) : round(20, 3000),
      ...(neutral ? {} : { neutral: false }),
      ...(construction === "overhead" ? {} : { construction }),
      ...(construction === "overhead"
        ? {
            ...sometimes(0.4, {
              conductor: oneOf(CONDUCTOR_CODES),
              neutralConductor: oneOf(CONDUCTOR_CODES),
            }),
          }
        : {}),
      ...sometimes(0.2, { parted: some(neutral ? `${phases}N` : phases, 0.4) }),
      ...sometimes(0.15, { zOhmsPerKm: randomZ(size) }),
      ...sometimes(0.15, { bMicroSPerKm: randomB(size) }),
    });
  }

  /** A coupled line that could be one: mutual impedances well under the least of the two own ones. */
  function randomZ(size: number): number[][][] {
    const own = Array.from({ length: size }, () => [round(0.1, 1.2), round(0.4, 1)]);
    const mutual = [round(0.01, 0.09), round(0.05, 0.3)];
    return own.map((it, i) => own.map((_, j) => (i === j ? it : mutual)));
  }

  /** A nodal matrix: rows that sum to some capacitance to earth. */
  function randomB(size: number): number[][] {
    const apart = round(0.2, 1);
    const own = Array.from({ length: size }, () => round(1, 4) + (size - 1) * apart);
    return own.map((it, i) => own.map((_, j) => (i === j ? it : -apart)));
  }

  function addJoin(from: Spot): void {
    const phases = someOf(from.phases);
    const neutral = from.neutral ? happens(0.85) : happens(0.15);
    const to = follow(from, phases, neutral);
    const common = { from: from.id, to: to.id, phases, ...(neutral ? {} : { neutral: false }) };
    if (from.level === "secondary") {
      const kind = oneOf(["meter", "main", "lead", "transfer"]);
      if (kind === "transfer") {
        const alt = follow(from, phases, neutral);
        add("transfer", {
          ...common,
          alt: alt.id,
          position: oneOf(["utility", "generator", "off"]),
          ...sometimes(0.15, { bridged: true }),
        });
        if (happens(0.5)) addGenerator(alt);
        return;
      }
      if (kind === "lead")
        add("lead", { ...common, ...sometimes(0.3, { cut: some(neutral ? `${phases}N` : phases, 0.5) }) });
      else add(kind, { ...common, ...sometimes(0.2, { open: true }) });
      return;
    }
    const kind = oneOf([...SWITCHES, "lead"]);
    const gang = kind === "recloser" || kind === "breaker";
    const open = gang ? (happens(0.25) ? phases : "") : happens(0.5) ? some(phases, 0.5) : "";
    if (kind === "lead") add("lead", { ...common, cut: some(neutral ? `${phases}N` : phases, 0.2) });
    else
      add(kind, {
        ...common,
        open,
        ...(kind === "cutout" ? { blown: some(phases, 0.1), removed: some(phases, 0.1) } : {}),
      });
  }

  function addRegulator(from: Spot): void {
    const phases = someOf(from.phases);
    const neutral = from.neutral ? happens(0.8) : false;
    const to = follow(from, phases, neutral, zones++);
    add("regulator", {
      from: from.id,
      to: to.id,
      phases,
      ...(neutral ? {} : { neutral: false }),
      taps: Object.fromEntries([...phases].map((letter) => [letter, whole(-16, 16)])),
      ...sometimes(0.2, { open: some(phases, 0.5) }),
      ...sometimes(0.15, { bypassed: true }),
    });
  }

  /** A second path between two spots of one zone: a loop, closed or open; through some impedance it may lead anywhere alike. */
  function addTie(): void {
    const [a, b] = [oneOf(spots), oneOf(spots)];
    const shared = [...a.phases].filter((it) => b.phases.includes(it)).join("");
    if (a.id === b.id || shared === "" || a.lineToLineVolts !== b.lineToLineVolts) return;
    if (a.level !== b.level) return;
    const common = { from: a.id, to: b.id, phases: shared };
    const neutral = a.neutral && b.neutral ? {} : { neutral: false };
    if (a.zone === b.zone)
      add(a.level === "primary" ? "disconnect" : "lead", {
        ...common,
        ...neutral,
        ...(a.level === "primary" ? sometimes(0.5, { open: true }) : {}),
      });
    else
      add("span", {
        ...common,
        ...neutral,
        lengthM: 500,
        ...(a.level === "secondary" ? { construction: "secondary" } : {}),
      });
  }

  function addTransformer(from: Spot): void {
    const three = from.phases === "ABC";
    const two = from.phases.length >= 2 && !/[12]/.test(from.phases);
    if (/[12]/.test(from.phases)) return addSpan(from);
    const usable = CONNECTIONS.filter(
      (it) => it === "single" || (it === "openY-openD" ? two && from.neutral : three),
    );
    const drawn = oneOf(usable);
    const { connection, ...stars } = starsInTurn(drawn, Object.keys(elements).length);
    const kvLL = from.lineToLineVolts / 1000;
    const nameplate = (volts: number) => Number(volts.toPrecision(4));
    const rated = {
      ...sometimes(0.4, { rPercent: round(0.5, 2), xPercent: round(1, 6) }),
      ...sometimes(0.4, { excitingPercent: oneOf([0, 0.2, 1]) }),
      ...sometimes(0.1, { neutral: false }),
    };
    if (connection === "single") {
      const letters = two && happens(0.3) ? oneOf(lettersInPairs(from.phases)) : oneOf([...from.phases]);
      if (letters.length === 1 && !from.neutral) return addSpan(from);
      const split = happens(0.65);
      const secondaryV = split ? oneOf([240, 208]) : oneOf([120, 240, 277, 2400]);
      const to = addSpot({
        phases: split ? "12" : letters[0]!,
        neutral: true,
        lineToLineVolts: split ? secondaryV : secondaryV * Math.sqrt(3),
        zone: zones++,
        level: "secondary",
      });
      add("transformer", {
        from: from.id,
        to: to.id,
        phases: letters,
        connection,
        kva: oneOf([10, 15, 25, 50, 75]),
        primaryKv: nameplate(letters.length === 1 ? kvLL / Math.sqrt(3) : kvLL),
        secondaryV,
        ...(split ? {} : { secondary: "two-wire" }),
        ...rated,
      });
      return;
    }
    const phases = connection === "openY-openD" ? oneOf(lettersInPairs(from.phases)) : "ABC";
    const isDelta = connection.endsWith("D");
    const secondaryV = happens(0.2)
      ? oneOf([34500, 46000])
      : oneOf(isDelta ? [240, 480, 4160] : [208, 480, 4160]);
    const up = secondaryV > 1000 * nameplate(kvLL);
    const tappable =
      connection === "openY-openD"
        ? { AB: ["ab", "bc"], AC: ["ab", "ca"], BC: ["bc", "ca"] }[phases]!
        : ["ab", "bc", "ca"];
    // Stepping up, other pairs share the cores of an open delta.
    const tappableUp =
      connection === "openY-openD"
        ? { AB: ["ca", "ab"], AC: ["ca", "bc"], BC: ["ab", "bc"] }[phases]!
        : tappable;
    const midTap = isDelta && happens(0.4) ? oneOf(up ? tappableUp : tappable) : undefined;
    const to = addSpot({
      phases: "ABC",
      neutral: connection.endsWith("-Yg") || midTap !== undefined,
      lineToLineVolts: secondaryV,
      zone: zones++,
      level: secondaryV > 1000 ? "primary" : "secondary",
    });
    add("transformer", {
      from: from.id,
      to: to.id,
      phases,
      connection,
      kva: oneOf([45, 75, 150, 300]),
      primaryKv: nameplate(kvLL),
      secondaryV,
      ...(midTap === undefined ? {} : { midTap }),
      ...stars,
      ...rated,
    });
  }

  function lettersInPairs(phases: string): string[] {
    return ["AB", "AC", "BC"].filter((it) => [...it].every((letter) => phases.includes(letter)));
  }

  function addGenerator(at: Spot): void {
    const split = /[12]/.test(at.phases);
    add("generator", {
      at: at.id,
      phases: split ? at.phases : at.phases === "ABC" ? "ABC" : happens(0.5) ? at.phases : at.phases[0]!,
      kva: oneOf([5, 7.5, 20, 100]),
      volts: at.lineToLineVolts,
      ...(happens(0.8) ? { on: true } : {}),
      ...sometimes(0.5, { xPercent: whole(10, 30) }),
      ...outputInTurn(Object.keys(elements).length, 5),
    });
  }

  function addDevice(at: Spot): void {
    const kind = oneOf([
      ...["load", "load", "load", "load", "capacitor", "capacitor"],
      ...["arrester", "ground", "fault", "generator"],
    ]);
    const phases = someOf(at.phases);
    const isDelta = phases.length >= 2 && happens(0.35);
    const connection = isDelta ? { connection: "delta" } : {};
    switch (kind) {
      case "load":
        add("load", {
          at: at.id,
          phases,
          ...connection,
          kw: round(0.5, 60),
          kvar: round(0, 25),
          ...sometimes(0.15, { model: oneOf(["I", "PQ"]), kw: round(0.5, 6), kvar: round(0, 2) }),
        });
        return;
      case "capacitor":
        add("capacitor", {
          at: at.id,
          phases,
          ...connection,
          kvar: at.level === "primary" ? round(30, 300) : round(1, 10),
          kvLL: at.lineToLineVolts / 1000,
          ...sometimes(0.3, { open: some(phases, 0.6) }),
        });
        return;
      case "arrester":
        add("arrester", {
          at: at.id,
          phases,
          ...(at.neutral ? sometimes(0.3, { failed: someOf(phases) }) : {}),
        });
        return;
      case "ground":
        if (!happens(0.5)) return;
        add("ground", {
          at: at.id,
          phases,
          to: at.neutral ? oneOf(["neutral", "earth", "both"]) : "earth",
          ...sometimes(0.4, { ohms: round(0.001, 0.1), earthOhms: round(5, 100) }),
        });
        return;
      case "fault":
        if (!happens(0.5)) return;
        add("fault", {
          at: at.id,
          phases,
          to: at.neutral
            ? oneOf(phases.length > 1 ? ["neutral", "earth", "phases"] : ["neutral", "earth"])
            : oneOf(phases.length > 1 ? ["earth", "phases"] : ["earth"]),
          ohms: oneOf([0.01, 1, 40]),
        });
        return;
      default:
        if (at.level === "secondary") addGenerator(at);
    }
  }

  function addNearby(span: string): void {
    const relation = oneOf(["crossing", "underbuild", "parallel", "parallel"]);
    add("nearby", {
      span,
      relation,
      kvLL: oneOf([12.47, 69, 138]),
      ...(relation === "crossing" ? {} : { spacingM: round(1, 20) }),
      ...sometimes(0.5, { lengthM: round(10, 500) }),
      ...sometimes(0.7, { amps: round(5, 400) }),
      ...sometimes(0.1, { on: false }),
    });
  }
}
