import { GROUNDING_CABLES, openingOf } from "../../devices";
import {
  complete,
  jobOf,
  perObject,
  settingsOf,
  type Step,
  type StillhotDocument,
  type System,
} from "../../document";
import { assess, type Threat } from "../../hazard";
import { circuitOf, reachOf, standingOf } from "../../network";
import {
  conductorId,
  type ElementId,
  type Letter,
  type Message,
  type PointId,
  say,
  type WorkPointId,
} from "../../terms";
import { capacitorsOf, terminalsOf, wasFoundCharged } from "../effects/capacitors";
import { islandOf } from "../job/joined";
import { elementsOf, figure, nameOf } from "../job/names";
import { play, type PlayedStep } from "../rehearsal/play";
import type { RehearsalFinding } from "../rules/rule";
import { findingsAtEnd } from "../rules";
import { looseHardware } from "../rules/looseHardware";
import { secondaryBackfeed } from "../rules/secondaryBackfeed";
import { permitReasonForElement, permitReasonForWork } from "../job/section";
import { seen } from "../job/seen";
import { beginJob } from "../job/state";
import { DISCHARGE_SECONDS } from "../effects/trappedCharge";
import { isOperating } from "../../steps";
import { namesOfOpenings, type Purpose, stepsOf, testedPlaces } from "./actions";
import {
  type GroundPlace,
  hasNeutral,
  type Intent,
  phasesAtPoint,
  stateReady,
  workedOn,
  workPointsOf,
} from "./intent";
import { closableOnto } from "./marks";
import { type Opening, openingsOf } from "./openings";
import { repaired } from "./repair";
import { type Choice, choices, type DeadEnds, type Demand } from "./search";
import type { Alternative, Plan, PlannedStep, Uncontrolled } from "./types";
import { edgesTaken, type Separation, type Strictness, STRICTEST, suppliesOf, wayBetween } from "./ways";
import { NO_WISHES, wish, type Wishes } from "./wishes";

export interface PlanOptions {
  /** other ways to do the job, with their price (true) */
  readonly alternatives?: boolean;
}

/** Rounds of repair before a plan is told as it is, with what the rules still find in it. */
const MOST_ROUNDS = 16;
/** Other ways that are tried, and told. */
const MOST_TRIED = 4;
const MOST_ALTERNATIVES = 3;

/**
 * An order of steps from as found to safe to work and back to as found that passes every rule of the rehearsal: fewest
 * customers out, then fewest operations, then least walking. Where there is none, what threatens and what would control it.
 */
export function plan(document: StillhotDocument, { alternatives = true }: PlanOptions = {}): Plan {
  const asked = withoutSteps(document);
  const found = firstPlan(asked);
  if (!alternatives || found.draft === undefined || !found.plan.ok) return found.plan;
  return { ...found.plan, alternatives: alternativesTo(asked, found.draft) };
}

/** A document with the steps of its job replaced by the planned ones. */
export function planDocument(document: StillhotDocument): StillhotDocument {
  const steps = plan(document, { alternatives: false }).steps.map(({ why: _why, ...step }): Step => step);
  return { ...document, job: { ...document.job, steps: steps as never } };
}

/** Steps that the file has already do not matter to a plan; nor do their marks. */
const withoutSteps = perObject((document: StillhotDocument): StillhotDocument => ({
  ...document,
  job: { ...document.job, steps: [] },
}));

/** One order of steps, played, and the decisions behind it. */
interface Draft {
  readonly intent: Intent;
  readonly wishes: Wishes;
  readonly steps: readonly PlannedStep[];
  /** dangers and warnings that no repair took away */
  readonly findings: readonly RehearsalFinding[];
}

interface Found {
  readonly plan: Plan;
  readonly draft: Draft | undefined;
}

/** From strict to lenient: what is not to be had strictly is told with what the rules find in it. */
const STRICTNESSES: readonly Strictness[] = [
  STRICTEST,
  { visibleGaps: true, asRestored: false },
  { visibleGaps: false, asRestored: true },
  { visibleGaps: false, asRestored: false },
];

const firstPlan = perObject((document: StillhotDocument): Found => {
  if (workPointsOf(document).length === 0) return { plan: EMPTY, draft: undefined };
  let deadEnds: DeadEnds | undefined;
  let best: Draft | undefined;
  for (const strictness of STRICTNESSES) {
    const ends: DeadEnds = { ways: [], stuck: [] };
    const draft = draftFor(document, { ...NO_WISHES, strictness }, ends);
    deadEnds ??= ends;
    if (draft === undefined) continue;
    if (best === undefined || draft.findings.length < best.findings.length) best = draft;
    if (best.findings.length === 0) break;
  }
  if (best === undefined)
    return {
      plan: { ...EMPTY, ok: false, uncontrolled: uncontrolledBy(document, deadEnds!) },
      draft: undefined,
    };
  const uncontrolled = best.findings.length === 0 ? [] : stillThreatening(document, best);
  return {
    draft: best,
    plan: {
      ...priced(document, best),
      ok: best.findings.length === 0,
      alternatives: [],
      uncontrolled,
      findings: best.findings,
    },
  };
});

const EMPTY: Plan = {
  ok: true,
  steps: [],
  customersOut: 0,
  criticalOut: [],
  operations: 0,
  alternatives: [],
  uncontrolled: [],
  findings: [],
};

/** Steps and price of a draft. */
function priced(document: StillhotDocument, { intent, steps }: Draft): Omit<Alternative, "summary"> {
  const { count, critical } = intent.choice.customers;
  return {
    steps,
    customersOut: count,
    criticalOut: critical.map((id) => nameOf(document, id)),
    operations: steps.filter(isOperating).length,
  };
}

/**
 * One order of steps under some wishes: openings by the search, everything else by what the job needs with them, and the
 * whole order played. At the first step in which a rule finds something that can be mended, the finding becomes a wish
 * and the order is made again; what it shares with the one before is not played twice.
 *
 * @param nth which of the sets of openings to take, the cheapest being 0
 */
function draftFor(document: StillhotDocument, from: Wishes, deadEnds: DeadEnds, nth = 0): Draft | undefined {
  let wishes = from;
  let draft: Draft | undefined;
  let choice: Choice | undefined;
  let chosenFor = "";
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const demand = demandOf(document, wishes);
    const key = demandKey(demand);
    if (choice === undefined || key !== chosenFor) {
      const next = nthChoice(document, demand, deadEnds, nth);
      // A wish that leaves no way at all is not taken.
      if (next === undefined) return draft;
      [choice, chosenFor] = [next, key];
    }
    const decided = decide(document, choice, wishes);
    if (demandKey(demandOf(document, decided.wishes)) !== key) {
      wishes = decided.wishes;
      continue;
    }
    const { intent } = decided;
    const steps = stepsOf(document, intent, purposesOf(document, choice, demand));
    const { played, mended } = playUntilMended(document, steps, intent, decided.wishes);
    if (mended !== undefined) {
      wishes = mended;
      continue;
    }
    const findings = [...played.flatMap((it) => it.findings), ...findingsAtEnd(played.at(-1)!.state)].filter(
      isWrong,
    );
    if (draft === undefined || findings.length < draft.findings.length)
      draft = { intent, wishes, steps, findings };
    return draft;
  }
  return draft;
}

/** Plays an order up to the first step whose findings become a wish; to its end where none does. */
function playUntilMended(
  document: StillhotDocument,
  steps: readonly PlannedStep[],
  intent: Intent,
  wishes: Wishes,
): { readonly played: readonly PlayedStep[]; readonly mended: Wishes | undefined } {
  const played: PlayedStep[] = [];
  for (const it of playing(document, steps)) {
    played.push(it);
    const { step, state } = it;
    const mended = repaired(it.findings.filter(isWrong), { document, intent, step, state, wishes });
    if (mended !== wishes) return { played, mended };
  }
  return { played, mended: undefined };
}

const isWrong = ({ severity }: { readonly severity: string }): boolean => severity !== "note";

function demandOf(document: StillhotDocument, wishes: Wishes): Demand {
  const circuit = circuitOf(document.system);
  const targets = workedOn(document).flatMap((id) => circuit.nodeOf.get(id) ?? []);
  const supplies: Separation = { name: "supplies", targets, sources: suppliesOf(circuit, wishes.strictness) };
  return {
    start: workPointsOf(document)[0]![1].at,
    separations: [supplies, ...wishes.separations],
    strictness: wishes.strictness,
    forced: wishes.forced,
    forbidden: wishes.forbidden,
    first: wishes.first,
  };
}

const demandKey = ({ separations, strictness, forced, forbidden, first }: Demand): string =>
  JSON.stringify([separations.map(({ name }) => name), strictness, forced, [...forbidden], [...first]]);

function nthChoice(
  document: StillhotDocument,
  demand: Demand,
  deadEnds: DeadEnds,
  nth: number,
): Choice | undefined {
  let index = 0;
  for (const choice of choices(document, demand, deadEnds)) if (index++ === nth) return choice;
  return undefined;
}

/** What a set of openings needs beside itself: what is told from the drawing alone, without an assessment. */
function decide(
  document: StillhotDocument,
  choice: Choice,
  wishes: Wishes,
): { readonly intent: Intent; readonly wishes: Wishes } {
  const marks = marksFor(document, choice, wishes);
  const intent: Intent = {
    choice,
    ...marks,
    grounds: groundsOf(document, choice, wishes),
    covers: wishes.covers,
    barricades: wishes.barricades,
    secures: new Set([...wishes.secures, ...looseNear(document, choice)]),
    permit: permitReason(document, choice),
    found: jobOf(document).permit,
    waitSeconds: capacitorsLeft(document, choice).length > 0 ? DISCHARGE_SECONDS : 0,
    retest: wishes.retest,
  };
  const state = stateReady(document, intent);
  const more = workPointsOf(document).reduce(
    (sum, [id]) => {
      const step: Step = { do: "work", at: id };
      const findings = asList(secondaryBackfeed.check!(step, state, state)).map(({ where }) => ({
        rule: secondaryBackfeed.id,
        where,
      }));
      return repaired(findings, { document, intent, step, state, wishes: sum });
    },
    capacitorWishes(document, intent, wishes),
  );
  if (more === wishes) return { intent, wishes };
  return demandKey(demandOf(document, more)) === demandKey(demandOf(document, wishes))
    ? decide(document, choice, more)
    : { intent, wishes: more };
}

/** Tags and blocks: what could be closed onto the work is tagged, and blocked where a tag does not hold it. */
function marksFor(
  document: StillhotDocument,
  choice: Choice,
  wishes: Wishes,
): Pick<Intent, "tags" | "blocks"> {
  const tags = new Set(wishes.tags);
  const blocks = new Set(wishes.blocks);
  for (const id of closableOnto(document, choice)) {
    const element = complete(document.system.elements[id]!);
    const { tagged, blocked } = element as { tagged?: boolean; blocked?: boolean };
    if (tagged === false) tags.add(id);
    if (openingOf(element)?.automatic === true && blocked === false) blocks.add(id);
  }
  for (const { element, kind } of choice.openings) {
    const { blocked } = complete(document.system.elements[element]!) as { blocked?: boolean };
    if (kind === "main") tags.add(element);
    if (blocked === false && (kind === "main" || (kind === "clamp" && tags.has(element))))
      blocks.add(element);
  }
  return { tags: sorted(tags), blocks: sorted(blocks) };
}

const sorted = <Item extends string>(items: ReadonlySet<Item>): ReadonlySet<Item> =>
  new Set([...items].sort());

/** A ground set at every work point, on every phase there that is dead, and on every secondary that is held by one. */
function groundsOf(document: StillhotDocument, choice: Choice, { groundsAt, cables }: Wishes): GroundPlace[] {
  const { system } = document;
  const taken = new Set(Object.keys(system.elements));
  const nextId = (): ElementId => {
    for (let n = 1; ; n++)
      if (!taken.has(`g${n}`)) {
        taken.add(`g${n}`);
        return `g${n}` as ElementId;
      }
  };
  const places = new Map<PointId, { phases: string; bank?: ElementId }>();
  for (const { at, phases } of testedPlaces(document))
    if (phases !== "") places.set(at, { phases: deadPhases(choice.order.after, at, phases) });
  for (const at of groundsAt) {
    const bank = elementsOf(system).find(([, it]) => it.kind === "transformer" && it.to === at)?.[0];
    const phases = phasesAtPoint(system, at);
    if (places.has(at)) places.set(at, { ...places.get(at)!, phases });
    else places.set(at, { phases, ...(bank === undefined ? {} : { bank }) });
  }
  return [...places].map(([at, place]) => {
    const id = nextId();
    return {
      id,
      at,
      to: hasNeutral(system, at) ? ("neutral" as const) : ("earth" as const),
      cable: cables.get(id) ?? GROUNDING_CABLES[0],
      ...place,
    };
  });
}

/** Phases of a point that nothing reaches, those of the work among them in any case: all of them go to the set. */
function deadPhases(after: System, at: PointId, worked: string): string {
  const circuit = circuitOf(after);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return [...phasesAtPoint(after, at)]
    .filter((it) => worked.includes(it) || how[circuit.nodeOf.get(conductorId(at, it as Letter))!] === 0)
    .join("");
}

/** Loose or failing hardware on a pole that these openings shake. */
function looseNear(document: StillhotDocument, { openings }: Choice): ElementId[] {
  const state = beginJob(document);
  return openings.flatMap(({ element }) =>
    asList(looseHardware.check!({ do: "open", element }, state, state)).map(
      ({ where }) => where as ElementId,
    ),
  );
}

const asList = <Item>(items: Item | readonly Item[] | undefined): readonly Item[] =>
  items === undefined ? [] : Array.isArray(items) ? (items as readonly Item[]) : [items as Item];

/** Why the job asks for a permit; nothing where it does not. */
function permitReason(document: StillhotDocument, { openings }: Choice): Message | undefined {
  for (const { element } of openings) {
    const reason = permitReasonForElement(document, element);
    if (reason !== undefined) return reason;
  }
  for (const [, workPoint] of workPointsOf(document)) {
    const reason = permitReasonForWork(document, workPoint);
    if (reason !== undefined) return reason;
  }
  return undefined;
}

/** Capacitors with a charge that still hang on what is grounded when the openings are made. */
function capacitorsLeft(document: StillhotDocument, choice: Choice) {
  const { after } = choice.order;
  const found = beginJob(document);
  const worked = new Set(workedOn(document).map((id) => islandOf(after, id)));
  return capacitorsOf({ ...found, document: { ...document, system: after } }).filter(
    ([, it]) => wasFoundCharged(found, it) && terminalsOf(it).some((id) => worked.has(islandOf(after, id))),
  );
}

/** A capacitor that the grounds of the job do not short at every terminal is taken off. */
function capacitorWishes(document: StillhotDocument, { choice, grounds }: Intent, wishes: Wishes): Wishes {
  const { after } = choice.order;
  const held = new Set(
    grounds.flatMap(({ at, phases }) =>
      [...phases].map((it) => islandOf(after, conductorId(at, it as Letter))),
    ),
  );
  const unshorted = capacitorsLeft(document, choice).filter(
    ([, it]) => !terminalsOf(it).every((id) => held.has(islandOf(after, id))),
  );
  const keys = openingsOf(document)
    .all.filter(({ element }) => unshorted.some(([id]) => id === element))
    .map(({ key }) => key);
  if (keys.length === 0 || keys.every((it) => wishes.forced.includes(it))) return wishes;
  return { ...wishes, forced: [...new Set([...wishes.forced, ...keys])].sort() };
}

/** What each opening is for: it is asked what would be left without it. */
function purposesOf(
  document: StillhotDocument,
  { openings, order }: Choice,
  demand: Demand,
): Map<string, Purpose> {
  const circuit = circuitOf(document.system);
  const purposes = new Map<string, Purpose>();
  const taken = edgesTaken(circuit, demand.strictness);
  for (const opening of openings) {
    const edgeOn = taken.slice();
    const others = openings.filter((it) => it !== opening);
    for (const { edges, visibleGap } of others)
      if (visibleGap || !demand.strictness.visibleGaps) for (const edge of edges) edgeOn[edge] = 0;
    const stopped = new Set(others.filter(({ moves }) => moves === "machine").map(({ element }) => element));
    const way = demand.separations
      .map((it) => wayBetween(circuit, edgeOn, it, stopped))
      .find((it) => it !== undefined);
    purposes.set(
      opening.key,
      way === undefined ? idleOf(opening, order.order, demand) : { is: "isolates", source: way.source },
    );
  }
  return purposes;
}

function idleOf(opening: Opening, order: Choice["order"]["order"], { first }: Demand): Purpose {
  if (opening.kind === "capacitor") return { is: "capacitor" };
  const at = order.findIndex((it) => it.opening === opening);
  const next = order.slice(at + 1).find((it) => it.opening.element !== opening.element)?.opening;
  const other = next?.element ?? opening.element;
  return first.has(opening.key) ? { is: "splits", other } : { is: "drops", other };
}

interface Prefix {
  readonly played: PlayedStep | undefined;
  readonly next: Map<string, Prefix>;
}

/** Orders that begin alike are played once as far as they are alike. */
const beginnings = perObject((_document: StillhotDocument): Prefix => ({
  played: undefined,
  next: new Map(),
}));

function* playing(document: StillhotDocument, steps: readonly PlannedStep[]): Generator<PlayedStep> {
  let at = beginnings(document);
  let state = beginJob(document);
  for (const { why: _why, ...step } of steps) {
    const key = JSON.stringify(step);
    let next = at.next.get(key);
    if (next === undefined) at.next.set(key, (next = { played: play(state, step), next: new Map() }));
    yield next.played!;
    state = next.played!.state;
    at = next;
  }
}

/** Other ways to do the same, each played and without a finding. */
function alternativesTo(document: StillhotDocument, first: Draft): Alternative[] {
  const found: Alternative[] = [];
  const told = new Set([JSON.stringify(first.steps)]);
  const tell = (draft: Draft | undefined, summary: (draft: Draft) => Message): void => {
    if (draft === undefined || draft.findings.length > 0 || found.length >= MOST_ALTERNATIVES) return;
    const key = JSON.stringify(draft.steps);
    if (told.has(key)) return;
    told.add(key);
    found.push({ summary: summary(draft), ...priced(document, draft) });
  };
  const { strictness } = first.wishes;
  const newIn = (draft: Draft): Opening[] =>
    draft.intent.choice.openings.filter((it) => !first.intent.choice.openings.includes(it));
  for (const { bank } of first.intent.grounds)
    if (bank !== undefined)
      tell(draftFor(document, wish({ ...NO_WISHES, strictness }, "heldOpen", bank), noEnds()), (draft) =>
        say("plan.alternative.hold", {
          names: namesOfOpenings(document, newIn(draft)),
          place: nameOf(document, (complete(document.system.elements[bank]!) as { to: string }).to),
        }),
      );
  for (let nth = 1; nth <= MOST_TRIED && found.length < MOST_ALTERNATIVES; nth++) {
    const draft = draftFor(document, { ...NO_WISHES, strictness }, noEnds(), nth);
    if (draft === undefined) break;
    tell(draft, (it) =>
      say("plan.alternative.openings", {
        names: namesOfOpenings(document, newIn(it)),
        others: namesOfOpenings(
          document,
          first.intent.choice.openings.filter((opening) => !it.intent.choice.openings.includes(opening)),
        ),
      }),
    );
  }
  return found;
}

const noEnds = (): DeadEnds => ({ ways: [], stuck: [] });

/** Threats of ways without anything that opens, each once, and what would open them. */
function uncontrolledBy(document: StillhotDocument, { ways, stuck }: DeadEnds): Uncontrolled[] {
  const { workPoints } = assess(document);
  const threatsOf = (id: WorkPointId): readonly Threat[] => workPoints[id]!.threats;
  const found: Uncontrolled[] = [];
  const add = (source: ElementId | undefined, control: Message): void => {
    for (const [id] of workPointsOf(document)) {
      const threat =
        threatsOf(id).find((it) => it.source === source && it.strength === 0) ??
        threatsOf(id).find((it) => it.source === source) ??
        threatsOf(id)[0];
      if (threat === undefined) continue;
      if (
        found.some(
          (it) => it.workPoint === id && it.source === threat.source && it.control.key === control.key,
        )
      )
        continue;
      found.push({ ...threat, workPoint: id, control });
    }
  };
  for (const { source } of ways) add(source, say("plan.control.opens", { source: nameOf(document, source) }));
  for (const { element } of ways.length > 0 ? [] : stuck)
    add(undefined, say("plan.control.breaks", { name: nameOf(document, element) }));
  return found;
}

/** Threats that a draft leaves without a control when work begins, by what the rules still find, and what would give one. */
function stillThreatening(document: StillhotDocument, { intent, findings }: Draft): Uncontrolled[] {
  const { exposureLimitVolts } = settingsOf(document);
  const { workPoints } = seen(stateReady(document, intent));
  const found: Uncontrolled[] = [];
  const add = (isIt: (threat: Threat) => boolean, control: (at: string | Message) => Message): void => {
    for (const [id, { at }] of workPointsOf(document))
      for (const threat of workPoints[id]!.threats.filter(isIt)) {
        if (found.some((it) => it.workPoint === id && isSameThreat(it, threat))) continue;
        found.push({ ...threat, workPoint: id, control: control(nameOf(document, at)) });
      }
  };
  const rulesFound = new Set(findings.map(({ rule }) => rule));
  for (const where of new Set(findings.filter(({ rule }) => rule === "visible-gap").map((it) => it.where)))
    add(
      ({ upsets }) => upsets.some(({ element }) => element === where),
      () => say("plan.control.gap", { name: nameOf(document, where) }),
    );
  if (rulesFound.has("ground-rating")) {
    const most = Math.max(
      0,
      ...Object.values(workPoints).flatMap((it) => it.threats.map(({ groundAmps }) => groundAmps)),
    );
    add(
      ({ groundAmps }) => groundAmps === most,
      (at) => say("plan.control.cable", { amps: figure(most), at }),
    );
  }
  add(
    ({ strength, exposureVolts }) => strength <= 2 && exposureVolts >= exposureLimitVolts,
    (at) => say(rulesFound.has("ground-return") ? "plan.control.neutral" : "plan.control.ground", { at }),
  );
  return found;
}

const isSameThreat = (a: Threat, b: Threat): boolean =>
  a.conductor === b.conductor && JSON.stringify(a.upsets) === JSON.stringify(b.upsets);
