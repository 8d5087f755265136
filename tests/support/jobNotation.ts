import { describe, expect, test } from "vitest";
import {
  isUnreadable,
  jobOf,
  readDocument,
  type Step,
  type StepVerb,
  type StillhotDocument,
  writeDocument,
} from "../../src/core/document";
import { beginJob, type JobState, play, type PlayedStep } from "../../src/core/procedure";
import { playing } from "../../src/core/procedure/planner/playing";
import { spell, spellProblem } from "./words";

/**
 * A drawing in a few lines, for tests: `id kind ends phases key=value …`.
 *
 *     s1  source    p1     ABC  kvLL=12.47
 *     c1  cutout    p1-p2  A    fuse=K25 open=A
 *     p2  point     kind=service
 *     w1  work      p2     A
 *     set openWithoutLoadBreakAmps=0
 *     job permit=held
 *
 * A later line of the same id replaces an earlier one. Points come by themselves: poles, their neutrals on rods of 25 Ω, or on
 * none with `earthOhms=none`.
 */
export function draw(text: string, stepsText = ""): StillhotDocument {
  const points: Record<string, Record<string, unknown>> = {};
  const elements: Record<string, Record<string, unknown>> = {};
  const workPoints: Record<string, unknown> = {};
  const settings: Record<string, unknown> = {};
  const job: Record<string, unknown> = {};
  const touch = (id: string) =>
    (points[id] ??= { kind: "pole", x: 100 * Object.keys(points).length, y: 0, earthOhms: 25 });
  for (const line of text.split("\n").map((it) => it.replace(/#.*/, "").trim())) {
    if (line === "") continue;
    const [id, kind, ...rest] = line.split(/\s+/);
    if (id === "set") Object.assign(settings, keysOf([kind!, ...rest]));
    else if (id === "job") Object.assign(job, keysOf([kind!, ...rest]));
    else if (kind === "point") Object.assign(touch(id!), keysOf(rest));
    else if (kind === "none") delete elements[id!];
    else if (kind === "work")
      workPoints[id!] = { at: rest[0], conductors: rest[1], ...keysOf(rest.slice(2)) };
    else if (kind === "nearby") elements[id!] = { kind, ...keysOf(rest) };
    else {
      const [ends, phases, ...keys] = rest;
      const [from, to, alt] = ends!.split("-");
      for (const point of ends!.split("-")) touch(point);
      elements[id!] = {
        kind,
        phases,
        ...(to === undefined ? { at: from } : { from, to, ...(alt === undefined ? {} : { alt }) }),
        ...keysOf(keys),
      };
    }
  }
  for (const point of Object.values(points)) if (point["earthOhms"] === "none") delete point["earthOhms"];
  const steps = parseSteps(stepsText, Object.keys(points));
  const document = {
    format: "stillhot",
    formatVersion: 1,
    title: "",
    system: { frequencyHz: 60, points, elements },
    job: { workPoints, ...job, steps },
    settings,
  } as unknown as StillhotDocument;
  const read = readDocument(writeDocument(document));
  if (isUnreadable(read)) throw new Error(read.problems.map((it) => spellProblem(it)).join("\n"));
  if (read.warnings.length > 0) throw new Error(read.warnings.map((it) => spell(it.message)).join("\n"));
  return read.document;
}

function keysOf(pairs: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(
    pairs.map((pair) => {
      const at = pair.indexOf("=");
      return [pair.slice(0, at), valueOf(pair.slice(0, at), pair.slice(at + 1))];
    }),
  );
}

function valueOf(key: string, text: string): unknown {
  const link = /^([KT])(\d+)$/.exec(text);
  if (key === "fuse" && link !== null) return { type: link[1], amps: Number(link[2]) };
  // Phases may be digits, and so may the size of a cable: they are text all the same.
  if (["open", "blown", "removed", "cut", "parted", "failed", "cable"].includes(key))
    return text === "true" ? true : text;
  if (key === "does") return text.split(",");
  if (/^[[{]/.test(text)) return JSON.parse(text);
  if (text === "true" || text === "false") return text === "true";
  return /^-?[\d.]+$/.test(text) ? Number(text) : text;
}

const AT_VERBS: readonly string[] = ["test", "ground", "inspect", "barricade", "work"];
const STEP_KEYS: readonly string[] = [
  "with",
  "to",
  "cable",
  "first",
  "text",
  "position",
  "at",
  "expect",
  "method",
  "gloveClass",
];

/** Steps in words, one a line or parted by semicolons: `open c1 A with load-break-tool; ground p2 A cable 2/0 as g1`. */
export function parseSteps(text: string, points: readonly string[]): Step[] {
  return text
    .split(/[;\n]/)
    .map((it) => it.trim())
    .filter((it) => it !== "")
    .map((line) => {
      const [verb, ...words] = line.split(/\s+/);
      const step: Record<string, unknown> = { do: verb as StepVerb };
      if (verb === "wait") return { ...step, seconds: Number(words[0]) } as unknown as Step;
      while (words.length > 0) {
        const word = words.shift()!;
        if (word.includes("=")) Object.assign(step, keysOf([word]));
        else if (word === "as") step["element"] = words.shift();
        else if (STEP_KEYS.includes(word))
          step[word] = word === "text" ? words.splice(0).join(" ") : words.shift();
        else if (step["element"] === undefined && step["at"] === undefined)
          step[AT_VERBS.includes(verb!) || points.includes(word) ? "at" : "element"] = word;
        else step["phases"] = word;
      }
      return step as unknown as Step;
    });
}

/** The steps of a drawing's job. */
export const stepsOf = (document: StillhotDocument): readonly Step[] => jobOf(document).steps;

/** Plays steps on a drawing, from as it is found. */
export function playAll(document: StillhotDocument, steps: readonly Step[]): PlayedStep[] {
  const played: PlayedStep[] = [];
  let state: JobState = beginJob(document);
  for (const step of steps) {
    played.push(play(state, step));
    state = played.at(-1)!.state;
  }
  return played;
}

/** Drawings as they are found, by their text: a rule's cases and a job's mistakes begin alike, and are played once as far as they do. */
const asFound = new Map<string, StillhotDocument>();
const MOST_AS_FOUND = 8;

/** Plays an order on a drawing that are both in the notation. */
export function playedOn(drawing: string, order: string): readonly PlayedStep[] {
  const steps = stepsOf(draw(drawing, order));
  const known = asFound.get(drawing) ?? draw(drawing);
  if (asFound.size >= MOST_AS_FOUND) asFound.clear();
  asFound.set(drawing, known);
  return [...playing(known, steps)];
}

/** The last of some steps on a drawing, with how things stood before it and stand after it. */
export function lastMove(document: StillhotDocument, text: string): readonly [Step, JobState, JobState] {
  const steps = parseSteps(text, []);
  const played = playAll(document, steps);
  return [steps.at(-1)!, played.at(-2)?.state ?? beginJob(document), played.at(-1)!.state];
}

/** A case of a rule: why, the steps, what the rule says of the last one, and lines that the drawing has otherwise. */
export type RuleCase = readonly [why: string, steps: string, wanted: string, drawing?: string];

/**
 * Holds a rule to its cases. What is wanted is `severity where`, several parted by commas, nothing for silence. Every
 * sentence is spelled, and may leave no gap.
 */
export function checkRule(
  rule: string,
  paragraph: string,
  drawing: string,
  cases: readonly RuleCase[],
): void {
  describe(`${rule}: ${paragraph}`, () => {
    for (const [why, steps, wanted, more = ""] of cases)
      test(why, () => expect(findingsInLast(rule, `${drawing}\n${more}`, steps)).toBe(wanted));
  });
}

/** What a rule says of the last of some steps. */
function findingsInLast(rule: string, drawing: string, steps: string): string {
  const played = playedOn(drawing, steps);
  const last = played.at(-1)!;
  for (const { findings, consequence } of played) {
    const sentences = findings.flatMap(({ message, help }) => [
      message,
      ...(help === undefined ? [] : [help]),
    ]);
    for (const sentence of [consequence.text, ...sentences])
      expect(spell(sentence)).not.toMatch(/[{}]|undefined|NaN|\[object/);
  }
  return last.findings
    .filter((it) => it.rule === rule)
    .map(({ severity, where }) => `${severity} ${where}`)
    .join(", ");
}

/** A tap on a three-phase line: clamp and cutout on one pole, a span, and one transformer with three customers. */
export const TAP = `
  s1   source       sub     ABC  kvLL=12.47
  main span         sub-p1  ABC  lengthM=2000
  k1   clamp        p1-p2   A
  c1   cutout       p2-p3   A    fuse=K25
  sp1  span         p3-p4   A    lengthM=60
  c2   cutout       p4-p5   A    fuse=K10
  t1   transformer  p5-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
  m1   meter        p6-h1   12
  ld1  load         h1      12   connection=delta kw=8 customers=3
  h1   point        kind=service
  w1   work         p2      A
`;

/** Two transformers on one street, the legs of the first in a lead; a house draws 20 kW behind both. */
export const BANKED = `
  s1 source      p0    ABC kvLL=12.47
  x1 cutout      p0-p1 B   fuse=K15
  t1 transformer p1-q1 B   connection=single kva=50 primaryKv=7.2 secondaryV=240
  j1 lead        q1-q  12
  x2 cutout      p0-p2 B   fuse=K15
  t2 transformer p2-q  B   connection=single kva=50 primaryKv=7.2 secondaryV=240
  ld load        q     12  connection=delta kw=20 customers=5
  w1 work        p1    B
`;
