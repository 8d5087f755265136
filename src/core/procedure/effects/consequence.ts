import { NO_AMPS } from "../tolerances";
import { shortedBy } from "../../devices";
import {
  conductorNames,
  elementOfKind,
  jobOf,
  settingsOf,
  spikeIdIn,
  type Step,
  type StepBy,
} from "../../document";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  type Letter,
  lettersOf,
  type Message,
  say,
  type WorkPointId,
} from "../../terms";
import { type Breaking, breakingsOf, LEAST_ARC_VOLTS, worstOf } from "./breaking";
import { capacitorsOn, heldCharge, unitVolts } from "./capacitors";
import { clearingWords, faultAmps } from "./clearing";
import {
  ampsThrough,
  degreesAcross,
  gapsMade,
  gapsOf,
  mismatchOf,
  outOfStepIn,
  phasesMoved,
  voltsAcross,
} from "./gap";
import { isTracing, spikedLive, tracedBy } from "./spiking";
import { madeBy } from "../job/repair";
import { hotInHand, isKeptOff } from "../job/hands";
import { isLiveState } from "../job/live";
import { isFedBackwards } from "../job/paths";
import { elementOf, elementsOf, figure, letterIn, listOf, nameOf } from "../job/names";
import { groundIdOf, phasesAt } from "../job/positions";
import { readingsOf } from "../job/readings";
import { asItStands, seen } from "../job/seen";
import type { JobState } from "../job/state";
import { movedAround } from "../job/worked";
import { DISCHARGE_SECONDS, trappedJoules } from "./trappedCharge";
import { isLiveWork } from "../../steps";

/** What a step brought about: an arc across a gap, a fault through a short, a shock, or nothing of the kind. */
export interface Consequence {
  readonly kind: "arc" | "fault" | "shock" | "none";
  /** broken, flowing in the fault, or through the person [A] */
  readonly amps: number;
  /** across the gap, on the conductor before the fault, or across the person [V] */
  readonly volts: number;
  readonly text: Message;
}

/** Whether a step did harm: an arc, a fault or a shock. */
export const isHarm = <Told extends Pick<Consequence, "kind">>(
  consequence: Told | undefined,
): consequence is Told & { readonly kind: Exclude<Consequence["kind"], "none"> } =>
  consequence !== undefined && consequence.kind !== "none";

/** Whether it hit somebody or something: a shock, or a fault that was closed onto. */
export const isHit = (consequence: Pick<Consequence, "kind"> | undefined): boolean =>
  consequence?.kind === "shock" || consequence?.kind === "fault";

/** The worst that a step brought about; where nothing went wrong, what the crew sees. */
export function consequenceOf(step: Step, before: JobState, after: JobState): Consequence {
  return (
    shock(step, before, after) ??
    shockInHand(step, before, after) ??
    chargeLetGo(step, before) ??
    groundedLive(step, before, after) ??
    spiked(step, before, after) ??
    ungroundedLive(step, before, after) ??
    closedOntoFault(step, ...movedAround(step, before, after)) ??
    joinedOutOfStep(step, before, after) ??
    drawnArc(step, before, after) ??
    pickedUpByClamp(step, before, after) ??
    unharmed(step, before, after)
  );
}

/** Hands on a conductor that is live, or becomes live under them. */
function shock(step: Step, before: JobState, after: JobState): Consequence | undefined {
  const { bodyOhms, exposureLimitVolts } = settingsOf(after.document);
  const worst = [...after.workUnderWay]
    .filter((id) => handsAreOn(after, id) && (isWorkAt(step, id) || verdictOf(before, id) !== "live"))
    .filter((id) => verdictOf(after, id) === "live")
    .map((id) => ({ id, volts: exposureNow(after, id) }))
    .sort((a, b) => b.volts - a.volts)[0];
  if (worst === undefined || worst.volts < exposureLimitVolts) return undefined;
  const amps = worst.volts / bodyOhms;
  return {
    kind: "shock",
    amps,
    volts: worst.volts,
    text: say("consequence.shock", {
      where: nameOf(after.document, jobOf(after.document).workPoints[worst.id]!.at),
      volts: figure(worst.volts),
      milliamps: figure(amps * 1000),
      ohms: bodyOhms,
    }),
  };
}

/** Hands that a step itself puts on something live, kept from it by nothing that holds its volts. */
function shockInHand(step: Step, before: JobState, after: JobState): Consequence | undefined {
  const { bodyOhms, exposureLimitVolts } = settingsOf(before.document);
  const hot = after.notDone === undefined ? hotInHand(step, before, after) : undefined;
  if (hot === undefined || hot.volts < exposureLimitVolts || isKeptOff(step, hot.nominalVolts))
    return undefined;
  const amps = hot.volts / bodyOhms;
  return {
    kind: "shock",
    amps,
    volts: hot.volts,
    text: say("consequence.shock", {
      where: conductorNames(before.document, hot.ids),
      volts: figure(hot.volts),
      milliamps: figure(amps * 1000),
      ohms: bodyOhms,
    }),
  };
}

const isWorkAt = (step: Step, id: WorkPointId): boolean => step.do === "work" && step.at === id;

/** Whether people touch the line at a work point, and do not work it with a stick. */
export const handsAreOn = ({ played }: JobState, id: WorkPointId): boolean => {
  const last = played.findLast((it) => isWorkAt(it, id));
  return last !== undefined && !isLiveWork(last);
};

const verdictOf = (state: JobState, id: WorkPointId) => seen(state).workPoints[id]?.verdict;

/** What a worker at a work point feels as things stand [V]. */
const exposureNow = (state: JobState, id: WorkPointId): number =>
  Math.max(
    0,
    ...(seen(state).workPoints[id]?.threats ?? [])
      .filter((it) => it.strength === 0)
      .map((it) => it.exposureVolts),
  );

/** A capacitor that is touched or grounded before its charge is gone. */
function chargeLetGo(step: Step, before: JobState): Consequence | undefined {
  const touched = touchedConductors(step, before);
  if (touched.length === 0) return undefined;
  const { frequencyHz } = before.document.system;
  const { exposureLimitVolts, bodyOhms } = settingsOf(before.document);
  const isHands = step.do === "work";
  const worst = capacitorsOn(before, touched)
    .flatMap(([id, it]) => {
      const held = heldCharge(before, id, it);
      // To be shorted by a ground once its time is over is what a capacitor waits for.
      return held === undefined || (!isHands && held.seconds >= DISCHARGE_SECONDS)
        ? []
        : [{ id, it, volts: held.volts }];
    })
    .sort((a, b) => b.volts - a.volts)[0];
  if (worst === undefined || worst.volts < exposureLimitVolts) return undefined;
  return {
    kind: isHands ? "shock" : "arc",
    amps: isHands ? worst.volts / bodyOhms : 0,
    volts: worst.volts,
    text: say("consequence.charge", {
      name: nameOf(before.document, worst.id),
      volts: figure(worst.volts),
      joules: figure(trappedJoules(worst.it.kvar, unitVolts(worst.it), worst.volts, frequencyHz)),
    }),
  };
}

/** Conductors that a step lays hands or a ground on. */
export function touchedConductors(step: Step, before: JobState): ConductorId[] {
  if (step.do === "ground")
    return [...phasesAt(before.document.system, step)].map((it) => conductorId(step.at, it as Letter));
  if (step.do !== "work" || isLiveWork(step)) return [];
  const workPoint = jobOf(before.document).workPoints[step.at];
  return workPoint === undefined
    ? []
    : lettersOf(workPoint.conductors).map((it) => conductorId(workPoint.at, it as Letter));
}

/** A ground set put on a conductor that something supplies. */
function groundedLive(step: Step, before: JobState, after: JobState): Consequence | undefined {
  if (step.do !== "ground" || before.document === after.document) return undefined;
  const live = liveOf(before, touchedConductors(step, before));
  const set = groundIdOf(before.document.system, step);
  return live.length === 0 ? undefined : shorted(live, set, "consequence.groundedLive", before, after);
}

/** A spike driven through a cable that something supplies. */
function spiked(step: Step, before: JobState, after: JobState): Consequence | undefined {
  const live = spikedLive(step, before);
  const spike = spikeIdIn(before.document.system);
  return live.length === 0 ? undefined : shorted(live, spike, "consequence.spikedLive", before, after);
}

/** The bolted fault that something makes which comes onto live conductors. */
function shorted(
  live: readonly ConductorId[],
  short: ElementId,
  told: "consequence.groundedLive" | "consequence.spikedLive",
  before: JobState,
  after: JobState,
): Consequence {
  const amps = faultAmps(after, [short]);
  const volts = highestVolts(live, before);
  return {
    kind: "fault",
    amps,
    volts,
    text: say(told, {
      where: conductorNames(before.document, live),
      amps: figure(amps),
      volts: figure(volts),
      clearing: clearingWords(after),
    }),
  };
}

const highestVolts = (ids: readonly ConductorId[], state: JobState): number =>
  Math.max(...ids.map((it) => asItStands(state).conductors[it]!.volts));

/** A ground set taken off while a supply feeds it. */
function ungroundedLive(step: Step, before: JobState, after: JobState): Consequence | undefined {
  if (step.do !== "unground") return undefined;
  const live = liveUnder(before, step.element);
  if (live.length === 0) return undefined;
  const amps = faultAmps(before, [step.element]);
  const volts = highestVolts(live, after);
  return {
    kind: "arc",
    amps,
    volts,
    text: say("consequence.ungroundedLive", {
      where: conductorNames(before.document, live),
      amps: figure(amps),
      volts: figure(volts),
    }),
  };
}

/** Conductors under a ground set that something supplies. */
export function liveUnder(state: JobState, set: ElementId): ConductorId[] {
  const element = elementOfKind(state.document.system, set, "ground");
  if (element === undefined) return [];
  return liveOf(
    state,
    lettersOf(element.phases).map((letter) => conductorId(element.at, letter)),
  );
}

const liveOf = (state: JobState, ids: readonly ConductorId[]): ConductorId[] =>
  ids.filter((id) => isLiveState(asItStands(state).conductors[id]?.state));

/**
 * Things that short conductors which a step has just brought to life, or to which it brings a supply that was not there: a
 * bank's other phases may have held them at some volts before.
 */
export function shortsEnergized(before: JobState, after: JobState): ElementId[] {
  if (before.document === after.document) return [];
  const [was, is] = [asItStands(before).conductors, asItStands(after).conductors];
  const faulted = new Set(
    (Object.keys(is) as ConductorId[]).filter(
      (id) =>
        is[id]!.state === "faulted" &&
        (!isLiveState(was[id]?.state) ||
          is[id]!.sources.some((it) => !was[id]!.sources.includes(it)) ||
          (isFedBackwards(before, id) && !isFedBackwards(after, id))),
    ),
  );
  return elementsOf(after.document.system)
    .filter(([, it]) => shortedBy(it) !== "")
    .filter(([, it]) => {
      const { at, phases } = it as { at: string; phases: string };
      return lettersOf(phases).some((letter) => faulted.has(conductorId(at, letter)));
    })
    .map(([id]) => id);
}

/** A fault or a ground set that something is closed onto, or a live line joined to by the work on it, with sticks as by hand. */
function closedOntoFault(step: Step, before: JobState, after: JobState): Consequence | undefined {
  const made = madeBy(step, before.document).filter(
    (id) => elementOf(after.document.system, id) !== undefined,
  );
  if (made.length === 0) return undefined;
  const shorts = shortsEnergized(before, after);
  if (shorts.length === 0) return undefined;
  const { closed } = phasesMoved(step, before, after);
  const amps = Math.max(ampsThrough(after, step.element, closed), faultAmps(after, shorts));
  const sides = gapsMade(step, before, after);
  return {
    kind: "fault",
    amps,
    volts: Math.max(0, ...sides.map(({ from, to }) => Math.max(from.volts, to.volts))),
    text: say("consequence.closedOnto", {
      name: listOf(made.map((id) => nameOf(after.document, id))),
      onto: listOf(shorts.map((id) => nameOf(after.document, id))),
      amps: figure(amps),
      clearing: clearingWords(after),
    }),
  };
}

function joinedOutOfStep(step: Step, before: JobState, after: JobState): Consequence | undefined {
  const [, joined] = movedAround(step, before, after);
  const letters = step.do === "work" ? "ABC12" : phasesMoved(step, before, after).closed;
  const gap = mismatchOf(step, before, after);
  if (gap === undefined) {
    const apart = outOfStepIn(step, before, after);
    return (
      apart && {
        kind: "fault",
        amps: ampsThrough(joined, apart.thing, letters),
        volts: apart.volts,
        text: say("consequence.notInStep", {
          name: nameOf(after.document, apart.thing),
          volts: figure(apart.volts),
        }),
      }
    );
  }
  const amps = ampsThrough(joined, gap.thing, letters);
  return {
    kind: "fault",
    amps,
    volts: voltsAcross(gap),
    text: say("consequence.outOfStep", {
      name: nameOf(after.document, gap.thing),
      degrees: figure(Math.round(degreesAcross(gap))),
      volts: figure(voltsAcross(gap)),
      amps: figure(amps),
      clearing: clearingWords(joined),
    }),
  };
}

function drawnArc(step: Step, before: JobState, after: JobState): Consequence | undefined {
  const worst = worstOf(
    breakingsOf(step, before, after).filter(({ amps, limit }) => amps > limit.amps && amps > NO_AMPS),
  );
  if (worst === undefined) return undefined;
  const volts = Math.max(0, ...gapsOf(after, step.element, worst.letter).map(voltsAcross));
  return {
    kind: "arc",
    amps: worst.amps,
    volts,
    text: say("consequence.arc", {
      name: nameOf(before.document, worst.element),
      letter: letterIn(worst.letter),
      amps: figure(worst.amps),
      volts: figure(volts),
      limit: figure(worst.limit.amps),
    }),
  };
}

/** A clamp put on with load beyond it: its jaws make the load. */
function pickedUpByClamp(step: Step, before: JobState, after: JobState): Consequence | undefined {
  if (step.do !== "attach") return undefined;
  const { closed } = phasesMoved(step, before, after);
  const amps = ampsThrough(after, step.element, closed);
  if (amps <= settingsOf(after.document).clampBreakAmps) return undefined;
  const volts = Math.max(0, ...gapsOf(before, step.element, closed).map(voltsAcross));
  return {
    kind: "arc",
    amps,
    volts,
    text: say("consequence.clampArc", {
      name: nameOf(after.document, step.element),
      amps: figure(amps),
      volts: figure(volts),
    }),
  };
}

const none = (text: Message, amps = 0, volts = 0): Consequence => ({ kind: "none", amps, volts, text });

/** What the crew sees of a step that went well. */
function unharmed(step: Step, before: JobState, after: JobState): Consequence {
  if (after.notDone !== undefined) return none(after.notDone);
  if (step.do === "test") return shown(step, before);
  const breakings = breakingsOf(step, before, after);
  const worst = worstOf(breakings);
  if (worst !== undefined)
    return worst.amps <= NO_AMPS
      ? openedWithoutArc(breakings, before)
      : none(
          say("consequence.broken", {
            name: nameOf(before.document, worst.element),
            amps: figure(worst.amps),
            by: say(`breaks.${worst.limit.basis}`, { limit: figure(worst.limit.amps) }),
          }),
          worst.amps,
          Math.max(0, ...gapsOf(after, step.element, worst.letter).map(voltsAcross)),
        );
  const { closed } = phasesMoved(step, before, after);
  if (closed !== "") {
    const amps = ampsThrough(after, step.element, closed);
    if (amps <= NO_AMPS)
      return none(say("consequence.closedDead", { name: nameOf(after.document, step.element!) }));
    return none(
      say("consequence.carries", { name: nameOf(after.document, step.element!), amps: figure(amps) }),
      amps,
    );
  }
  return none(say("consequence.none"));
}

/** Nothing is broken: there is no current, or what there is goes another way or out by itself. */
function openedWithoutArc(breakings: readonly Breaking[], before: JobState): Consequence {
  const { element, through, volts } = [...breakings].sort((a, b) => b.through - a.through)[0]!;
  const name = nameOf(before.document, element);
  if (through <= NO_AMPS) return none(say("consequence.openedDead", { name }));
  const isHeld = volts < LEAST_ARC_VOLTS;
  return none(
    say(isHeld ? "consequence.openedHeld" : "consequence.openedLow", {
      name,
      amps: figure(through),
      volts: figure(volts),
    }),
    0,
    volts,
  );
}

/** What a tracer tells: whether this is the cable that is grounded, and nothing of volts. */
function traced(step: StepBy<"test">, before: JobState): Message {
  const found = tracedBy(step, before);
  return found.length === 0
    ? say("consequence.noTrace", { at: nameOf(before.document, step.at) })
    : say("consequence.traced", { where: conductorNames(before.document, found) });
}

function shown(step: StepBy<"test">, before: JobState): Consequence {
  if (isTracing(step)) return none(traced(step, before));
  const readings = [...readingsOf(before, step)];
  const highest = Math.max(0, ...readings.map(([, it]) => it.volts));
  const words = readings.map(([id, { volts, isDead, isWithoutNominalVolts }]) =>
    say(isDead ? "reading.dead" : isWithoutNominalVolts ? "reading.induced" : "reading.live", {
      where: conductorNames(before.document, [id]),
      volts: figure(volts),
    }),
  );
  return none(words.length === 0 ? say("consequence.none") : listOf(words), 0, highest);
}
