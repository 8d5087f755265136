import { customerCouldFeed, GROUNDING_CABLES, isMachine, isTransformer, lowSidesOf } from "../../devices";
import {
  complete,
  jobOf,
  settingsOf,
  type Step,
  type StillhotDocument,
  type System,
  hasNeutral,
  phasesAtPoint,
} from "../../document";
import { hasNeutralInHand, questionsAbout, type Threat, closes, worstNeutralDoubt } from "../../hazard";
import { circuitOf, reachOf, standingOf } from "../../network";
import { withstandAmps } from "../../reference";
import {
  conductorId,
  type ElementId,
  type Finding,
  lettersOf,
  type PointId,
  type WorkPointId,
} from "../../terms";
import { dutiesOf } from "../effects/duty";
import { secondaryIds } from "../job/hands";
import { elementsOf } from "../job/names";
import { seen } from "../job/seen";
import type { JobState } from "../job/state";
import { madeSound } from "./ending";
import { type Intent, workedOn } from "./intent";
import { nextBeyond } from "./nextBeyond";
import { openingsOf } from "./openings";
import { nodesOfFeeder, type Separation } from "./ways";
import { alsoForced, wish, type Wishes } from "./wishes";

/** What a repair looks at. */
export interface Broken {
  readonly document: StillhotDocument;
  readonly intent: Intent;
  /** the step in which the rule spoke */
  readonly step: Step;
  /** how the job stood after it */
  readonly state: JobState;
  readonly wishes: Wishes;
}

/** What a repair needs of a finding: which rule, and where. */
type Broke = Pick<Finding, "rule" | "where">;
type Repair = (finding: Broke, broken: Broken) => Wishes;

/**
 * What to do when a rule finds something in an order that was played: one entry a rule. A rule that is not here is kept by
 * the way in which every order is made; when it speaks all the same the plan says so.
 */
const REPAIRS: Readonly<Record<string, Repair>> = {
  "tag-each": taggedOrApart,
  "automatic-device": ({ where }, { wishes }) => wish(wish(wishes, "tags", where), "blocks", where),
  "loose-hardware": ({ where }, { wishes }) => wish(wishes, "secures", where),
  "approach-distance": ({ where }, { document, wishes }) =>
    wish(wishes, "covers", jobOf(document).workPoints[where as WorkPointId]?.at ?? where),
  "hands-on-live": ({ where }, { wishes }) => wish(wishes, "liveHands", where),
  "step-touch": ({ where }, { document, wishes }) =>
    wish(wishes, "barricades", jobOf(document).workPoints[where as WorkPointId]?.at ?? where),
  "capacitor-discharge": discharged,
  "ground-rating": largerCable,
  "secondary-backfeed": ({ where }, broken) => heldAgainst(where as ElementId, broken),
  "work-not-safe": saferWork,
  "ground-place": saferWork,
  "fuse-on-close": pickedUpInParts,
  "single-phasing": motorOffFirst,
  "phase-missing": customerLast,
  "pick-up-order": pickedUpBeyond,
  ferroresonance: ({ where }, { wishes, intent }) =>
    // With nothing else to open there it stays, and the plan says so.
    intent.choice.openings.some(({ element, key }) => element === where && wishes.forced.includes(key))
      ? wishes
      : wish(wishes, "forbidden", where),
};

/** Wishes after every finding that something can be done about; the very same object where nothing can. */
export const repaired = (findings: readonly Broke[], broken: Broken): Wishes =>
  findings.reduce(
    (wishes, finding) => REPAIRS[finding.rule]?.(finding, { ...broken, wishes }) ?? wishes,
    broken.wishes,
  );

/**
 * An open point gets a tag. A machine that stands still is no open point: where its tag is not enough, since something opens
 * between it and the work, that is opened instead.
 */
function taggedOrApart({ where }: Broke, { document, wishes }: Broken): Wishes {
  const machine = where as ElementId;
  if (!wishes.tags.has(machine) || !isMachine(document.system.elements[machine]))
    return wish(wishes, "tags", where);
  const name = `${machine} even stopped`;
  if (wishes.separations.some((it) => it.name === name)) return wishes;
  const circuit = circuitOf(document.system);
  const apart: Separation = {
    name,
    targets: workedOn(document).flatMap((id) => circuit.nodeOf.get(id) ?? []),
    sources: [{ element: machine, nodes: nodesOfFeeder(circuit, machine) }],
    evenStopped: true,
  };
  const tags = new Set([...wishes.tags].filter((it) => it !== machine));
  return { ...wishes, tags, separations: [...wishes.separations, apart] };
}

/**
 * The smallest cable of the published table that carries what a set would have to, by the rating for its X/R, as the rule
 * on rating has it, and by the plain one, by which a jumper parts when the exposure is solved.
 */
function largerCable({ where }: Broke, { document, state, wishes }: Broken): Wishes {
  const id = where as ElementId;
  const duty = dutiesOf(state).get(id);
  const { clearingSeconds } = settingsOf(document);
  const sizes: readonly string[] = GROUNDING_CABLES;
  const carries = (cable: string): boolean =>
    duty === undefined ||
    [0, duty.xOverR].every((ratio) => (withstandAmps(cable, clearingSeconds, ratio) ?? 0) >= duty.amps);
  const wanted = sizes.findIndex(carries);
  const least = wanted === -1 ? sizes.length - 1 : wanted;
  const has = sizes.indexOf(wishes.cables.get(id) ?? sizes[0]!);
  return least > has ? { ...wishes, cables: new Map(wishes.cables).set(id, sizes[least]!) } : wishes;
}

/** A secondary is held by a ground set on its bushings; where none may go on there, by everything open that could feed it. */
function heldAgainst(bank: ElementId, { document, wishes }: Broken): Wishes {
  const { system } = document;
  const it = complete(system.elements[bank]!);
  if (!isTransformer(it)) return wishes;
  const bare = lowSidesOf(it).find(
    ({ at }) => hasNeutral(system, at) && !wishes.groundsAt.includes(at as PointId),
  );
  if (!wishes.heldOpen.has(bank) && bare !== undefined)
    return { ...wishes, groundsAt: [...wishes.groundsAt, bare.at as PointId] };
  if (wishes.separations.some(({ name }) => name === bank)) return wishes;
  return { ...wishes, separations: [...wishes.separations, secondaryApart(document, bank)] };
}

/** A bank's secondary apart from every customer, generator and other bank that hangs on it. */
function secondaryApart({ system }: StillhotDocument, bank: ElementId): Separation {
  const circuit = circuitOf(system);
  const it = complete(system.elements[bank]!);
  const at = isTransformer(it) ? secondaryIds(it) : [];
  return {
    name: bank,
    metallicOnly: true,
    targets: at.flatMap((id) => circuit.nodeOf.get(id) ?? []),
    sources: elementsOf(system).flatMap(([id, other]) => {
      if (customerCouldFeed(other)) return [{ element: id, nodes: nodesOfFeeder(circuit, id) }];
      if (!isTransformer(other) || id === bank) return [];
      const nodes = secondaryIds(other).flatMap((leg) => circuit.nodeOf.get(leg) ?? []);
      return [{ element: id, nodes }];
    }),
  };
}

/**
 * The work is not yet grounded in the sense of the verdict. An induced conductor never tests dead before the grounds are
 * on: test again. What still threatens is made harder to happen, or else its supply is kept apart.
 */
function saferWork(_finding: Broke, broken: Broken): Wishes {
  const { document, state, step, wishes, intent } = broken;
  const id = step.at as WorkPointId;
  const report = seen(state).workPoints[id];
  const { exposureLimitVolts } = settingsOf(document);
  const over = (report?.threats ?? []).filter(
    (it) => it.strength <= 2 && it.exposureVolts >= exposureLimitVolts,
  );
  if (over.length === 0) {
    const held = neutralHeld(id, broken);
    return held !== wishes || wishes.retest ? held : { ...wishes, retest: true };
  }
  const stronger = intent.grounds.reduce(
    (sum, it) => largerCable({ rule: "", where: it.id }, { ...broken, wishes: sum }),
    wishes,
  );
  if (stronger !== wishes) return stronger;
  return over.reduce((sum, threat) => controlled(threat, document, intent, id, sum), wishes);
}

/**
 * A neutral that is worked on is held by the rod of a set where nothing else does, and kept from what would lift it. Where hands
 * come to the neutral alone a set goes on only if all else there is dead: otherwise the plan says what it could not do.
 */
function neutralHeld(id: WorkPointId, { document, state, intent, wishes }: Broken): Wishes {
  const workPoint = jobOf(document).workPoints[id]!;
  if (!hasNeutralInHand(workPoint)) return wishes;
  const doubt = worstNeutralDoubt(questionsAbout(state.document, id), state.tested);
  if (doubt?.why === "lifted")
    return controlled({ upsets: doubt.lift.upsets, source: null }, document, intent, id, wishes);
  if (doubt?.why !== "not-tied") return wishes;
  const { at } = workPoint;
  const held = wish(wishes, "rodsAt", at);
  if (intent.grounds.some((it) => it.at === at) || held.groundsAt.includes(at)) return held;
  return isUnreached(intent.choice.ready, at) ? { ...held, groundsAt: [...held.groundsAt, at] } : wishes;
}

/** Whether a point has phases, and nothing reaches any of them with every temporary ground lifted. */
function isUnreached(system: System, at: PointId): boolean {
  const phases = phasesAtPoint(system, at);
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return (
    phases !== "" && lettersOf(phases).every((it) => how[circuit.nodeOf.get(conductorId(at, it))!] === 0)
  );
}

/** Makes one threat harder to happen than two mistakes, or keeps its supply apart from the work. */
function controlled(
  { upsets, source }: Pick<Threat, "upsets" | "source">,
  document: StillhotDocument,
  intent: Intent,
  id: WorkPointId,
  wishes: Wishes,
): Wishes {
  const closings = upsets.filter(closes).map(({ element }) => element);
  const unmarked = closings.filter((it) => !intent.tags.has(it) || !intent.blocks.has(it));
  if (unmarked.length > 0) return wish(wish(wishes, "tags", ...unmarked), "blocks", ...unmarked);
  const starting = upsets.find((it) => !closes(it))?.element ?? source;
  if (starting === null || wishes.separations.some(({ name }) => name === `${id} ${starting}`)) return wishes;
  const circuit = circuitOf(document.system);
  const nodes = nodesOfFeeder(circuit, starting);
  if (nodes.length === 0) return wishes;
  const { at, conductors } = jobOf(document).workPoints[id]!;
  const targets = lettersOf(conductors).flatMap(
    (letter) => circuit.nodeOf.get(conductorId(at, letter)) ?? [],
  );
  return {
    ...wishes,
    separations: [
      ...wishes.separations,
      { name: `${id} ${starting}`, targets, sources: [{ element: starting, nodes }] },
    ],
  };
}

/** Five minutes by the clock; before the rest is fed again, where that would close onto the charge. */
function discharged({ where }: Broke, { document, step, intent, wishes }: Broken): Wishes {
  // What is worked on is shorted by the grounds, and its own switch would part it from them.
  if (step.do === "work" && madeSound(document).has(where as ElementId)) {
    const own = openingsOf(document).all.flatMap(({ element, key }) => (element === where ? [key] : []));
    return { ...wish(wishes, "forbidden", where), forced: wishes.forced.filter((it) => !own.includes(it)) };
  }
  const feedsRest = intent.choice.restored.moves.some(({ opening }) => opening.element === step.element);
  if (wishes.wait && (wishes.waitToSupply || !feedsRest)) return wishes;
  return { ...wishes, wait: true, waitToSupply: wishes.waitToSupply || feedsRest };
}

/** What a link would not carry at once is picked up in parts: the next things beyond open first, and close after it. */
function pickedUpInParts(_finding: Broke, { document, step, wishes, intent }: Broken): Wishes {
  const element = step.element as ElementId;
  const beyond = nextBeyond(document, element).filter(
    (it) => !wishes.forbidden.has(it.element) && !intent.choice.openings.some(({ key }) => key === it.key),
  );
  if (beyond.length === 0) return wishes;
  const keys = beyond.map(({ key }) => key);
  return wish(alsoForced(wishes, keys), "first", ...keys);
}

/** A clamp or a meter goes on again with what is beyond it open; where nothing is, it is left alone. */
function pickedUpBeyond(finding: Broke, broken: Broken): Wishes {
  const { where } = finding;
  const inParts = pickedUpInParts(finding, broken);
  return inParts === broken.wishes
    ? wish(inParts, "forbidden", where)
    : wish(inParts, "pickedUpBeyond", where);
}

/** A motor that ran on two phases is kept off by what stands right before it, until all of them are back. */
function motorOffFirst({ where: motor }: Broke, { document, wishes }: Broken): Wishes {
  const { at } = complete(document.system.elements[motor as ElementId]!) as { at?: string };
  const keys = openingsOf(document)
    .all.filter(({ element, moves }) => {
      const { to } = complete(document.system.elements[element]!) as { to?: string };
      return moves === "phases" && to === at && !wishes.forbidden.has(element);
    })
    .map(({ key }) => key);
  return keys.length === 0 ? wishes : wish(alsoForced(wishes, keys), "first", ...keys);
}

/** A customer is kept off a bank until it has all of its phases. */
function customerLast(_finding: Broke, { document, step, wishes }: Broken): Wishes {
  const keys = openingsOf(document)
    .all.filter(({ element }) => element === step.element && !wishes.forbidden.has(element))
    .map(({ key }) => key);
  return keys.length === 0 ? wishes : wish(alsoForced(wishes, keys), "first", ...keys);
}
