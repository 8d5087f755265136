import { describe, expect, test } from "vitest";
import {
  assess,
  jobOf,
  readDocument,
  settingsOf,
  type StillhotDocument,
  type WorkPoint,
} from "../../src/core";
import { perObject } from "../../src/core/document";
import { upsetsOf } from "../../src/core/hazard";
import { outcomeAfter } from "../../src/core/hazard/outcome";
import { setsUpTo } from "../../src/core/hazard/search";
import { randomDocument } from "../support/randomSystems";
import { draws } from "../support/draws";

/** Verdicts from the worst to the best. */
const VERDICTS = ["live", "could-go-live", "isolated", "grounded"];
/** Cables from the thinnest to the thickest; nobody noted the second, which counts as No. 2. */
const CABLES = ["4", undefined, "2/0", "4/0"] as const;

type File = ReturnType<typeof randomDocument>;
type Saved = Record<string, unknown>;

/**
 * A random drawing with a ground set where the work is and a done test there, so that there is something to lose. The
 * clearing time is long: cables part by what an ordinary feeder drives through them.
 */
function fileOf(seed: number): File {
  const file = randomDocument(seed, { parts: 7 });
  const { at, conductors } = file.job.workPoints.w1;
  file.system.elements["own"] = { kind: "ground", at, phases: conductors, cable: "4/0", to: "neutral" };
  if (seed % 2 === 0)
    for (const element of Object.values(file.system.elements))
      if ("open" in element || element["kind"] === "disconnect") element["open"] = element["phases"];
  const steps = [
    { do: "check-detector", done: true },
    { do: "test", at, phases: conductors, done: true },
  ];
  return { ...file, job: { ...file.job, steps }, settings: { clearingSeconds: 2 } } as unknown as File;
}

/** A file as a document, read once. */
const read = perObject((file: File): StillhotDocument | undefined => {
  const answer = readDocument(JSON.stringify(file));
  return "document" in answer ? answer.document : undefined;
});

function changed(file: File, change: (elements: Record<string, Saved>, file: File) => void): File {
  const copy = structuredClone(file);
  change(copy.system.elements, copy);
  return copy;
}

const files = Array.from({ length: draws(60) }, (_, index) => fileOf(380 + index)).filter((file) => {
  const document = read(file);
  return document !== undefined && upsetsOf(document.system, settingsOf(document)).length <= 8;
});

interface Standing {
  readonly verdict: number;
  readonly margin: number;
}

function standingOf(file: File): Standing {
  const { verdict, margin } = assess(read(file)!).workPoints["w1" as never]!;
  return { verdict: VERDICTS.indexOf(verdict), margin: margin ?? Infinity };
}

/** What the worker feels after each set of up to two upsets, and what goes through the jumpers. */
function feltAfterEach(file: File): { readonly volts: number[]; readonly amps: number[] } {
  const document = read(file)!;
  const { system } = document;
  const settings = settingsOf(document);
  const workPoint = Object.values(jobOf(document).workPoints)[0] as WorkPoint;
  const upsets = upsetsOf(system, settings);
  const outcomes = [...setsUpTo(upsets, 2)].flatMap((set) =>
    outcomeAfter(
      { system, settings, workPoint },
      set.map((it) => upsets[it]!),
    ),
  );
  return {
    volts: outcomes.flatMap((it) => [it.exposureVolts, it.exposureToEarthVolts]),
    amps: outcomes.map((it) => it.groundAmps),
  };
}

const withCable = (file: File, cable: string | undefined): File =>
  changed(file, (elements) => {
    for (const it of Object.values(elements).filter(({ kind }) => kind === "ground"))
      if (cable === undefined) delete it["cable"];
      else it["cable"] = cable;
  });

describe("H19 a thinner ground set, or one whose cable nobody noted, never looks better than a thicker one", () => {
  test("no verdict is better, and nobody feels less after any set of upsets", () => {
    let parted = 0;
    for (const file of files) {
      const { title } = file;
      const all = CABLES.map((cable) => withCable(file, cable));
      const felt = all.map(feltAfterEach);
      const standings = all.map(standingOf);
      for (let thick = 1; thick < CABLES.length; thick++) {
        const [thinner, thicker] = [felt[thick - 1]!, felt[thick]!];
        expect(standings[thick - 1]!.verdict, `${title}, ${CABLES[thick]}`).toBeLessThanOrEqual(
          standings[thick]!.verdict,
        );
        const lessFelt = thicker.volts.filter(
          (volts, index) => !(thinner.volts[index]! * 1.000_001 + 1e-3 > volts),
        );
        expect(lessFelt, `${title}, ${CABLES[thick]}`).toEqual([]);
        if (thinner.volts.some((volts, index) => volts > 1.01 * thicker.volts[index]! + 1)) parted++;
      }
    }
    expect(files.length).toBeGreaterThan(draws(25));
    expect(parted).toBeGreaterThan(draws(5));
  });
});

const LESS: readonly (readonly [
  what: string,
  change: (elements: Record<string, Saved>, file: File) => void,
])[] = [
  ["without tags", (elements) => drop(elements, "tagged")],
  ["without blocks", (elements) => drop(elements, "blocked")],
  ["without how anything is known", (elements) => drop(elements, "evidence")],
  ["without the detector check", (_, file) => void dropStep(file, "check-detector")],
  ["without the test", (_, file) => void dropStep(file, "test")],
  ["without the ground set at the work", (elements) => void delete elements["own"]],
];

function drop(elements: Record<string, Saved>, key: string): void {
  for (const it of Object.values(elements)) delete it[key];
}

function dropStep(file: File, verb: string): void {
  const steps = file.job.steps as unknown as { do: string }[];
  steps.splice(0, steps.length, ...steps.filter((it) => it.do !== verb));
}

/** Each file with all of it seen, and how it stands so. */
const MARKED = files.map((file) => {
  const marked = changed(file, (elements) => {
    for (const it of Object.values(elements)) it["evidence"] = "seen";
  });
  return { marked, before: standingOf(marked) };
});

describe("H20 what is taken away never makes a verdict better, nor a margin larger", () => {
  test.each(LESS)("%s", (_what, change) => {
    for (const { marked, before } of MARKED) {
      const after = standingOf(changed(marked, change));
      expect(after.verdict, marked.title).toBeLessThanOrEqual(before.verdict);
      expect(after.margin, marked.title).toBeLessThanOrEqual(before.margin);
    }
  });
});
