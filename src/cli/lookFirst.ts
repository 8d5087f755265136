import {
  elementCountOf,
  groundsWorth,
  type GroundsWorth,
  groundsWorthSentence,
  jobOf,
  lookFirst,
  type LookFirst,
  type LookFirstReport,
  lookFirstSentence,
  type LookList,
  looksFor,
  type Ranges,
  rangesOf,
  rangesSentence,
  type StillhotDocument,
  type Threat,
  threatKey,
  type WayRanges,
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
  /** what the figures of each way to go live may be, as drawn */
  readonly drawnRanges: Ranges;
  /** of a live work point for which there is no order: while the one that would be proposed has its hands at the work */
  readonly proposed: LookList | undefined;
}

/** What would be proposed for a drawing of more things than these is not worked out to say what to look at [elements]. */
const MOST_PROPOSED = 100;

/** Whether a work point is live, so that nothing could make it worse, and no order says how it is to stand when hands go to it. */
const needsOrder = (document: StillhotDocument, drawn: LookFirstReport, { drawnVerdict }: Ranges): boolean =>
  drawnVerdict === "live" && drawn.asked.ofSingles === 0 && jobOf(document).steps.length === 0;

/** What to look at while a proposed order has its hands at the work, where the drawing is not too large. */
function proposedFor(document: StillhotDocument, id: WorkPointId): LookList | undefined {
  if (elementCountOf(document.system) > MOST_PROPOSED) return undefined;
  const list = looksFor(document, id);
  return list.when === "proposed" ? list : undefined;
}

/** What the figures of a way to go live may be where numbers from the map are off, as drawn. */
export const rangeOfWay = ({ drawnRanges }: LookFirstAnswer, threat: Threat): WayRanges | undefined =>
  drawnRanges.ways.find((it) => threatKey(it) === threatKey(threat));

/** What to look at first, for every work point of a drawing. */
export const looksOf = (document: StillhotDocument): ReadonlyMap<WorkPointId, LookFirstAnswer> =>
  new Map(
    (Object.keys(jobOf(document).workPoints) as WorkPointId[]).map((id) => {
      const ranges = rangesOf(document, id);
      const drawnRanges = ranges.when === "drawn" ? ranges : rangesOf(document, id, { when: "drawn" });
      const isWorking = whileWorking(document, id) !== undefined;
      const drawn = lookFirst(document, id);
      return [
        id,
        {
          drawn,
          working: isWorking ? lookFirst(document, id, { when: "working" }) : undefined,
          worth: groundsWorth(document, id),
          ranges,
          drawnRanges,
          proposed: needsOrder(document, drawn, drawnRanges) ? proposedFor(document, id) : undefined,
        },
      ];
    }),
  );

/** The same as keys of a work point's JSON. */
export const looksJson = (
  document: StillhotDocument,
  id: WorkPointId,
  { drawn, working, proposed, worth, ranges }: LookFirstAnswer,
): object => ({
  lookFirst: drawn.entries.map((it) => entryJson(document, it)),
  lookFirstAsked: drawn.asked,
  ...(working === undefined
    ? {}
    : {
        lookFirstAtWork: working.entries.map((it) => entryJson(document, it)),
        lookFirstAtWorkAsked: working.asked,
      }),
  ...(proposed === undefined
    ? {}
    : {
        lookFirstProposed: proposed.report.entries.map((it) => entryJson(document, it)),
        lookFirstProposedAsked: proposed.report.asked,
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

/** What to look at first, as lines for a person: while working where there is an order or one is proposed, else as drawn. */
export function looksLines(
  document: StillhotDocument,
  id: WorkPointId,
  { drawn, working, proposed, ...asDrawn }: LookFirstAnswer,
  { all }: { readonly all: boolean },
): string[] {
  const { entries, asked } = working ?? proposed?.report ?? drawn;
  const { worth, ranges } = proposed ?? asDrawn;
  const heading =
    working !== undefined
      ? "cli.lookFirst.working"
      : proposed !== undefined
        ? "cli.lookFirst.proposed"
        : "cli.lookFirst";
  const shown = all ? entries : entries.slice(0, MOST_LINES);
  const more = entries.length - shown.length;
  const left = asked.ofSingles - asked.singles + asked.beyond;
  const figures = [
    worth === undefined ? undefined : groundsWorthSentence(document, worth),
    rangesSentence(document, id, ranges),
  ].filter((it) => it !== undefined);
  return [
    ...(shown.length === 0 ? [] : ["", ...wrapped("  ", spell(say(heading)), "  ")]),
    ...(proposed === undefined && needsOrder(document, drawn, asDrawn.drawnRanges)
      ? ["", ...wrapped("  ", spell(say("cli.lookFirst.noOrder")), "  ")]
      : []),
    ...shown.flatMap((it, nth) =>
      wrapped(`  ${String(nth + 1).padStart(2)}  `, spell(lookFirstSentence(document, it)), "      "),
    ),
    ...(more > 0 ? [`      ${spell(say("cli.lookFirst.more", { count: more }))}`] : []),
    ...(left > 0 ? wrapped("      ", spell(say("cli.lookFirst.cut", { count: left })), "      ") : []),
    ...figures.flatMap((it) => ["", ...wrapped("  ", spell(it), "  ")]),
  ];
}
