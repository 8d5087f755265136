import { jobOf, type StillhotDocument, workPointsOf } from "../../document";
import { say } from "../../terms";
import { nameOf } from "../job/names";
import { circuitsOverWork } from "../job/overWork";
import { anotherPermitHolder } from "../job/owners";
import { type Bypassed, bypassing, unbypassing, withoutBypass } from "./bypass";
import type { Intent } from "./intent";
import { isolating } from "./isolating";
import { byMethod } from "./liveHands";
import { provingDead, waiting } from "./provingDead";
import type { Purpose } from "./purposes";
import { closingRings, restoring, stopping, supplying } from "./restoring";
import { placeOf, RANK, step } from "./said";
import { saidOnce } from "./saidOnce";
import { type PlannedGroup, inOrder } from "./schedule";
import type { PlannedStep } from "./types";
import { ungrounding, working } from "./working";

/** Every step of an intent, from as found to the line in service, in order. */
export function stepsOf(
  document: StillhotDocument,
  intent: Intent,
  purposes: ReadonlyMap<string, Purpose>,
  around: Bypassed,
): PlannedStep[] {
  const { system } = document;
  const guards = guardsOf(document, intent);
  const brief: PlannedGroup = {
    rank: RANK.brief,
    after: guards,
    steps: [step({ do: "brief" }, say("why.brief"))],
  };
  const secures = secureActions(document, intent, brief);
  const permit = permitActions(document, intent, brief);
  const holds = holdActions(document, [brief, ...permit]);
  const past = bypassing(around, [brief, ...secures, ...permit]);
  const rings = closingRings(document, intent, [brief, ...secures, ...permit, ...past]);
  const stops = stopping(document, intent, [brief, ...secures, ...permit, ...past, ...rings]);
  const isolation = isolating(
    document,
    intent,
    purposes,
    withoutBypass(around),
    [brief, ...secures, ...permit, ...past, ...rings, ...stops],
    (opened, open) => supplying(document, intent, open, opened),
  );
  const wait = intent.waitsToSupply ? waiting(intent, [brief, ...isolation]) : [];
  const supply = supplying(document, intent, [brief, ...permit, ...isolation, ...wait], undefined);
  const proofs = provingDead(document, intent, [brief, ...isolation, ...wait, ...supply]);
  const work = working(
    document,
    intent,
    brief,
    [brief, ...isolation, ...supply],
    [brief, ...holds, ...isolation, ...proofs],
  );
  const clear = ungrounding(document, intent, work);
  const back = restoring(document, intent, [...work, ...clear]);
  const steps = inOrder(system, [
    ...guards,
    brief,
    ...secures,
    ...permit,
    ...holds,
    ...past,
    ...rings,
    ...stops,
    ...isolation,
    ...wait,
    ...supply,
    ...proofs,
    ...work,
    ...clear,
    ...back,
    ...unbypassing(around, [...work, ...clear, ...back]),
  ]);
  return saidOnce(system, steps).map((it) => byMethod(system, intent.liveHands, it));
}

/** People are kept away from a wire that is down before anything else is done. */
export const guardsOf = (document: StillhotDocument, { wiresDown }: Intent): PlannedGroup[] =>
  [...wiresDown].map((at) => ({
    rank: RANK.guard,
    after: [],
    at,
    steps: [step({ do: "barricade", at }, say("why.barricade.down", { at: nameOf(document, at) }))],
  }));

/** What crosses the work, or hangs on its poles, is asked to be held before anybody is on the line. */
const holdActions = (document: StillhotDocument, begun: readonly PlannedGroup[]): PlannedGroup[] =>
  [...new Set(workPointsOf(document).flatMap(([id]) => circuitsOverWork(document, id)))].map((element) => ({
    rank: RANK.receive,
    after: begun,
    steps: [step({ do: "ask", element }, say("why.ask.hold", { name: nameOf(document, element) }))],
  }));

/** What hangs loose is held before its pole is shaken. */
export const secureActions = (
  document: StillhotDocument,
  { secures }: Intent,
  brief: PlannedGroup,
): PlannedGroup[] =>
  [...secures].map((id) => ({
    rank: RANK.secure,
    after: [brief],
    at: placeOf(document.system, id),
    steps: [step({ do: "secure", element: id }, say("why.secure", { name: nameOf(document, id) }))],
  }));

/**
 * A permit is asked for, received and said back; what the job has of it already is not asked for twice, and one that
 * another crew holds is handed over.
 */
export function permitActions(
  document: StillhotDocument,
  { permit: reason, found }: Intent,
  brief: PlannedGroup,
): PlannedGroup[] {
  const owner = anotherPermitHolder(document);
  if (owner !== undefined)
    return [
      {
        rank: RANK.receive,
        after: [brief],
        steps: [
          step(
            { do: "hand-over", permit: true, to: jobOf(document).crew },
            say("why.hand-over.permit", { owner }),
          ),
        ],
      },
    ];
  if (found === "held" || (reason === undefined && found !== "requested")) return [];
  const request: PlannedGroup[] =
    found === "requested" || reason === undefined
      ? []
      : [
          {
            rank: RANK.request,
            after: [brief],
            steps: [step({ do: "request-permit" }, say("why.request-permit", { why: reason }))],
          },
        ];
  return [
    ...request,
    {
      rank: RANK.receive,
      after: [brief, ...request],
      steps: [
        step({ do: "receive-permit" }, say("why.receive-permit")),
        step({ do: "confirm" }, say("why.confirm-permit")),
      ],
    },
  ];
}
