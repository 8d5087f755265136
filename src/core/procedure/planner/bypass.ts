import { type CircuitElement, isLiftedOff, letterAt, openPhasesOf, standsAbreast } from "../../devices";
import {
  elementOfKind,
  isSameStructure,
  perObject,
  type SavedElement,
  type StillhotDocument,
  type System,
} from "../../document";
import { endsOf } from "../../network";
import { conductorId, type ElementId, type Letter, lettersOf, type PointId, say } from "../../terms";
import { joinedWithout } from "../job/joined";
import { elementsOf, nameOf } from "../job/names";
import { madeSound } from "./ending";
import { openingsOf, stepOff, stepOn } from "./openings";
import { placeOf, RANK, step } from "./said";
import type { PlannedGroup } from "./schedule";

/** A regulator that the work changes, and the switch that carries the line past it meanwhile. */
interface Bypass {
  readonly regulator: ElementId;
  readonly by: ElementId;
  readonly phases: string;
}

/** A job with the line carried past each regulator that is worked on. */
export interface Bypassed {
  /** as found */
  readonly asFound: StillhotDocument;
  /** as it stands once the bypasses are closed: what the rest of the order is planned on */
  readonly document: StillhotDocument;
  readonly bypasses: readonly Bypass[];
}

/** Regulators that the work is about are run to neutral, their control is shut off, and they are bypassed before they are switched out. */
export const bypassed = perObject((asFound: StillhotDocument): Bypassed => {
  const bypasses = [...madeSound(asFound)].flatMap((id) => bypassOf(asFound, id) ?? []);
  if (bypasses.length === 0) return { asFound, document: asFound, bypasses };
  const elements: Record<string, SavedElement> = { ...asFound.system.elements };
  for (const { regulator, by } of bypasses) {
    elements[regulator] = { ...elements[regulator]!, taps: {}, blocked: true };
    // It carries the line until the regulator is back, so that nothing else of the order moves it.
    elements[by] = { ...elements[by]!, open: "", normallyOpen: false };
  }
  return { asFound, bypasses, document: { ...asFound, system: { ...asFound.system, elements } } };
});

/** An open switch on the regulator's own structure that would join both its ends, on each of its phases. */
function bypassOf(document: StillhotDocument, id: ElementId): Bypass | undefined {
  const { system } = document;
  const regulator = elementOfKind(system, id, "regulator");
  if (regulator === undefined || openPhasesOf(regulator) !== "" || regulator.bypassed) return undefined;
  // It cannot be run to neutral: a bypass would be a short circuit through its series winding.
  if (isStuckOffNeutral(system, id)) return undefined;
  const { phases } = regulator;
  const [from, to] = endPoints(regulator);
  const side = (point: PointId, letter: Letter) => joinedWithout(system, [conductorId(point, letter)], id);
  const isAround = (it: CircuitElement): boolean =>
    lettersOf(phases).every((letter) => {
      const [near, far] = [side(from, letter), side(to, letter)];
      const [a, b] = endsOf(it).map(([end, point]) => conductorId(point, letterAt(it, end, letter)));
      return (near.has(a!) && far.has(b!)) || (near.has(b!) && far.has(a!));
    });
  const found = elementsOf(system).find(([, it]) => {
    if (!("open" in it && "from" in it) || !standsAbreast(it) || isLiftedOff(it)) return false;
    return (
      !it.tagged &&
      lettersOf(phases).every((letter) => it.open.includes(letter)) &&
      endPoints(it).every((end) => isSameStructure(system, end, from)) &&
      isAround(it)
    );
  });
  return found === undefined ? undefined : { regulator: id, by: found[0], phases };
}

const isStuckOffNeutral = (system: System, id: ElementId): boolean => {
  const { taps } = elementOfKind(system, id, "regulator")!;
  return system.elements[id]!["condition"] === "seized" && Object.values(taps).some((it) => it !== 0);
};

/** Regulators that the work takes out of the line with no way around them: what they feed goes out with them. */
export const withoutBypass = ({ asFound, bypasses }: Bypassed): ElementId[] =>
  [...madeSound(asFound)].filter((id) => {
    const regulator = elementOfKind(asFound.system, id, "regulator");
    const carriesLine = regulator !== undefined && openPhasesOf(regulator) === "" && !regulator.bypassed;
    return carriesLine && bypasses.every((it) => it.regulator !== id);
  });

const endPoints = ({ from, to }: { readonly from: string; readonly to: string }) =>
  [from, to] as readonly string[] as readonly [PointId, PointId];

/** Run to neutral, control off, bypass closed: before anything is opened. */
export const bypassing = (
  { asFound, document, bypasses }: Bypassed,
  begun: readonly PlannedGroup[],
): PlannedGroup[] =>
  bypasses.map(({ regulator, by, phases }) => {
    const { system } = asFound;
    const { blocked, taps } = elementOfKind(system, regulator, "regulator")!;
    const gaps = { name: nameOf(asFound, regulator), by: nameOf(asFound, by) };
    const isOff = Object.values(taps).some((it) => it !== 0);
    return {
      rank: RANK.bypass,
      after: begun,
      at: placeOf(system, regulator),
      steps: [
        ...(isOff
          ? [step({ do: "set-position", element: regulator, to: "neutral" }, say("why.bypass.neutral", gaps))]
          : []),
        ...(blocked ? [] : [step({ do: "block", element: regulator }, say("why.bypass.block", gaps))]),
        step(
          stepOn(asFound.system, openingOfBypass(document, by), phases, undefined),
          say("why.bypass.close", gaps),
        ),
      ],
    };
  });

/** Bypass open and control on again: after everything else is back. */
export const unbypassing = (
  { asFound, document, bypasses }: Bypassed,
  back: readonly PlannedGroup[],
): PlannedGroup[] =>
  bypasses.map(({ regulator, by, phases }) => {
    const { blocked } = elementOfKind(asFound.system, regulator, "regulator")!;
    const gaps = { name: nameOf(asFound, regulator), by: nameOf(asFound, by) };
    return {
      rank: RANK.restore,
      after: back,
      at: placeOf(asFound.system, regulator),
      steps: [
        step(
          stepOff(asFound.system, openingOfBypass(document, by), phases, undefined),
          say("why.bypass.open", gaps),
        ),
        ...(blocked ? [] : [step({ do: "unblock", element: regulator }, say("why.bypass.unblock", gaps))]),
      ],
    };
  });

const openingOfBypass = (document: StillhotDocument, by: ElementId) =>
  openingsOf(document).all.find(({ element }) => element === by)!;
