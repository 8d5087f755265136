import {
  groundsWorth,
  type GroundsWorth,
  groundsWorthSentence,
  jobOf,
  lookFirst,
  type LookFirst,
  type LookFirstReport,
  lookFirstSentence,
  type Ranges,
  rangesOf,
  rangesSentence,
  type StillhotDocument,
  whileWorking,
  type WorkPointId,
} from "../core";
import { findingJson, wrapped } from "./print";
import { say, spell } from "./words";

/** What to look at first for one work point: as drawn, and as it stands while the order has its hands at the work. */
export interface LookFirstAnswer {
  readonly drawn: LookFirstReport;
  /** nothing where no order leads to the work */
  readonly working: LookFirstReport | undefined;
  /** nothing where no ground set stands */
  readonly worth: GroundsWorth | undefined;
  readonly ranges: Ranges;
}

/** What to look at first, for every work point of a drawing. */
export const looksOf = (document: StillhotDocument): ReadonlyMap<WorkPointId, LookFirstAnswer> =>
  new Map(
    (Object.keys(jobOf(document).workPoints) as WorkPointId[]).map((id) => [
      id,
      {
        drawn: lookFirst(document, id),
        working:
          whileWorking(document, id) === undefined ? undefined : lookFirst(document, id, { when: "working" }),
        worth: groundsWorth(document, id),
        ranges: rangesOf(document, id),
      },
    ]),
  );

/** The same as keys of a work point's JSON. */
export const looksJson = (
  document: StillhotDocument,
  id: WorkPointId,
  { drawn, working, worth, ranges }: LookFirstAnswer,
): object => ({
  lookFirst: drawn.entries.map((it) => entryJson(document, it)),
  lookFirstAsked: drawn.asked,
  ...(working === undefined
    ? {}
    : {
        lookFirstAtWork: working.entries.map((it) => entryJson(document, it)),
        lookFirstAtWorkAsked: working.asked,
      }),
  ...(worth === undefined ? {} : { groundsWorth: worthJson(document, worth) }),
  ranges: rangesJson(document, id, ranges),
});

function rangesJson(document: StillhotDocument, id: WorkPointId, ranges: Ranges): object {
  const { drawnVerdict: _drawnVerdict, findings, ...figures } = ranges;
  const sentence = rangesSentence(document, id, ranges);
  return {
    ...figures,
    findings: findings.map(findingJson),
    message: sentence === undefined ? null : spell(sentence),
  };
}

function worthJson(document: StillhotDocument, worth: GroundsWorth): object {
  const { left, remedy, ...figures } = worth;
  const sentence = groundsWorthSentence(document, worth);
  return {
    ...figures,
    left: left.map(doubtJson),
    ...(remedy === undefined ? {} : { remedy }),
    message: sentence === undefined ? null : spell(sentence),
  };
}

function entryJson(document: StillhotDocument, entry: LookFirst): object {
  const { doubt, pair, conductor, verdict, margin, volts, exposureVolts, groundsHold, settles } = entry;
  return {
    ...doubtJson(doubt),
    pair: pair === null ? null : doubtJson(pair),
    conductor,
    verdict,
    margin,
    volts,
    exposureVolts,
    groundsHold,
    settles,
    message: spell(lookFirstSentence(document, entry)),
  };
}

const doubtJson = ({ structure, where, doubt, other, phases, instead }: LookFirst["doubt"]): object => ({
  structure,
  where,
  doubt,
  ...(other === undefined ? {} : { other }),
  ...(phases === undefined ? {} : { phases }),
  instead,
});

/** Lines for a person are this many, unless all are asked for. */
const MOST_LINES = 5;

/** What to look at first, as lines for a person: while working where there is an order, as drawn where there is none. */
export function looksLines(
  document: StillhotDocument,
  id: WorkPointId,
  { drawn, working, worth, ranges }: LookFirstAnswer,
  { all }: { readonly all: boolean },
): string[] {
  const { entries, asked } = working ?? drawn;
  const shown = all ? entries : entries.slice(0, MOST_LINES);
  const more = entries.length - shown.length;
  const left = asked.ofSingles - asked.singles + asked.beyond;
  const figures = [
    worth === undefined ? undefined : groundsWorthSentence(document, worth),
    rangesSentence(document, id, ranges),
  ].filter((it) => it !== undefined);
  return [
    ...(shown.length === 0
      ? []
      : ["", `  ${spell(say(working === undefined ? "cli.lookFirst" : "cli.lookFirst.working"))}`]),
    ...shown.flatMap((it, nth) =>
      wrapped(`  ${String(nth + 1).padStart(2)}  `, spell(lookFirstSentence(document, it)), "      "),
    ),
    ...(more > 0 ? [`      ${spell(say("cli.lookFirst.more", { count: more }))}`] : []),
    ...(left > 0 ? wrapped("      ", spell(say("cli.lookFirst.cut", { count: left })), "      ") : []),
    ...figures.flatMap((it) => ["", ...wrapped("  ", spell(it), "  ")]),
  ];
}
