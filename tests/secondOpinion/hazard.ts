/** Reach, states, threats and verdicts of a plain drawing, by trying every set of upsets of strength 3 at most. */
import cables from "../../shared/reference/grounding-cable.json";
import { type PlainSolution, solvePlain } from "./electrical";
import {
  after,
  at,
  beyond,
  conductorsOf,
  driversIn,
  groupsOf,
  joinsOf,
  type Limits,
  named,
  nominalOf,
  num,
  phasesOf,
  runsOf,
  type Plain,
  type PlainUpset,
  text,
  tiedNeutrals,
  TWO_ENDED,
  twoLetters,
  isBank,
  starsOf,
  unitsOf,
  upsetsIn,
  without,
  yes,
} from "./plain";

interface Edge {
  readonly a: string;
  readonly b: string;
  /** forward: from a to b, by backfeed the other way */
  readonly how: "direct" | "forward" | "back";
}

export interface Reached {
  /** conductor → elements that reach it in any way */
  readonly any: ReadonlyMap<string, ReadonlySet<string>>;
  /** conductors that a utility source reaches directly or forward */
  readonly fed: ReadonlySet<string>;
}

const allPairs = (list: readonly string[]): [string, string][] =>
  list.flatMap((a, i) => list.slice(0, i).map((b): [string, string] => [a, b]));

export function reachOf(plain: Plain): Reached {
  const conductors = conductorsOf(plain);
  const known = new Set(conductors);
  const tied = tiedNeutrals(plain);
  const runs = runsOf(plain);
  const edges: Edge[] = joinsOf(plain, known).map(([a, b]) => ({ a, b, how: "direct" as const }));
  const seeds: { id: string; from: string[]; utility: boolean }[] = [];
  const among = (list: readonly string[]) => {
    for (const [a, b] of allPairs([...new Set(list)])) edges.push({ a, b, how: "back" });
  };
  for (const [id, e] of Object.entries(plain.elements)) {
    const own = phasesOf(e);
    const here = (it: string) => at(text(e, "at"), it);
    switch (e.kind) {
      case "source":
        if (yes(e, "on", true)) seeds.push({ id, from: [...own, "N"].map(here), utility: true });
        break;
      case "generator":
        if (runs.has(id) || (yes(e, "on") && yes(e, "unknown"))) {
          const star = own.length === 2 && !own.includes("1") ? own : [...own, "N"];
          seeds.push({ id: id.replace(/^unknown /, ""), from: star.map(here), utility: false });
        }
        break;
      case "contact": {
        const span = plain.elements[text(e, "span")]!;
        const parted = named(span, "parted");
        seeds.push({
          id: id.replace(/^contact /, ""),
          from: phasesOf(span).flatMap((it) => [
            at(text(span, "from"), it),
            ...(parted.includes(it) ? [at(text(span, "to"), beyond(span, it))] : []),
          ]),
          utility: true,
        });
        break;
      }
      case "transformer":
      case "threeWinding":
        for (const unit of unitsOf(e)) {
          const high = unit.high.map((it) => (it === "*" ? `${id} from star` : at(text(e, "from"), it)));
          const low = unit.lows.flatMap(({ end, low: own, centre }) =>
            (centre ? [...own, "N"] : own).map((it) =>
              it === "*" ? `${id} ${end} star` : at(text(e, end), it),
            ),
          );
          among(high);
          among(low);
          for (const a of high) for (const b of low) edges.push({ a, b, how: "forward" });
        }
        for (const { star, point } of starsOf(id, e)) if (point !== undefined) among([star, at(point, "N")]);
        break;
      case "load":
        if (text(e, "connection", "wye") === "wye") for (const it of own) among([here(it), here("N")]);
        else for (const [a, b] of twoLetters(own)) among([here(a), here(b)]);
        break;
      case "capacitor": {
        const open = named(e, "open");
        const lifted = (it: string) => (open.includes(it) ? `${id} lifted ${it}` : here(it));
        if (text(e, "connection", "wye") === "wye") for (const it of own) among([lifted(it), here("N")]);
        else for (const [a, b] of twoLetters(own)) among([lifted(a), lifted(b)]);
        break;
      }
      case "ground":
        among([...own.map(here), ...(text(e, "to", "neutral") === "earth" ? [] : [here("N")])]);
        break;
      case "fault":
        among([...own.map(here), ...(text(e, "to", "neutral") === "neutral" ? [here("N")] : [])]);
        break;
      case "arrester":
        if (named(e, "failed").length > 0) among([...named(e, "failed").map(here), here("N")]);
        break;
    }
  }
  const usable = edges.filter(({ a, b }) => a !== b && !tied.has(a) && !tied.has(b));
  const touching = new Map<string, { other: string; back: boolean }[]>();
  const touch = (from: string, other: string, back: boolean) =>
    touching.set(from, [...(touching.get(from) ?? []), { other, back }]);
  for (const { a, b, how } of usable) {
    touch(a, b, how === "back");
    touch(b, a, how !== "direct");
  }
  const any = new Map(conductors.map((it) => [it, new Set<string>()]));
  const fed = new Set<string>();
  for (const { id, from, utility } of seeds) {
    const seen = new Set<string>();
    const walk = (where: string, backfed: boolean): void => {
      const state = `${where} ${backfed}`;
      if (seen.has(state)) return;
      seen.add(state);
      any.get(where)?.add(id);
      if (!backfed && known.has(where)) fed.add(where);
      for (const { other, back } of touching.get(where) ?? []) walk(other, backfed || back);
    };
    for (const it of from) if (!tied.has(it)) walk(it, !utility);
  }
  return { any, fed };
}

/** What is known of one drawing in one state. */
export interface Looked {
  readonly plain: Plain;
  readonly drawn: Summed;
  readonly off: Summed;
  readonly reached: Reached;
  readonly tied: ReadonlySet<string>;
}

/** Phase conductors that no source would reach with everything closed, joined and on, and temporary grounds lifted. */
function neverFed(plain: Plain): Set<string> {
  const closed = Object.entries(plain.elements).map(([id, e]): [string, Plain["elements"][string]] => [
    id,
    {
      ...e,
      ...(e.kind === "arrester" ? {} : { open: "", blown: "", removed: "", cut: "", parted: "" }),
      ...(e.kind === "transfer" ? { bridged: true } : {}),
      ...(e.kind === "source" ? { on: true } : {}),
      ...(e.kind === "generator" ? { on: false } : {}),
    },
  ]);
  const all: Plain = {
    ...plain,
    elements: Object.fromEntries(closed.filter(([, { kind }]) => kind !== "ground" && kind !== "contact")),
  };
  const { any } = reachOf(all);
  return new Set(
    [...any].filter(([name, by]) => !name.endsWith("/N") && by.size === 0).map(([name]) => name),
  );
}

const size = (v: readonly [number, number] | undefined): number =>
  v === undefined ? 0 : Math.hypot(v[0], v[1]);

/** A solution, and what each group of drivers that keep step does by itself. */
interface Summed extends PlainSolution {
  readonly alone: readonly PlainSolution[];
}

function solveSummed(plain: Plain, nominal: ReadonlyMap<string, number>, loadsOff: boolean): Summed {
  const whole = solvePlain(plain, nominal, loadsOff);
  const drivers = driversIn(plain);
  return {
    ...whole,
    alone: drivers.map((ids) =>
      solvePlain(plain, nominal, loadsOff, {
        drives: (id) => ids.includes(id),
        held: whole.held,
        outputsHold: whole.outputsHold,
      }),
    ),
  };
}

/** Volts between two conductors, or to earth, with every group at the angle that is worst. */
const worst = ({ alone }: Summed, one: string, other = ""): number =>
  alone.reduce((sum, { volts }) => {
    const [a, b] = [volts.get(one) ?? [0, 0], volts.get(other) ?? [0, 0]];
    return sum + Math.hypot(a[0] - b[0], a[1] - b[1]);
  }, 0);

/** Amperes of an element on a letter, likewise. */
const worstAmps = ({ alone }: Summed, id: string, letter: string): number =>
  alone.reduce((sum, { amps }) => sum + size(amps.get(id)?.get(letter)), 0);

export function look(plain: Plain, nominal: ReadonlyMap<string, number>): Looked {
  const drawn = solveSummed(plain, nominal, false);
  const hasLoads = Object.values(plain.elements).some(({ kind }) => kind === "load");
  return {
    plain,
    drawn,
    off: hasLoads ? solveSummed(plain, nominal, true) : drawn,
    reached: reachOf(plain),
    tied: tiedNeutrals(plain),
  };
}

export const isGround = ({ kind }: { kind: string }): boolean => kind === "ground";
const isShort = ({ kind, ...e }: Plain["elements"][string]): boolean =>
  kind === "ground" ||
  kind === "fault" ||
  (kind === "arrester" && named({ kind, ...e }, "failed").length > 0);

/** The higher of both solutions; of an untied neutral, the highest of what loads join to it as well. */
export function highest({ plain, drawn, off, tied }: Looked, conductor: string): number {
  let volts = Math.max(worst(drawn, conductor), worst(off, conductor));
  if (conductor.endsWith("/N") && !tied.has(conductor)) {
    const conductors = conductorsOf(plain);
    const group = groupsOf(conductors, joinsOf(plain, new Set(conductors)));
    for (const e of Object.values(plain.elements)) {
      if (e.kind !== "load" || text(e, "connection", "wye") !== "wye") continue;
      if (group.get(at(text(e, "at"), "N")) !== group.get(conductor)) continue;
      for (const it of phasesOf(e)) {
        const other = at(text(e, "at"), it);
        volts = Math.max(volts, worst(drawn, other), worst(off, other));
      }
    }
  }
  return volts;
}

/** Volts of a conductor, loads as drawn, at the worst angles. */
export const worstDrawn = ({ drawn }: Looked, conductor: string): number => worst(drawn, conductor);

/** States by the table; what nobody drew a feed for is unknown in place of isolated and induced. */
export function statesOf(looked: Looked, lifted: Looked, limits: Limits, wanted?: readonly string[]) {
  const states = statesIfFed(looked, lifted, limits, wanted);
  const unfed = neverFed(looked.plain);
  for (const [conductor, state] of states)
    if (unfed.has(conductor) && (state === "isolated" || state === "induced"))
      states.set(conductor, "unknown");
  return states;
}

/** States as if what feeds everything were drawn. */
function statesIfFed(looked: Looked, lifted: Looked, limits: Limits, wanted?: readonly string[]) {
  const { plain, reached, tied } = looked;
  const conductors = conductorsOf(plain);
  const group = groupsOf(conductors, joinsOf(plain, new Set(conductors)));
  const anySet = new Set<string | undefined>();
  const good = new Set<string | undefined>();
  for (const e of Object.values(plain.elements)) {
    const here = (it: string) => group.get(at(text(e, "at"), it));
    if (e.kind === "ground")
      for (const it of phasesOf(e)) {
        anySet.add(here(it));
        if (text(e, "to", "neutral") !== "neutral" || tied.has(at(text(e, "at"), "N"))) good.add(here(it));
      }
    // An untied neutral that a short goes to is tied to that short as well.
    const short = e.kind === "fault" ? phasesOf(e) : e.kind === "arrester" ? named(e, "failed") : [];
    for (const it of short) anySet.add(here(it));
    if (short.length > 0 && text(e, "to", "neutral") === "neutral") anySet.add(here("N"));
  }
  const states = new Map<string, string>();
  for (const conductor of wanted ?? conductors) {
    const isReached = (reached.any.get(conductor)?.size ?? 0) > 0;
    const wasReached = isReached || (lifted.reached.any.get(conductor)?.size ?? 0) > 0;
    const volts = highest(looked, conductor);
    const state = tied.has(conductor)
      ? "neutral"
      : anySet.has(group.get(conductor)) &&
          (reached.fed.has(conductor) || (wasReached && highest(lifted, conductor) >= limits.hazardVolts))
        ? "faulted"
        : reached.fed.has(conductor)
          ? "energized"
          : volts >= limits.hazardVolts
            ? isReached
              ? "backfed"
              : "induced"
            : good.has(group.get(conductor))
              ? "grounded"
              : "isolated";
    states.set(conductor, state);
  }
  return states;
}

/** Circular mils of the sizes below the table, and of No. 2. */
const MILS: Record<string, number> = { "8": 16510, "6": 26240, "4": 41740, "2": 66360 };

/** Amperes that a cable withstands for some seconds. One that nobody noted is No. 2; smaller ones by their area. */
export function withstandOf(cable: string, seconds: number): number {
  const [name] = (cable || "2").split(" ");
  const row = cables.rows.find((it) => it.cableSizeAwgCopper.replace(" kcmil", "") === name);
  if (row === undefined) return (MILS[name!]! / MILS["2"]!) * withstandOf("2", seconds);
  const cycles = 60 * seconds;
  return cycles <= 15
    ? 1000 * row.withstandKa15Cycles
    : Math.min(1000 * row.withstandKa15Cycles, 1000 * row.withstandKa30Cycles * Math.sqrt(30 / cycles));
}

export interface PlainThreat {
  readonly conductor: string;
  readonly upsets: readonly PlainUpset[];
  readonly strength: number;
  readonly volts: number;
  readonly exposureVolts: number;
  readonly exposureToEarthVolts: number;
  readonly groundAmps: number;
  /** current through a body in circuit; worked out when it is asked for */
  readonly bodyMilliamps: () => number;
  readonly reaching: ReadonlySet<string>;
}

/** What one set of upsets does. Remembered by set, since several work points may ask. */
export interface Outcome {
  readonly upsets: readonly PlainUpset[];
  readonly strength: number;
  readonly lifted: Looked;
  readonly bare: Looked;
  /** grounds in place, before any jumper parts */
  readonly inPlace: Looked;
  /** grounds in place, and after each of those whose jumpers part has done so, one by one or together, in any order */
  readonly stages: readonly Looked[];
  readonly groundAmps: number;
}

export function outcomesOf(plain: Plain, limits: Limits): Outcome[] {
  const nominal = nominalOf(plain);
  const upsets = upsetsIn(plain, limits);
  const sets: PlainUpset[][] = [[]];
  for (const upset of upsets)
    sets.push(
      ...sets
        .map((it) => [...it, upset])
        .filter((it) => it.reduce((sum, { strength }) => sum + strength, 0) <= 3),
    );
  return sets.map((set): Outcome => {
    const changed = after(plain, set, limits);
    const hasGrounds = Object.values(changed.elements).some(isGround);
    const lifted = look(
      without(changed, (e) => isGround(e)),
      nominal,
    );
    const hasFaults = Object.values(changed.elements).some((e) => isShort(e) && !isGround(e));
    const bare = hasFaults
      ? look(
          without(changed, (e) => isShort(e)),
          nominal,
        )
      : lifted;
    const inPlace = hasGrounds ? look(changed, nominal) : lifted;
    const stages = [inPlace];
    const seenStages = new Set([""]);
    let groundAmps = 0;
    for (const stage of hasGrounds ? stages : []) {
      let some: string[][] = [];
      for (const [id, e] of Object.entries(stage.plain.elements)) {
        if (!isGround(e)) continue;
        const most = Math.max(
          0,
          ...[stage.drawn, stage.off].flatMap((it) => phasesOf(e).map((x) => worstAmps(it, id, x))),
        );
        groundAmps = Math.max(groundAmps, most);
        if (most <= withstandOf(text(e, "cable"), limits.clearingSeconds)) continue;
        some = [...some, ...some.map((it) => [...it, id]), [id]];
      }
      for (const gone of some) {
        const left = without(stage.plain, (_, other) => gone.includes(other));
        const name = Object.keys(left.elements).join(" ");
        if (seenStages.has(name)) continue;
        seenStages.add(name);
        stages.push(look(left, nominal));
      }
    }
    return {
      upsets: set,
      strength: set.reduce((sum, it) => sum + it.strength, 0),
      lifted,
      bare,
      inPlace,
      stages,
      groundAmps,
    };
  });
}

/** Points joined to one by anything but spans, of the same kind of place. */
function sameStructure(plain: Plain, point: string): Set<string> {
  const kind = (it: string) => (plain.points[it] as { kind?: string } | undefined)?.kind ?? "pole";
  const near = new Set([point]);
  for (let before = 0; before < near.size;) {
    before = near.size;
    for (const e of Object.values(plain.elements)) {
      if (e.kind === "span") continue;
      const ends = ["from", "to", "alt"].filter((it) => e[it] !== undefined).map((it) => text(e, it));
      if (ends.some((it) => near.has(it))) for (const it of ends) if (kind(it) === kind(point)) near.add(it);
    }
  }
  return near;
}

/** Whether a neutral in hand counts as grounded: held to earth on its structure, tested or bridged, and lifted by nothing. */
function isHeldNeutral(
  plain: Plain,
  outcomes: readonly Outcome[],
  limits: Limits,
  spot: PlainWorkPoint,
  steps: readonly PlainStep[],
): boolean {
  const all = new Set(conductorsOf(plain));
  const near = sameStructure(plain, spot.at);
  const here = without(plain, (e) => e.kind === "span");
  const onPole = groupsOf([...all], joinsOf(here, all));
  const isOne = (point: string) =>
    all.has(at(point, "N")) && near.has(point) && onPole.get(at(point, "N")) === onPole.get(at(spot.at, "N"));
  const holds =
    Object.entries(plain.points).some(([point, it]) => it.earthOhms !== undefined && isOne(point)) ||
    Object.values(plain.elements).some(
      (e) => isGround(e) && text(e, "to", "neutral") === "both" && isOne(text(e, "at")),
    );
  const everywhere = groupsOf([...all], joinsOf(plain, all));
  const isBridged = Object.values(plain.elements).some((e) => {
    const ends = [text(e, "from"), text(e, "to")];
    return (
      [...named(e, "parted"), ...named(e, "cut")].includes("N") &&
      ends.includes(spot.at) &&
      everywhere.get(at(ends[0]!, "N")) === everywhere.get(at(ends[1]!, "N"))
    );
  });
  const isLifted = outcomes.some(
    (it) => it.strength <= 2 && exposureIn(it.stages, spot.at, "N").earth >= limits.exposureLimitVolts,
  );
  return holds && (isBridged || isTested(steps, spot.at, "N")) && !isLifted;
}

/** What a worker at a point may be bonded to: names of conductors and bars, `""` for earth. */
function bondsIn({ plain, tied }: Looked, point: string): string[] {
  if (tied.has(at(point, "N"))) return [at(point, "N")];
  const near = sameStructure(plain, point);
  const bars = Object.entries(plain.elements).filter(
    ([, e]) =>
      isGround(e) &&
      near.has(text(e, "at")) &&
      text(e, "to", "neutral") !== "neutral" &&
      yes(e, "poleBond", true),
  );
  const own = bars.filter(([, e]) => text(e, "at") === point);
  const counted = (own.length > 0 ? own : bars).map(([id]) => `bar ${id}`);
  return counted.length > 0 ? counted : [""];
}

/** Volts that a worker feels with grounds in place: to what they are bonded to, and to earth. */
export function exposureIn(
  stages: readonly Looked[],
  point: string,
  letter: string,
): { own: number; earth: number } {
  const conductor = at(point, letter);
  const own = stages.flatMap((looked) =>
    [looked.drawn, looked.off].flatMap((it) =>
      bondsIn(looked, point).map((bond) => worst(it, conductor, bond)),
    ),
  );
  const earth = stages.flatMap((looked) => [looked.drawn, looked.off].map((it) => worst(it, conductor)));
  return { own: Math.max(...own), earth: Math.max(...earth) };
}

/** Milliamperes through a body of some ohms that is put between a conductor and what the worker is bonded to. */
export function bodyMilliampsIn(
  stages: readonly Looked[],
  point: string,
  letter: string,
  ohms: number,
  nominal: ReadonlyMap<string, number>,
  withLoadsOff: boolean,
): number {
  const amps = stages.flatMap((looked) => {
    const solved = withLoadsOff ? [looked.drawn, looked.off] : [looked.drawn];
    const drivers = driversIn(looked.plain);
    return solved.flatMap((it) =>
      bondsIn(looked, point).map((bond) => {
        if (bond === at(point, letter)) return 0;
        const elements = {
          ...looked.plain.elements,
          body: { kind: "body", one: at(point, letter), other: barNode(looked.plain, bond), ohms },
        };
        return drivers.reduce((sum, ids) => {
          const alone = {
            drives: (id: string) => ids.includes(id),
            held: it.held,
            outputsHold: it.outputsHold,
          };
          const isOff = it === looked.off && it !== looked.drawn;
          const through = solvePlain({ ...looked.plain, elements }, nominal, isOff, alone).amps;
          return sum + size(through.get("body")?.get("body"));
        }, 0);
      }),
    );
  });
  return 1000 * Math.max(0, ...amps);
}

/** The node that a bar is: its own, or the neutral that the set's jumpers go to. */
function barNode(plain: Plain, bond: string): string {
  const set = plain.elements[bond.replace("bar ", "")];
  return set !== undefined && bond.startsWith("bar ") && text(set, "to") === "both"
    ? at(text(set, "at"), "N")
    : bond;
}

const isSubset = (small: readonly PlainUpset[], large: readonly PlainUpset[]): boolean =>
  small.length < large.length && small.every((it) => large.includes(it));

export interface PlainWorkPoint {
  readonly at: string;
  readonly conductors: string;
}

function threatsIn(
  outcomes: readonly Outcome[],
  limits: Limits,
  spot: PlainWorkPoint,
  nominal: ReadonlyMap<string, number>,
): PlainThreat[] {
  const letters = [...spot.conductors];
  const rows = outcomes.map((outcome) => {
    const states = statesIfFed(
      outcome.lifted,
      outcome.bare,
      limits,
      letters.map((it) => at(spot.at, it)),
    );
    const { fed } = outcome.lifted.reached;
    const of = (wanted: readonly string[]) =>
      letters.filter((it) => wanted.includes(states.get(at(spot.at, it))!));
    return {
      outcome,
      classes: [
        of(["energized", "backfed", "faulted"]).filter((it) => fed.has(at(spot.at, it))),
        of(["energized", "backfed", "faulted"]).filter((it) => !fed.has(at(spot.at, it))),
        of(["induced"]),
        letters.filter((it) => exposureIn(outcome.stages, spot.at, it).own >= limits.exposureLimitVolts),
      ],
    };
  });
  const entries = new Map<string, PlainThreat>();
  for (const k of [0, 1, 2, 3]) {
    const doing = rows.filter(({ classes }) => classes[k]!.length > 0);
    for (const { outcome, classes } of doing) {
      if (doing.some((it) => isSubset(it.outcome.upsets, outcome.upsets))) continue;
      for (const letter of classes[k]!) {
        const conductor = at(spot.at, letter);
        const { own, earth } = exposureIn(outcome.stages, spot.at, letter);
        const entry: PlainThreat = {
          conductor: letter,
          upsets: outcome.upsets,
          strength: outcome.strength,
          volts: Math.max(worst(outcome.lifted.drawn, conductor), worst(outcome.lifted.off, conductor)),
          exposureVolts: own,
          exposureToEarthVolts: earth,
          groundAmps: outcome.groundAmps,
          bodyMilliamps: () =>
            bodyMilliampsIn(outcome.stages, spot.at, letter, limits.bodyOhms, nominal, true),
          reaching: new Set([
            ...(outcome.lifted.reached.any.get(conductor) ?? []),
            ...(outcome.inPlace.reached.any.get(conductor) ?? []),
          ]),
        };
        entries.set(nameOf(entry), entry);
      }
    }
  }
  return [...entries.values()];
}

export const nameOf = (it: {
  readonly conductor: string;
  readonly upsets: readonly { kind: string; element: string; phase?: string }[];
}): string =>
  `${it.conductor} by ${it.upsets
    .map(({ kind, element, phase }) => `${kind}:${element}${phase === undefined ? "" : `.${phase}`}`)
    .sort()
    .join("+")}`;

interface PlainStep {
  readonly do: string;
  readonly at?: string;
  readonly phases?: string;
  readonly done?: boolean;
}
const SWITCHING =
  "open close lift attach cut join refuse remove-barrel replace-barrel set-position start stop pull replace unground".split(
    " ",
  );

function isTested(steps: readonly PlainStep[], point: string, letter: string): boolean {
  let detector = false;
  let tested = false;
  for (const it of steps) {
    if (it.done !== true) continue;
    if (it.do === "check-detector") detector = true;
    if (SWITCHING.includes(it.do)) tested = false;
    if (it.do === "test" && detector && it.at === point && (it.phases ?? letter).includes(letter))
      tested = true;
  }
  return tested;
}

export interface PlainVerdict {
  readonly verdict: string;
  readonly margin: number | null;
  readonly threats: readonly PlainThreat[];
  readonly findings: readonly string[];
}

export function verdictIn(
  plain: Plain,
  outcomes: readonly Outcome[],
  limits: Limits,
  spot: PlainWorkPoint,
  steps: readonly PlainStep[],
): PlainVerdict {
  const nominal = nominalOf(plain);
  const threats = threatsIn(outcomes, limits, spot, nominal);
  const letters = [...spot.conductors];
  const now = outcomes.find(({ strength }) => strength === 0)!;
  const drawn = Object.values(plain.elements).some(isGround) ? look(plain, nominal) : now.lifted;
  const states = statesOf(drawn, now.bare, limits);
  const fedStates = statesIfFed(drawn, now.bare, limits);
  const stateOf = (it: string) => states.get(at(spot.at, it))!;
  const unfed = neverFed(plain);
  const isUnfed = letters.some((it) => unfed.has(at(spot.at, it)));
  const findings: string[] = isUnfed ? ["feed-not-drawn danger"] : [];
  const neutral = at(spot.at, "N");
  const hotNeutral = drawn.tied.has(neutral) && worst(drawn.drawn, neutral) >= limits.hazardVolts;

  let verdict = "isolated";
  if (
    letters.some((it) =>
      ["energized", "backfed", "induced", "faulted"].includes(fedStates.get(at(spot.at, it))!),
    )
  )
    verdict = "live";
  else if (isUnfed || threats.some((it) => it.strength <= 1 && it.exposureVolts >= limits.exposureLimitVolts))
    verdict = "could-go-live";
  else if (
    !hotNeutral &&
    letters.every((it) =>
      it === "N"
        ? isHeldNeutral(plain, outcomes, limits, spot, steps)
        : stateOf(it) === "grounded" && isTested(steps, spot.at, it),
    ) &&
    threats.every((it) => it.strength > 2 || it.exposureVolts < limits.exposureLimitVolts)
  )
    verdict = "grounded";

  const liftedStates = statesIfFed(now.lifted, now.bare, limits);
  if (
    letters.some(
      (it) =>
        liftedStates.get(at(spot.at, it)) === "induced" &&
        bodyMilliampsIn(now.stages, spot.at, it, 500, nominal, false) * 0.5 > limits.inducedLimitVolts,
    )
  )
    findings.push("induced-exposure danger");
  const sets = Object.values(plain.elements).filter((e) => isGround(e) && e["at"] === spot.at);
  // Where nothing but cables meet nothing is bare: a set is asked for at their ends.
  const meeting = Object.values(plain.elements).filter(
    (e) => [e["at"], e["from"], e["to"], e["alt"]].includes(spot.at) && !isGround(e) && e["kind"] !== "fault",
  );
  const isSplice = meeting.length > 1 && meeting.every((e) => e["construction"] === "cable");
  const lacksSet = sets.length === 0 && letters.join("") !== "N" && !isSplice;
  if (lacksSet || sets.some((e) => !yes(e, "poleBond", true))) findings.push("equipotential warning");
  if (
    verdict === "grounded" &&
    outcomes.some(
      (it) =>
        it.strength <= 2 &&
        letters.some((x) => exposureIn(it.stages, spot.at, x).earth >= limits.exposureLimitVolts),
    )
  )
    findings.push(
      steps.some((it) => it.do === "barricade" && it.at === spot.at && it.done === true)
        ? "step-touch note"
        : "step-touch warning",
    );
  return {
    verdict,
    margin:
      verdict === "live" || isUnfed
        ? 0
        : threats.length === 0
          ? null
          : Math.min(...threats.map((it) => it.strength)),
    threats,
    findings,
  };
}

/** Tied neutrals at a dangerous height, loads as drawn, and how serious it is: only warned of where no rod is drawn along it. */
export function hotNeutrals({ plain, tied, drawn }: Looked, limits: Limits): string[] {
  const conductors = conductorsOf(plain);
  const group = groupsOf(conductors, joinsOf(plain, new Set(conductors)));
  const rodded = new Set<string | undefined>();
  for (const [point, { earthOhms }] of Object.entries(plain.points))
    if (earthOhms !== undefined) rodded.add(group.get(at(point, "N")));
  for (const e of Object.values(plain.elements))
    if (e.kind === "span" && e["neutral"] !== false && num(e, "rodsPerKm") > 0)
      for (const end of ["from", "to"]) rodded.add(group.get(at(text(e, end), "N")));
  return [...tied]
    .filter((it) => worst(drawn, it) >= limits.hazardVolts)
    .map((it) => `${it} ${rodded.has(group.get(it)) ? "danger" : "warning"}`)
    .sort();
}

/** Whether a list of elements hangs together from a source to a point. */
export function isConnected(plain: Plain, path: readonly string[], point: string): boolean {
  const pointsOf = (id: string): string[] => {
    const e = plain.elements[id]!;
    if (e.kind === "nearby") return pointsOf(text(e, "span"));
    if (TWO_ENDED.includes(e.kind) || isBank(e))
      return ["from", "alt", "to"].filter((it) => e[it] !== undefined).map((it) => text(e, it));
    return [text(e, "at")];
  };
  if (path.some((id) => plain.elements[id] === undefined)) return false;
  for (let i = 1; i < path.length; i++)
    if (!pointsOf(path[i]!).some((it) => pointsOf(path[i - 1]!).includes(it))) return false;
  return pointsOf(path.at(-1)!).includes(point);
}
