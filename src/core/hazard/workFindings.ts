import { cablesWithin } from "./withinCable";
import { groundSetsAt, isPadLike, isPole, pointName, structureOf, type System } from "../document";
import { circuitOf } from "../network";
import {
  conductorId,
  type Finding,
  type Message,
  type MessageKey,
  type PointId,
  say,
  type WorkPointId,
} from "../terms";
import { bodyAmpsOf, conductorsOf } from "./outcome";
import { MOST_STRENGTH } from "./tolerances";
import { type FoundThreats, leastStepTouch, worstStepTouch } from "./threats";
import { whenWords } from "./upsetWords";
import { viewOf } from "./view";
import { loadModel } from "./systemFindings";
import type { Question } from "./types";
import { conductorsNotFed } from "./verdict";

/** The same after some set of upsets. */
export const loadsUnsettled = (id: WorkPointId, { settled }: FoundThreats): Finding[] =>
  settled ? [] : [loadModel(id, say("hazard.loadsUnsettledAfter"))];

/** The body in circuit by which an induced conductor is judged [Ω]. Source: 29 CFR 1910.269(q)(2)(iv) note. */
const INDUCED_OHMS = 500;

/** Current through a body at each conductor of a work point that is induced with the grounds lifted, none at any other [A]. */
function inducedAmps(question: Question): number[] {
  const { system, settings, workPoint } = question;
  const circuit = circuitOf(system);
  const lifted = viewOf(circuit, settings, { groundsLifted: true });
  const amps = bodyAmpsOf(question, { ohms: INDUCED_OHMS, loads: "as-drawn" });
  return conductorsOf(workPoint).map((letter, index) => {
    const node = circuit.nodeOf.get(conductorId(workPoint.at, letter))!;
    return lifted.stateIfFed(node) === "induced" ? amps[index]! : 0;
  });
}

/** Induced current beyond the limit, and a worksite that is not one potential. */
export function workPointFindings(asked: readonly Question[], id: WorkPointId): Finding[] {
  const { system, settings, workPoint } = asked[0]!;
  const induced = asked.map(inducedAmps);
  const findings: Finding[] = [];
  conductorsOf(workPoint).forEach((letter, index) => {
    const amps = Math.max(...induced.map((it) => it[index]!));
    const volts = INDUCED_OHMS * amps;
    if (volts > settings.inducedLimitVolts)
      findings.push({
        rule: "induced-exposure",
        severity: "danger",
        where: id,
        message: say(Number.isFinite(volts) ? "hazard.inducedExposure" : "hazard.inducedExposure.notKnown", {
          letter,
          milliamps: threeFigures(1000 * amps),
          volts: threeFigures(volts),
          limit: settings.inducedLimitVolts,
        }),
        help: say("hazard.inducedExposure.help"),
        citation: "29 CFR 1910.269(q)(2)(iv) note",
      });
  });
  const sets = groundSetsAt(system, workPoint.at);
  // A neutral takes no set of its own: what ties it to earth beside the hands, its verdict asks for.
  // Within a cable nothing is bare for one: it is grounded at its ends.
  const lacksSet =
    sets.length === 0 && workPoint.conductors !== "N" && cablesWithin(system, workPoint.at).length === 0;
  if (lacksSet || sets.some(([, it]) => !it.poleBond))
    findings.push({
      rule: "equipotential",
      severity: "warning",
      where: id,
      message: say(sets.length === 0 ? "hazard.noGroundHere" : "hazard.poleNotBonded", {
        at: pointName({ system }, workPoint.at),
      }),
      help: say("hazard.equipotential.help"),
      citation: "29 CFR 1910.269(n)(3)",
    });
  return findings;
}

/** A line that no source could ever reach was not made dead: its feed was left out, or an edit cut it off. */
export function feedMissing(asked: readonly Question[], id: WorkPointId): Finding[] {
  const unfed = new Set(asked.flatMap((it) => conductorsNotFed(it)));
  const letters = conductorsOf(asked[0]!.workPoint).filter((it) => unfed.has(it));
  if (letters.length === 0) return [];
  return [
    {
      rule: "feed-not-drawn",
      severity: "danger",
      where: id,
      message: say("hazard.feedNotDrawn", { letters: letters.join(" ") }),
      help: say("hazard.feedNotDrawn.help"),
      citation: "common practice, no source",
    },
  ];
}

/** Where a drawing has more sets of upsets than can be asked: said, and the verdict and the margin take it for the worst. */
export function threatsNotAll(id: WorkPointId, { completeTo }: FoundThreats): Finding[] {
  return completeTo >= MOST_STRENGTH
    ? []
    : [notAll(id, say(`hazard.threatsNotAll.${completeTo}` as MessageKey))];
}

const notAll = (where: WorkPointId, message: Message): Finding => ({
  rule: "threats-not-all",
  severity: "warning",
  where,
  message,
  help: say("hazard.threatsNotAll.help"),
  citation: "common practice, no source",
});

/** What may lift the ground beside the work to the exposure limit, with everybody kept clear or not. */
export function stepTouch(asked: readonly Question[], id: WorkPointId, isBarricaded: boolean): Finding[] {
  const { system, workPoint } = asked[0]!;
  const least = worstStepTouch(asked.map((it) => leastStepTouch(it)));
  if (least === "none") return [];
  if (least === "not-known") return [notAll(id, say("hazard.stepTouchNotAll"))];
  const place = placeLifted(system, workPoint.at);
  return [
    {
      rule: "step-touch",
      severity: isBarricaded ? "note" : "warning",
      where: id,
      message: say(stepTouchKey(isBarricaded, least.volts), {
        volts: threeFigures(least.volts),
        when: whenWords(system, least.upsets),
        lifted: say(`hazard.stepTouch.${place}`),
      }),
      // Who has barricaded it is not told to.
      ...(isBarricaded
        ? {}
        : {
            help: say(`hazard.stepTouch.help.${place}`, {
              at: pointName({ system }, workPoint.at),
            }),
          }),
      citation: "29 CFR 1910.269 Appendix C",
    },
  ];
}

/** What stands at the volts of the neutral beside the truck and the rods: a pole, what is reached from the ground, or whatever is bonded in a station or at a house. */
function placeLifted(system: System, at: PointId): "pole" | "enclosure" | "bonded" {
  const structure = structureOf(system, at);
  if (structure === undefined || isPole(structure)) return "pole";
  return isPadLike(structure) ? "enclosure" : "bonded";
}

const stepTouchKey = (isBarricaded: boolean, volts: number): MessageKey =>
  !Number.isFinite(volts)
    ? "hazard.stepTouch.notKnown"
    : isBarricaded
      ? "hazard.stepTouch.barricaded"
      : "hazard.stepTouch";

/** A number as a finding tells it. */
export const threeFigures = (value: number): number => Number(value.toPrecision(3));
