import { openPhasesOf } from "../../src/core/devices";
import { complete, jobOf, perObject, type StillhotDocument, type System } from "../../src/core/document";
import { assessWithoutWork } from "../../src/core/hazard";
import { circuitOf, endsOf, REACH, reachOf, standingOf } from "../../src/core/network";
import type { JobState, PlannedStep, PlayedStep, Rehearsal } from "../../src/core/procedure";
import { nameOf } from "../../src/core/procedure/job/names";
import { conductorId, type ConductorId, type ElementId, type Letter } from "../../src/core/terms";

// What is asked of an order that was planned: each is worked out from the drawings before and after its steps alone, by
// reach and currents, and asks neither the rules nor the planner.

type Played = readonly PlayedStep[];
type Record_ = Readonly<Record<string, unknown>>;

const recordsOf = ({ elements }: System): [string, Record_][] =>
  Object.entries(elements) as [string, Record_][];
const elementIn = (system: System, id: string): Record_ =>
  complete(system.elements[id as ElementId]!) as unknown as Record_;
const lettersIn = (text: unknown): Letter[] => [...((text as string | undefined) ?? "")] as Letter[];

/** Each step with the drawings before and after it. */
function* moves(
  begin: JobState,
  steps: Played,
): Generator<{ it: PlayedStep; before: System; after: System }> {
  let before = begin.document.system;
  for (const it of steps) {
    yield { it, before, after: it.state.document.system };
    before = it.state.document.system;
  }
}

/** How every node of a drawing is reached, its grounds lifted: 0 where nothing does. */
const reached = perObject((system: System): ((id: ConductorId) => number) => {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return (id) => how[circuit.nodeOf.get(id) ?? -1] ?? 0;
});
const isFed = (system: System, at: unknown, letter: Letter): boolean =>
  (reached(system)(conductorId(at as string, letter)) & REACH.forward) !== 0;

/** Both ends of what has parted, and what a fault or a failed arrester shorts. */
function brokenIn(system: System): ConductorId[] {
  return recordsOf(system).flatMap(([, it]) => {
    if (it["kind"] === "fault")
      return lettersIn(it["phases"]).map((letter) => conductorId(it["at"] as string, letter));
    if (it["kind"] === "arrester")
      return lettersIn(it["failed"]).map((letter) => conductorId(it["at"] as string, letter));
    return lettersIn(it["parted"])
      .filter((letter) => letter !== "N")
      .flatMap((letter) => [
        conductorId(it["from"] as string, letter),
        conductorId(it["to"] as string, letter),
      ]);
  });
}

export const energizedBroken = (begin: JobState, steps: Played): string[] =>
  [...moves(begin, steps)].flatMap(({ it, before, after }) => {
    const [was, is] = [reached(before), reached(after)];
    return brokenIn(after)
      .filter((id) => is(id) !== 0 && was(id) === 0)
      .map((id) => `${it.n} ${it.step.do} ${it.step.element} energizes ${id}`);
  });

/** Banks of several phases of which some are fed and some are not. */
const banksWithout = perObject((system: System): readonly string[] =>
  recordsOf(system).flatMap(([id, it]) => {
    const letters = lettersIn(it["phases"]);
    if (it["kind"] !== "transformer" || letters.length < 2) return [];
    const fed = letters.filter((letter) => isFed(system, it["from"], letter));
    return fed.length > 0 && fed.length < letters.length ? [id] : [];
  }),
);

/** A bank is on part of its phases only from one pole of a switch to its next; what was found so is found so. */
export const phasesMissing = (begin: JobState, steps: Played): string[] => {
  const found = new Set(banksWithout(begin.document.system));
  return [...moves(begin, steps)].flatMap(({ it, before, after }) => {
    const bad = new Set(banksWithout(before));
    const left = banksWithout(after).filter((id) => !found.has(id) || it === steps.at(-1));
    // Its next pole comes next, with what a person does in between for that.
    const next = steps[it.n];
    const goesOn = next !== undefined && next.step.element === it.step.element;
    return left
      .filter((id) => !goesOn && (it === steps.at(-1) || (!bad.has(id) && !clearsSoon(id, it, steps))))
      .map((id) => `${it.n} ${it.step.do} ${it.step.element} leaves ${id} with a phase missing`);
  });
};

/** Whether the next switching takes the bank's other phases the same way. */
function clearsSoon(id: string, { n }: PlayedStep, steps: Played): boolean {
  const rest = steps.slice(n);
  const end = rest.find(({ state }) => !banksWithout(state.document.system).includes(id));
  return end !== undefined && rest.slice(0, end.n - n).every(({ step }) => step.do !== "work");
}

export const machinesStarted = (begin: JobState, steps: Played): string[] =>
  [...moves(begin, steps)].flatMap(({ it, before, after }) =>
    recordsOf(after)
      .filter(
        ([id, record]) =>
          record["kind"] === "generator" &&
          record["on"] === true &&
          before.elements[id as ElementId]?.["on"] !== true,
      )
      .map(([id]) => `${it.n} ${it.step.do} starts ${id}`),
  );

const customersDark = (system: System): number => {
  const is = reached(system);
  return recordsOf(system)
    .filter(([, it]) => it["kind"] === "load")
    .filter(
      ([, it]) =>
        !lettersIn(it["phases"]).every(
          (letter) => (is(conductorId(it["at"] as string, letter)) & REACH.forward) !== 0,
        ),
    )
    .reduce((sum, [, it]) => sum + Number(it["customers"] ?? 0), 0);
};

/** What, closed as well, would supply somebody: nothing broken comes to life by it, and nothing that was fed is joined. */
export function customersLeftDark(
  { system: asFound, job }: StillhotDocument,
  { document: { system } }: JobState,
): string[] {
  const dark = customersDark(system);
  if (dark === 0) return [];
  const { leave = {} } = (job ?? {}) as { leave?: Record<string, unknown> };
  return recordsOf(system).flatMap(([id, record]) => {
    const open = "open" in elementIn(system, id) ? openPhasesOf(complete(record as never)) : "";
    if (open === "" || asFound.elements[id as ElementId]?.["tagged"] === true || leave[id] === "open")
      return [];
    const { open: _open, blown: _blown, removed: _removed, ...closed } = record;
    const with_ = { ...system, elements: { ...system.elements, [id]: closed } } as System;
    const { from, to } = elementIn(system, id);
    const joins = lettersIn(open).some((letter) => isFed(system, from, letter) && isFed(system, to, letter));
    const [was, is] = [reached(system), reached(with_)];
    const wakes = brokenIn(with_).some((it) => is(it) !== 0 && was(it) === 0);
    return !joins && !wakes && customersDark(with_) < dark
      ? [`${id} closed would supply ${dark - customersDark(with_)} more`]
      : [];
  });
}

/** Verbs that open something that current may flow through. */
const OPENS: readonly string[] = ["open", "lift", "pull", "cut"];

/** What a thing may break, by format.md and the tools that the step names [A]. */
function mayBreak(it: Record_, tool: unknown): number {
  if (tool === "load-break-tool") return Infinity; // its own rating is far above any load of these lines
  switch (it["kind"]) {
    case "cutout":
      return it["loadBreak"] === "arc-chute" ? Number(it["arcChuteAmps"] ?? it["continuousAmps"]) : 10;
    case "disconnect":
      return Math.max(0.5, Number(it["loadBreakAmps"] ?? 0));
    case "elbow":
      return Number(it["loadBreakAmps"] ?? 200);
    case "recloser":
    case "breaker":
    case "main":
    case "capacitor":
      return Infinity;
    default:
      return 0.5;
  }
}

export const brokenMoreThanMayBe = (begin: JobState, steps: Played): string[] =>
  [...moves(begin, steps)].flatMap(({ it, before, after }) => {
    const { step } = it;
    const id = step.element as ElementId | undefined;
    if (!OPENS.includes(step.do) || id === undefined || before === after) return [];
    const element = elementIn(before, id);
    const { amps } = assessWithoutWork({ ...begin.document, system: before }).elements[id]!;
    const opened = lettersIn(openPhasesOf(complete(after.elements[id]!))).filter(
      (letter) => !openPhasesOf(complete(before.elements[id]!)).includes(letter),
    );
    const most = Math.max(0, ...opened.map((letter) => amps[letter] ?? 0));
    if (most <= mayBreak(element, step.with)) return [];
    // A path beside it holds the gap at no volts: there is nothing to keep an arc.
    const across = opened.some((letter) => voltsAcross(begin, after, element, letter) > 20);
    return across ? [`${it.n} ${step.do} ${id} breaks ${most.toFixed(1)} A`] : [];
  });

function voltsAcross(begin: JobState, system: System, { from, to }: Record_, letter: Letter): number {
  const { conductors } = assessWithoutWork({ ...begin.document, system });
  const [a, b] = [from, to].map((at) => conductors[conductorId(at as string, letter)]);
  if (a === undefined || b === undefined) return Infinity;
  const [x, y] = [a, b].map(({ volts, angleDeg }) => [
    volts * Math.cos((angleDeg * Math.PI) / 180),
    volts * Math.sin((angleDeg * Math.PI) / 180),
  ]);
  return Math.hypot(x![0]! - y![0]!, x![1]! - y![1]!);
}

interface Told {
  readonly played: PlayedStep;
  readonly index: number;
  readonly before: System;
  readonly after: System;
  readonly rehearsal: Rehearsal;
  /** the thing that a gap of the reason names */
  readonly named: (gap: string) => ElementId | undefined;
}

const isTagged = ({ played, before }: Told): boolean =>
  before.elements[played.step.element as ElementId]!["tagged"] === true;

const wasFoundBlocked = ({ played, rehearsal }: Told): boolean =>
  rehearsal.begin.document.system.elements[played.step.element as ElementId]!["blocked"] === true;

const MOVES: readonly string[] = ["open", "close", "lift", "attach", "cut", "join", "pull", "replace"];

/** Whether the thing that a step is about is operated after it. */
const isMovedLater = ({ played, index, rehearsal }: Told): boolean =>
  rehearsal.steps
    .slice(index + 1)
    .some(({ step }) => MOVES.includes(step.do) && step.element === played.step.element);

/** By reason: whether it is true. What is not here says what a step is for in any job, and nothing about this drawing. */
const TRUE: Readonly<Record<string, (told: Told) => boolean>> = {
  "why.off.isolates": (it) => feedsWork(it, it.named("source")),
  "why.off.isolates.machine": (it) => feedsWork(it, it.named("source")),
  "why.off.shows": ({ before, played, named }) => {
    const isSeen = (id: string) =>
      (complete(before.elements[id as ElementId]!) as { visibleGap?: boolean }).visibleGap !== false;
    return isSeen(played.step.element!) && !isSeen(named("other")!);
  },
  "why.off.drops": ({ before, after, named, rehearsal, index }) => {
    // What it is opened for is opened later, on some of its phases: those are to carry less.
    const later = rehearsal.steps.slice(index + 1).find(({ step }) => step.element === named("other"));
    const amps = (system: System) => ampsIn(rehearsal, system, named("other"), later?.step.phases);
    return amps(after) < amps(before);
  },
  "why.off.splits.clamp": ({ rehearsal, index, named }) => {
    const moved = rehearsal.steps.slice(index + 1).filter(({ step }) => step.element === named("other"));
    const isIdle = (verb: string) =>
      moved.some(({ step, n }) => {
        const system = verb === "lift" ? rehearsal.steps[n - 2]!.state : rehearsal.steps[n - 1]!.state;
        return step.do === verb && ampsIn(rehearsal, system.document.system, named("other")) <= 0.5;
      });
    return isIdle("lift") && isIdle("attach");
  },
  "why.off.splits": ({ rehearsal, index, named, played }) => {
    const closes = (id: unknown) =>
      rehearsal.steps.findIndex(
        ({ step }, n) => n > index && (step.do === "close" || step.do === "attach") && step.element === id,
      );
    return closes(named("other")) !== -1 && closes(named("other")) < closes(played.step.element);
  },
  "why.ring": ({ before, after }) => liveCount(after) === liveCount(before),
  "why.off.ring": ({ before, after, played }) =>
    elementIn(before, played.step.element!)["normallyOpen"] === true &&
    liveCount(after) === liveCount(before),
  "why.off.normal": ({ played, before }) => elementIn(before, played.step.element!)["normallyOpen"] === true,
  "why.supply.way": ({ before, after }) => liveCount(after) > liveCount(before),
  "why.off.leave": ({ played, rehearsal }) =>
    jobOf(rehearsal.begin.document).leave[played.step.element!] === "open",
  "why.on.leave": ({ played, rehearsal }) =>
    jobOf(rehearsal.begin.document).leave[played.step.element!] === "closed",
  "why.neutral.beside": ({ played, before }) =>
    Object.values((elementIn(before, played.step.element!)["taps"] ?? {}) as Record<string, number>).some(
      (it) => it !== 0,
    ),
  "why.stop.first": ({ played, before }) => elementIn(before, played.step.element!)["on"] === true,
  "why.stop.machine": ({ played, before }) => elementIn(before, played.step.element!)["on"] === true,
  "why.tag.found": ({ played, rehearsal }) =>
    openPhasesOf(complete(rehearsal.begin.document.system.elements[played.step.element as ElementId]!)) !==
    "",
  "why.tag": ({ played, before }) =>
    openPhasesOf(complete(before.elements[played.step.element as ElementId]!)) !== "" ||
    elementIn(before, played.step.element!)["open"] === undefined,
  "why.untag": (it) => isTagged(it) && isMovedLater(it),
  "why.untag.stays": (it) => isTagged(it) && !isMovedLater(it),
  "why.unblock": (it) => !wasFoundBlocked(it) && isMovedLater(it),
  "why.unblock.stays": (it) => !wasFoundBlocked(it) && !isMovedLater(it),
  "why.unblock.close": (it) => wasFoundBlocked(it),
  "why.on": ({ before, after }) => liveCount(after) === liveCount(before),
  "why.on.live": ({ before, after }) => liveCount(after) > liveCount(before),
  "why.on.new": ({ played, rehearsal }) =>
    rehearsal.begin.document.system.elements[played.step.element as ElementId]!["planned"] === true,
  "why.inspect.tripped": ({ played, rehearsal, index }) => {
    const next = rehearsal.steps.slice(index + 1).find(({ step }) => step.do === "close")!;
    const { to } = rehearsal.begin.document.system.elements[next.step.element as ElementId]! as {
      to?: string;
    };
    return to === played.step.at;
  },
  "why.on.service": ({ played, rehearsal }) =>
    openPhasesOf(complete(rehearsal.begin.document.system.elements[played.step.element as ElementId]!)) !==
    "",
  "why.on.clamp": ({ after, played, rehearsal }) =>
    ampsIn(rehearsal, after, played.step.element as ElementId) <= 0.5,
  "why.supply": ({ before, after }) => customersDark(after) < customersDark(before),
  "why.refuse": ({ played, before }) =>
    before.elements[played.step.element as ElementId]!["blown"] !== undefined,
  "why.barricade.down": ({ played, before }) =>
    brokenIn(before).some((id) => id.startsWith(`${played.step.at}/`)),
  "why.cover": ({ played, before }) => {
    const at = played.step.at ?? elementIn(before, played.step.element!)["at"];
    return (
      at === undefined ||
      "ABC12".split("").some((letter) => reached(before)(conductorId(at as string, letter as Letter)) !== 0)
    );
  },
  "why.work": ({ played, rehearsal, index }) =>
    rehearsal.steps[index - 1]!.state.tested.size > 0 && played.step.do === "work",
};

/** Reasons of a plan that are not true of the state before or after the step that they stand beside. */
export function untrueReasons(planned: readonly PlannedStep[], rehearsal: Rehearsal): string[] {
  const { document } = rehearsal.begin;
  const ids = Object.keys(document.system.elements) as ElementId[];
  return [...moves(rehearsal.begin, rehearsal.steps)].flatMap(({ it, before, after }, index) => {
    const { why } = planned[index]!;
    const named = (gap: string) =>
      ids.find((id) => JSON.stringify(nameOf(document, id)) === JSON.stringify(why.with?.[gap]));
    const isTrue = TRUE[why.key]?.({ played: it, index, before, after, rehearsal, named }) ?? true;
    return isTrue ? [] : [`${it.n} ${it.step.do} ${it.step.element ?? it.step.at}: ${why.key}`];
  });
}

const ampsIn = (rehearsal: Rehearsal, system: System, id: ElementId | undefined, phases?: string): number => {
  const { amps } = assessWithoutWork({ ...rehearsal.begin.document, system }).elements[id!]!;
  const asked = Object.entries(amps).filter(([it]) => it !== "N" && (phases ?? it).includes(it));
  return Math.max(0, ...asked.map(([, it]) => it ?? 0));
};

const liveCount = (system: System): number => {
  const circuit = circuitOf(system);
  const is = reached(system);
  return circuit.conductorIds.filter((id) => is(id) !== 0).length;
};

/** Whether a thing that runs, could run or could come back would feed the work through what a step opened, all else as it stands at the work. */
function feedsWork({ rehearsal, played }: Told, source: ElementId | undefined): boolean {
  const work = rehearsal.steps.find(({ step }) => step.do === "work");
  if (work === undefined || source === undefined) return false;
  const { system } = work.state.document;
  const id = played.step.element as ElementId;
  const found = rehearsal.begin.document.system.elements[id]!;
  const elements: Record<string, unknown> = { ...system.elements, [id]: found };
  for (const [other, it] of Object.entries(elements) as [string, Record_][]) {
    if (it["parted"] !== undefined) elements[other] = { ...it, parted: "" };
    if (it["kind"] === "generator" || it["kind"] === "source")
      elements[other] = { ...it, on: other === source };
  }
  if (elementIn(system, source)["kind"] === "load") {
    const { at, phases } = elementIn(system, source);
    elements["machine"] = { kind: "generator", at, phases, kva: 7.5, volts: 240, on: true };
  }
  const joined = { ...system, elements } as unknown as System;
  const is = reached(joined);
  return Object.values(jobOf(rehearsal.begin.document).workPoints).some(({ at, conductors, does }) => {
    const ends = (does ?? []).flatMap((it) =>
      endsOf(complete(rehearsal.begin.document.system.elements[it as ElementId]!)).map(([, point]) => point),
    );
    const letters = ends.length === 0 ? lettersIn(conductors) : lettersIn("ABC12");
    return [at, ...ends].some((point) => letters.some((letter) => is(conductorId(point, letter)) !== 0));
  });
}
