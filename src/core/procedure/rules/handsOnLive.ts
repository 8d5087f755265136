import { openPhasesOf } from "../../devices";
import { doneBy, conductorNames, jobOf, pointsOnStructure, settingsOf } from "../../document";
import { circuitOf, endsOf } from "../../network";
import { citationOf, gloveClassFor } from "../../reference";
import type { Step } from "../../steps";
import { type ConductorId, conductorId, type ElementId, LETTERS, partsOfConductor } from "../../terms";
import { say } from "./say";
import { conductorsInHand, type HotInHand, hotInHand, isKeptOff, methodOf } from "../job/hands";
import { isUnderCover } from "../job/covered";
import { isJoined, joinedTo } from "../job/joined";
import { isLiveState } from "../job/live";
import { elementOf, elementsOf, figure, nameOf } from "../job/names";
import { pathToConductor } from "../job/paths";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";

/** Above it live work asks for a second person and for reclosing blocked [V]: 29 CFR 1910.269(l)(2)(i). */
const TWO_PEOPLE_VOLTS = 600;

/**
 * Hands come to a live conductor by a method of live work alone: gloves of a class for its volts, or sticks; on a line with
 * reclosing blocked, what is within reach covered, and a second person. What nobody grounded counts as live over 600 V, what
 * nobody tested at any volts; an open neutral is live until it was tested.
 */
export const handsOnLive = defineRule({
  id: "hands-on-live",
  severity: "danger",
  citation: citationOf("treat-as-energized"),
  check(step, before, after) {
    if (after.notDone !== undefined) return undefined;
    const untested = untestedNeutral(step, before);
    const hot = hotInHand(step, before, after);
    if (hot === undefined) return untested ?? unproven(step, before);
    if (!isKeptOff(step, hot.nominalVolts)) return touched(step, before, hot);
    return [...(untested === undefined ? [] : [untested]), ...missing(step, before, hot)];
  },
});

function touched(step: Step, before: JobState, hot: HotInHand): Problem {
  const gloves = gloveClassFor(hot.nominalVolts);
  const gaps = {
    where: conductorNames(before.document, hot.ids),
    volts: figure(hot.volts),
    nominal: figure(hot.nominalVolts),
    verb: say(`doing.${step.do}`),
    given: step.gloveClass ?? "",
    gloves:
      gloves === undefined
        ? say("gloves.none")
        : say("gloves.class", { name: gloves.name, volts: gloves.maxUseVolts }),
  };
  const how = methodOf(step) === "bare" ? "bare" : step.gloveClass === undefined ? "noClass" : "gloves";
  return {
    where: step.element ?? step.at ?? "job",
    message: say(`rule.hands-on-live.${how}`, gaps),
    help: say("rule.hands-on-live.help", gaps),
  };
}

/** What a method of live work on a line still lacks, whether the step names the method or the stick in hand is one. */
function missing(step: Step, before: JobState, hot: HotInHand): Problem[] {
  if (hot.nominalVolts <= TWO_PEOPLE_VOLTS) return [];
  const warning = { where: step.element ?? step.at ?? "job", severity: "warning" as const };
  const problems: Problem[] = reclosingOnTheWay(before, hot).map((id) => ({
    ...warning,
    where: id,
    citation: citationOf("m3-iii-auto"),
    message: say("rule.hands-on-live.reclosing", { name: nameOf(before.document, id) }),
    help: say("rule.automatic-device.help", { name: nameOf(before.document, id) }),
  }));
  if (jobOf(before.document).people < 2)
    problems.push({
      ...warning,
      message: say("rule.hands-on-live.alone"),
      help: say("rule.hands-on-live.alone.help"),
    });
  // Whoever says that things are covered has covered them in a step.
  const bare = methodOf(step) === "sticks" ? [] : bareBeside(before, hot);
  if (bare.length > 0)
    problems.push({
      ...warning,
      message: say("rule.hands-on-live.cover", { where: conductorNames(before.document, bare) }),
      help: say("rule.hands-on-live.cover.help"),
    });
  return problems;
}

/** Bare hands that cut or join what may be dead: over 600 V nobody grounded it, below that nobody tested it. */
function unproven(step: Step, before: JobState): Problem | undefined {
  if ((step.do !== "join" && step.do !== "cut") || methodOf(step) !== "bare") return undefined;
  const { system } = before.document;
  const circuit = circuitOf(system);
  const isLine = (id: ConductorId) => circuit.nominalVolts[circuit.nodeOf.get(id) ?? -1]! > TWO_PEOPLE_VOLTS;
  const isHeld = (id: ConductorId) => asItStands(before).conductors[id]?.state === "grounded";
  const inHand = conductorsInHand(step, before).filter((id) => partsOfConductor(id).letter !== "N");
  const bare = inHand.filter((id) => !isHeld(id) && (isLine(id) || !wasTested(before, id)));
  if (bare.length === 0) return undefined;
  const gaps = { verb: say(`doing.${step.do}`), where: conductorNames(before.document, bare) };
  const how = bare.some(isLine) ? "ungrounded" : "untested";
  return {
    where: step.element,
    severity: how === "ungrounded" ? "danger" : "warning",
    message: say(`rule.hands-on-live.${how}`, gaps),
    help: say(`rule.hands-on-live.${how}.help`),
  };
}

/** Whether a test stands behind a conductor, there or anywhere along what it is joined to. */
const wasTested = ({ tested, document: { system } }: JobState, id: ConductorId): boolean =>
  [...tested].some((it) => isJoined(system, it, id));

/** Closed things that reclose by themselves between a supply and what is in hand. */
function reclosingOnTheWay(before: JobState, { ids }: HotInHand): string[] {
  const onTheWay = new Set(ids.flatMap((id) => pathToConductor(before, id)));
  return elementsOf(before.document.system)
    .filter(([id, it]) => {
      const { reclosing, blocked } = it as { reclosing?: boolean; blocked?: boolean };
      return onTheWay.has(id) && reclosing === true && blocked !== true && openPhasesOf(it) === "";
    })
    .map(([id]) => id);
}

/**
 * Live conductors of the line on the same pole that nothing covers and that are not one with what is in hand. Who works on
 * several phases has one of them in hand at a time, and the others beside it.
 */
function bareBeside(before: JobState, { ids }: HotInHand): ConductorId[] {
  const { document } = before;
  const circuit = circuitOf(document.system);
  const points = new Set(ids.flatMap((id) => pointsOnStructure(document.system, partsOfConductor(id).point)));
  const isOnePhase = new Set(ids.map((id) => partsOfConductor(id).letter)).size === 1;
  const inHand = isOnePhase ? joinedTo(document.system, ids) : new Set<ConductorId>();
  return [...points]
    .flatMap((point) => LETTERS.map((letter) => conductorId(point, letter)))
    .filter((id) => !inHand.has(id) && isLiveState(asItStands(before).conductors[id]?.state))
    .filter((id) => !isUnderCover(before, id))
    .filter((id) => circuit.nominalVolts[circuit.nodeOf.get(id)!]! > TWO_PEOPLE_VOLTS);
}

/** A neutral that is spliced before anybody tested what stands on it: until then it counts as live. */
function untestedNeutral(step: Step, before: JobState): Problem | undefined {
  const open = splicedBy(step, before).find((id) => !isKnownNeutral(step, before, id));
  if (open === undefined) return undefined;
  return {
    where: open,
    severity: methodOf(step) === "bare" ? "danger" : "warning",
    message: say("rule.hands-on-live.neutral", { name: nameOf(before.document, open) }),
    help: say("rule.hands-on-live.neutral.help"),
  };
}

/** Things whose open neutral a step joins, by a splice of its own or as what the work there does. */
function splicedBy(step: Step, { document }: JobState): ElementId[] {
  const isOpen = (id: string | undefined): boolean => {
    const element = elementOf(document.system, id);
    return element !== undefined && openPhasesOf(element).includes("N");
  };
  if (step.do === "work") return doneBy(document, step.at).filter(isOpen);
  const isJoined = step.do === "join" && (step.phases ?? "N").includes("N") && isOpen(step.element);
  return isJoined ? [step.element] : [];
}

function isKnownNeutral(step: Step, { document, readings }: JobState, id: ElementId): boolean {
  const { hazardVolts } = settingsOf(document);
  return endsOf(elementOf(document.system, id)!).some(([, point]) => {
    const reading = readings.get(conductorId(point, "N"));
    return reading !== undefined && (methodOf(step) !== "bare" || reading.volts < hazardVolts);
  });
}
