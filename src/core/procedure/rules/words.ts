import { type Catalogue, unbroken } from "../../terms";
import * as allClearFirst from "./allClearFirst.words";
import * as approachDistance from "./approachDistance.words";
import * as automaticDevice from "./automaticDevice.words";
import * as briefAgain from "./briefAgain.words";
import * as briefFirst from "./briefFirst.words";
import * as capacitorDischarge from "./capacitorDischarge.words";
import * as causeFirst from "./causeFirst.words";
import * as clearBeforeUngrounding from "./clearBeforeUngrounding.words";
import * as closeRating from "./closeRating.words";
import * as customersMachine from "./customersMachine.words";
import * as customersOut from "./customersOut.words";
import * as detectorCheck from "./detectorCheck.words";
import * as equipotential from "./equipotential.words";
import * as ferroresonance from "./ferroresonance.words";
import * as fuseOnClose from "./fuseOnClose.words";
import * as groundOnLive from "./groundOnLive.words";
import * as groundOrder from "./groundOrder.words";
import * as groundPlace from "./groundPlace.words";
import * as groundRating from "./groundRating.words";
import * as groundReturn from "./groundReturn.words";
import * as groundsLeft from "./groundsLeft.words";
import * as guardFirst from "./guardFirst.words";
import * as handsOnLive from "./handsOnLive.words";
import * as inducedExposure from "./inducedExposure.words";
import * as jumperOrder from "./jumperOrder.words";
import * as leftBehind from "./leftBehind.words";
import * as loadBreak from "./loadBreak.words";
import * as loadBreakRating from "./loadBreakRating.words";
import * as loadNotDropped from "./loadNotDropped.words";
import * as looseHardware from "./looseHardware.words";
import * as neutralVolts from "./neutralVolts.words";
import * as notRepaired from "./notRepaired.words";
import * as ontoFault from "./ontoFault.words";
import * as openNeutral from "./openNeutral.words";
import * as openPhaseBackfeed from "./openPhaseBackfeed.words";
import * as othersTag from "./othersTag.words";
import * as permitFirst from "./permitFirst.words";
import * as permitRelease from "./permitRelease.words";
import * as phaseCheck from "./phaseCheck.words";
import * as phaseMissing from "./phaseMissing.words";
import * as pickUpOrder from "./pickUpOrder.words";
import * as regulatorNeutral from "./regulatorNeutral.words";
import * as releaseOrder from "./releaseOrder.words";
import * as repeatBack from "./repeatBack.words";
import * as secondaryBackfeed from "./secondaryBackfeed.words";
import * as singlePhasing from "./singlePhasing.words";
import * as standClear from "./standClear.words";
import * as stepNotPossible from "./stepNotPossible.words";
import * as stepTouch from "./stepTouch.words";
import * as tagEach from "./tagEach.words";
import * as taggedOperated from "./taggedOperated.words";
import * as tagsLeft from "./tagsLeft.words";
import * as testBeforeGround from "./testBeforeGround.words";
import * as testLive from "./testLive.words";
import * as unsolved from "./unsolved.words";
import * as visibleGap from "./visibleGap.words";
import * as voltsFirst from "./voltsFirst.words";
import * as workNotSafe from "./workNotSafe.words";

/** What each rule says: its name, what it finds, what it advises. */
const WORDS = [
  allClearFirst,
  approachDistance,
  automaticDevice,
  briefAgain,
  briefFirst,
  capacitorDischarge,
  causeFirst,
  clearBeforeUngrounding,
  closeRating,
  customersMachine,
  customersOut,
  detectorCheck,
  equipotential,
  ferroresonance,
  fuseOnClose,
  groundOnLive,
  groundOrder,
  groundPlace,
  groundRating,
  groundReturn,
  groundsLeft,
  guardFirst,
  handsOnLive,
  inducedExposure,
  jumperOrder,
  leftBehind,
  loadBreak,
  loadBreakRating,
  loadNotDropped,
  looseHardware,
  neutralVolts,
  notRepaired,
  ontoFault,
  openNeutral,
  openPhaseBackfeed,
  othersTag,
  permitFirst,
  permitRelease,
  phaseCheck,
  phaseMissing,
  pickUpOrder,
  regulatorNeutral,
  releaseOrder,
  repeatBack,
  secondaryBackfeed,
  singlePhasing,
  standClear,
  stepNotPossible,
  stepTouch,
  tagEach,
  taggedOperated,
  tagsLeft,
  testBeforeGround,
  testLive,
  unsolved,
  visibleGap,
  voltsFirst,
  workNotSafe,
];

type KeyOf<Words> = Words extends { readonly en: infer English } ? keyof English & string : never;

/** Every key of a rule's sentences. */
export type RuleMessageKey = KeyOf<(typeof WORDS)[number]>;

/** Every rule's sentences in English. */
export const rulesInEnglish: Readonly<Record<RuleMessageKey, string>> = together(WORDS.map(({ en }) => en));

/** Every rule's sentences in French. */
export const rulesInFrench = unbroken(together(WORDS.map(({ fr }) => fr)));

function together(all: readonly Catalogue[]): Record<RuleMessageKey, string> {
  return Object.assign({}, ...all) as Record<RuleMessageKey, string>;
}
