import { MOST_ROUNDS } from "../tolerances";
import { elementOfKind, jobOf, type StillhotDocument } from "../../document";
import { circuitOf } from "../../network";
import { type ElementId, say } from "../../terms";
import { nameOf } from "../job/names";
import { permitReasonForElement } from "../job/section";
import { backToService } from "./backToService";
import { compareRanks } from "./breaking";
import { systemMoved } from "./closing";
import { guardedPlaces, withStopsFirst } from "./decide";
import { draftOf, isWrong } from "./draftOf";
import type { Intent } from "./intent";
import { byMethod } from "./liveHands";
import type { OrderDraft } from "./orderDraft";
import { guardsOf, permitActions, secureActions } from "./orderOfSteps";
import { playing } from "./playing";
import { repaired } from "./repair";
import { inARow, stopping } from "./restoring";
import { placeOf, RANK, step } from "./said";
import { inOrder, type PlannedGroup } from "./schedule";
import type { PlannedStep } from "./types";
import { customersOutOf, edgesWith } from "./ways";
import { NO_WISHES, type Wishes } from "./wishes";
import { permitBack } from "./working";

/**
 * The order of a job in which nobody lays hands on the line: from as found to how things are to be left, by switching alone.
 * Rings of one source are closed before they are opened, or opened before they are closed: whichever the rules find less in,
 * and then leaves fewer customers without supply. Nothing where everything stands as it is to be left.
 */
export function switchingFor(document: StillhotDocument): OrderDraft | undefined {
  const drafts = (["closed before it opens", "opened before it closes"] as const).flatMap(
    (rings) => draftWith(document, rings) ?? [],
  );
  return drafts.sort((a, b) => compareRanks(rankOf(a), rankOf(b)))[0];
}

const rankOf = ({ findings, customers: { worst, steps: customerSteps }, steps }: OrderDraft) => [
  findings.length,
  worst,
  customerSteps,
  steps.length,
];

/** An order with the findings that something can be done about mended, one after the other. */
function draftWith(
  document: StillhotDocument,
  rings: "opened before it closes" | "closed before it opens",
): OrderDraft | undefined {
  const { stops, back } = withStopsFirst(
    document,
    backToService(document, document.system, new Set(), rings),
  );
  if (back.length === 0) return undefined;
  let wishes: Wishes = NO_WISHES;
  let atNeutral: ReadonlyMap<ElementId, ElementId> = new Map();
  for (let round = 0; ; round++) {
    const intent = intentOf(document, stops, back, wishes);
    const steps = stepsOf(document, intent, atNeutral);
    const draft = draftOf(document, intent, wishes, steps);
    if (draft.findings.length === 0 || round === MOST_ROUNDS) return draft;
    const mended = mendedBy(document, intent, steps, wishes, atNeutral);
    if (mended === undefined) return draft;
    [wishes, atNeutral] = [mended.wishes, mended.atNeutral];
  }
}

interface Mended {
  readonly wishes: Wishes;
  /** regulators, each with the switch before whose closing it is run to neutral */
  readonly atNeutral: ReadonlyMap<ElementId, ElementId>;
}

function mendedBy(
  document: StillhotDocument,
  intent: Intent,
  steps: readonly PlannedStep[],
  wishes: Wishes,
  atNeutral: Mended["atNeutral"],
): Mended | undefined {
  for (const { findings, step: done, state } of playing(document, steps)) {
    const wrong = findings.filter(isWrong);
    const regulators = wrong
      .filter(({ rule, where }) => rule === "regulator-neutral" && !atNeutral.has(where as ElementId))
      .map(({ where }) => [where as ElementId, done.element as ElementId] as const);
    if (regulators.length > 0) return { wishes, atNeutral: new Map([...atNeutral, ...regulators]) };
    const { secures, liveHands } = repaired(wrong, { document, intent, step: done, state, wishes });
    if (secures !== wishes.secures || liveHands !== wishes.liveHands)
      return { wishes: { ...wishes, secures, liveHands }, atNeutral };
  }
  return undefined;
}

/** Nothing is opened, tagged or grounded for anybody: all there is to decide is the way to how things are to be left. */
function intentOf(
  document: StillhotDocument,
  stops: Intent["stops"],
  back: Intent["back"],
  wishes: Wishes,
): Intent {
  const { system } = document;
  const left = circuitOf(systemMoved(document, back.at(-1)!));
  return {
    choice: {
      openings: [],
      order: { order: [], stuck: [], after: system },
      restored: { moves: [], after: system, refused: [] },
      ready: system,
      customers: customersOutOf(left, edgesWith(left, [])),
      isApart: true,
      least: 0,
      cost: [],
    },
    tags: new Set(),
    blocks: new Set(),
    grounds: [],
    covers: new Set(),
    barricades: new Set(),
    wiresDown: guardedPlaces(document),
    secures: wishes.secures,
    liveHands: wishes.liveHands,
    permit: back
      .map(({ opening }) => permitReasonForElement(document, opening.element))
      .find((reason) => reason !== undefined),
    found: jobOf(document).permit,
    waitSeconds: 0,
    waitsToSupply: false,
    retest: false,
    stops,
    rings: [],
    restoredAfter: [],
    back,
  };
}

function stepsOf(document: StillhotDocument, intent: Intent, atNeutral: Mended["atNeutral"]): PlannedStep[] {
  const { system } = document;
  const guards = guardsOf(document, intent);
  const brief: PlannedGroup = {
    rank: RANK.brief,
    after: guards,
    steps: [step({ do: "brief" }, say("why.brief.switching"))],
  };
  const secures = secureActions(document, intent, brief);
  const permit = permitActions(document, intent, brief);
  const begun = [...guards, brief, ...secures, ...permit];
  const stops = stopping(document, intent, begun);
  const moves = inARow(document, intent.back, RANK.restore, [...begun, ...stops], "for good", (mover) =>
    [...atNeutral].flatMap(([regulator, before]) =>
      before === mover ? toNeutral(document, regulator, mover) : [],
    ),
  );
  const onAgain = [...atNeutral.keys()].flatMap((regulator) => controlOn(document, regulator, moves));
  const done = [...begun, ...stops, ...moves, ...onAgain];
  const release: PlannedGroup[] =
    intent.permit === undefined && intent.found !== "held" && intent.found !== "requested"
      ? []
      : [{ rank: RANK.restore, after: done, steps: [permitBack(document, "why.release-permit.switching")] }];
  return inOrder(system, [...done, ...release]).map((it) => byMethod(system, intent.liveHands, it));
}

/** Off neutral a regulator is a short through whatever is closed beside it: run there and held, right before. */
function toNeutral(document: StillhotDocument, regulator: ElementId, by: ElementId): PlannedStep[] {
  const { blocked, taps } = elementOfKind(document.system, regulator, "regulator")!;
  const gaps = { name: nameOf(document, regulator), by: nameOf(document, by) };
  return [
    ...(Object.values(taps).some((it) => it !== 0)
      ? [step({ do: "set-position", element: regulator, to: "neutral" }, say("why.neutral.beside", gaps))]
      : []),
    ...(blocked ? [] : [step({ do: "block", element: regulator }, say("why.bypass.block", gaps))]),
  ];
}

function controlOn(
  document: StillhotDocument,
  regulator: ElementId,
  after: readonly PlannedGroup[],
): PlannedGroup[] {
  const { blocked } = elementOfKind(document.system, regulator, "regulator")!;
  if (blocked) return [];
  const gaps = { name: nameOf(document, regulator) };
  return [
    {
      rank: RANK.restore,
      after,
      at: placeOf(document.system, regulator),
      steps: [step({ do: "unblock", element: regulator }, say("why.bypass.unblock", gaps))],
    },
  ];
}
