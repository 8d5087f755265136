import { isBeside } from "../../devices";
import { conductorNames } from "../../document";
import { cablesWithin } from "../../hazard";
import type { System } from "../../document";
import { isRefusal, type Refusal, say } from "../../terms";
import { systemAfterBlowing } from "../effects/blowing";
import { chargesAfter } from "../effects/capacitors";
import { type Consequence, consequenceOf } from "../effects/consequence";
import { isOnCable, isSpiking, isTracing, systemAfterSpike, tracedBy } from "../effects/spiking";
import { elementOf } from "../job/names";
import { systemAfter } from "../job/positions";
import { readingsOf } from "../job/readings";
import type { RehearsalFinding } from "../rules/rule";
import { findingsOf } from "../rules";
import { isAnothers } from "../job/owners";
import { documentAfter } from "../job/standing";
import { movedAround, onceWorked } from "../job/worked";
import type { JobState } from "../job/state";
import {
  isActing,
  isLooking,
  isSwitching,
  isTelling,
  type Step,
  type StepBy,
  undoesTests,
} from "../../steps";

/** What one step did: how the job stands after it, what is wrong with it, and what it brought about. */
export interface PlayedStep {
  readonly n: number;
  readonly step: Step;
  readonly state: JobState;
  readonly findings: readonly RehearsalFinding[];
  readonly consequence: Consequence;
}

/** Plays one step. Pure: the state before stays as it was, so a step is undone by going back to it. */
export function play(before: JobState, step: Step): PlayedStep {
  const after = underHands(before, step);
  return {
    n: after.played.length,
    step,
    state: onceCleared(step, ...movedAround(step, before, after)),
    findings: findingsOf(step, before, after),
    consequence: consequenceOf(step, before, after),
  };
}

/** How the job stands when the links have blown that a fault of this step melts. What was tested before it no longer counts. */
function onceCleared(step: Step, before: JobState, after: JobState): JobState {
  const standing = (system: System): JobState => ({ ...after, document: documentAfter(after, system) });
  const system = systemAfterBlowing(step, before, after, standing);
  return system === after.document.system ? after : { ...standing(system), ...UNTESTED };
}

/**
 * Says that the plan was changed. What was briefed no longer covers the job: 29 CFR 1910.269(c)(3) asks for another
 * briefing when a significant change could affect safety.
 */
export const planChanged = (state: JobState, why = say("brief.planChanged")): JobState =>
  state.briefed ? { ...state, briefAgain: why } : state;

/**
 * Says that something was not as expected. The crew backs out, so that the detector is proven again before the next test.
 * Where it was voltage, nothing that was tested counts any more: what feeds it is not on the drawing.
 */
export const notAsExpected = (state: JobState, isVoltage: boolean): JobState => ({
  ...planChanged(state, say("brief.unexpected")),
  detector: "unproven",
  ...(isVoltage ? UNTESTED : {}),
});

/** How the job stands after a step, whatever the rules say of it. */
export const advance = (before: JobState, step: Step): JobState => onceWorked(step, underHands(before, step));

/** How the job stands while a step is done: for everything but work that is how it stands after it. */
function underHands(before: JobState, step: Step): JobState {
  const n = before.played.length + 1;
  const moved = movedBy(before, step);
  const system = isRefusal(moved) ? before.document.system : moved;
  const after: JobState = {
    ...before,
    document: system === before.document.system ? before.document : documentAfter(before, system),
    played: [...before.played, step],
    notDone: isRefusal(moved) ? moved.refused : undefined,
    detector: detectorAfter(before.detector, step),
    ...(undoesTests(step) ? UNTESTED : {}),
    ...(isSwitching(step) ? { lastSwitching: n } : {}),
    // What was told once at the next thing that is done is not told again at each thing after it.
    ...(isActing(step) ? { unrepeated: 0, briefAgain: undefined } : {}),
    ...(isLooking(step) ? {} : { shownLive: [] }),
    ...(isRefusal(moved) ? {} : (told(before, step, n) ?? {})),
  };
  const capacitors = chargesAfter(before, after, step);
  return capacitors === before.capacitors ? after : { ...after, capacitors };
}

/** A tag of the crew's own beside another's comes and goes without it. */
const movedBy = (before: JobState, step: Step): System | Refusal =>
  (step.do === "tag" && isAnothers(before, step.element)) ||
  (step.do === "untag" && isAnothers(before, step.element) && before.otherTags.has(step.element))
    ? before.document.system
    : isSpiking(step)
      ? systemAfterSpike(step, before)
      : systemAfter(before.document.system, step);

const UNTESTED: Pick<JobState, "tested" | "readings"> = { tested: new Set(), readings: new Map() };

/** A check holds for the tests right after it; each test asks for another check after it. */
function detectorAfter(was: JobState["detector"], step: Step): JobState["detector"] {
  if (step.do === "check-detector") return "proven";
  if (step.do === "test" && !isOnCable(step)) return was === "proven" ? "to-be-proven-again" : was;
  return isTelling(step) || step.do === "test" || step.do === "inspect" ? was : "unproven";
}

const added = <Item>(to: ReadonlySet<Item>, ...items: Item[]): ReadonlySet<Item> =>
  new Set([...to, ...items]);
const removed = <Item>(from: ReadonlySet<Item>, ...items: Item[]): ReadonlySet<Item> =>
  new Set([...from].filter((it) => !items.includes(it)));

/** What a step is about: a thing, or what is at a point. */
const placeOf = ({ element, at }: StepBy<"cover" | "uncover" | "secure">): string => element ?? at!;

/** What a step changes beside the positions on the drawing. */
function told(before: JobState, step: Step, n: number): Partial<JobState> | undefined {
  switch (step.do) {
    case "brief":
      return { briefed: true, briefAgain: undefined, shownLive: [] };
    case "request-permit":
      return { permit: before.permit === "held" ? "held" : "requested" };
    case "receive-permit":
      return { permit: "held", unrepeated: n, permitHolder: step.with ?? before.permitHolder };
    case "release-permit":
      // What was never held is not given back: the operator's word is still wanting.
      return before.permit === "held" ? { permit: "released" } : undefined;
    case "hand-over":
      return step.permit === true ? { permitHolder: step.to } : undefined;
    case "confirm":
      return {
        unrepeated: 0,
        ...(before.played.findLast((it) => it.do !== "note")?.do === "all-clear"
          ? { allClearRepeated: true }
          : {}),
      };
    case "check-detector":
      return undefined;
    case "test":
      return tested(before, step);
    case "ground":
      return { lastGround: n };
    case "unground":
      return { lastUnground: n };
    case "cover":
      return { covered: added(before.covered, placeOf(step)) };
    case "uncover":
      return { covered: removed(before.covered, placeOf(step)) };
    case "barricade":
      return { barricaded: added(before.barricaded, step.at) };
    case "secure":
      return { secured: added(before.secured, placeOf(step)) };
    case "inspect":
      return { shownLive: [] };
    case "ask":
      // To have a neighbour's reclosing held is no word on the section.
      return isBeside(elementOf(before.document.system, step.element))
        ? undefined
        : { shownLive: [], operatorAsked: n };
    case "wait":
      return { elapsedSeconds: before.elapsedSeconds + step.seconds };
    case "work":
      return { workUnderWay: added(before.workUnderWay, step.at), lastWork: n };
    case "all-clear":
      return { workUnderWay: new Set(), lastAllClear: n, allClearRepeated: false };
    case "tag":
      return { otherTags: added(before.otherTags, step.element) };
    case "untag":
      return { otherTags: removed(before.otherTags, step.element) };
    default:
      return undefined;
  }
}

/** A test that is to show volts: after energizing, or before two things are joined. */
const wantsVolts = (step: Step): boolean => step.do === "test" && step.expect === "live";

/** A test: what the detector shows, and what it proves where the detector was proven first. */
function tested(before: JobState, step: StepBy<"test">): Partial<JobState> {
  if (isTracing(step)) return { tested: added(before.tested, ...tracedBy(step, before)) };
  const readings = readingsOf(before, step);
  const isLive = [...readings].some(([, reading]) => !reading.isWithoutNominalVolts);
  // Volts that were wanted stop nobody.
  const live = wantsVolts(step)
    ? []
    : [...readings].filter(([, reading]) => !reading.isWithoutNominalVolts).map(([id]) => id);
  const hasNothingBare = cablesWithin(before.document.system, step.at).length > 0;
  const proves = hasNothingBare ? isSpiking(step) : before.detector !== "unproven";
  return {
    readings: new Map([...before.readings, ...readings]),
    tested: proves
      ? added(before.tested, ...[...readings].filter(([, it]) => it.isDead).map(([id]) => id))
      : before.tested,
    shownLive: [...before.shownLive, ...live],
    // A detector that has just shown volts works: what follows needs no other proof of it.
    ...(isLive ? { detector: wantsVolts(step) ? before.detector : ("proven" as const) } : {}),
    ...(live.length > 0 && before.briefed
      ? { briefAgain: say("brief.shownLive", { where: conductorNames(before.document, live) }) }
      : {}),
  };
}
