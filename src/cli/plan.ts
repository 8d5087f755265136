import {
  type Alternative,
  jobOf,
  type Message,
  type Plan,
  plan as planFor,
  type PlannedStep,
  type Step,
  stepSentence,
  type StructureId,
  type StillhotDocument,
  threatSentence,
  type Uncontrolled,
  visitSentence,
  visitsOf,
  withSetsOf,
  workPointName,
  writeDocument,
} from "../core";
import { cautions, eachFile, NotDone } from "./eachFile";
import { write, writeTo } from "./output";
import { counts, findingJson, findingLines, heading, printable, wrapped } from "./print";
import { say, spell } from "./words";

const ENDING = ".stillhot.json";

/** Puts a complete order of steps into the file, or says what stands in the way of one. */
export const plan = eachFile({
  name: "plan",
  summary: "cli.plan.summary",
  help: "cli.plan.help",
  flags: [{ name: "--out", short: "-o", value: "OUT" }],
  before: ({ files, flags }) => void writeTo(flags, files, ENDING),
  async answer({ file, document, warnings, call }) {
    const planned = planFor(document);
    const ok = planned.ok && !warnings.some(counts);
    const hasOrder = planned.steps.length > 0;
    if (!hasOrder && Object.keys(jobOf(document).workPoints).length === 0)
      throw new NotDone(spell(say("cli.plan.noWorkPoint")));
    const out = writeTo(call.flags, call.files, ENDING)?.(file);
    const text = hasOrder ? writeDocument(withSteps(document, planned.steps)) : undefined;
    if (out !== undefined && text !== undefined) await write(out, text);
    const told = [
      heading(file, document.title),
      ...planLines(document, planned, file, out !== undefined || !hasOrder),
      ...warnings.flatMap((it) => ["", ...findingLines(it, file, document)]),
      ...cautions(),
    ];
    const toStdout = out !== undefined;
    return {
      ok,
      json: { file, ok, ...planJson(planned), ...(out === undefined || !hasOrder ? {} : { out }) },
      lines: [
        ...told,
        ...(out !== undefined && hasOrder ? ["", spell(say("cli.wrote", { file, out }))] : []),
      ],
      ...(toStdout ? {} : { raw: printable(text ?? "") }),
      aside: call.json || toStdout ? [] : told,
    };
  },
});

/** Why a step is there is for the reader of the plan; the file keeps what is to be done. */
const withSteps = (document: StillhotDocument, steps: readonly PlannedStep[]): StillhotDocument => ({
  ...document,
  job: { ...document.job, steps: steps.map(bare) },
});

const bare = ({ why: _, ...step }: PlannedStep): Step => step;

const planJson = ({
  steps,
  customersOut,
  customers,
  criticalOut,
  operations,
  alternatives,
  uncontrolled,
  findings,
}: Plan) => ({
  steps: steps.map(stepJson),
  customersOut,
  customers,
  criticalOut: criticalOut.map(named),
  operations,
  alternatives: alternatives.map((it) => ({
    ...it,
    summary: spell(it.summary),
    criticalOut: it.criticalOut.map(named),
    steps: it.steps.map(stepJson),
  })),
  uncontrolled: uncontrolled.map((it) => ({ ...it, control: spell(it.control) })),
  findings: findings.map(findingJson),
});

const stepJson = (step: PlannedStep) => ({ ...bare(step), why: spell(step.why) });

function planLines(document: StillhotDocument, planned: Plan, file: string, withOrder: boolean): string[] {
  const { ok, steps, alternatives, uncontrolled, findings } = planned;
  const key = steps.length === 0 ? "cli.plan.none" : ok ? "cli.plan.order" : "cli.plan.broken";
  return [
    spell(say(key, { steps: steps.length, cost: costOf(planned) })),
    ...(withOrder ? orderLines(document, steps) : []),
    ...alternatives.flatMap((it) =>
      wrapped("", spell(say("cli.plan.instead", { summary: it.summary, cost: costOf(it) })), "  "),
    ),
    ...uncontrolled.flatMap((it) => uncontrolledLines(document, it)),
    ...findings.flatMap((it) => ["", ...findingLines(it, file, document)]),
  ];
}

const named = (name: string | Message): string => (typeof name === "string" ? name : spell(name));

const costOf = ({
  customers: { asFound, worst, during, end },
  criticalOut,
  operations,
}: Plan | Alternative) =>
  say(criticalOut.length === 0 ? "cli.plan.cost" : "cli.plan.costCritical", {
    ...{ asFound, worst, during, end },
    critical: criticalOut.map(named).join(", "),
    operations,
  });

/** The steps in their order, by visit. */
function orderLines(document: StillhotDocument, steps: readonly PlannedStep[]): string[] {
  const order = steps.map(bare);
  const told = withSetsOf(document, order);
  return visitsOf(document, order).flatMap((visit) => [
    ...wrapped("", spell(visitSentence(document, visit)), "  "),
    ...visit.steps.flatMap((n) => stepLines(told, steps[n - 1]!, n, visit.structure)),
  ]);
}

const stepLines = (
  document: StillhotDocument,
  step: PlannedStep,
  n: number,
  under: StructureId | undefined,
): string[] =>
  wrapped(
    `  ${String(n).padStart(2)}  `,
    spell(say("cli.plan.why", { step: stepSentence(document, bare(step), { under }), why: step.why })),
    "      ",
  );

const uncontrolledLines = (document: StillhotDocument, threat: Uncontrolled): string[] => [
  ...wrapped(
    "",
    spell(
      say("cli.plan.uncontrolled", {
        where: workPointName(document, threat.workPoint),
        threat: threatSentence(document, threat),
      }),
    ),
    "  ",
  ),
  ...wrapped("  ", spell(say("report.do", { help: threat.control })), "  "),
];
