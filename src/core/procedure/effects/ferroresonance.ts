import { elementsOfKind, transformersOf } from "../../document";
import { type AnyTransformer, type End, letterAt, lettersAtEnd, openingOf } from "../../devices";
import type { Step, System } from "../../document";
import { conductorId, type ElementId, lettersOf } from "../../terms";
import { endsOf } from "../../network";
import { gapsOf, phasesMoved } from "./gap";
import { secondaryIds } from "../job/hands";
import { joinedTo, joinedWithout } from "../job/joined";
import { isLiveState } from "../job/live";
import { elementOf } from "../job/names";
import type { JobState } from "../job/state";

/** Resistive load that keeps a bank from ringing, in percent of its rating: "a few percent" (from memory: IEEE C57.105). */
const DAMPING_PERCENT = 5;

/** A bank that one phase at a time leaves in series with a cable, and the load on it in percent of its rating. */
export interface FerroresonanceRisk {
  readonly bank: ElementId;
  readonly cable: ElementId;
  readonly loadPercent: number;
  /** its star is on the neutral: seldom, but seen */
  readonly isGrounded: boolean;
}

/** Banks whose primary has no path from its star to the neutral. */
const UNGROUNDED = /^[YD]-/;
/** Banks of three whose star is on the neutral. */
const GROUNDED = /^Yg-/;

/**
 * Whether a step switches single poles of a three-phase bank, over cable, with little load on it. A primary with no path
 * to the neutral is the common case; a grounded star is no absolute safeguard.
 *
 * @see IEEE C57.105 and distribution handbooks, from memory; `shared/reference/ferroresonance-and-backfeed.json`, conditions and yg-not-immune
 */
export function ferroresonanceRisk(
  step: Step,
  before: JobState,
  after: JobState,
): FerroresonanceRisk | undefined {
  const { system } = after.document;
  const element = elementOf(system, step.element);
  if (element === undefined || openingOf(element)?.gang !== false) return undefined;
  const { opened, closed } = phasesMoved(step, before, after);
  const moved = opened + closed;
  const isSupplied = gapsOf(before, step.element, moved).some(
    ({ from, to }) => isLiveState(from.state) || isLiveState(to.state),
  );
  if (!isSupplied) return undefined;
  const whileOpen = gapsOf(opened === "" ? before : after, step.element, moved);
  // Its first end lies beyond it where the line is fed from its far end.
  const isBeyond = (end: End) => end === "to" || whileOpen.some(({ from }) => from.state !== "energized");
  return endsOf(element)
    .filter(([end]) => isBeyond(end))
    .flatMap(([end]) => riskAt(system, step.element as ElementId, end, moved) ?? [])[0];
}

/** A bank and a cable that are joined to one end of a thing, not through it. */
function riskAt(system: System, id: ElementId, end: End, moved: string): FerroresonanceRisk | undefined {
  const element = elementOf(system, id)!;
  const point = new Map(endsOf(element)).get(end)!;
  const beyond = joinedWithout(
    system,
    lettersAtEnd(element, end).map((letter) => conductorId(point, letter)),
    id,
  );
  const movedBeyond = lettersOf(moved).map((letter) => letterAt(element, end, letter));
  const bankOf = (connections: RegExp) =>
    transformersOf(system).find(
      ([, it]) =>
        connections.test(it.connection) &&
        lettersOf(it.phases).some(
          (letter) => movedBeyond.includes(letter) && beyond.has(conductorId(it.from, letter)),
        ),
    );
  const cable = elementsOfKind(system, "span").find(
    ([, it]) =>
      it.construction === "cable" &&
      lettersOf(it.phases).some(
        (letter) =>
          beyond.has(conductorId(it.from, letter)) &&
          beyond.has(conductorId(it.to, letterAt(it, "to", letter))),
      ),
  );
  if (cable === undefined) return undefined;
  return [UNGROUNDED, GROUNDED].flatMap((connections): FerroresonanceRisk[] => {
    const bank = bankOf(connections);
    if (bank === undefined) return [];
    const loadPercent = loadPercentOf(system, bank[1]);
    const isGrounded = connections === GROUNDED;
    return loadPercent >= DAMPING_PERCENT
      ? []
      : [{ bank: bank[0], cable: cable[0], loadPercent, isGrounded }];
  })[0];
}

/** Load on the secondary of a bank, in percent of its rating. */
function loadPercentOf(system: System, bank: AnyTransformer): number {
  const joined = joinedTo(system, secondaryIds(bank));
  const kw = elementsOfKind(system, "load").reduce(
    (sum, [, it]) =>
      lettersOf(it.phases).some((letter) => joined.has(conductorId(it.at, letter))) ? sum + it.kw : sum,
    0,
  );
  return (100 * kw) / bank.kva;
}
