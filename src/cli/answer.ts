import {
  alsoFedSentence,
  type Assessment,
  conductorId,
  conductorsOf,
  type ConductorId,
  type ConductorReport,
  type ConductorState,
  type ElementId,
  elementName,
  exposureSentences,
  figures,
  type Finding,
  findingsAlike,
  nameOfWhere,
  jobOf,
  naturalOrder,
  standingSentences,
  structuresOf,
  type System,
  type StillhotDocument,
  type Threat,
  threatSentence,
  type WayRanges,
  wayRangeSentence,
  type WorkPointId,
  workPlaceName,
  type WorkPointReport,
} from "../core";
import { type LookFirstAnswer, looksJson, looksLines, rangeOfWay } from "./lookFirst";
import { counts, findingJson, findingLines, wrapped } from "./print";
import { say, spell } from "./words";

/** How a drawing stands: what `check` says of it as it is, and `rehearse` after the last step. */
export interface DrawingAnswer {
  readonly ok: boolean;
  readonly json: object;
}

/** What is told beside an assessment. */
interface Beside {
  /** of reading the file */
  readonly warnings?: readonly Finding[];
  /** what to look at first, for each work point */
  readonly looks?: ReadonlyMap<WorkPointId, LookFirstAnswer>;
}

/** How a drawing stands, as JSON; `ok` when every work point is grounded and nothing above a note was found. */
export function answerOf(
  document: StillhotDocument,
  assessment: Assessment,
  { warnings = [], looks }: Beside = {},
): DrawingAnswer {
  const findings = [...warnings, ...assessment.findings, ...notFinite(assessment)];
  const grounded = Object.values(assessment.workPoints).every(({ verdict }) => verdict === "grounded");
  return {
    ok: grounded && !findings.some(counts),
    json: {
      structures: structuresJson(document.system, assessment),
      conductors: mapValues(assessment.conductors, (it) => ({ ...it, angleDeg: finiteAngle(it.angleDeg) })),
      elements: mapValues(assessment.elements, ({ amps, angleDeg }) => ({
        amps,
        angleDeg: mapValues(angleDeg, finiteAngle),
      })),
      workPoints: mapValues(assessment.workPoints, (report, id) => {
        const look = looks?.get(id);
        if (look === undefined) return report;
        const threats = report.threats.map((it) => ({ ...it, ...rangeJson(rangeOfWay(look, it)) }));
        return { ...report, threats, ...looksJson(document, id, look) };
      }),
      findings: findings.map(findingJson),
    },
  };
}

/** What the figures of a way to go live may be, as keys of its JSON. */
const rangeJson = (range: WayRanges | undefined): object => {
  if (range === undefined) return {};
  const { volts, exposureVolts, exposureToEarthVolts } = range;
  return { range: { volts, exposureVolts, exposureToEarthVolts } };
};

/** Every structure with what is on it, and the state of the most hazardous of its conductors. */
const structuresJson = (system: System, { conductors }: Assessment): object =>
  Object.fromEntries(
    [...structuresOf(system)].map(([id, { label, points, elements }]) => {
      const states = new Set(
        points.flatMap((point) =>
          (conductorsOf(system).get(point) ?? []).map((it) => conductors[conductorId(point, it)]?.state),
        ),
      );
      return [id, { label, points, elements, state: ORDER.find((it) => states.has(it)) ?? null }];
    }),
  );

const mapValues = <Key extends string, From, To>(
  record: Readonly<Partial<Record<Key, From>>>,
  change: (value: From, key: Key) => To,
): Record<Key, To> =>
  Object.fromEntries(
    Object.entries(record).map(([key, value]) => [key, change(value as From, key as Key)]),
  ) as Record<Key, To>;

/** Of volts that could not be computed there is no angle either; they are printed over every limit, it as 0. */
const finiteAngle = (degrees: number): number => (Number.isFinite(degrees) ? degrees + 0 : 0);

/** Says so where a number could not be computed: it is printed as the largest there is, never left out. */
export function notFinite({ conductors, workPoints, findings }: Assessment): Finding[] {
  if (findings.some(({ rule }) => rule === "unsolved")) return [];
  const where = [
    ...Object.entries<ConductorReport>(conductors).filter(([, it]) => !isFinite(it.volts, it.voltsLoadsOff)),
    ...Object.entries(workPoints).filter(([, { threats }]) =>
      threats.some((it) => !isFinite(it.volts, it.exposureVolts, it.exposureToEarthVolts, it.groundAmps)),
    ),
  ].map(([id]) => id);
  return where.length === 0
    ? []
    : [
        {
          rule: "unsolved",
          severity: "danger",
          where: where[0]!,
          message: say("cli.notFinite", { where: where.slice(0, 8).join(", ") }),
          citation: "common practice, no source",
        },
      ];
}

const isFinite = (...numbers: readonly number[]): boolean => numbers.every(Number.isFinite);

/** Ways to go live that are told before the rest is only counted. */
const MOST_THREATS = 12;

/** How a drawing stands, as lines for a person: verdicts first, then why, then what else is wrong. */
export function answerLines(
  file: string,
  document: StillhotDocument,
  assessment: Assessment,
  { warnings = [], looks, all }: Beside & { readonly all: boolean },
): string[] {
  const works = Object.keys(assessment.workPoints) as WorkPointId[];
  const findings = [...warnings, ...assessment.findings, ...notFinite(assessment)];
  return [
    ...(works.length === 0 ? [spell(say("cli.noWorkPoint"))] : []),
    ...works.flatMap((id) => [
      ...workPointLines(document, assessment, id, { all, look: looks?.get(id) }),
      ...(looks === undefined ? [] : looksLines(document, id, looks.get(id)!, { all })),
    ]),
    "",
    ...conductorLines(document, assessment, all),
    ...findingsAlike(findings).flatMap(({ finding, also }) => [
      "",
      ...findingLines(finding, file, document, also),
    ]),
  ];
}

function workPointLines(
  document: StillhotDocument,
  { workPoints, conductors }: Assessment,
  id: WorkPointId,
  { all, look }: { readonly all: boolean; readonly look: LookFirstAnswer | undefined },
): string[] {
  const report = workPoints[id]!;
  const shown = all ? report.threats : report.threats.slice(0, MOST_THREATS);
  const more = report.threats.length - shown.length;
  return [
    "",
    ...verdictLine(document, id, report),
    ...wrapped(
      "  ",
      standingSentences(report)
        .map((it) => spell(it))
        .join(" "),
      "  ",
    ),
    ...(shown.length === 0 ? [] : ["", `  ${spell(say("cli.ways", { count: report.threats.length }))}`]),
    ...shown.flatMap((it, index) =>
      threatLines(document, it, index + 1, {
        look,
        sources: conductors[conductorId(jobOf(document).workPoints[id]!.at, it.conductor)]?.sources ?? [],
      }),
    ),
    ...(more > 0 ? [`      ${spell(say("cli.moreWays", { count: more }))}`] : []),
  ];
}

/** Every work point's verdict, a line each. */
export const verdictLines = (document: StillhotDocument, { workPoints }: Assessment): string[] =>
  (Object.keys(workPoints) as WorkPointId[]).flatMap((id) => verdictLine(document, id, workPoints[id]!));

function verdictLine(document: StillhotDocument, id: WorkPointId, { verdict }: WorkPointReport): string[] {
  return wrapped(
    `${spell(say(`say.verdict.${verdict}`))}: `,
    spell(say("name.plain", { name: workPlaceName(document, id) })),
    "  ",
  );
}

function threatLines(
  document: StillhotDocument,
  threat: Threat,
  n: number,
  { look, sources }: { readonly look: LookFirstAnswer | undefined; readonly sources: readonly ElementId[] },
): string[] {
  const range = look === undefined ? undefined : rangeOfWay(look, threat);
  const rangeSentence = range === undefined ? undefined : wayRangeSentence(look!.drawnRanges, [range]);
  const path =
    threat.path.length === 0
      ? say("cli.noPath")
      : say("cli.path", { path: threat.path.map((it) => spell(elementName(document, it))).join(" > ") });
  return [
    ...wrapped(
      `  ${String(n).padStart(2)}  `,
      [
        threatSentence(document, threat),
        ...[alsoFedSentence(document, sources, threat)].filter((it) => it !== undefined),
        ...exposureSentences(document, threat),
        ...(rangeSentence === undefined ? [] : [rangeSentence]),
      ]
        .map((it) => spell(it))
        .join(" "),
      "      ",
    ),
    ...wrapped("      ", spell(path), "        "),
  ];
}

/** The most hazardous first. */
const ORDER: readonly ConductorState[] = [
  "unknown",
  "faulted",
  "energized",
  "backfed",
  "induced",
  "isolated",
  "grounded",
  "neutral",
];

/** How many conductors are in which state; with `all` each one with its volts and what reaches it. */
const inFigures = (value: number): string => spell(say("say.text", { text: figures(value) }));

function conductorLines(document: StillhotDocument, { conductors }: Assessment, all: boolean): string[] {
  const ids = (Object.keys(conductors) as ConductorId[]).sort(naturalOrder);
  const counted = ORDER.map((state) => ({
    state,
    count: ids.filter((id) => conductors[id]!.state === state).length,
  })).filter(({ count }) => count > 0);
  const summary = counted.map(({ state, count }) => `${count} ${spell(say(`state.${state}`))}`).join("; ");
  if (ids.length === 0) return [spell(say("cli.noConductors"))];
  if (!all) return wrapped("", spell(say("cli.conductors", { summary })), "  ");
  const names = ids.map((id) => spell(nameOfWhere(document, id)));
  const width = Math.max(...names.map((it) => it.length));
  return [
    ...wrapped("", spell(say("cli.conductorsAll", { summary })), "  "),
    ...ids.map((id, row) => {
      const { state, volts, voltsLoadsOff, sources } = conductors[id]!;
      const numbers = `${inFigures(volts).padStart(8)} V ${inFigures(voltsLoadsOff).padStart(8)} V`;
      const from = sources.map((it) => spell(elementName(document, it))).join(", ");
      return `  ${names[row]!.padEnd(width)}  ${state.padEnd(9)} ${numbers}  ${from}`.trimEnd();
    }),
  ];
}
