import { isDeadFront, isLiftedOff, letterAt, openPhasesOf } from "../../devices";
import {
  complete,
  elementOfKind,
  jobOf,
  phasesAtPoint,
  type StillhotDocument,
  type System,
} from "../../document";
import { assessWithoutWork } from "../../hazard";
import { type Circuit, circuitOf, endsOf, REACH, reachOf, standingOf } from "../../network";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  type Letter,
  lettersOf,
  type Message,
  partsOfConductor,
  type PointId,
  say,
} from "../../terms";
import { changedSupplies } from "../job/changedSupply";
import { brokenThings, groundSetsFound } from "../job/inService";
import { isJoined, islandOf } from "../job/joined";
import { elementsOf, nameOf, setName } from "../job/names";
import { isOnePiece } from "../job/phasing";
import { mayHaveTripped } from "../job/tripped";
import { customersDark, type Move, systemMoved } from "./closing";
import { afterWork, goalOf, isOff, madeSound } from "./ending";
import { fedIn } from "./fedIn";
import { type Intent, workedOn } from "./intent";
import { type Opening, stepOff, stepOn, takesOffHung } from "./openings";
import { testSteps } from "./provingDead";
import { placeOf, RANK, step } from "./said";
import { isInRing } from "./rings";
import type { PlannedGroup } from "./schedule";
import type { PlannedStep } from "./types";

/**
 * What feeds the rest again before the work begins, one move after the other: what comes after so many of the openings, or
 * after all of them.
 */
export const supplying = (
  document: StillhotDocument,
  { choice: { restored }, rings, restoredAfter }: Intent,
  open: readonly PlannedGroup[],
  after: number | undefined,
): PlannedGroup[] =>
  inARow(
    document,
    restored.moves.filter(
      ({ opening }, nth) => restoredAfter[nth] === after && rings.every((ring) => ring.opening !== opening),
    ),
    RANK.supply,
    open,
    "meanwhile",
  );

/** What its owner stops before anything is opened. */
export const stopping = (
  document: StillhotDocument,
  { stops }: Intent,
  begun: readonly PlannedGroup[],
): PlannedGroup[] =>
  stops.map(({ opening, tool }) => ({
    rank: RANK.ring,
    after: begun,
    at: placeOf(document.system, opening.element),
    steps: [step(stepOff(document.system, opening, opening.phases, tool), say("why.stop.first"))],
  }));

/** What closes a ring of one source before anything is opened. */
export const closingRings = (
  document: StillhotDocument,
  { rings }: Intent,
  begun: readonly PlannedGroup[],
): PlannedGroup[] => inARow(document, rings, RANK.ring, begun, "meanwhile");

/**
 * Every move that brings the line back to service, each with the tag and the block coming off its own thing right before it
 * (29 CFR 1910.269(m)(3)(xiii)): one that hangs on another thing is where it belongs until that one is moved. What stays as
 * it is loses them when the crew comes by.
 */
export function restoring(
  document: StillhotDocument,
  { tags, blocks, back }: Intent,
  clear: readonly PlannedGroup[],
): PlannedGroup[] {
  const moved = new Set(back.map(({ opening }) => opening.element));
  const marksOff = (element: ElementId): PlannedStep[] => {
    const gaps = { name: nameOf(document, element) };
    const why = (mark: "untag" | "unblock"): Message =>
      moved.has(element) ? say(`why.${mark}`, gaps) : say(`why.${mark}.stays`);
    return [
      ...(tags.has(element) ? [step({ do: "untag", element }, why("untag"))] : []),
      ...(blocks.has(element) ? [step({ do: "unblock", element }, why("unblock"))] : []),
    ];
  };
  // What the work took down took its tag and its block along.
  const left = afterWork(document, document.system).elements;
  const staying = [...new Set([...tags, ...blocks])].filter(
    (element) => !moved.has(element) && Object.hasOwn(left, element),
  );
  const unmarked = (element: ElementId): PlannedGroup => ({
    rank: RANK.untag,
    after: clear,
    at: placeOf(document.system, element),
    steps: marksOff(element),
  });
  // What throws between two supplies is energized with the line: its tag comes off before.
  const [throwing, open] = [true, false].map((throws) =>
    staying.filter((element) => "alt" in left[element]! === throws).map(unmarked),
  );
  return [
    ...throwing!,
    ...open!,
    ...inARow(document, back, RANK.restore, [...clear, ...throwing!], "for good", marksOff),
    ...stayingForSets(document, moved, clear),
  ];
}

/** What stays open because a ground set was found on beyond it: the place is looked at, and whoever put the set on is to be found. */
function stayingForSets(
  document: StillhotDocument,
  moved: ReadonlySet<ElementId>,
  clear: readonly PlannedGroup[],
): PlannedGroup[] {
  const { system } = document;
  const sets = groundSetsFound(system, system);
  if (sets.length === 0) return [];
  const goal = goalOf(document).elements;
  return elementsOf(system).flatMap(([id, it]): PlannedGroup[] => {
    if (moved.has(id) || goal[id] === undefined) return [];
    const left = openPhasesOf(complete(goal[id]));
    const open = lettersOf(openPhasesOf(it)).filter((letter) => !left.includes(letter));
    const beyond = endsOf(it).flatMap(([end, at]) =>
      sets.flatMap(([set, ids]) => {
        const isOn = (letter: Letter) =>
          ids.some((on) => isJoined(system, on, conductorId(at, letterAt(it, end, letter))));
        return open.some(isOn) ? [{ at, set }] : [];
      }),
    )[0];
    if (beyond === undefined) return [];
    const why = say("why.inspect.set", { name: nameOf(document, id), set: setName(document, beyond.set) });
    return [
      {
        rank: RANK.restore,
        after: clear,
        at: placeOf(system, id),
        steps: [step({ do: "inspect", at: beyond.at }, why)],
      },
    ];
  });
}

type When = "meanwhile" | "for good";

/** Moves one after the other, with what is read and renewed around each. */
export function inARow(
  document: StillhotDocument,
  moves: readonly Move[],
  rank: number,
  first: readonly PlannedGroup[],
  when: When,
  before: (element: ElementId) => readonly PlannedStep[] = () => [],
): PlannedGroup[] {
  const actions: PlannedGroup[] = [];
  const moved = new Set<ElementId>();
  for (const { move, phases } of together(moves)) {
    const { element } = move.opening;
    actions.push({
      rank,
      after: [...first, ...actions],
      at: placeOf(document.system, element),
      steps: [
        ...(moved.has(element) ? [] : before(element)),
        ...(move.way === "off" ? offSteps(document, move, phases) : onSteps(document, move, phases, when)),
        ...(move.way === "on" && when === "for good" ? readingVolts(document, move) : []),
      ],
    });
    moved.add(element);
  }
  return actions;
}

/** Poles of one thing that move one after the other are one step. */
function together(moves: readonly Move[]): { readonly move: Move; readonly phases: string }[] {
  const rows: { move: Move; phases: string }[] = [];
  for (const move of moves) {
    const last = rows.at(-1);
    if (last?.move.opening.element === move.opening.element && last.move.way === move.way)
      last.phases = [...(last.phases + move.opening.phases)].sort().join("");
    else rows.push({ move, phases: move.opening.phases });
  }
  return rows;
}

function offSteps(document: StillhotDocument, move: Move, phases: string): PlannedStep[] {
  const { opening, tool } = move;
  const name = nameOf(document, opening.element);
  return [step(stepOff(document.system, opening, phases, tool), say(whyOff(document, move), { name }))];
}

function whyOff(
  document: StillhotDocument,
  move: Move,
): "why.stop.machine" | "why.off.leave" | "why.off.ring" | "why.off.normal" | "why.off.again" {
  const { opening } = move;
  if (opening.moves === "machine") return "why.stop.machine";
  if (jobOf(document).leave[opening.element] === "open") return "why.off.leave";
  if (isOff(goalOf(document), opening) && isInRing(systemMoved(document, move), opening))
    return "why.off.ring";
  return isOff(goalOf(document), opening) ? "why.off.normal" : "why.off.again";
}

function onSteps(document: StillhotDocument, move: Move, phases: string, when: When): PlannedStep[] {
  const { opening, before, tool } = move;
  const { element: id } = opening;
  const name = nameOf(document, id);
  const element = complete(before.elements[id]!) as {
    blown?: string;
    removed?: string;
    blocked?: boolean;
    fuse?: unknown;
  };
  const some = (letters = ""): string => [...phases].filter((it) => letters.includes(it)).join("");
  const [blown, out] = [some(element.blown), some(element.removed)];
  const isLive = isLiveAt(before, opening, phases);
  return [
    ...(element.blocked === true && out === ""
      ? [step({ do: "unblock", element: id }, say("why.unblock.close", { name }))]
      : []),
    ...(out === ""
      ? []
      : [step({ do: "replace-barrel", element: id, phases: out }, say("why.replace-barrel"))]),
    ...(blown === "" ? [] : renewing(document, id, blown, when)),
    ...(isLive ? lookingFirst(document, id, when) : []),
    ...(isLive ? darkBeyond(document, before, opening, phases) : []),
    ...phasingSteps(document, before, opening, phases),
    ...(when === "for good" ? motorSteps(document, move) : []),
    ...("fuse" in element && element.fuse !== "solid" && isLive
      ? [step({ do: "stand-clear" }, say("why.stand-clear", { name }))]
      : []),
    step(stepOn(document.system, opening, phases, tool), whyOn(document, move, isLive, when)),
  ];
}

/** A new link, once what blew the old one is known: where the work has not mended it the line beyond is looked at first. */
function renewing(document: StillhotDocument, id: ElementId, phases: string, when: When): PlannedStep[] {
  const refuse = { do: "refuse", element: id, phases } as const;
  if (when === "for good" && mendsCause(document, id)) return [step(refuse, say("why.refuse"))];
  const { to } = complete(document.system.elements[id]!) as { to: string };
  return [
    step({ do: "inspect", at: to as PointId }, say("why.inspect.blown", { name: nameOf(document, id) })),
    step(refuse, say("why.refuse.looked")),
  ];
}

/** What may have tripped is closed once the line beyond was walked, where the work has not mended the cause. */
function lookingFirst(document: StillhotDocument, id: ElementId, when: When): PlannedStep[] {
  if (!mayHaveTripped({ asFound: document }, id)) return [];
  if (when === "for good" && mendsCause(document, id)) return [];
  const { to } = complete(document.system.elements[id]!) as { to: string };
  return [
    step({ do: "inspect", at: to as PointId }, say("why.inspect.tripped", { name: nameOf(document, id) })),
  ];
}

/** Whether the work changes the thing itself, or mends something that could have blown its link. */
function mendsCause(document: StillhotDocument, id: ElementId): boolean {
  const mended = madeSound(document);
  return mended.has(id) || brokenThings(document.system).some(([it]) => mended.has(it));
}

/**
 * What was dark before the crew came is tested before a connector goes onto it at arm's length: something of a customer's may
 * feed it. What the work was on was tested for that. A ground set shows on no detector.
 */
function darkBeyond(
  document: StillhotDocument,
  before: System,
  { element: id }: Opening,
  phases: string,
): PlannedStep[] {
  const element = complete(before.elements[id]!);
  if (!isDeadFront(element)) return [];
  const worked = new Set(workedOn(document).map((it) => islandOf(before, it)));
  const isDark = [document.system, before].map(isUnreachedIn);
  return endsOf(element).flatMap(([end, at]) => {
    const letters = lettersOf(phases).map((letter) => letterAt(element, end, letter));
    return letters
      .map((letter) => conductorId(at, letter))
      .every((it) => isDark.every((is) => is(it)) && !worked.has(islandOf(before, it)))
      ? testSteps([{ at, tested: letters.join("") }], say("why.test.dark", { name: nameOf(document, id) }))
      : [];
  });
}

/** Both sides are tested for volts before a parallel path is closed, save where both are one conductor. */
function phasingSteps(
  document: StillhotDocument,
  before: System,
  { element: id }: Opening,
  phases: string,
): PlannedStep[] {
  const element = complete(before.elements[id]!);
  const { from, to } = element as { from?: PointId; to?: PointId };
  if (from === undefined || to === undefined) return [];
  const isFed = fedIn(before);
  const meeting = [...phases].filter((letter) => {
    const [a, b] = [
      conductorId(from, letter as Letter),
      conductorId(to, letterAt(element, "to", letter as Letter)),
    ];
    return isFed(a) && isFed(b) && !isOnePiece(before, a, b);
  });
  if (meeting.length === 0) return [];
  return [from, to].map((at) =>
    step(
      { do: "test", at, phases: meeting.join(""), expect: "live" },
      say("why.test.phasing", { at: nameOf(document, at), name: nameOf(document, id) }),
    ),
  );
}

/** A motor that was found short of a phase goes on again once every phase of its supply was read, where that has come so far. */
function motorSteps(document: StillhotDocument, move: Move): PlannedStep[] {
  const { element: id } = move.opening;
  const { from } = complete(document.system.elements[id]!) as { from?: PointId };
  if (from === undefined) return [];
  // A pole of three says nothing of the others: what it hangs on is read whole.
  const phases = phasesAtPoint(document.system, from);
  const [was, is] = [fedIn(move.before), fedIn(systemMoved(document, move))];
  const putsOn = assessWithoutWork(document).findings.some(({ rule, where }) => {
    const motor = rule === "single-phasing" ? elementOfKind(document.system, where, "load") : undefined;
    return lettersOf(motor?.phases ?? "").some((letter) => {
      const end = conductorId(motor!.at, letter);
      return !was(end) && is(end);
    });
  });
  if (!putsOn || !lettersOf(phases).every((letter) => was(conductorId(from, letter)))) return [];
  return [
    step(
      { do: "test", at: from, phases, expect: "live" },
      say("why.test.motor", { name: nameOf(document, id) }),
    ),
  ];
}

/** What nothing reaches in a drawing. */
function isUnreachedIn(system: System): (id: ConductorId) => boolean {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
  return (id) => how[circuit.nodeOf.get(id) ?? -1] === REACH.none;
}

function whyOn(document: StillhotDocument, move: Move, isLive: boolean, when: When): Message {
  const { opening, before } = move;
  const name = nameOf(document, opening.element);
  if (when === "meanwhile") {
    if (isInRing(before, opening)) return say("why.ring");
    const fed =
      customersDark(circuitOf(before), []) - customersDark(circuitOf(systemMoved(document, move)), []);
    if (fed > 0) return say("why.supply", { name });
    if (isOff(goalOf(document), opening)) return say("why.supply.way");
  }
  if (isLiftedOff(opening)) return say("why.on.clamp", { name });
  if (takesOffHung(opening)) return say("why.on.capacitor", { name });
  if (!isLive) return say("why.on");
  if (jobOf(document).leave[opening.element] === "closed") return say("why.on.leave", { name });
  if (isOff(document.system, opening))
    return say(document.system.elements[opening.element]!.planned ? "why.on.new" : "why.on.service", {
      name,
    });
  return say(bringsVolts(document, move) ? "why.on.live" : "why.on.joined", { name });
}

/** The volts of a changed transformer or service are read as soon as it has some. */
function readingVolts(document: StillhotDocument, move: Move): PlannedStep[] {
  const [before, after] = [move.before, systemMoved(document, move)].map(circuitOf);
  const isLive = (circuit: Circuit, id: ConductorId): boolean => {
    const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
    const node = circuit.nodeOf.get(id);
    return node !== undefined && how[node] !== 0;
  };
  return changedSupplies(document, after!.system).flatMap(({ id, at, legs }): PlannedStep[] => {
    if (!legs.every((leg) => isLive(after!, leg)) || legs.every((leg) => isLive(before!, leg))) return [];
    const phases = legs.map((leg) => partsOfConductor(leg).letter).join("");
    return [
      step(
        { do: "test", at, phases, expect: "live" },
        say("why.test.changed", { name: nameOf(document, id) }),
      ),
    ];
  });
}

/** Whether something comes to life when a thing closes; where another way feeds it already nothing does. */
function bringsVolts(document: StillhotDocument, move: Move): boolean {
  const [before, after] = [move.before, systemMoved(document, move)].map((system) => {
    const circuit = circuitOf(system);
    return reachOf(circuit, standingOf(circuit), { groundsLifted: true }).how;
  });
  return after!.some((how, node) => how !== 0 && before![node] === 0);
}

/** Whether either side of a thing has a supply. */
function isLiveAt(system: System, { element }: Opening, phases: string): boolean {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
  return endsOf(complete(system.elements[element]!)).some(([, point]) =>
    [...phases].some((letter) => {
      const node = circuit.nodeOf.get(conductorId(point, letter as Letter));
      return node !== undefined && how[node] !== 0;
    }),
  );
}
