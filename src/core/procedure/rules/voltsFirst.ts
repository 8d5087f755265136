import { type CircuitElement, isAtCustomer, isLoad, isOwners } from "../../devices";
import { jobOf } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { isClosing, type Step } from "../../steps";
import type { ConductorId, ElementId } from "../../terms";
import { say } from "./say";
import { type ChangedSupply, changedSupplies } from "../job/changedSupply";
import { phaseConductors } from "../job/hands";
import { isJoined } from "../job/joined";
import { energizedBy, isLiveState } from "../job/live";
import { elementOf, elementsOf, nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { wereVoltsRead } from "../job/voltsRead";
import { defineRule, type Problem } from "./rule";

/**
 * A transformer or a service that was changed has its volts read before a meter or a main puts a customer onto it, and a
 * main does not go in while it is still dead; at the latest they are read before the crew leaves: a wrong tap or leg burns
 * what customers have.
 */
export const voltsFirst = defineRule({
  id: "volts-first",
  severity: "note",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const element = elementOf(after.document.system, step.element);
    if (!isClosing(step) || element === undefined) return undefined;
    const energized = new Set(energizedBy(before, after));
    const changed = changedSoFar(before).filter(({ legs }) => feeds(after, legs, energized));
    if (changed.length === 0) return undefined;
    if (!isAtCustomer(element)) return changed.flatMap((it) => putInDead(after, it, energized));
    return comesToLife(element, energized)
      ? changed.flatMap((it) => unread(step, before, after, it))
      : undefined;
  },
  atEnd(state) {
    const { conductors } = asItStands(state);
    const live = new Set(
      (Object.keys(conductors) as ConductorId[]).filter((id) => isLiveState(conductors[id]!.state)),
    );
    return changedSoFar(state)
      .filter(({ legs }) => loadsOn(state, legs, live) && !wereRead(state, legs))
      .map(({ id, at }) => ({
        where: id,
        message: say("rule.volts-first.never", { bank: nameOf(state.document, id) }),
        help: say("rule.volts-first.help", { at: nameOf(state.document, at) }),
      }));
  },
});

/** The customer's own switch went in while the supply was dead: what comes, comes unread. */
function putInDead(
  after: JobState,
  { id, at, legs }: ChangedSupply,
  energized: ReadonlySet<ConductorId>,
): Problem[] {
  if (!legs.some((leg) => energized.has(leg)) || !loadsOn(after, legs, energized)) return [];
  return closedSinceWork(after)
    .filter((it) => {
      const element = elementOf(after.document.system, it);
      return element !== undefined && isOwners(element) && comesToLife(element, energized);
    })
    .map((it) => ({
      where: it,
      message: say("rule.volts-first.dead", {
        name: nameOf(after.document, it),
        bank: nameOf(after.document, id),
      }),
      help: say("rule.volts-first.help", { at: nameOf(after.document, at) }),
    }));
}

function unread(step: Step, before: JobState, after: JobState, { id, at, legs }: ChangedSupply): Problem[] {
  if (wereRead(before, legs)) return [];
  return [
    {
      where: step.element!,
      message: say("rule.volts-first", {
        name: nameOf(after.document, step.element!),
        bank: nameOf(after.document, id),
      }),
      help: say("rule.volts-first.help", { at: nameOf(after.document, at) }),
    },
  ];
}

/** What the work so far put in, mended or joined. */
const changedSoFar = ({ document, played }: JobState): ChangedSupply[] =>
  changedSupplies(
    document,
    document.system,
    Object.keys(jobOf(document).workPoints).filter((id) =>
      played.some((it) => it.do === "work" && it.at === id),
    ),
  );

const feeds = (
  { document: { system } }: JobState,
  legs: readonly ConductorId[],
  energized: ReadonlySet<ConductorId>,
): boolean => legs.some((leg) => [...energized].some((it) => isJoined(system, leg, it)));

/** Whether something that draws current hangs on legs, and is among what is live. */
const loadsOn = (
  { document: { system } }: JobState,
  legs: readonly ConductorId[],
  live: ReadonlySet<ConductorId>,
): boolean =>
  elementsOf(system).some(
    ([, it]) =>
      isLoad(it) &&
      phaseConductors(it).some((id) => live.has(id) && legs.some((leg) => isJoined(system, leg, id))),
  );

const comesToLife = (element: CircuitElement, energized: ReadonlySet<ConductorId>): boolean =>
  phaseConductors(element).some((id) => energized.has(id));

const sinceWork = ({ played }: JobState): readonly Step[] =>
  played.slice(played.findLastIndex((it) => it.do === "work") + 1);

const closedSinceWork = (state: JobState): ElementId[] => [
  ...new Set(sinceWork(state).flatMap((it) => (isClosing(it) ? [it.element] : []))),
];

/** Whether volts were looked for and read on some legs since the work. */
const wereRead = (state: JobState, legs: readonly ConductorId[]): boolean =>
  wereVoltsRead(state.document.system, sinceWork(state), legs);
