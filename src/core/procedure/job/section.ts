import {
  type CircuitElement,
  deviceOf,
  isLine,
  isLoad,
  isTransformer,
  lettersAtEnd,
  openPhasesOf,
} from "../../devices";
import {
  elementsOfKind,
  perObject,
  type StillhotDocument,
  type System,
  type WorkPoint,
} from "../../document";
import { assessWithoutWork, LINE_VOLTS } from "../../hazard";
import { circuitOf } from "../../network";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  type Letter,
  lettersOf,
  type Message,
  say,
} from "../../terms";
import { secondaryIds } from "./hands";
import { isLiveState } from "./live";
import { elementOf, elementsOf, nameOf } from "./names";

/** What lies beyond a thing or a work point as found, away from the source. */
interface SectionBeyond {
  readonly conductors: ReadonlySet<ConductorId>;
  readonly elements: readonly (readonly [ElementId, CircuitElement])[];
  /** normally open things, or open ones with something live on their far side */
  readonly ties: readonly ElementId[];
  /** closed things that feed the section beside the one that is asked about */
  readonly feeds: readonly ElementId[];
}

/** The ends of a two-ended element, and which letters pass from one to the other. */
interface Passage {
  readonly from: readonly ConductorId[];
  readonly to: readonly ConductorId[];
}

/** By a thing's record: each question goes over all of a drawing. */
const passageOf = perObject((element: CircuitElement): Passage | undefined => {
  if (deviceOf(element.kind).ends.length < 2) return undefined;
  const { from, to } = element as CircuitElement & { from: string; to: string };
  return {
    from: lettersAtEnd(element, "from").map((letter) => conductorId(from, letter)),
    to: isTransformer(element)
      ? secondaryIds(element)
      : lettersAtEnd(element, "to").map((letter) => conductorId(to, letter)),
  };
});

/** By conductor: which of a drawing's elements lead on from it, by their place among `elementsOf`. */
const leadingFrom = perObject((system: System): ReadonlyMap<ConductorId, readonly number[]> => {
  const leading = new Map<ConductorId, number[]>();
  elementsOf(system).forEach(([, element], place) => {
    for (const id of new Set(passageOf(element)?.from)) {
      const known = leading.get(id);
      if (known === undefined) leading.set(id, [place]);
      else known.push(place);
    }
  });
  return leading;
});

/**
 * Everything beyond some conductors, away from the source, as the drawing was found: `from` is the source side of an
 * element. Open things end it where they are normally open or have another supply behind them; a blown link does not.
 */
function sectionBeyond(
  document: StillhotDocument,
  start: readonly ConductorId[],
  own: readonly ElementId[],
): SectionBeyond {
  const { system } = document;
  const { conductors: reports } = assessWithoutWork(document);
  const conductors = new Set(start);
  const elements = elementsOf(system);
  const ties = new Set<ElementId>();
  const isLive = (id: ConductorId) => isLiveState(reports[id]?.state);
  const circuit = circuitOf(system);
  // Leads of two secondaries that were cut apart are no switch: hands join them, and nobody closes them.
  const isCutSecondary = (element: CircuitElement, far: ConductorId): boolean =>
    "cut" in element && (circuit.nominalVolts[circuit.nodeOf.get(far) ?? -1] ?? Infinity) <= LINE_VOLTS;
  // Nor is a broken wire a switch, whatever feeds its far end backwards.
  const isTie = (element: CircuitElement, letter: Letter, far: ConductorId): boolean =>
    !isLine(element) &&
    openPhasesOf(element).includes(letter) &&
    ((element as { normallyOpen?: boolean }).normallyOpen === true || isLive(far));
  // Only what leads on from a conductor that came in since it was looked at can bring in another one, or prove a tie.
  const toLookAt = new Uint8Array(elements.length);
  const leadsOn = (id: ConductorId) => {
    for (const place of leadingFrom(system).get(id) ?? []) toLookAt[place] = 1;
  };
  for (const id of start) leadsOn(id);
  for (let grew = true; grew;) {
    grew = false;
    for (const [place, [id, element]] of elements.entries()) {
      if (toLookAt[place] === 0) continue;
      toLookAt[place] = 0;
      const passage = passageOf(element);
      if (passage === undefined || own.includes(id)) continue;
      const reached = isTransformer(element)
        ? passage.from.some((it) => conductors.has(it))
          ? passage.to
          : []
        : passage.to.filter((far, i) => {
            if (!conductors.has(passage.from[i]!)) return false;
            const letter = far.slice(far.lastIndexOf("/") + 1) as Letter;
            if (!isTie(element, letter, far)) return true;
            if (!isCutSecondary(element, far)) ties.add(id);
            return false;
          });
      for (const far of reached)
        if (!conductors.has(far)) {
          conductors.add(far);
          leadsOn(far);
          grew = true;
        }
    }
  }
  const feeds: ElementId[] = [];
  for (const [id, element] of elements) {
    const passage = passageOf(element);
    if (passage === undefined || own.includes(id)) continue;
    const entersOnly =
      passage.to.some((it) => conductors.has(it)) && !passage.from.some((it) => conductors.has(it));
    if (!entersOnly) continue;
    const open = openPhasesOf(element);
    if (open === "" || isTransformer(element) || isLine(element)) feeds.push(id);
    else if (isCutSecondary(element, passage.from[0]!)) continue;
    else if (passage.from.some(isLive) || (element as { normallyOpen?: boolean }).normallyOpen === true)
      ties.add(id);
  }
  const inside = elements.filter(([id, element]) => {
    if (own.includes(id)) return false;
    const passage = passageOf(element);
    if (passage !== undefined) return passage.from.some((it) => conductors.has(it)) && !ties.has(id);
    const { at, phases } = element as { at?: string; phases?: string };
    return lettersOf(phases ?? "").some((letter) => conductors.has(conductorId(at ?? "", letter)));
  });
  return { conductors, elements: inside, ties: [...ties], feeds };
}

/**
 * Why a section needs a permit, or nothing where it does not. A transformer's own tap with no other feed drawn needs
 * none; a line section does, and so does a drawn generator, tie, transfer switch or parallel transformer. An assumed
 * generator alone does not.
 */
function reasonFor(
  document: StillhotDocument,
  { conductors, elements, ties, feeds }: SectionBeyond,
): Message | undefined {
  const { system } = document;
  const circuit = circuitOf(system);
  const isPrimary = (id: ConductorId) => {
    const node = circuit.nodeOf.get(id);
    return node !== undefined && circuit.nominalVolts[node]! > LINE_VOLTS;
  };
  if (![...conductors].some(isPrimary)) return undefined;
  const named = (id: ElementId) => nameOf({ system }, id);
  const ofKind = (kind: CircuitElement["kind"]) => elements.filter(([, it]) => it.kind === kind);
  const [generator] = ofKind("generator");
  if (generator !== undefined) return say("permit.generator", { name: named(generator[0]) });
  const [transfer] = elementsOfKind(system, "transfer").filter(([, it]) =>
    lettersOf(it.phases).some((letter) =>
      [it.from, it.to].some((point) => conductors.has(conductorId(point, letter))),
    ),
  );
  if (transfer !== undefined) return say("permit.transfer", { name: named(transfer[0]) });
  if (ties.length > 0) return say("permit.tie", { name: named(ties[0]!) });
  const parallel = feeds.find((id) => isTransformer(elementOf(system, id)));
  if (parallel !== undefined) return say("permit.parallel", { name: named(parallel) });
  if (feeds.length > 0) return say("permit.feed", { name: named(feeds[0]!) });
  const [source] = ofKind("source");
  if (source !== undefined) return say("permit.feed", { name: named(source[0]) });
  const banks = new Set(elements.flatMap(([, it]) => (isTransformer(it) ? [it.from] : [])));
  if (banks.size > 1) return say("permit.line", { count: banks.size });
  const other = elements.find(
    ([, it]) => isLoad(it) && lettersOf(it.phases).some((letter) => isPrimary(conductorId(it.at, letter))),
  );
  if (banks.size === 1 && other !== undefined) return say("permit.load", { name: named(other[0]) });
  const isLine = banks.size === 0 && ofKind("span").some(([, it]) => passageOf(it)!.from.some(isPrimary));
  return isLine ? say("permit.span") : undefined;
}

const reasonsOf = perObject((_asFound: StillhotDocument) => new Map<string, Message | undefined>());

function remembered(
  asFound: StillhotDocument,
  key: string,
  answer: () => Message | undefined,
): Message | undefined {
  const known = reasonsOf(asFound);
  if (!known.has(key)) known.set(key, answer());
  return known.get(key);
}

/** Why operating a thing needs a permit; nothing where it does not. */
export const permitReasonForElement = (asFound: StillhotDocument, id: ElementId): Message | undefined =>
  remembered(asFound, `element ${id}`, () => {
    const element = elementOf(asFound.system, id);
    if (element === undefined) return undefined;
    const passage = passageOf(element);
    const { at, phases } = element as { at?: string; phases?: string };
    const start = passage?.to ?? lettersOf(phases ?? "").map((letter) => conductorId(at ?? "", letter));
    return reasonFor(asFound, sectionBeyond(asFound, start, [id]));
  });

/** Why work at a point needs a permit; nothing where it does not. */
export const permitReasonForWork = (
  asFound: StillhotDocument,
  { at, conductors }: WorkPoint,
): Message | undefined =>
  remembered(asFound, `work ${at}/${conductors}`, () => {
    const start = lettersOf(conductors).map((letter) => conductorId(at, letter as Letter));
    const feeders = elementsOf(asFound.system)
      .filter(([, it]) => passageOf(it)?.to.some((id) => start.includes(id)))
      .map(([id]) => id);
    return reasonFor(asFound, sectionBeyond(asFound, start, feeders.slice(0, 1)));
  });
