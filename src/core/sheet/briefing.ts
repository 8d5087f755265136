import { type HoldKind, isSwitching, isTool, stepOf } from "../steps";
import {
  complete,
  DEFAULT_SETTINGS,
  elementName,
  elementsOfKind,
  evidenceOf,
  jobOf,
  type LimitKey,
  limitsChanged,
  perObject,
  pointName,
  settingsOf,
  type Step,
  type StillhotDocument,
  unitOfLimit,
  workPlaceName,
  type WorkPoint,
  workPointName,
} from "../document";
import {
  type CircuitElement,
  customersOf,
  type DeviceKind,
  type ElementOfKind,
  isBeside,
  isGroundSet,
  openingOf,
} from "../devices";
import { groundsWorth, lookFirst, type Ranges, rangesOf } from "../doubts";
import {
  assess,
  type Assessment,
  type Threat,
  type Upset,
  type WorkPointReport,
  startsUnknown,
  threatKey,
} from "../hazard";
import { circuitOf } from "../network";
import {
  dutiesOf,
  holdBefore,
  firstEnd,
  isolationPoints,
  isTagged,
  type JobState,
  permitReasonForElement,
  permitReasonForWork,
  type PlayedStep,
  type Rehearsal,
  rehearse,
  rulesOff,
  seen,
  setAndPlace,
  stepSeen,
  stepSentence,
  visitSentence,
  visitsOf,
} from "../procedure";
import { approachDistanceFor, gloveClassFor, withstandAmps } from "../reference";
import {
  conductorId,
  type ElementId,
  type Finding,
  inARow,
  type Letter,
  type Message,
  type MessageKey,
  say,
  type WorkPointId,
} from "../terms";
import {
  feltVolts,
  groundsWorthSentence,
  isMoreThanDrawn,
  lookFirstSentence,
  rangesSentence,
  wayRangeSentence,
} from "./lookFirst";
import { alsoFedSentence, anyGeneratorSentence, figures, threatSentence } from "./sentences";
import { permitWords } from "./record";

/** How one work point stands, and what could make it live. */
export interface BriefedWork {
  readonly id: WorkPointId;
  readonly name: string | Message;
  /** its name with its place and conductors */
  readonly where: string | Message;
  /** as the drawing stands before the first step */
  readonly asDrawn: WorkPointReport;
  /** when work begins there, where the steps say so */
  readonly atWork: { readonly n: number; readonly report: WorkPointReport } | undefined;
  readonly ways: readonly BriefedWay[];
}

/** One way for a work point to become live, on whichever of its conductors. */
export interface BriefedWay {
  readonly strength: number;
  readonly sentences: readonly Message[];
  readonly control: Message;
  /** one thing going wrong is enough, and a worker would feel the limit or more */
  readonly isOpen: boolean;
}

/** A point in the order at which two people stop, one asking and the other answering. */

export interface BriefedStep {
  readonly n: number;
  readonly act: Message;
  readonly seen: Message;
  /** what is seen says no more than the act itself */
  readonly isPlain: boolean;
  /** asked and answered before it */
  readonly hold: HoldKind | undefined;
  /** where one goes for it and for those after it, where it begins a visit */
  readonly visit: Message | undefined;
}

/** Everything that a crew hears before a job, as data: what the sheet prints. */
export interface Briefing {
  readonly document: StillhotDocument;
  readonly works: readonly BriefedWork[];
  /** the drawing as it stands when work begins, with its assessment; as it is drawn where no step says `work` */
  readonly shown: {
    /** what keeps the work isolated, and every ground set */
    readonly controls: readonly ElementId[];
    readonly document: StillhotDocument;
    readonly assessment: Assessment;
    readonly n: number | undefined;
  };
  readonly hazards: readonly Message[];
  readonly procedures: readonly Message[];
  readonly precautions: readonly Message[];
  readonly controls: readonly Message[];
  readonly equipment: readonly Message[];
  /** steps up to and with the work, and those after it */
  readonly steps: readonly BriefedStep[];
  readonly restoring: readonly BriefedStep[];
  /** dangers and warnings of the rehearsal */
  readonly broken: readonly { readonly n: number | undefined; readonly finding: Finding }[];
  readonly unseen: readonly Message[];
  readonly limits: readonly Message[];
  readonly rulesOff: readonly { readonly id: string; readonly reason: string }[];
}

/** What a crew is told before a job, from the drawing and its steps. */
export const briefingOf: (document: StillhotDocument) => Briefing = perObject(
  (document: StillhotDocument) => {
    const rehearsal = rehearse(document);
    const { steps } = rehearsal;
    const begin = steps.find(({ step }) => step.do === "work");
    const state = asWorkBegins(rehearsal, begin);
    const last = steps.findLast(({ step }) => step.do === "work")?.n ?? steps.length;
    const briefed = briefedSteps(document, steps);
    const ids = Object.keys(jobOf(document).workPoints) as WorkPointId[];
    const nominal = Math.max(
      0,
      ...ids.map((id) => nominalVoltsAt(document, jobOf(document).workPoints[id]!)),
    );
    return {
      document,
      works: ids.map((id) => workOf(document, id, rehearsal)),
      shown: {
        document: state.document,
        assessment: seen(state),
        controls: [...isolationPoints(state), ...groundsOf(state.document)],
        n: begin?.n,
      },
      hazards: hazardsOf(document, ids, nominal),
      procedures: proceduresOf(document, steps),
      precautions: precautionsOf(steps),
      controls: controlsOf(state),
      equipment: equipmentOf(document, nominal),
      steps: briefed.slice(0, last),
      restoring: briefed.slice(last),
      broken: [
        ...steps.flatMap(({ n, findings }) => findings.map((finding) => ({ n, finding }))),
        ...rehearsal.findings.map((finding) => ({ n: undefined, finding })),
      ].filter(({ finding }) => finding.severity !== "note"),
      unseen: [
        ...lookedAtFirst(document, ids),
        ...worthOfGrounds(document, ids),
        ...rangesThatMatter(document, ids),
        ...unseenOf(document),
      ],
      limits: limitsOf(document),
      rulesOff: rulesOff(document),
    };
  },
);

/** How a job stands as a step of work begins, before what it mends is a part of it; as found where there is none. */
const asWorkBegins = ({ begin, steps }: Rehearsal, work: PlayedStep | undefined): JobState =>
  work === undefined ? begin : (steps[work.n - 2]?.state ?? begin);

function workOf(document: StillhotDocument, id: WorkPointId, rehearsal: Rehearsal): BriefedWork {
  const begin = rehearsal.steps.find(({ step }) => step.do === "work" && step.at === id);
  const asDrawn = assess(document).workPoints[id]!;
  const state = begin === undefined ? undefined : asWorkBegins(rehearsal, begin);
  const atWork =
    begin === undefined || state === undefined
      ? undefined
      : { n: begin.n, report: seen(state).workPoints[id]! };
  return {
    id,
    name: workPointName(document, id),
    where: workPlaceName(document, id),
    asDrawn,
    atWork,
    ways: waysOf(
      state?.document ?? document,
      state,
      (atWork?.report ?? asDrawn).threats,
      (letter) =>
        (state === undefined ? assess(document) : seen(state)).conductors[
          conductorId(jobOf(document).workPoints[id]!.at, letter)
        ]?.sources ?? [],
      rangesToldOf(document, id, atWork === undefined ? "drawn" : "working"),
    ),
  };
}

/**
 * One entry for each set of upsets, its worst conductor speaking for the others; sets that differ only in whose
 * generator it is that nobody drew are one.
 */
function waysOf(
  document: StillhotDocument,
  state: JobState | undefined,
  threats: readonly Threat[],
  sourcesOf: (letter: Letter) => readonly ElementId[],
  ranges: Ranges,
): BriefedWay[] {
  const { exposureLimitVolts } = settingsOf(document);
  const rangesByKey = new Map(ranges.ways.map((it) => [threatKey(it), it]));
  const bySet = grouped(threats, ({ upsets }) => keyOf(upsets)).map(worstOf);
  return grouped(bySet, ({ upsets }) => familyOf(upsets)).map((same) => {
    const worst = worstOf(same);
    const isOver = worst.exposureVolts >= exposureLimitVolts;
    const range = wayRangeSentence(
      ranges,
      same.flatMap((it) => rangesByKey.get(threatKey(it)) ?? []),
    );
    return {
      strength: worst.strength,
      sentences: [
        same.length === 1 ? threatSentence(document, worst) : anyGeneratorSentence(document, same),
        ...[alsoFedSentence(document, sourcesOf(worst.conductor), worst)].filter((it) => it !== undefined),
        range ?? feltSentence(worst),
      ],
      control: controlOf(document, state, worst, isOver),
      isOpen: isOver && worst.strength <= 1,
    };
  });
}

const keyOf = (upsets: readonly Upset[]): string =>
  upsets.map(({ kind, element, phase }) => `${kind} ${element} ${phase ?? ""}`).join();

/** The key of a set with one generator that nobody drew, whoever's it is; of any other set its own key. */
const familyOf = (upsets: readonly Upset[]): string =>
  upsets.filter(startsUnknown).length === 1
    ? `any ${keyOf(upsets.filter((it) => !startsUnknown(it)))}`
    : keyOf(upsets);

function grouped<Item>(items: readonly Item[], key: (item: Item) => string): Item[][] {
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return [...groups.values()];
}

const worstOf = (threats: readonly Threat[]): Threat =>
  threats.reduce((one, it) => (it.exposureVolts > one.exposureVolts ? it : one));

function controlOf(
  document: StillhotDocument,
  state: JobState | undefined,
  { upsets, groundAmps }: Threat,
  isOver: boolean,
): Message {
  const holds = upsets.flatMap((it) => holdOn(document, state, it) ?? []);
  const grounds = !isOver && groundAmps > 0 ? [say("sheet.control.grounds")] : [];
  const controls = [...holds, ...grounds];
  return controls.length === 0 ? say("sheet.control.none") : inARow(controls);
}

/** What people would feel, in few words. */
function feltSentence({ exposureVolts, exposureToEarthVolts }: Threat): Message {
  const bonded = feltVolts(exposureVolts);
  const beside = feltVolts(exposureToEarthVolts);
  return JSON.stringify(bonded) === JSON.stringify(beside)
    ? say("sheet.feltSame", { bonded })
    : say("sheet.felt", { bonded, beside });
}

/** What keeps one thing from changing: its tag, its block. */
function holdOn(
  document: StillhotDocument,
  state: JobState | undefined,
  { element }: Upset,
): Message | undefined {
  const record = complete(document.system.elements[element]!) as { tagged?: boolean; blocked?: boolean };
  const tagged = record.tagged === true || (state !== undefined && isTagged(state, element));
  const blocked = record.blocked === true;
  if (!tagged && !blocked) return undefined;
  return say(
    tagged && blocked ? "sheet.control.both" : tagged ? "sheet.control.tag" : "sheet.control.block",
    {
      name: elementName(document, element),
    },
  );
}

function briefedSteps(document: StillhotDocument, steps: readonly PlayedStep[]): BriefedStep[] {
  const visits = visitsOf(
    document,
    steps.map(({ step }) => step),
  ).flatMap((it) => it.steps.map(() => it));
  return steps.map(({ n, step, state }, index) => {
    const visit = visits[index]!;
    // What a step names is as it stands before the step, ground sets among it.
    const before = steps[index - 1]?.state.document ?? document;
    const named = step.do === "ground" ? state.document : before;
    const told = numbered(step, before, state);
    return {
      n,
      act: stepSentence(named, isSaid(told) ? withoutText(told) : told, {
        short: true,
        under: visit.structure,
      }),
      seen: seenWith(named, told),
      isPlain: stepOf(step.do).plain === true && step.text === undefined,
      hold: holdBefore(steps[index - 1]?.state.played ?? [], step),
      visit: visit.steps[0] === n ? visitSentence(document, visit) : undefined,
    };
  });
}

/** Steps whose text is a question or an order, which stands on the second line. */
const isSaid = ({ do: verb }: Step): boolean => verb !== "note";
const withoutText = ({ text: _, ...step }: Step): Step => step;

/** With what, which end first, and what is seen when it is done. */
function seenWith(document: StillhotDocument, step: Step): Message {
  const how = [
    ...(step.with === undefined || step.with === ""
      ? []
      : [
          isTool(step.with)
            ? say("sheet.with", { tool: toolWord(step.with) })
            : say("sheet.withOther", { tool: step.with }),
        ]),
    ...firstEndOf(document, step),
  ];
  const seenThen =
    isSaid(step) && step.text !== undefined && step.text !== ""
      ? say("sheet.said", { text: step.text, seen: stepSeen(document, step) })
      : stepSeen(document, step);
  return how.length === 0 ? seenThen : say("sheet.how", { how: inARow(how), seen: seenThen });
}

function firstEndOf(document: StillhotDocument, step: Step): Message[] {
  const end = firstEnd(document, step);
  return end === undefined ? [] : [say(`sheet.first.${end}`)];
}

/** A ground step with the id that its set was given. */
function numbered(step: Step, before: StillhotDocument, { document }: JobState): Step {
  if (step.do !== "ground" || step.element !== undefined) return step;
  const set = (Object.keys(document.system.elements) as ElementId[]).find(
    (id) => !Object.hasOwn(before.system.elements, id),
  );
  return set === undefined ? step : { ...step, element: set };
}

function nominalVoltsAt({ system }: StillhotDocument, { at, conductors }: WorkPoint): number {
  const circuit = circuitOf(system);
  return Math.max(
    0,
    ...[...conductors].map((letter) => {
      const node = circuit.nodeOf.get(conductorId(at, letter as Letter));
      return node === undefined ? 0 : circuit.nominalVolts[node]!;
    }),
  );
}

const elementsOf = ({ system }: StillhotDocument): (readonly [ElementId, CircuitElement])[] =>
  (Object.keys(system.elements) as ElementId[]).map((id) => [id, complete(system.elements[id]!)]);

const isOfKind = <Kind extends DeviceKind>(it: CircuitElement, kind: Kind): it is ElementOfKind<Kind> =>
  it.kind === kind;

const groundsOf = (document: StillhotDocument): ElementId[] =>
  elementsOfKind(document.system, "ground").map(([id]) => id);

const namesOf = (document: StillhotDocument, ids: readonly string[]): Message =>
  inARow(ids.map((id) => say("say.text", { text: elementName(document, id) })));

function hazardsOf(document: StillhotDocument, ids: readonly WorkPointId[], nominal: number): Message[] {
  const assessment = assess(document);
  const { assumeGenerators, assumedGeneratorKva } = settingsOf(document);
  const elements = elementsOf(document);
  const of = <Kind extends DeviceKind>(kind: Kind, such: (it: ElementOfKind<Kind>) => boolean = () => true) =>
    elements.filter(([, it]) => isOfKind(it, kind) && such(it)).map(([id]) => id);
  const customers = elements.reduce((sum, [, it]) => sum + customersOf(it), 0);
  const some = (key: MessageKey, found: readonly string[]): Message[] =>
    found.length === 0 ? [] : [say(key, { names: namesOf(document, found) })];
  return [
    ...ids.flatMap((id) => {
      const { at, conductors } = jobOf(document).workPoints[id]!;
      return [...conductors].map((letter) => {
        const { state, volts, voltsLoadsOff } = assessment.conductors[conductorId(at, letter as Letter)]!;
        return say("sheet.hazard.conductor", {
          letter,
          place: pointName(document, at),
          state: say(`state.${state}`),
          volts: figures(Math.max(volts, voltsLoadsOff)),
          nominal: figures(nominal),
        });
      });
    }),
    ...(customers > 0 && assumeGenerators
      ? [say("sheet.hazard.customers", { count: customers, kva: assumedGeneratorKva })]
      : []),
    ...some("sheet.hazard.generators", of("generator")),
    ...some("sheet.hazard.transfer", of("transfer")),
    ...some(
      "sheet.hazard.nearby",
      of("nearby", ({ on }) => on),
    ),
    ...some("sheet.hazard.capacitors", of("capacitor")),
    ...some(
      "sheet.hazard.loose",
      of("arrester", ({ loose, failed }) => loose || failed !== ""),
    ),
    ...some("sheet.hazard.faults", of("fault")),
    ...assessment.findings
      .filter(({ rule, severity }) => severity !== "note" && rule !== "equipotential")
      .map(({ message }) => say("sheet.sentence", { message })),
  ];
}

function proceduresOf(document: StillhotDocument, steps: readonly PlayedStep[]): Message[] {
  const { workPoints, tools } = jobOf(document);
  const permit = permitWords(document);
  // What is operated may be a line's though the work is not: a permit is asked for before the first of either.
  const moved = steps.flatMap(({ step }) => (isSwitching(step) ? [step.element] : []));
  const ofWork = Object.values(workPoints).map((it) => permitReasonForWork(document, it));
  const ofMoved = moved.map((it) => permitReasonForElement(document, it));
  const reason = [...ofWork, ...ofMoved].find((it) => it !== undefined);
  return [
    reason === undefined ? say("sheet.procedure.noPermit") : say("sheet.procedure.permit", { reason }),
    permit === undefined
      ? say("sheet.procedure.permitNumber")
      : say("sheet.procedure.permitHeld", { permit }),
    ...(steps.length === 0 ? [say("sheet.procedure.noSteps")] : []),
    ...(tools.length === 0
      ? []
      : [say("sheet.procedure.tools", { tools: inARow(tools.map((it) => toolWord(it))) })]),
  ];
}

const toolWord = (tool: string): Message =>
  isTool(tool) ? say(`tool.${tool}`) : say("say.text", { text: tool });

/** What the rehearsal says beside its warnings, and what the opened devices break. */
function precautionsOf(steps: readonly PlayedStep[]): Message[] {
  const told = new Set<string>();
  return steps.flatMap(({ n, findings, consequence }) => {
    const notes = findings.filter(({ severity }) => severity === "note").map(({ message }) => message);
    const broken = consequence.text.key === "consequence.broken" ? [consequence.text] : [];
    return [...broken, ...notes].flatMap((message) => {
      const key = JSON.stringify(message);
      if (told.has(key)) return [];
      told.add(key);
      return [say("sheet.precaution", { n, message })];
    });
  });
}

/** Every opening that keeps the work isolated, and every ground set, as they stand when work begins. */
function controlsOf(state: JobState): Message[] {
  const { document } = state;
  const { clearingSeconds } = settingsOf(document);
  const duties = dutiesOf(state);
  return [
    ...isolationPoints(state).map((id) => {
      const element = complete(document.system.elements[id]!);
      const record = element as { blocked?: boolean };
      const marks = [
        ...(isTagged(state, id) ? [say("sheet.tagged")] : []),
        ...(record.blocked === true ? [say("sheet.blocked")] : []),
      ];
      return say("sheet.control.opening", {
        name: elementName(document, id),
        phases: [...(openingOf(element)?.openPhases ?? "")].join(" "),
        marks: marks.length === 0 ? say("sheet.notTagged") : inARow(marks),
      });
    }),
    ...elementsOf(document).flatMap(([id, it]) => {
      if (!isGroundSet(it)) return [];
      const duty = duties.get(id);
      const withstand =
        it.cable === undefined ? undefined : withstandAmps(it.cable, clearingSeconds, duty?.xOverR);
      return [
        say("sheet.control.ground", {
          set: setAndPlace(document, id),
          phases: [...it.phases].join(" "),
          to: say(`do.to.${it.to}`),
          cable: it.cable === undefined ? say("sheet.noCable") : say("do.cable", { cable: it.cable }),
          amps: figures(duty?.amps ?? 0),
          withstand: withstand === undefined ? "?" : figures(withstand),
          seconds: clearingSeconds,
        }),
      ];
    }),
  ];
}

function equipmentOf(document: StillhotDocument, nominal: number): Message[] {
  const distance = approachDistanceFor(nominal);
  const gloves = gloveClassFor(nominal);
  return [
    ...(nominal === 0
      ? []
      : [
          distance?.rule === "distance"
            ? say("sheet.equipment.distance", {
                phase: distance.phaseToPhaseM,
                ground: distance.phaseToGroundM,
                volts: figures(nominal),
              })
            : say(
                distance === undefined
                  ? "sheet.equipment.beyondTable"
                  : distance.rule === "none"
                    ? "sheet.equipment.noDistance"
                    : "sheet.equipment.noContact",
                { volts: figures(nominal) },
              ),
          gloves === undefined
            ? say("sheet.equipment.noGloves")
            : say("sheet.equipment.gloves", { name: gloves.name, volts: figures(gloves.maxUseVolts) }),
        ]),
    ...(elementsOf(document).some(([, it]) => isBeside(it) && it.on) ? [say("sheet.equipment.cover")] : []),
    say("sheet.equipment.blank"),
  ];
}

/** Lines of what to look at first, for each work point: a sheet is one page. */
const MOST_LOOKS = 2;

/** What the search for them may take, in multiplications: a sheet is laid out while somebody waits. */
const LOOKS_WORK = 5e5;

/** What the search for the ranges may take. */
const RANGES_WORK = 5e5;

const rangesToldOf = (document: StillhotDocument, id: WorkPointId, when: Ranges["when"]): Ranges =>
  rangesOf(document, id, { when, mostWork: RANGES_WORK });

/** What to go and look at before the first switch, since there it matters whether the drawing is right. */
const lookedAtFirst = (document: StillhotDocument, ids: readonly WorkPointId[]): Message[] =>
  ids
    .flatMap((id) =>
      lookFirst(document, id, { when: "working", mostWork: LOOKS_WORK }).entries.slice(0, MOST_LOOKS),
    )
    .map((it) => say("sheet.lookFirst", { line: lookFirstSentence(document, it) }));

/** What the grounds do against what may be wrong with the drawing: the reason for them, in figures. */
const worthOfGrounds = (document: StillhotDocument, ids: readonly WorkPointId[]): Message[] =>
  ids.flatMap((id) => {
    const worth = groundsWorth(document, id);
    return worth === undefined ? [] : (groundsWorthSentence(document, worth) ?? []);
  });

/** Where what lengths, impedances and loads may be, of which only the map speaks, changes what is told here. */
const rangesThatMatter = (document: StillhotDocument, ids: readonly WorkPointId[]): Message[] =>
  ids.flatMap((id) => {
    const ranges = rangesToldOf(document, id, "working");
    return isMoreThanDrawn(document, ranges) ? (rangesSentence(document, id, ranges) ?? []) : [];
  });

/** What nobody has seen, by how it is known; the least sure first. */
function unseenOf(document: StillhotDocument): Message[] {
  const by = new Map<string, (string | Message)[]>();
  const add = (id: string, name: string | Message) => {
    const evidence = evidenceOf(document.system, id);
    if (evidence !== "seen") by.set(evidence, [...(by.get(evidence) ?? []), name]);
  };
  for (const [id] of elementsOf(document)) add(id, elementName(document, id));
  for (const id in document.system.points) add(id, pointName(document, id));
  return ["assumed", "told", "map"].flatMap((evidence) => {
    const names = by.get(evidence);
    if (names === undefined) return [];
    const shown = names.slice(0, MOST_NAMED).map((text) => say("say.text", { text }));
    const more = names.length - shown.length;
    return [
      say(`sheet.unseen.${evidence}` as MessageKey, {
        names: inARow(more > 0 ? [...shown, say("sheet.more", { count: more })] : shown),
      }),
    ];
  });
}

const MOST_NAMED = 8;

/** Limits that are not the usual ones, each with its reason. */
const limitsOf = (document: StillhotDocument): Message[] =>
  limitsChanged(document).map((key) => {
    const reason = settingsOf(document).reasons[key] ?? "";
    return say("sheet.limit", {
      name: say(`limit.${key}`),
      value: limitWords(key, settingsOf(document)[key]),
      usual: limitWords(key, DEFAULT_SETTINGS[key]),
      why: reason === "" ? say("sheet.why") : say("sheet.because", { reason }),
    });
  });

/** A limit with its unit, a switch as on or off. */
export function limitWords(key: LimitKey, value: number | boolean): Message {
  if (typeof value === "boolean") return say(value ? "rules.on" : "rules.off");
  return say("company.amount", { value, unit: unitOfLimit(key) ?? "" });
}
