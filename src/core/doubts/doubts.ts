import {
  type DeviceDoubt,
  deviceDoubtsOf,
  type DoubtKind,
  type End,
  isLine,
  isMachine,
  isSupply,
  isTransformer,
  openPhasesOf,
  THIS,
  UNDRAWN,
} from "../devices";
import {
  type Amendment,
  amended,
  besideOthers,
  complete,
  completePoint,
  conductorsOf as conductorsAt,
  elementsAt,
  endPointsOf,
  hopsFrom,
  isSeen,
  perObject,
  savedElement,
  type SavedElement,
  structureOf,
  type System,
  type WorkPoint,
} from "../document";
import { type Circuit, circuitOf, reachOf, standingOf } from "../network";
import {
  conductorId,
  type ElementId,
  type Json,
  type JsonObject,
  type Letter,
  type PointId,
  type StructureId,
} from "../terms";

/** One way in which what stands on the poles could differ from the drawing. */
export interface Doubt {
  /** the same for the same doubt of the same thing, whatever else is drawn */
  readonly key: string;
  readonly doubt: DoubtKind;
  /** the thing or the point that one looks at; of two that may be taken for each other the one */
  readonly where: ElementId | PointId;
  /** the other one of the two */
  readonly other?: ElementId;
  /** the phases that are doubted, where it is not the whole thing */
  readonly phases?: string;
  /** where one looks: on its structure, or of a line at its nearer end's */
  readonly structure: StructureId | null;
  /** how many things lie between the work point and it */
  readonly hops: number;
  /** what it makes of the drawing */
  readonly instead: Amendment;
}

/** The drawing as it would stand if these doubts were true. */
export const carriedOut = (system: System, doubts: readonly Doubt[]): System =>
  amended(
    system,
    doubts.map((it) => it.instead),
  );

/**
 * Everything that may be otherwise than drawn around a work point, the nearest first. What was seen is not in doubt, nor
 * what nothing on the drawing joins to the work point.
 */
export function doubtsAround(system: System, { at }: WorkPoint): Doubt[] {
  const { hops, things, points } = unseenAround(system, at);
  const doubts = [
    ...things.flatMap((id) => ofElement(system, id)),
    ...points.flatMap((id) => ofPoint(system, id)),
    ...mistaken(system, things),
    ...things.flatMap((id) => phasesSwapped(system, id)),
  ];
  return doubts
    .map((it): Doubt => {
      const [nearest = ""] = [...pointsOf(system, it.where)].sort(
        (a, b) => (hops.get(a) ?? Infinity) - (hops.get(b) ?? Infinity),
      );
      return {
        ...it,
        structure: (structureOf(system, it.where) ?? structureOf(system, nearest))?.id ?? null,
        hops: hops.get(nearest) ?? Infinity,
      };
    })
    .sort((a, b) => a.hops - b.hops || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
}

/** So many things around a work point are in doubt: who goes and looks does not go farther. */
export const MOST_THINGS = 400;

/** What nobody has seen of the nearest that hangs together with a point, and how many things lie between, by point. */
export interface UnseenAround {
  readonly hops: ReadonlyMap<string, number>;
  readonly things: readonly ElementId[];
  readonly points: readonly PointId[];
}

/** What nobody has seen around a point: of the nearest things, and of their points, the nearest first. */
export function unseenAround(system: System, at: PointId): UnseenAround {
  const hops = hopsFrom(system, [at]);
  const near = nearestThings(system, hops);
  const points = new Set([at, ...near.flatMap((id) => pointsOf(system, id) as PointId[])]);
  return {
    hops,
    things: near.filter((id) => !isSeen(system, id)),
    points: [...points].filter((id) => Object.hasOwn(system.points, id) && !isSeen(system, id)),
  };
}

/** The nearest things that hang together with a work point, circuits beside the spans among them too. */
function nearestThings(system: System, hops: ReadonlyMap<string, number>): ElementId[] {
  const things = new Set<string>();
  for (const point of hops.keys()) {
    for (const id of elementsAt(system).get(point) ?? [])
      for (const it of [id, ...besideSpan(system, id)]) things.add(it);
    if (things.size >= MOST_THINGS) break;
  }
  return [...things].slice(0, MOST_THINGS) as ElementId[];
}

type Placeless = Omit<Doubt, "structure" | "hops">;

const endsOf = (system: System, id: string): readonly string[] =>
  endPointsOf(savedElement(system.elements, id));

/** Points of a thing; of a circuit beside a span those of the span. */
function pointsOf(system: System, where: string): readonly string[] {
  if (Object.hasOwn(system.points, where)) return [where];
  const beside = savedElement(system.elements, where)?.["span"];
  return endsOf(system, typeof beside === "string" ? beside : where);
}

function ofElement(system: System, id: ElementId): Placeless[] {
  const element = complete(system.elements[id]!);
  const nominalVolts = (end: End): number => {
    const point = (element as unknown as Readonly<Record<string, string | undefined>>)[end];
    return point === undefined ? 0 : nominalAt(system, point, phasesOf(element));
  };
  return deviceDoubtsOf(element, { nominalVolts }).map((it, nth) => {
    const key = `${it.doubt} ${id}${it.phases === undefined ? "" : ` ${it.phases}`}`;
    return {
      key: `${key} ${nth}`,
      doubt: it.doubt,
      where: id,
      ...(it.phases === undefined ? {} : { phases: it.phases }),
      instead: amendmentOf(system, id, it, key),
    };
  });
}

const phasesOf = (element: object): string => (element as { phases?: string }).phases ?? "";

/** Line to line at the first of some conductors of a point; 0 where nothing says [V]. */
function nominalAt(system: System, point: string, letters: string): number {
  const circuit = circuitOf(system);
  const node = circuit.nodeOf.get(conductorId(point, (letters[0] ?? "A") as Letter));
  return node === undefined ? 0 : circuit.nominalVolts[node]!;
}

const amendmentOf = (
  system: System,
  id: ElementId,
  { instead, isGone, beside, runningAt }: DeviceDoubt,
  key: string,
): Amendment => ({
  ...(isGone === true ? { remove: [id, ...besideSpan(system, id)] } : {}),
  ...(instead === undefined ? {} : { set: { ...running(system, id, runningAt), [id]: instead } }),
  ...(beside === undefined ? {} : { add: undrawn(system, key, id, beside) }),
});

/** Machines at an end of a thing, as they run. */
function running(system: System, id: ElementId, end: End | undefined): Record<string, JsonObject> {
  const point = end === undefined ? undefined : savedElement(system.elements, id)?.[end];
  if (typeof point !== "string") return {};
  const machines = thingsAt(system, point).filter((it) => isMachine(it.saved));
  return Object.fromEntries(machines.map((it) => [it.id, { on: true }]));
}

/** Circuits drawn beside a span: with it they are gone. */
const besideSpan = (system: System, span: string): readonly string[] => besideSpans(system).get(span) ?? [];

const besideSpans = perObject((system: System): ReadonlyMap<string, readonly string[]> => {
  const beside = new Map<string, string[]>();
  for (const id of besideOthers(system)) {
    const span = savedElement(system.elements, id)!["span"] as string;
    beside.set(span, [...(beside.get(span) ?? []), id]);
  }
  return beside;
});

/** Things that nobody drew, with ids that nothing has, and the pole that stands for wherever they come from. */
function undrawn(
  system: System,
  key: string,
  where: string,
  records: readonly JsonObject[],
): NonNullable<Amendment["add"]> {
  const name = `undrawn-${key.replace(/[^A-Za-z0-9_-]+/g, "-")}`.slice(0, 34);
  const free = (id: string): string =>
    Object.hasOwn(system.points, id) || Object.hasOwn(system.elements, id) ? free(`${id}x`) : id;
  const pole = free(`${name}-p`);
  const saved = savedElement(system.elements, where);
  const meant: Readonly<Record<string, Json | undefined>> = {
    [THIS]: where,
    [UNDRAWN]: pole,
    $at: saved?.["at"] ?? where,
    $to: saved?.["to"],
    $alt: saved?.["alt"],
  };
  const filled = records.map((record) =>
    Object.fromEntries(
      Object.entries(record).map(([it, value]) => [
        it,
        typeof value === "string" ? (meant[value] ?? value) : value,
      ]),
    ),
  );
  const isNew = records.some((it) => Object.values(it).includes(UNDRAWN));
  const near = system.points[pointsOf(system, where)[0] as PointId];
  const place = near === undefined ? { x: 0, y: 0 } : completePoint(near);
  return {
    points: isNew ? { [pole]: { kind: "pole", x: place.x + 60, y: place.y + 60 } } : {},
    elements: Object.fromEntries(filled.map((it, n) => [free(`${name}-${n}`), it as SavedElement])),
  };
}

/** What a point itself leaves open: whether the line goes on, and whether its rod is there. */
function ofPoint(system: System, id: PointId): Placeless[] {
  const { earthOhms } = completePoint(system.points[id]!);
  const rod: Placeless[] =
    earthOhms === undefined
      ? []
      : [
          {
            key: `no-rod ${id}`,
            doubt: "no-rod",
            where: id,
            instead: { set: { [id]: { earthOhms: null } } },
          },
        ];
  return [...rod, ...goesOn(system, id)];
}

/** How far the undrawn line is taken to go on to where it is fed: near, so that nothing of the feed is lost [m]. */
const GOES_ON_M = 100;

/** From here on a line is one that goes from pole to pole: the limit of low voltage in 29 CFR 1910.269(l) [V]. */
const LEAST_PRIMARY_VOLTS = 600;

/** A line ends here as far as the drawing goes. */
function goesOn(system: System, id: PointId): Placeless[] {
  const there = conductorsAt(system).get(id) ?? [];
  const phases = there.filter((it) => "ABC".includes(it)).join("");
  const lineToLineVolts = phases === "" ? 0 : nominalAt(system, id, phases);
  if (lineToLineVolts < LEAST_PRIMARY_VOLTS) return [];
  if (!isWhereItEnds(system, id)) return [];
  const key = `goes-on ${id}`;
  return [
    {
      key,
      doubt: "goes-on",
      where: id,
      instead: {
        add: undrawn(system, key, id, [
          {
            kind: "span",
            from: "$at",
            to: UNDRAWN,
            phases,
            lengthM: GOES_ON_M,
            neutral: there.includes("N"),
          },
          { kind: "source", at: UNDRAWN, phases, kvLL: lineToLineVolts / 1000 },
        ]),
      },
    },
  ];
}

/**
 * Whether nothing goes on from a point: one line comes to it, and whatever else leads away ends at a bank. Where no line
 * comes, one thing leads to it and no bank hangs on it: a bushing is the end of a line nowhere.
 */
function isWhereItEnds(system: System, id: PointId): boolean {
  const there = thingsAt(system, id);
  if (there.some((it) => isSupply(it.saved))) return false;
  const leading = there.filter(leadsOn);
  if (leading.some((it) => isLine(it.saved)))
    return leading.filter((it) => isLine(it.saved) || !endsAtBank(system, it, id)).length === 1;
  return leading.length === 1 && !there.some((it) => isTransformer(it.saved));
}

/** Whether what leads away from a point leads to no line and no supply, however many switches on, but to a bank. */
function endsAtBank(system: System, { id, saved }: Thing, from: string): boolean {
  const seen = new Set([from]);
  const passed = new Set<string>([id]);
  const next = endPointsOf(saved).filter((it) => it !== from);
  let hasBank = false;
  for (const point of next) {
    if (seen.has(point)) continue;
    seen.add(point);
    for (const it of thingsAt(system, point)) {
      if (isSupply(it.saved) || isLine(it.saved)) return false;
      hasBank ||= isTransformer(it.saved);
      if (!leadsOn(it) || passed.has(it.id)) continue;
      passed.add(it.id);
      next.push(...endPointsOf(it.saved));
    }
  }
  return hasBank;
}

interface Thing {
  readonly id: ElementId;
  readonly saved: SavedElement;
}

const thingsAt = (system: System, point: string): Thing[] =>
  (elementsAt(system).get(point as PointId) ?? []).map((id) => ({
    id: id as ElementId,
    saved: savedElement(system.elements, id)!,
  }));

/** A bank that hangs on a pole leads nowhere that a line goes on to. */
const leadsOn = ({ saved }: Thing): boolean => endPointsOf(saved).length > 1 && !isTransformer(saved);

/** Two things of one kind at one place, one taken for the other: switches by their labels, cables by their ends. */
function mistaken(system: System, near: readonly ElementId[]): Placeless[] {
  const groups = new Map<string, Set<ElementId>>();
  for (const id of near)
    for (const point of endsOf(system, id)) {
      const key = `${system.elements[id]!.kind} ${structureOf(system, point)?.id ?? point}`;
      groups.set(key, (groups.get(key) ?? new Set()).add(id));
    }
  const doubts = new Map<string, Placeless>();
  for (const group of groups.values()) {
    const ids = [...group];
    for (const [nth, a] of ids.entries())
      for (const b of ids.slice(nth + 1))
        for (const it of [...labelsSwapped(system, a, b), ...cablesSwapped(system, a, b)])
          doubts.set(it.key, it);
  }
  return [...doubts.values()];
}

const POSITION_KEYS = ["open", "blown", "removed", "bypassed"] as const;

/**
 * A span of which some phases are fed and others are not: were two of them swapped along it, what is dead beyond would be
 * fed. Where all of its phases are alike nothing would come of it that closing or opening does not show.
 */
function phasesSwapped(system: System, id: ElementId): Placeless[] {
  const element = complete(system.elements[id]!);
  if (!isLine(element) || element.toPhases !== "" || element.phases.length < 2) return [];
  const circuit = circuitOf(system);
  const { how } = fedAsDrawn(circuit);
  const isFed = (letter: string): boolean =>
    how[circuit.nodeOf.get(conductorId(element.to, letter as Letter))!] !== 0;
  const letters = [...element.phases].filter((it) => !element.parted.includes(it));
  const fed = letters.find(isFed);
  if (fed === undefined) return [];
  return letters
    .filter((letter) => !isFed(letter))
    .map((letter) => ({
      key: `swapped-phases ${id} ${letter}`,
      doubt: "swapped-phases" as const,
      where: id,
      phases: [...element.phases].filter((it) => it === letter || it === fed).join(""),
      instead: {
        set: {
          [id]: {
            toPhases: [...element.phases]
              .map((it) => (it === letter ? fed : it === fed ? letter : it))
              .join(""),
          },
        },
      },
    }));
}

const fedAsDrawn = perObject((circuit: Circuit) =>
  reachOf(circuit, standingOf(circuit), { groundsLifted: true }),
);

/** What was opened is the other one: each stands as the other is drawn. */
function labelsSwapped(system: System, a: ElementId, b: ElementId): Placeless[] {
  const [one, other] = [complete(system.elements[a]!), complete(system.elements[b]!)];
  if (!("open" in one) || phasesOf(one) !== phasesOf(other) || openPhasesOf(one) === openPhasesOf(other))
    return [];
  const positionOf = (id: ElementId): JsonObject =>
    Object.fromEntries(
      POSITION_KEYS.filter((it) => it in one).map((it) => [it, system.elements[id]![it] ?? null]),
    );
  return [
    {
      key: `swapped-labels ${a} ${b}`,
      doubt: "swapped-labels",
      where: a,
      other: b,
      instead: { set: { [a]: positionOf(b), [b]: positionOf(a) } },
    },
  ];
}

/** Two cables that leave one place come out at each other's far ends. */
function cablesSwapped(system: System, a: ElementId, b: ElementId): Placeless[] {
  const [one, other] = [complete(system.elements[a]!), complete(system.elements[b]!)];
  if (!isLine(one) || !isLine(other)) return []; // a cable is a construction of a span
  if (one.construction !== "cable" || other.construction !== "cable" || one.phases !== other.phases)
    return [];
  const near = (["from", "to"] as const).flatMap((here) =>
    (["from", "to"] as const).flatMap((there) =>
      structureOf(system, one[here])?.id === structureOf(system, other[there])?.id
        ? [[here, there] as const]
        : [],
    ),
  )[0];
  if (near === undefined) return [];
  const far = { from: "to", to: "from" } as const;
  const [ofOne, ofOther] = [far[near[0]], far[near[1]]];
  return [
    {
      key: `other-cable ${a} ${b}`,
      doubt: "other-cable",
      where: a,
      other: b,
      instead: { set: { [a]: { [ofOne]: other[ofOther] }, [b]: { [ofOther]: one[ofOne] } } },
    },
  ];
}
