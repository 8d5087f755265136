import { breaksOf, isOwners, lettersAtEnd, openPhasesOf } from "../../devices";
import { complete, settingsOf, type System, transformersOf } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { conductorId, type ElementId, lettersOf } from "../../terms";
import { say } from "./say";
import { MOST_VOLTS_BY_HAND, NO_AMPS } from "../tolerances";
import { isClosing, type Step } from "../../steps";
import { keepsArc, mayBeLoadRated } from "../effects/breaking";
import { shortsEnergized } from "../effects/consequence";
import { ampsThrough, gapsOf, phasesMoved, voltsAcross } from "../effects/gap";
import { phaseConductors, secondaryIds } from "../job/hands";
import { joinedTo, joinedWithout } from "../job/joined";
import { energizedBy } from "../job/live";
import { elementOf, elementsOf, figure, nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";

/**
 * A clamp goes on with what is beyond it open; the cutout then picks up the load, or a bank with its inrush. A meter goes in
 * with the customer's main open: its jaws are contacts and no switch. No more is a connector in the hand one, on a leg or a
 * jumper that is remade.
 */
export const pickUpOrder = defineRule({
  id: "pick-up-order",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (step.do !== "attach" && step.do !== "replace" && step.do !== "join")
      return isClosing(step) ? loadByBlade(step, before, after) : undefined;
    const closed = phasesMoved(step, before, after).closed.replace("N", "");
    const amps = ampsThrough(after, step.element, closed);
    if (step.do === "join") {
      const backwards = bankFromBehind(step.element, before, after);
      if (backwards !== undefined) return backwards;
      const volts = Math.max(0, ...gapsOf(before, step.element, closed).map(voltsAcross));
      // A path beside it carries the load already: nothing is made. At line volts it makes what a clamp may break.
      const { clampBreakAmps } = settingsOf(after.document);
      const isMade = keepsArc(amps, volts) && (volts <= MOST_VOLTS_BY_HAND || amps > clampBreakAmps);
      if (isMade) return loadByHand(step.element, amps, volts, after);
      return volts > MOST_VOLTS_BY_HAND ? bankByJaws(step.element, before, after, "join") : undefined;
    }
    if (step.do === "replace") return amps <= NO_AMPS ? undefined : loadByMeter(step.element, amps, after);
    const { clampBreakAmps } = settingsOf(after.document);
    if (amps <= clampBreakAmps) return bankByJaws(step.element, before, after, "clamp");
    return {
      where: step.element,
      message: say("rule.pick-up-order", {
        name: nameOf(after.document, step.element),
        amps: figure(amps),
        limit: clampBreakAmps,
      }),
      help: say("rule.pick-up-order.help"),
    };
  },
});

/**
 * A load that is made by what nothing rates for it. A path beside it that holds the gap leaves nothing to make, and the law asks
 * of what closes a circuit under load that it carries the current (29 CFR 1910.269(l)(12)(ii)), and on many taps nothing else
 * can make the load, so that it is a note; what breaks nothing at all, as a dead-break elbow, is as bad to make with.
 */
function loadByBlade(step: Step, before: JobState, after: JobState): Problem | undefined {
  const { document } = after;
  const element = elementOf(document.system, step.element);
  // Of what has no such key, as a regulator, a drawing cannot say what its own switches make.
  if (element === undefined || !mayBeLoadRated(element)) return undefined;
  const settings = settingsOf(document);
  const limit = breaksOf(element, step.with ?? "", settings);
  if (limit?.basis !== "unrated" || shortsEnergized(before, after).length > 0) return undefined;
  const { closed } = phasesMoved(step, before, after);
  const amps = ampsThrough(after, step.element, closed);
  const volts = Math.max(0, ...gapsOf(before, step.element, closed).map(voltsAcross));
  if (amps <= Math.max(limit.amps, NO_AMPS) || !keepsArc(amps, volts)) return undefined;
  return {
    where: step.element!,
    ...(limit.amps > 0 ? { severity: "note" as const } : {}),
    message: say("rule.pick-up-order.blade", {
      name: nameOf(document, step.element!),
      amps: figure(amps),
      limit: limit.amps,
    }),
    help: say("rule.pick-up-order.blade.help"),
  };
}

/** A transformer that a clamp or a jumper energizes: its magnetizing inrush is made by the jaws, whatever it draws afterwards. */
function bankByJaws(
  clamp: string,
  before: JobState,
  after: JobState,
  by: "clamp" | "join",
): Problem | undefined {
  const energized = new Set(energizedBy(before, after));
  const bank = transformersOf(after.document.system).find(([, it]) =>
    lettersOf(it.phases).some((letter) => energized.has(conductorId(it.from, letter))),
  );
  if (bank === undefined) return undefined;
  return {
    where: clamp,
    message: say("rule.pick-up-order.bank", {
      name: nameOf(after.document, clamp),
      bank: nameOf(after.document, bank[0]),
    }),
    help: say(by === "clamp" ? "rule.pick-up-order.help" : "rule.pick-up-order.join.help"),
  };
}

/**
 * A transformer that its legs energize while its own cutout is open: a connector in the hand makes its inrush, and its primary
 * stands at line volts. It is energized from its own side first, and its legs are joined where no volts stand across them.
 */
function bankFromBehind(lead: ElementId, before: JobState, after: JobState): Problem | undefined {
  const energized = new Set(energizedBy(before, after));
  const { conductors } = asItStands(after);
  const { system } = after.document;
  const joined = joinedTo(system, phaseConductors(elementOf(system, lead)!));
  const bank = transformersOf(system).find(
    ([, it]) =>
      secondaryIds(it).some((id) => energized.has(id) && joined.has(id)) &&
      lettersOf(it.phases).some((letter) => {
        const id = conductorId(it.from, letter);
        return energized.has(id) && conductors[id]!.volts > MOST_VOLTS_BY_HAND;
      }),
  );
  if (bank === undefined) return undefined;
  const [id, { from, phases }] = bank;
  const behind = lettersOf(phases)
    .map((letter) => conductorId(from, letter))
    .filter((it) => energized.has(it));
  const volts = Math.max(...behind.map((it) => conductors[it]!.volts));
  return {
    where: lead,
    message: say("rule.pick-up-order.behind", {
      name: nameOf(after.document, lead),
      bank: nameOf(after.document, id),
      at: nameOf(after.document, from),
      volts: figure(volts),
    }),
    help: say("rule.pick-up-order.behind.help", { bank: nameOf(after.document, id) }),
  };
}

/** A load that a connector makes in the hand; on a service whose main nobody drew the crew still has it off. */
function loadByHand(id: string, amps: number, volts: number, { document }: JobState): Problem {
  const problem = {
    where: id,
    message: say("rule.pick-up-order.join", { name: nameOf(document, id), amps: figure(amps) }),
  };
  if (volts > MOST_VOLTS_BY_HAND) return { ...problem, help: say("rule.pick-up-order.join.help") };
  const main = closedMainBeyond(document.system, id);
  return main === undefined
    ? { ...problem, severity: "note", help: say("rule.pick-up-order.join.help") }
    : { ...problem, help: say("rule.pick-up-order.meter.main", { main: nameOf(document, main) }) };
}

/** A load that a meter puts on by its jaws; where nobody drew a main the crew still has it off. */
function loadByMeter(meter: string, amps: number, { document }: JobState): Problem {
  const main = closedMainBeyond(document.system, meter);
  const name = nameOf(document, meter);
  const message = say("rule.pick-up-order.meter", { name, amps: figure(amps) });
  return main === undefined
    ? { where: meter, severity: "note", message, help: say("rule.pick-up-order.meter.help") }
    : {
        where: meter,
        message,
        help: say("rule.pick-up-order.meter.main", { main: nameOf(document, main) }),
      };
}

/** A customer's main behind a meter that could have kept the load off. */
function closedMainBeyond(system: System, meter: string): ElementId | undefined {
  const element = complete(system.elements[meter as ElementId]!);
  const { to, phases } = element as { to: string; phases: string };
  const beyond = joinedWithout(
    system,
    lettersAtEnd(element, "to").map((letter) => conductorId(to, letter)),
    meter as ElementId,
  );
  return elementsOf(system).find(
    ([, it]) =>
      isOwners(it) &&
      openPhasesOf(it) === "" &&
      "from" in it &&
      lettersOf(phases).some((letter) => beyond.has(conductorId(it.from, letter))),
  )?.[0];
}
