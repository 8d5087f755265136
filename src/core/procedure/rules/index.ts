import { causeFirst } from "./causeFirst";
import { phaseMissing } from "./phaseMissing";
import { singlePhasing } from "./singlePhasing";
import { guardFirst } from "./guardFirst";
import { customersMachine } from "./customersMachine";
import { ontoFault } from "./ontoFault";
import { allClearFirst } from "./allClearFirst";
import { approachDistance } from "./approachDistance";
import { automaticDevice } from "./automaticDevice";
import { briefAgain } from "./briefAgain";
import { briefFirst } from "./briefFirst";
import { capacitorDischarge } from "./capacitorDischarge";
import { clearBeforeUngrounding } from "./clearBeforeUngrounding";
import { closeRating } from "./closeRating";
import { customersOut } from "./customersOut";
import { detectorCheck } from "./detectorCheck";
import { equipotential } from "./equipotential";
import { ferroresonance } from "./ferroresonance";
import { fuseOnClose } from "./fuseOnClose";
import { groundOnLive } from "./groundOnLive";
import { groundOrder } from "./groundOrder";
import { groundPlace } from "./groundPlace";
import { groundRating } from "./groundRating";
import { groundReturn } from "./groundReturn";
import { groundsLeft } from "./groundsLeft";
import { handsOnLive } from "./handsOnLive";
import { inducedExposure } from "./inducedExposure";
import { jumperOrder } from "./jumperOrder";
import { leftBehind } from "./leftBehind";
import { loadBreak } from "./loadBreak";
import { loadBreakRating } from "./loadBreakRating";
import { loadNotDropped } from "./loadNotDropped";
import { looseHardware } from "./looseHardware";
import { neutralVolts } from "./neutralVolts";
import { notRepaired } from "./notRepaired";
import { openNeutral } from "./openNeutral";
import { openPhaseBackfeed } from "./openPhaseBackfeed";
import { othersTag } from "./othersTag";
import { permitFirst } from "./permitFirst";
import { permitRelease } from "./permitRelease";
import { phaseCheck } from "./phaseCheck";
import { pickUpOrder } from "./pickUpOrder";
import { regulatorNeutral } from "./regulatorNeutral";
import { releaseOrder } from "./releaseOrder";
import { repeatBack } from "./repeatBack";
import { secondaryBackfeed } from "./secondaryBackfeed";
import { standClear } from "./standClear";
import { stepNotPossible } from "./stepNotPossible";
import { stepTouch } from "./stepTouch";
import { tagEach } from "./tagEach";
import { taggedOperated } from "./taggedOperated";
import { tagsLeft } from "./tagsLeft";
import { testBeforeGround } from "./testBeforeGround";
import { testLive } from "./testLive";
import { unsolved } from "./unsolved";
import { visibleGap } from "./visibleGap";
import { voltsFirst } from "./voltsFirst";
import { workNotSafe } from "./workNotSafe";
import { settingsOf, type Settings, type Step, type StillhotDocument } from "../../document";
import { type Message, type MessageKey } from "../../terms";
import { say } from "./say";
import { asFindings, type RehearsalFinding, type Rule } from "./rule";
import type { JobState } from "../job/state";

/** Every rule of the rehearsal, in the order in which they are told. A new one is its file and a line here. */
export const RULES: readonly Rule[] = [
  briefFirst,
  guardFirst,
  permitFirst,
  looseHardware,
  loadBreak,
  loadBreakRating,
  loadNotDropped,
  customersOut,
  visibleGap,
  automaticDevice,
  tagEach,
  taggedOperated,
  othersTag,
  detectorCheck,
  testBeforeGround,
  testLive,
  groundOnLive,
  groundOrder,
  groundRating,
  groundPlace,
  groundReturn,
  stepTouch,
  neutralVolts,
  secondaryBackfeed,
  equipotential,
  inducedExposure,
  capacitorDischarge,
  openPhaseBackfeed,
  ferroresonance,
  approachDistance,
  workNotSafe,
  handsOnLive,
  openNeutral,
  notRepaired,
  groundsLeft,
  customersMachine,
  ontoFault,
  clearBeforeUngrounding,
  allClearFirst,
  tagsLeft,
  permitRelease,
  standClear,
  pickUpOrder,
  fuseOnClose,
  causeFirst,
  phaseMissing,
  singlePhasing,
  phaseCheck,
  voltsFirst,
  regulatorNeutral,
  repeatBack,
  leftBehind,
  briefAgain,
  releaseOrder,
  jumperOrder,
  closeRating,
  stepNotPossible,
  unsolved,
];

/** The rules that a file turns off, each with its reason: what the sheet says. */
export function rulesOff(document: StillhotDocument): { readonly id: string; readonly reason: string }[] {
  return Object.entries(settingsOf(document).rules)
    .filter(([, { off }]) => off)
    .map(([id, { reason }]) => ({ id, reason }));
}

/** What a rule holds to, in a sentence; files may name rules that this version does not know. */
export function ruleName(id: string): Message {
  return say(RULES.some((it) => it.id === id) ? (`ruleName.${id}` as MessageKey) : "company.unknownRule");
}

const isOn = ({ rules }: Settings, { id }: Rule): boolean => rules[id]?.off !== true;

/** What every rule that is on finds in one step. */
export function findingsOf(step: Step, before: JobState, after: JobState): RehearsalFinding[] {
  const settings = settingsOf(before.document);
  return RULES.filter((rule) => isOn(settings, rule)).flatMap((rule) =>
    asFindings(rule, rule.check?.(step, before, after)),
  );
}

/** What every rule that is on finds at the end. */
export function findingsAtEnd(state: JobState): RehearsalFinding[] {
  const settings = settingsOf(state.document);
  return RULES.filter((rule) => isOn(settings, rule)).flatMap((rule) =>
    asFindings(rule, rule.atEnd?.(state)),
  );
}
