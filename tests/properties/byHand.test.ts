import { describe, expect, test } from "vitest";
import {
  assess,
  readDocument,
  type StillhotDocument,
  type Threat,
  type WorkPointReport,
} from "../../src/core";
import { drawFrom, randomDocument } from "../support/randomSystems";

/**
 * What a stranger would do who has docs/format.md and a file, and no look at the code: change the file by hand, ask again,
 * and hold the two answers against each other. Nothing here uses what the search for threats uses.
 */
type File = ReturnType<typeof randomDocument>;
type Saved = Record<string, unknown>;

const LIVE = ["energized", "backfed", "induced", "faulted"];
/** Two-ended kinds whose ends are alike while they are closed. */
const ALIKE = [
  "span",
  "lead",
  "clamp",
  "cutout",
  "disconnect",
  "recloser",
  "breaker",
  "sectionalizer",
  "elbow",
];
const OPENERS = [
  "clamp",
  "cutout",
  "disconnect",
  "recloser",
  "breaker",
  "sectionalizer",
  "elbow",
  "meter",
  "main",
  "regulator",
];

const files = (first: number, count: number, parts: number): File[] =>
  Array.from({ length: count }, (_, at) => randomDocument(first + at, { parts })).filter(
    (it) => read(it) !== undefined,
  );

function read(file: File): StillhotDocument | undefined {
  const answer = readDocument(JSON.stringify(file));
  return "document" in answer ? answer.document : undefined;
}

const asked = (file: File) => assess(read(file)!);

function changed(file: File, change: (elements: Record<string, Saved>, file: File) => void): File {
  const copy = structuredClone(file);
  change(copy.system.elements, copy);
  return copy;
}

const letters = (value: unknown): string => (typeof value === "string" ? value : "");

const without = (it: Saved, key: string, phases: string): void =>
  void (it[key] = [...letters(it[key])].filter((phase) => !phases.includes(phase)).join(""));

/** One thing that can change without the crew doing it, as the table of upsets in docs/format.md has it. */
interface ByHand {
  readonly name: string;
  readonly strength: number;
  readonly happen: (elements: Record<string, Saved>) => void;
}

function upsetsByHand(file: File): ByHand[] {
  return Object.entries(file.system.elements).flatMap(([id, it]): ByHand[] => {
    const kind = String(it["kind"]);
    const one = (name: string, strength: number, happen: (it: Saved) => void): ByHand => ({
      name,
      strength,
      happen: (elements) => happen(elements[id]!),
    });
    if (kind === "source" && it["on"] === false)
      return [one(`restore:${id}`, 1, (its) => (its["on"] = true))];
    const stops = it["outputKw"] !== undefined && it["withoutGrid"] !== "carries-on";
    if (kind === "generator" && (it["on"] !== true || stops))
      return [
        one(`start:${id}`, 1, (its) => {
          its["on"] = true;
          if (stops) its["withoutGrid"] = "carries-on";
        }),
      ];
    if (kind === "span" || kind === "lead") {
      const key = kind === "span" ? "parted" : "cut";
      return [...letters(it[key])].map((phase) =>
        one(`rejoin:${id}${phase}`, kind === "span" ? 1 : 2, (its) => without(its, key, phase)),
      );
    }
    const open = letters(it["open"]);
    if (!OPENERS.includes(kind) || open === "") return [];
    const closesAlone =
      (["recloser", "breaker"].includes(kind) || it["remote"] === true) && it["blocked"] !== true;
    const strength = closesAlone || it["tagged"] !== true ? 1 : it["blocked"] === true ? 3 : 2;
    const verb = closesAlone ? "reclose" : "close";
    const isGang =
      ["recloser", "breaker", "sectionalizer", "meter", "main"].includes(kind) || it["gang"] === true;
    return isGang
      ? [one(`${verb}:${id}`, strength, (its) => (its["open"] = ""))]
      : [...open].map((phase) =>
          one(`${verb}:${id}${phase}`, strength, (its) => without(its, "open", phase)),
        );
  });
}

/** All sets of upsets with a sum of strengths up to 3, the empty one too. */
function setsOf(upsets: readonly ByHand[], left = 3): ByHand[][] {
  return upsets.reduce<ByHand[][]>(
    (sets, it) => [
      ...sets,
      ...sets.filter((set) => strengthOf(set) + it.strength <= left).map((set) => [...set, it]),
    ],
    [[]],
  );
}

const strengthOf = (set: readonly ByHand[]): number => set.reduce((sum, it) => sum + it.strength, 0);

const namesOf = ({ upsets }: Threat): string[] =>
  upsets.map((it) => `${it.kind}:${it.element}${it.phase ?? ""}`);

describe("H7 what is done to the file by hand does no more than the threats say", () => {
  test("a set of upsets that makes a work conductor live, grounds lifted, holds a threat of no more than its strength", () => {
    let live = 0;
    for (const file of files(31_000, 18, 10)) {
      const [w1] = Object.values(asked(file).workPoints);
      const { at, conductors } = file.job.workPoints.w1;
      const sets = setsOf(upsetsByHand(file));
      if (sets.length > 60) continue;
      for (const set of sets) {
        const after = changed(file, (elements, { job }) => {
          Object.assign(job, { workPoints: {} }); // states are all that is asked for
          for (const upset of set) upset.happen(elements);
          for (const [id, { kind }] of Object.entries(elements)) if (kind === "ground") delete elements[id];
        });
        const states = asked(after).conductors;
        const names = new Set(set.map((it) => it.name));
        const told = w1!.threats.filter((threat) => namesOf(threat).every((it) => names.has(it)));
        for (const letter of conductors) {
          const state = states[`${at}/${letter}` as keyof typeof states]!.state;
          if (!LIVE.includes(state)) continue;
          live++;
          const what = `${file.title}: ${[...names].join(" + ")} makes ${letter} ${state}`;
          expect(told, what).not.toEqual([]);
          expect(Math.min(...told.map((it) => it.strength)), what).toBeLessThanOrEqual(strengthOf(set));
        }
      }
    }
    expect(live).toBeGreaterThan(60);
  });
});

const near = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 0.01 + 1e-3 * Math.max(Math.abs(a), Math.abs(b));

/** The next phase for each; rows of a matrix stay, since every span here is made alike in all its phases. */
const NEXT: Readonly<Record<string, string>> = { A: "B", B: "C", C: "A" };
const next = (phases: string): string =>
  [...phases]
    .map((it) => NEXT[it] ?? it)
    .sort()
    .join("");

/** What goes on as what, once all are called by the next letter: phases stand in their order, what they go on as beside them. */
const swappedAs = (phases: string, toPhases: string): string =>
  [...next(phases)].map((it) => next(toPhases[[...phases].findIndex((was) => next(was) === it)]!)).join("");

function turned(file: File): File {
  return changed(file, (elements, { job }) => {
    for (const it of Object.values(elements)) {
      if (typeof it["toPhases"] === "string")
        it["toPhases"] = swappedAs(letters(it["phases"]), it["toPhases"]);
      for (const key of ["phases", "open", "parted", "cut"])
        if (typeof it[key] === "string") it[key] = next(it[key]);
      const taps = it["taps"] as Record<string, number> | undefined;
      if (taps) it["taps"] = Object.fromEntries(Object.entries(taps).map(([at, tap]) => [next(at), tap]));
    }
    job.workPoints.w1.conductors = next(job.workPoints.w1.conductors);
  });
}

/** Spans that are the same seen from each of their phases, so that only the names can tell these apart. */
const alike = (file: File): File =>
  changed(file, (elements) => {
    for (const it of Object.values(elements)) {
      if (it["kind"] !== "span" || it["construction"] === "secondary") continue;
      const size = letters(it["phases"]).length + (it["neutral"] === false ? 0 : 1);
      const matrix = <T>(own: T, mutual: T) =>
        Array.from({ length: size }, (_row, r) =>
          Array.from({ length: size }, (_, c) => (r === c ? own : mutual)),
        );
      it["zOhmsPerKm"] = matrix([0.4, 0.8], [0.06, 0.35]);
      it["bMicroSPerKm"] = matrix(4, -0.7);
    }
  });

/** The volts of these do not turn with the phases: they stand at 0° wherever they are put. */
const standsStill = ({ system }: File): boolean =>
  Object.values(system.elements).some(
    ({ kind, phases }) => kind === "nearby" || (kind === "generator" && phases !== "ABC"),
  );

const mirrored = (file: File): File =>
  changed(file, (elements, { title, system }) => {
    const draw = drawFrom(title.length);
    const beside = new Set(Object.values(elements).map((it) => it["span"]));
    for (const [id, it] of Object.entries(elements)) {
      it["label"] = `<b>${id}</b> & "${draw.between(0, 99)}"`;
      // Where phases are swapped its ends are not alike.
      if (ALIKE.includes(String(it["kind"])) && !beside.has(id) && it["toPhases"] === undefined)
        [it["from"], it["to"]] = [it["to"], it["from"]];
    }
    for (const [id, point] of Object.entries(system.points)) Object.assign(point, { x: -3, y: 9, label: id });
    Object.assign(system.points, { aside: { earthOhms: 5 } });
  });

/** The same answer: state and volts of every conductor, and what threatens the work point, by strength. */
function expectSame(before: File, after: File, rename: (letters: string) => string): void {
  const [was, is] = [asked(before), asked(after)];
  for (const [id, { state, volts, voltsLoadsOff }] of Object.entries(was.conductors)) {
    const [point, letter] = id.split("/") as [string, string];
    const other = is.conductors[`${point}/${rename(letter)}` as keyof typeof is.conductors]!;
    expect(other.state, `${before.title} ${id}`).toBe(state);
    expect(near(other.volts, volts), `${before.title} ${id} ${volts} ${other.volts}`).toBe(true);
    expect(near(other.voltsLoadsOff, voltsLoadsOff), `${before.title} ${id} loads off`).toBe(true);
  }
  const told = ([w1]: readonly WorkPointReport[], named: (letters: string) => string) => ({
    verdict: w1!.verdict,
    margin: w1!.margin,
    threats: w1!.threats
      .map(
        ({ strength, conductor, upsets }) =>
          `${strength} ${named(conductor)} ${upsets
            .map((it) => `${it.kind} ${it.element} ${named(it.phase ?? "")}`)
            .sort()
            .join(" + ")}`,
      )
      .sort(),
  });
  expect(
    told(Object.values(is.workPoints), (it) => it),
    before.title,
  ).toEqual(told(Object.values(was.workPoints), rename));
}

describe("H8 what means the same is answered the same", () => {
  test("labels, places, ends that are alike, and a point that nothing uses", () => {
    for (const file of files(32_000, 40, 12)) expectSame(file, mirrored(file), (it) => it);
  });

  test("A, B, C called B, C, A", () => {
    let turns = 0;
    for (const file of files(33_000, 60, 12)) {
      if (standsStill(file)) continue;
      turns++;
      expectSame(alike(file), turned(alike(file)), next);
    }
    expect(turns).toBeGreaterThan(20);
  });

  test("how a thing is known never changes how it stands", () => {
    for (const file of files(34_000, 30, 10)) {
      const guessed = changed(file, (elements) => {
        for (const it of Object.values(elements)) it["evidence"] = "assumed";
      });
      expectSame(file, guessed, (it) => it);
    }
  });
});
