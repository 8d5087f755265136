import type { Step } from "../../../document";
import { beginJob, play, type RehearsalFinding, stepSentence } from "../../../procedure";
import { type Message, say } from "../../../terms";
import type { DrillMaker } from "../question";
import { firstWork, orderFor } from "../situation";

/** An order, spoiled in one place. */
type Spoil = (steps: readonly Step[]) => Step[] | undefined;

const without =
  (verb: Step["do"]): Spoil =>
  (steps) => {
    const at = steps.findIndex((it) => it.do === verb);
    return at === -1 ? undefined : steps.toSpliced(at, 1);
  };

/** The first of one verb comes before the first of another. */
const tooEarly =
  (verb: Step["do"], other: Step["do"]): Spoil =>
  (steps) => {
    const [from, to] = [steps.findIndex((it) => it.do === verb), steps.findIndex((it) => it.do === other)];
    if (from === -1 || to === -1 || from < to) return undefined;
    return steps.toSpliced(from, 1).toSpliced(to, 0, steps[from]!);
  };

/** What goes wrong on poles: from the five mistakes that crews are warned of most. */
const SPOILS: readonly Spoil[] = [
  without("check-detector"),
  without("test"),
  without("tag"),
  without("ground"),
  without("receive-permit"),
  tooEarly("ground", "test"),
  tooEarly("test", "open"),
  tooEarly("work", "ground"),
];

/** Find the mistake in this order: the step at which the first rule breaks. */
export const mistake: DrillMaker = (document, chance) => {
  const steps = orderFor(document).slice(0, firstWork(document) + 1);
  for (const spoil of chance.shuffled(SPOILS)) {
    const spoiled = spoil(steps);
    const found = spoiled === undefined ? undefined : firstBroken(document, spoiled);
    if (found === undefined) continue;
    const words: Message[] = spoiled!.map((step) => stepSentence(document, step));
    return {
      kind: "mistake",
      document,
      ask: say("drill.ask.mistake"),
      options: words.map((text) => ({ text })),
      answering: "one",
      answer: [found.at],
      why: found.findings.map(({ message, citation }) => say("drill.why.rule", { why: message, citation })),
      lit: [],
    };
  }
  return undefined;
};

function firstBroken(
  document: Parameters<DrillMaker>[0],
  steps: readonly Step[],
): { readonly at: number; readonly findings: readonly RehearsalFinding[] } | undefined {
  let state = beginJob(document);
  for (const [at, step] of steps.entries()) {
    const played = play(state, step);
    const findings = played.findings.filter(({ severity }) => severity !== "note");
    if (findings.length > 0) return { at, findings };
    state = played.state;
  }
  return undefined;
}
