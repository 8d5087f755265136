import { type Message, refuse, type Refusal, say } from "../terms";
import { type StillhotDocument, scenarioOf } from "../document";
import type { Attempt } from "./attempt";
import { fingerprintOf } from "./attempt";
import { resumed, suspended } from "./suspended";

/** Two who play one crew, each on a phone: whose hands do the work, and who answers on the radio. */
export type CrewRole = "worker" | "operator";

/** An attempt on its way from one phone to the other, as its code has it. */
export interface HandedOver {
  /** who goes on */
  readonly to: CrewRole;
  /** the beginning of the scenario's fingerprint */
  readonly scenario: string;
  /** which variant it is, 0 for the scenario itself */
  readonly variant: number;
  readonly letters: string;
}

const SHORT = 12;
const CODE = /^stillhot-crew\.(worker|operator)\.([0-9a-f]{12})\.(\d{1,4})\.([\w-]+)$/;

/** What the system operator does: the rest is the worker's. */
const OPERATORS: ReadonlySet<string> = new Set(["receive-permit", "ask"]);

/** Whose turn an action is, where two play one crew. What is only said is anybody's. */
export const roleOf = (verb: string): CrewRole => (OPERATORS.has(verb) ? "operator" : "worker");

/** The code by which the other phone goes on. There is one attempt, and whoever took it last has it. */
export const handOver = (attempt: Attempt, to: CrewRole): string =>
  [
    "stillhot-crew",
    to,
    attempt.fingerprint.slice(0, SHORT),
    scenarioOf(attempt.document).variant?.number ?? 0,
    suspended(attempt),
  ].join(".");

/** What a code hands over; nothing where the text is none. */
export function readHandOver(text: string): HandedOver | undefined {
  const [, to, scenario, variant, letters] = CODE.exec(text.trim()) ?? [];
  if (to === undefined || scenario === undefined || letters === undefined) return undefined;
  return { to: to as CrewRole, scenario, variant: Number(variant), letters };
}

/** Whether a code is about this scenario, or this variant of one. */
export const isAbout = ({ scenario }: HandedOver, document: StillhotDocument): boolean =>
  fingerprintOf(document).startsWith(scenario);

/**
 * The attempt that a code hands over. Refused where it is about another scenario or is damaged, and where this phone has
 * got further: what was done here must not be lost.
 */
export function takeOver(handed: HandedOver, document: StillhotDocument, here?: Attempt): Attempt | Refusal {
  if (!isAbout(handed, document)) return refuse(say("crew.otherScenario"));
  const attempt = resumed(document, handed.letters);
  if (attempt === undefined) return refuse(say("crew.damaged"));
  return here !== undefined && !hasAllOf(attempt, here) ? refuse(notHere()) : attempt;
}

const notHere = (): Message => say("crew.behind");

/** Whether all that was done here is done there too, where both are one attempt. */
function hasAllOf(there: Attempt, here: Attempt): boolean {
  const isOne = there.startedAt === here.startedAt && there.fingerprint === here.fingerprint;
  return !isOne || here.log.every(({ hash }, index) => there.log[index]?.hash === hash);
}
