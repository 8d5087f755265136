import { nameOfPlace } from "../job/names";
import { type Step, type StillhotDocument, workPointName } from "../../document";
import type { Assessment, Verdict } from "../../hazard";
import { type Catalogue, say, type Severity, spell, type StructureId } from "../../terms";
import { type CustomersOutOfJob, customersOutIn } from "./customers";
import type { PlayedStep } from "./play";
import type { Rehearsal } from "./rehearse";
import type { StepMark, RehearsalFinding } from "../rules/rule";
import { seen } from "../job/seen";
import { stepSentence } from "../job/stepSentence";
import { type Visit, visitSentence, visitsOf } from "../job/visits";

/** A finding with its words spelled out, as a script reads it. */
export interface SpelledFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly where: string;
  readonly message: string;
  readonly help?: string;
  readonly citation: string;
}

const spellFinding = (
  { rule, severity, where, message, help, citation }: RehearsalFinding,
  catalogue: Catalogue,
): SpelledFinding => ({
  rule,
  severity,
  where,
  message: spell(message, catalogue),
  ...(help === undefined ? {} : { help: spell(help, catalogue) }),
  citation,
});

/** What the command line prints for a rehearsal, without the file's name; every sentence spelled out. */
export interface RehearsalJson {
  readonly ok: boolean;
  readonly customers: CustomersOutOfJob;
  readonly steps: readonly StepJson[];
  readonly findings: readonly SpelledFinding[];
  readonly final: Omit<Assessment, "findings"> & { readonly findings: readonly SpelledFinding[] };
}

interface StepJson {
  readonly n: number;
  readonly do: Step["do"];
  readonly findings: readonly SpelledFinding[];
  readonly consequence: {
    readonly kind: string;
    readonly amps: number;
    readonly volts: number;
    readonly text: string;
  };
  readonly workPoints: Readonly<
    Record<string, { readonly verdict: Verdict; readonly margin: number | null }>
  >;
}

/** A rehearsal as the command line gives it with `--json`, every sentence spelled out. */
export function rehearsalJson(rehearsal: Rehearsal, catalogue: Catalogue): RehearsalJson {
  const { ok, steps, findings, final } = rehearsal;
  const spelled = (it: RehearsalFinding) => spellFinding(it, catalogue);
  return {
    ok,
    customers: customersOutIn(rehearsal),
    steps: steps.map((it) => stepJson(it, catalogue)),
    findings: findings.map(spelled),
    final: { ...final, findings: final.findings.map(spelled) },
  };
}

function stepJson({ n, step, state, findings, consequence }: PlayedStep, catalogue: Catalogue): StepJson {
  const { kind, amps, volts, text } = consequence;
  return {
    n,
    do: step.do,
    findings: findings.map((it) => spellFinding(it, catalogue)),
    consequence: { kind, amps, volts, text: spell(text, catalogue) },
    workPoints: Object.fromEntries(
      Object.entries(seen(state).workPoints).map(([id, { verdict, margin }]) => [id, { verdict, margin }]),
    ),
  };
}

/** A rehearsal to be read: the steps with what each did, then each finding with the steps that show why. */
export function rehearsalText(rehearsal: Rehearsal, file: string, catalogue: Catalogue): string {
  const { steps, findings } = rehearsal;
  const told = steps.flatMap((it) => it.findings.map((finding) => ({ finding, at: it.n })));
  const count = (severity: Severity) =>
    [...told.map(({ finding }) => finding), ...findings].filter((it) => it.severity === severity).length;
  const summary = say("report.summary", {
    file,
    steps: steps.length,
    dangers: count("danger"),
    warnings: count("warning"),
    notes: count("note"),
  });
  return [
    spell(summary, catalogue),
    "",
    ...visitLines(steps, catalogue),
    ...told.flatMap(({ finding, at }) => ["", ...findingLines(finding, rehearsal, file, at, catalogue)]),
    ...findings.flatMap((finding) => ["", ...findingLines(finding, rehearsal, file, undefined, catalogue)]),
    "",
  ].join("\n");
}

/** The drawing as it was before a step, in which what the step takes off still has its name. */
const documentBefore = (steps: readonly PlayedStep[], n: number): StillhotDocument =>
  steps[n - 2]?.state.document ?? steps[0]!.state.asFound;

const stepWords = (
  steps: readonly PlayedStep[],
  { n, step }: PlayedStep,
  catalogue: Catalogue,
  under?: StructureId,
): string => spell(stepSentence(documentBefore(steps, n), step, { under }), catalogue);

function visitLines(steps: readonly PlayedStep[], catalogue: Catalogue): string[] {
  const [first] = steps;
  if (first === undefined) return [];
  const { asFound } = first.state;
  const order = steps.map(({ step }) => step);
  return visitsOf(asFound, order).flatMap((visit) => [
    spell(visitSentence(asFound, visit), catalogue),
    ...stepLines(steps, visit, catalogue),
  ]);
}

function stepLines(steps: readonly PlayedStep[], visit: Visit, catalogue: Catalogue): string[] {
  return visit.steps.flatMap((n) => {
    const played = steps[n - 1]!;
    const { state, consequence } = played;
    const verdicts = Object.entries(seen(state).workPoints)
      .map(([id, { verdict }]) =>
        spell(
          say("report.stands", {
            name: workPointName(state.document, id),
            verdict: say(`stands.${verdict}`),
          }),
          catalogue,
        ),
      )
      .join("; ");
    const happened = consequence.text.key === "consequence.none" ? "" : spell(consequence.text, catalogue);
    return [
      `${String(n).padStart(3)}  ${stepWords(steps, played, catalogue, visit.structure)}`,
      ...[happened, verdicts].filter((it) => it !== "").map((it) => `     ${it}`),
    ];
  });
}

function findingLines(
  { rule, severity, where, message, help, citation, marks = [] }: RehearsalFinding,
  { begin, steps }: Rehearsal,
  file: string,
  at: number | undefined,
  catalogue: Catalogue,
): string[] {
  const { document } = steps.at(-1)?.state ?? begin;
  const name = nameOfPlace(document, where);
  const place =
    at === undefined ? say("report.atEnd", { file, where: name }) : say("report.atStep", { file, n: at });
  const shown = marks.length > 0 || at === undefined ? marks : [{ step: at, why: say("mark.thisStep") }];
  return [
    `${severity}, ${spell(place, catalogue)} (${rule})`,
    `  ${spell(message, catalogue)}`,
    ...markLines(shown, steps, catalogue),
    ...(help === undefined ? [] : [`  ${spell(say("report.do", { help }), catalogue)}`]),
    `  ${citation}`,
  ];
}

function markLines(marks: readonly StepMark[], steps: readonly PlayedStep[], catalogue: Catalogue): string[] {
  const rows = marks.flatMap(({ step: n, why }) => {
    const played = steps[n - 1];
    return played === undefined
      ? []
      : [{ n, words: stepWords(steps, played, catalogue), why: spell(why, catalogue) }];
  });
  const width = Math.max(0, ...rows.map(({ words }) => words.length));
  return rows.map(({ n, words, why }) =>
    `    ${String(n).padStart(2)}  ${words.padEnd(width)}  ${why}`.trimEnd(),
  );
}
