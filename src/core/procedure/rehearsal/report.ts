import type { Step } from "../../document";
import type { Assessment, Verdict } from "../../hazard";
import { type Catalogue, english, say, type Severity, spell } from "../../terms";
import { type CustomersOut, customersOutIn } from "./customers";
import type { PlayedStep } from "./play";
import type { Rehearsal } from "./rehearse";
import type { StepMark, RehearsalFinding } from "../rules/rule";
import { seen } from "../job/seen";

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
  catalogue: Catalogue = english,
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
  readonly customers: CustomersOut;
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

export function rehearsalJson(rehearsal: Rehearsal, catalogue: Catalogue = english): RehearsalJson {
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

function stepJson(
  { n, step, state, findings, consequence }: PlayedStep,
  catalogue: Catalogue = english,
): StepJson {
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
export function rehearsalText(rehearsal: Rehearsal, file: string, catalogue: Catalogue = english): string {
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
    ...stepLines(steps, catalogue),
    ...told.flatMap(({ finding, at }) => ["", ...findingLines(finding, steps, file, at, catalogue)]),
    ...findings.flatMap((finding) => ["", ...findingLines(finding, steps, file, undefined, catalogue)]),
    "",
  ].join("\n");
}

/** A step as it is said aloud: `open c1 A with load-break-tool`. */
export const stepWords = ({
  do: verb,
  element,
  at,
  phases,
  to,
  position,
  first,
  seconds,
  with: tool,
}: Step): string =>
  [
    verb,
    element,
    at,
    phases,
    position ?? to,
    seconds === undefined ? undefined : `${seconds} s`,
    first === undefined ? undefined : `${first} first`,
    tool === undefined ? undefined : `with ${tool}`,
  ]
    .filter((it) => it !== undefined && it !== "")
    .join(" ");

function stepLines(steps: readonly PlayedStep[], catalogue: Catalogue): string[] {
  const width = Math.max(0, ...steps.map(({ step }) => stepWords(step).length));
  return steps.map(({ n, step, state, consequence }) => {
    const verdicts = Object.entries(seen(state).workPoints)
      .map(([id, { verdict }]) => `${id} ${spell(say(`stands.${verdict}`), catalogue)}`)
      .join(", ");
    const words = `${String(n).padStart(3)}  ${stepWords(step).padEnd(width)}  ${verdicts}`.trimEnd();
    const happened = spell(consequence.text, catalogue);
    return consequence.text.key === "consequence.none" ? words : `${words}\n     ${happened}`;
  });
}

function findingLines(
  { rule, severity, where, message, help, citation, marks = [] }: RehearsalFinding,
  steps: readonly PlayedStep[],
  file: string,
  at: number | undefined,
  catalogue: Catalogue = english,
): string[] {
  const place =
    at === undefined ? say("report.atEnd", { file, where }) : say("report.atStep", { file, n: at, where });
  const shown = marks.length > 0 || at === undefined ? marks : [{ step: at, why: say("mark.thisStep") }];
  return [
    `${severity}[${rule}]: ${spell(message, catalogue)}`,
    `  --> ${spell(place, catalogue)}`,
    ...markLines(shown, steps, catalogue),
    ...(help === undefined ? [] : [`   = ${spell(say("report.do", { help }), catalogue)}`]),
    `   = ${citation}`,
  ];
}

function markLines(marks: readonly StepMark[], steps: readonly PlayedStep[], catalogue: Catalogue): string[] {
  const rows = marks.flatMap(({ step: n, why }) => {
    const played = steps[n - 1];
    return played === undefined ? [] : [{ n, words: stepWords(played.step), why: spell(why, catalogue) }];
  });
  const width = Math.max(0, ...rows.map(({ words }) => words.length));
  return rows.map(({ n, words, why }) =>
    `   | ${String(n).padStart(2)}  ${words.padEnd(width)}  ${why}`.trimEnd(),
  );
}
