import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { run } from "../../src/cli/run";

/** What one line of words gave back. */
export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one line in this process, as the program would. */
export async function line(
  words: readonly string[],
  {
    stdin = [],
    stopped = AbortSignal.abort(),
  }: { stdin?: readonly (string | Uint8Array)[]; stopped?: AbortSignal } = {},
): Promise<Outcome> {
  let out = "";
  let err = "";
  const code = await run(words, {
    out: (text) => void (out += text),
    err: (text) => void (err += text),
    stdin: (async function* () {
      yield* stdin;
    })(),
    untilStopped: () => stopped,
  });
  return { code, out, err };
}

/** Lines that call something safe, or that have a gap left open. A rule's id may hold the word; nothing that a person is told may. */
export const saidBadly = (text: string): readonly string[] =>
  text
    .replaceAll("work-not-safe", "")
    .split("\n")
    .filter(
      (it) =>
        (/\bsafe(ly)?\b/i.test(it) && !it.includes('"notes":')) ||
        /NaN|undefined|Infinity|\[object|\{[a-z]\w*\}/.test(it),
    );

export const folder = (): string => mkdtempSync(join(tmpdir(), "stillhot-"));

/** Writes files into a new folder and gives back how to name them. */
export function files(contents: Readonly<Record<string, unknown>>): (name: string) => string {
  const at = folder();
  for (const [name, content] of Object.entries(contents))
    writeFileSync(
      join(at, name),
      typeof content === "string" || content instanceof Uint8Array ? content : JSON.stringify(content),
    );
  return (name) => join(at, name);
}

/** A one-phase tap: source, cutout, transformer, one customer; the work point is the lead below the cutout. */
export function tap(
  change: Readonly<Record<string, unknown>> = {},
  rest: Readonly<Record<string, unknown>> = {},
) {
  return {
    format: "stillhot",
    formatVersion: 1,
    title: "Tap",
    system: {
      points: { p1: {}, p2: {}, p3: {} },
      elements: {
        s1: { kind: "source", phases: "ABC", at: "p1", kvLL: 12.47 },
        c1: { kind: "cutout", phases: "A", from: "p1", to: "p2", label: "Tap cutout" },
        t1: {
          kind: "transformer",
          phases: "A",
          from: "p2",
          to: "p3",
          connection: "single",
          kva: 25,
          primaryKv: 7.2,
          secondaryV: 240,
        },
        ld1: { kind: "load", phases: "12", at: "p3", kw: 5, connection: "delta", customers: 1 },
        ...change,
      },
    },
    job: { workPoints: { w1: { at: "p2", conductors: "A" } } },
    ...rest,
  };
}

const open = { kind: "cutout", phases: "A", from: "p1", to: "p2", label: "Tap cutout", open: "A" };

/** The same, opened, tagged and blocked, grounded at the work point with a bond, and tested. */
export const groundedTap = () =>
  tap(
    {
      c1: { ...open, tagged: true, blocked: true },
      g1: { kind: "ground", phases: "A", at: "p2", cable: "2/0" },
    },
    {
      job: {
        workPoints: { w1: { at: "p2", conductors: "A" } },
        steps: [
          { do: "check-detector", done: true },
          { do: "test", at: "p2", phases: "A", done: true },
          { do: "barricade", at: "p2", done: true },
        ],
      },
    },
  );

/** The same, opened and nothing else. */
export const openedTap = () => tap({ c1: open });

/** A drawing without a job. */
export const drawing = () => {
  const { job: _, ...rest } = tap();
  return rest;
};
