import { isLiftedOff, isLoad, openingOf } from "../../devices";
import { complete, type StillhotDocument, type System } from "../../document";
import { type ElementId, type Message, say } from "../../terms";
import { nameOf, namesOf } from "../job/names";
import { ampsOf, breaksNothing, limitOf, machinesInStep, systemWithout, type TimedOpening } from "./breaking";
import type { Intent } from "./intent";
import { type Opening, stepOff } from "./openings";
import type { Purpose } from "./purposes";
import { placeOf, RANK, step } from "./said";
import type { PlannedGroup } from "./schedule";

/** One step with a device: one pole, or several of one that go together. */
interface Group {
  readonly openings: readonly Opening[];
  readonly phases: string;
  readonly tool: string | undefined;
}

/**
 * Everything open, blocked and tagged: what closes by itself is blocked before it is opened, the rest after, and a tag
 * hangs before the crew walks on.
 *
 * @param between what is done once so many devices are open
 */
export function isolating(
  document: StillhotDocument,
  { choice, tags, blocks }: Intent,
  purposes: ReadonlyMap<string, Purpose>,
  notBypassed: readonly ElementId[],
  begun: readonly PlannedGroup[],
  between: (opened: number, open: readonly PlannedGroup[]) => readonly PlannedGroup[],
): PlannedGroup[] {
  const { system } = document;
  const actions: PlannedGroup[] = [];
  const groups = groupsOf(document, choice.order.order);
  const last = new Map(groups.map(({ openings: [opening] }, index) => [opening!.element, index]));
  let before: readonly PlannedGroup[] = [];
  const firstCut = groups.findIndex(({ openings: [it] }) => purposes.get(it!.key)?.is === "isolates");
  groups.forEach(({ openings, phases, tool }, index) => {
    const [opening] = openings as [Opening];
    const { element } = opening;
    const meanwhile = between(index, [...begun, ...actions]);
    actions.push(...meanwhile);
    before = [...before, ...meanwhile];
    const after = [...begun, ...before];
    const isLast = last.get(element) === index;
    const block = blocks.has(element) ? blockOf(document, element) : undefined;
    const first = block !== undefined && opening.automatic ? [{ ...block, after }] : [];
    const off: PlannedGroup = {
      rank: RANK.isolate,
      after: [...after, ...first],
      at: placeOf(system, element),
      steps: [
        step(
          stepOff(system, opening, phases, tool),
          index === firstCut && notBypassed.length > 0
            ? whyNotAround(document, opening, notBypassed)
            : whyOff(document, opening, purposes),
        ),
      ],
    };
    const then =
      block !== undefined && !opening.automatic && isLast ? [{ ...block, after: [...after, off] }] : [];
    const tag =
      tags.has(element) && isLast ? [tagOf(document, element, "why.tag", [...after, off, ...then])] : [];
    actions.push(...first, off, ...then, ...tag);
    before = [...before, off];
  });
  for (const element of [...blocks].filter((it) => !last.has(it)))
    actions.push({ ...blockOf(document, element), after: begun });
  for (const element of [...tags].filter((it) => !last.has(it))) {
    const blocked = actions.filter(({ steps: [it] }) => it!.do === "block" && it!.element === element);
    const why = "alt" in document.system.elements[element]! ? "why.tag.thrown" : "why.tag.found";
    actions.push(tagOf(document, element, why, [...begun, ...blocked]));
  }
  return actions;
}

function blockOf(document: StillhotDocument, element: ElementId): Omit<PlannedGroup, "after"> {
  const it = complete(document.system.elements[element]!);
  const isAutomatic = openingOf(it)?.automatic ?? false;
  const key = isAutomatic ? "why.block.automatic" : isLiftedOff(it) ? "why.block.clamp" : "why.block";
  return {
    rank: RANK.isolate,
    at: placeOf(document.system, element),
    steps: [step({ do: "block", element }, say(key, { name: nameOf(document, element) }))],
  };
}

const tagOf = (
  document: StillhotDocument,
  element: ElementId,
  why: "why.tag" | "why.tag.found" | "why.tag.thrown",
  after: readonly PlannedGroup[],
): PlannedGroup => ({
  rank: RANK.isolate,
  after,
  at: placeOf(document.system, element),
  steps: [step({ do: "tag", element }, say(why, { name: nameOf(document, element) }))],
});

/** Poles of one thing that open one after the other are one step, as long as it may break them together. */
function groupsOf(document: StillhotDocument, order: readonly TimedOpening[]): Group[] {
  const groups: Group[] = [];
  let system = document.system;
  let before = system;
  for (const { opening, tool } of order) {
    const last = groups.at(-1);
    if (last !== undefined && last.openings[0]!.element === opening.element && opening.phases !== "") {
      const together = phasesInOrder(document.system, opening.element, last.phases + opening.phases);
      const amps = ampsOf(before, { ...opening, phases: together });
      const { limit, tool: toolTogether } = limitOf(document, opening, amps);
      if (amps <= limit.amps || breaksNothing(before, { ...opening, phases: together }, amps)) {
        groups[groups.length - 1] = {
          openings: [...last.openings, opening],
          phases: together,
          tool: toolTogether,
        };
        system = systemWithout(system, opening);
        continue;
      }
    }
    before = system;
    groups.push({ openings: [opening], phases: opening.phases, tool });
    system = systemWithout(system, opening);
  }
  return groups;
}

const phasesInOrder = (system: System, id: ElementId, letters: string): string =>
  [...(complete(system.elements[id]!) as { phases: string }).phases]
    .filter((it) => letters.includes(it))
    .join("");

function whyOff(
  document: StillhotDocument,
  opening: Opening,
  purposes: ReadonlyMap<string, Purpose>,
): Message {
  const purpose = purposes.get(opening.key);
  const name = nameOf(document, opening.element);
  switch (purpose?.is) {
    case "isolates":
      return say(
        isUndrawnMachine(document, purpose.source) ? "why.off.isolates.machine" : "why.off.isolates",
        {
          name,
          source: nameOf(document, purpose.source),
        },
      );
    case "shows":
      return say("why.off.shows", { name, other: nameOf(document, purpose.other) });
    case "drops":
      return say("why.off.drops", { name, other: nameOf(document, purpose.other) });
    case "splits": {
      // A link is spared the pick-up of everything at once, a clamp's jaws are spared all of it.
      const other = complete(document.system.elements[purpose.other]!);
      return say(isLiftedOff(other) ? "why.off.splits.clamp" : "why.off.splits", {
        name,
        other: nameOf(document, purpose.other),
      });
    }
    case "keeps off":
      return say("why.off.motor", { name, other: nameOf(document, purpose.other) });
    case "capacitor":
      return say("why.off.capacitor", { name });
    default:
      return say(opening.moves === "machine" ? whyStopped(document, opening) : "why.off", { name });
  }
}

const whyStopped = ({ system }: StillhotDocument, { element }: Opening) =>
  machinesInStep(system).has(element) ? "why.stop.first" : "why.stop.machine";

/** Why the line is cut and not carried past a regulator: nothing is drawn that would carry it. */
const whyNotAround = (
  document: StillhotDocument,
  { element }: Opening,
  regulators: readonly ElementId[],
): Message =>
  say("why.off.noBypass", {
    name: nameOf(document, element),
    regulator: namesOf(regulators.map((id) => nameOf(document, id))),
  });

/** Whether what could feed the work is nothing that stands on the drawing, but a generator that a customer may have. */
const isUndrawnMachine = ({ system }: StillhotDocument, source: ElementId): boolean =>
  isLoad(system.elements[source]);
