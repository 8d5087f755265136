import { openingOf } from "../../devices";
import { complete, isSameStructure, type Step, type StillhotDocument, type System } from "../../document";
import type { StepBy } from "../../steps";
import { circuitOf, endsOf, reachOf, standingOf } from "../../network";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  type Letter,
  type Message,
  type PointId,
  say,
} from "../../terms";
import { islandOf } from "../job/joined";
import { elementOf, elementsOf, nameOf, nameOfWorkPoint, namesOf } from "../job/names";
import { DISCHARGE_SECONDS } from "../effects/trappedCharge";
import { ampsOf, limitOf, systemWithout, type TimedOpening } from "./breaking";
import { type GroundPlace, type Intent, workPointsOf } from "./intent";
import { type Opening, stepOff, stepOn } from "./openings";
import { type Action, inOrder } from "./schedule";
import type { PlannedStep } from "./types";

/** What an opening is for: to shut a supply off, to take load off another, or to pick load up in parts afterwards. */
export type Purpose =
  | { readonly is: "isolates"; readonly source: ElementId }
  | { readonly is: "drops"; readonly other: ElementId }
  | { readonly is: "splits"; readonly other: ElementId }
  | { readonly is: "capacitor" };

/** One step with a device: one pole, or several of one that go together. */
interface Group {
  readonly openings: readonly Opening[];
  readonly phases: string;
  readonly tool: string | undefined;
}

/** Ranks of actions: what comes before what, wherever their needs leave it open. */
const RANK = {
  brief: 0,
  secure: 1,
  request: 2,
  receive: 3,
  isolate: 10,
  wait: 20,
  ground: 30,
  retest: 35,
  barricade: 40,
  cover: 41,
  work: 50,
  allClear: 60,
  uncover: 65,
  unground: 70,
  allClearAgain: 80,
  release: 82,
  untag: 90,
  restore: 100,
} as const;

/** Every step of an intent, to safe and back, in order. */
export function stepsOf(
  document: StillhotDocument,
  intent: Intent,
  purposes: ReadonlyMap<string, Purpose>,
): PlannedStep[] {
  return inOrder(document.system, actionsOf(document, intent, purposes));
}

const step = (it: Step, why: Message): PlannedStep => ({ ...it, why });

function actionsOf(
  document: StillhotDocument,
  intent: Intent,
  purposes: ReadonlyMap<string, Purpose>,
): Action[] {
  const { system } = document;
  const groups = groupsOf(document, intent.choice.order.order);
  return [
    { id: "brief", rank: RANK.brief, needs: [], steps: [step({ do: "brief" }, say("why.brief"))] },
    ...[...intent.secures].map((id): Action => ({
      id: `secure ${id}`,
      rank: RANK.secure,
      needs: ["brief"],
      at: placeOf(system, id),
      steps: [step({ do: "secure", element: id }, say("why.secure", { name: nameOf(document, id) }))],
    })),
    ...permitActions(intent),
    ...isolation(document, intent, groups, purposes),
    ...discharge(intent, groups),
    ...grounding(document, intent, groups),
    ...working(document, intent),
    ...ungrounding(intent),
    ...restoring(document, intent, groups),
  ];
}

const placeOf = (system: System, id: ElementId): PointId =>
  endsOf(complete(system.elements[id]!))[0]?.[1] as PointId;

/** A permit is asked for, received and said back; what the job has of it already is not asked for twice. */
function permitActions({ permit: reason, found }: Pick<Intent, "permit" | "found">): Action[] {
  if (found === "held" || (reason === undefined && found !== "requested")) return [];
  const request: Action[] =
    found === "requested" || reason === undefined
      ? []
      : [
          {
            id: "request",
            rank: RANK.request,
            needs: ["brief"],
            steps: [step({ do: "request-permit" }, say("why.request-permit", { why: reason }))],
          },
        ];
  return [
    ...request,
    {
      id: "receive",
      rank: RANK.receive,
      needs: ["brief", "request"],
      steps: [
        step({ do: "receive-permit" }, say("why.receive-permit")),
        step({ do: "confirm" }, say("why.confirm-permit")),
      ],
    },
  ];
}

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
      if (amps <= limit.amps) {
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

/** Everything open, blocked and tagged: what closes by itself is blocked before it is opened, the rest after. */
function isolation(
  document: StillhotDocument,
  { tags, blocks }: Intent,
  groups: readonly Group[],
  purposes: ReadonlyMap<string, Purpose>,
): Action[] {
  const { system } = document;
  const actions: Action[] = [];
  const opened = new Map<ElementId, string>();
  let before = "receive";
  groups.forEach(({ openings, phases, tool }, index) => {
    const [opening] = openings as [Opening];
    const id = `off ${index}`;
    const needsBlock = blocks.has(opening.element) && opening.automatic;
    actions.push({
      id,
      rank: RANK.isolate,
      needs: ["brief", before, ...(needsBlock ? [`block ${opening.element}`] : [])],
      at: opening.at,
      steps: [step(stepOff(system, opening, phases, tool), whyOff(document, opening, purposes))],
    });
    opened.set(opening.element, id);
    before = id;
  });
  for (const element of blocks) {
    const automatic = isAutomatic(system, element);
    actions.push({
      id: `block ${element}`,
      rank: RANK.isolate,
      needs: ["brief", "receive", ...(automatic || !opened.has(element) ? [] : [opened.get(element)!])],
      at: placeOf(system, element),
      steps: [
        step(
          { do: "block", element },
          say(
            automatic ? "why.block.automatic" : isClamp(system, element) ? "why.block.clamp" : "why.block",
            {
              name: nameOf(document, element),
            },
          ),
        ),
      ],
    });
  }
  for (const element of tags) {
    const off = opened.get(element);
    actions.push({
      id: `tag ${element}`,
      rank: RANK.isolate,
      needs: ["brief", "receive", `block ${element}`, ...(off === undefined ? [] : [off])],
      at: placeOf(system, element),
      steps: [
        step(
          { do: "tag", element },
          say(off === undefined ? "why.tag.found" : "why.tag", { name: nameOf(document, element) }),
        ),
      ],
    });
  }
  // A tag hangs before the crew walks on: of what stands at one place the earlier action goes first.
  return actions.sort((a, b) => orderAtPlace(a, opened) - orderAtPlace(b, opened));
}

function orderAtPlace({ id }: Action, opened: ReadonlyMap<ElementId, string>): number {
  const [what, name] = id.split(" ") as [string, string];
  if (what === "off") return Number(name);
  const off = opened.get(name as ElementId);
  const own = off === undefined ? Infinity : Number(off.split(" ")[1]);
  return own === Infinity ? 1e6 : own + (what === "block" ? 0.2 : 0.4);
}

const isClamp = (system: System, id: ElementId): boolean => system.elements[id]!.kind === "clamp";

function isAutomatic(system: System, id: ElementId): boolean {
  return openingOf(complete(system.elements[id]!))?.automatic ?? false;
}

function whyOff(
  document: StillhotDocument,
  opening: Opening,
  purposes: ReadonlyMap<string, Purpose>,
): Message {
  const purpose = purposes.get(opening.key);
  const name = nameOf(document, opening.element);
  switch (purpose?.is) {
    case "isolates":
      return say(`why.off.isolates`, { name, source: nameOf(document, purpose.source) });
    case "drops":
      return say("why.off.drops", { name, other: nameOf(document, purpose.other) });
    case "splits":
      return say("why.off.splits", { name, other: nameOf(document, purpose.other) });
    case "capacitor":
      return say("why.off.capacitor", { name });
    default:
      return say("why.off", { name });
  }
}

function discharge({ waitSeconds, tags }: Intent, groups: readonly Group[]): Action[] {
  if (waitSeconds === 0) return [];
  return [
    {
      id: "wait",
      rank: RANK.wait,
      needs: [...offIds(groups), ...[...tags].map((it) => `tag ${it}`)],
      steps: [step({ do: "wait", seconds: waitSeconds }, say("why.wait", { seconds: DISCHARGE_SECONDS }))],
    },
  ];
}

const offIds = (groups: readonly Group[]): string[] => groups.map((_, index) => `off ${index}`);

/** Places on one pole are tested together, then grounded: the detector is proven twice and not four times. */
function poles(system: System, grounds: readonly GroundPlace[]): GroundPlace[][] {
  const found: GroundPlace[][] = [];
  for (const place of grounds) {
    const pole = found.find(([first]) => isSameStructure(system, first!.at, place.at));
    if (pole === undefined) found.push([place]);
    else pole.push(place);
  }
  return found;
}

const checkBefore = step({ do: "check-detector" }, say("why.check-detector.before"));
const checkAfter = step({ do: "check-detector" }, say("why.check-detector.after"));

const testSteps = (places: readonly { readonly at: PointId; readonly phases: string }[]): PlannedStep[] => [
  checkBefore,
  ...places.map(({ at, phases }) => step({ do: "test", at, phases }, say("why.test"))),
  checkAfter,
];

function grounding(document: StillhotDocument, intent: Intent, groups: readonly Group[]): Action[] {
  const { system } = document;
  const isolated = [
    ...offIds(groups),
    ...[...intent.tags].map((it) => `tag ${it}`),
    ...[...intent.blocks].map((it) => `block ${it}`),
    "wait",
  ];
  const work = testedPlaces(document);
  const untouched = work.filter(({ at }) => !intent.grounds.some((it) => it.at === at));
  const actions: Action[] = poles(system, intent.grounds).map((places, index) => ({
    id: `ground ${index}`,
    rank: RANK.ground,
    needs: isolated,
    at: places[0]!.at,
    steps: [
      ...testSteps(places),
      ...places.map((it) =>
        step(
          {
            do: "ground",
            element: it.id,
            at: it.at,
            phases: it.phases,
            to: it.to,
            first: "neutral",
            ...(it.cable === "" ? {} : { cable: it.cable as NonNullable<StepBy<"ground">["cable"]> }),
          },
          whyGround(document, it),
        ),
      ),
    ],
  }));
  const again = intent.retest ? work : untouched;
  if (again.length > 0)
    actions.push({
      id: "retest",
      rank: RANK.retest,
      needs: [...isolated, ...actions.map(({ id }) => id)],
      at: again[0]!.at,
      steps: intent.retest
        ? testSteps(again).map((it) => (it.do === "test" ? { ...it, why: say("why.retest") } : it))
        : testSteps(again),
    });
  return actions;
}

/** Work points by place, with their phases together. */
export function testedPlaces(document: StillhotDocument): { at: PointId; phases: string }[] {
  const places = new Map<PointId, string>();
  for (const [, { at, conductors }] of workPointsOf(document))
    places.set(at, (places.get(at) ?? "") + conductors);
  return [...places].map(([at, letters]) => ({
    at,
    phases: ["A", "B", "C", "1", "2"].filter((it) => letters.includes(it)).join(""),
  }));
}

const whyGround = (document: StillhotDocument, { at, bank }: GroundPlace): Message => {
  if (bank === undefined) return say("why.ground.work", { at: nameOf(document, at) });
  const meters = metersOn(document.system, at);
  return say(meters === 0 ? "why.ground.secondary" : "why.ground.secondary.meters", {
    name: nameOf(document, bank),
    at: nameOf(document, at),
    meters,
  });
};

/** How many meters hang on a secondary as found: what a ground set on it is weighed against. */
function metersOn(system: System, at: PointId): number {
  const own = new Set(
    (["A", "B", "C", "1", "2"] as const).map((it) => islandOf(system, conductorId(at, it))),
  );
  own.delete(-1);
  return elementsOf(system).reduce((sum, [, it]) => {
    if (it.kind !== "meter" || it.open !== "") return sum;
    return [...it.phases].some((letter) => own.has(islandOf(system, conductorId(it.from, letter as Letter))))
      ? sum + it.count
      : sum;
  }, 0);
}

function working(document: StillhotDocument, intent: Intent): Action[] {
  const { system } = document;
  const grounded = [...poles(system, intent.grounds).map((_, index) => `ground ${index}`), "retest"];
  const guarded = [
    ...[...intent.barricades].map((it) => `barricade ${it}`),
    ...[...intent.covers].map((it) => `cover ${it}`),
  ];
  const works = workPointsOf(document);
  const atOf = (id: string): PointId =>
    Object.hasOwn(system.points, id) ? (id as PointId) : placeOfCover(system, id as ElementId);
  const coverKey = (id: string): { readonly at: PointId } | { readonly element: ElementId } =>
    Object.hasOwn(system.points, id) ? { at: id as PointId } : { element: id as ElementId };
  return [
    ...[...intent.barricades].map((at): Action => ({
      id: `barricade ${at}`,
      rank: RANK.barricade,
      needs: grounded,
      at,
      steps: [step({ do: "barricade", at }, say("why.barricade", { at: nameOf(document, at) }))],
    })),
    ...[...intent.covers].map((id): Action => ({
      id: `cover ${id}`,
      rank: RANK.cover,
      needs: grounded,
      at: atOf(id),
      steps: [step({ do: "cover", ...coverKey(id) }, say("why.cover", { name: nameOf(document, id) }))],
    })),
    ...works.map(([id, workPoint]): Action => ({
      id: `work ${id}`,
      rank: RANK.work,
      needs: [...grounded, ...guarded],
      at: workPoint.at,
      steps: [step({ do: "work", at: id }, say("why.work", { name: nameOfWorkPoint(id, workPoint) }))],
    })),
    {
      id: "all clear",
      rank: RANK.allClear,
      needs: works.map(([id]) => `work ${id}`),
      steps: [step({ do: "all-clear" }, say("why.all-clear.work"))],
    },
    ...[...intent.covers].map((id): Action => ({
      id: `uncover ${id}`,
      rank: RANK.uncover,
      needs: ["all clear"],
      at: atOf(id),
      steps: [step({ do: "uncover", ...coverKey(id) }, say("why.uncover", { name: nameOf(document, id) }))],
    })),
  ];
}

/** Where a neighbouring circuit is covered: at the near end of the span that it runs beside. */
function placeOfCover(system: System, id: ElementId): PointId {
  const element = complete(system.elements[id]!);
  return element.kind === "nearby" ? placeOf(system, element.span as ElementId) : placeOf(system, id);
}

function ungrounding({ grounds, covers, permit, found }: Intent): Action[] {
  const offs = [...grounds].reverse().map((it): Action => ({
    id: `unground ${it.id}`,
    rank: RANK.unground,
    needs: ["all clear", ...[...covers].map((id) => `uncover ${id}`)],
    at: it.at,
    steps: [step({ do: "unground", element: it.id, first: "phase" }, say("why.unground"))],
  }));
  return [
    ...offs,
    ...(offs.length === 0
      ? []
      : [
          {
            id: "all clear again",
            rank: RANK.allClearAgain,
            needs: offs.map(({ id }) => id),
            steps: [
              step({ do: "all-clear" }, say("why.all-clear.grounds")),
              step({ do: "confirm" }, say("why.confirm.all-clear")),
            ],
          },
        ]),
    ...(permit === undefined && found !== "held" && found !== "requested"
      ? []
      : [
          {
            id: "release",
            rank: RANK.release,
            needs: ["all clear", "all clear again"],
            steps: [step({ do: "release-permit" }, say("why.release-permit"))],
          },
        ]),
  ];
}

/** Tags and blocks off, then everything closed in the reverse of the order in which it was opened. */
function restoring(document: StillhotDocument, intent: Intent, groups: readonly Group[]): Action[] {
  const { system } = document;
  const clear = ["all clear", "all clear again", "release"];
  const marks = (verb: "untag" | "unblock", ids: ReadonlySet<ElementId>): Action[] =>
    [...ids].map((element) => ({
      id: `${verb} ${element}`,
      rank: RANK.untag,
      needs: [...clear, ...(verb === "unblock" && intent.tags.has(element) ? [`untag ${element}`] : [])],
      at: placeOf(system, element),
      steps: [step({ do: verb, element }, say(`why.${verb}`, { name: nameOf(document, element) }))],
    }));
  const off = [...marks("untag", intent.tags), ...marks("unblock", intent.blocks)];
  const actions: Action[] = [];
  let before = "";
  for (let index = groups.length - 1; index >= 0; index--) {
    const { openings, phases, tool } = groups[index]!;
    const [opening] = openings as [Opening];
    const standing = groups
      .slice(0, index + 1)
      .flatMap((it) => it.openings)
      .reduce(systemWithout, system);
    actions.push({
      id: `on ${index}`,
      rank: RANK.restore,
      needs: [...clear, ...off.map(({ id }) => id), ...(before === "" ? [] : [before])],
      at: opening.at,
      steps: restoreSteps(document, standing, opening, phases, tool),
    });
    before = `on ${index}`;
  }
  return [...off, ...actions];
}

function restoreSteps(
  document: StillhotDocument,
  standing: System,
  opening: Opening,
  phases: string,
  tool: string | undefined,
): PlannedStep[] {
  const name = nameOf(document, opening.element);
  const element = elementOf(document.system, opening.element)!;
  const isLive = isLiveAt(standing, opening, phases);
  // What was found closed and blocked cannot be closed blocked; it is left as it was found.
  const wasBlocked = (element as { blocked?: boolean }).blocked === true;
  const why =
    element.kind === "clamp"
      ? say("why.on.clamp", { name })
      : say(isLive ? "why.on.live" : "why.on", { name });
  return [
    ...(wasBlocked
      ? [step({ do: "unblock", element: opening.element }, say("why.unblock.close", { name }))]
      : []),
    ...(element.kind === "cutout" && element.fuse !== "solid" && isLive
      ? [step({ do: "stand-clear" }, say("why.stand-clear", { name }))]
      : []),
    step(
      stepOn(document.system, opening, phases, tool === "load-break-tool" ? closingTool(document) : tool),
      why,
    ),
    ...(wasBlocked
      ? [step({ do: "block", element: opening.element }, say("why.block.found", { name }))]
      : []),
  ];
}

/** A cutout is closed with a plain stick; the load-break tool is for opening. */
const closingTool = (document: StillhotDocument): string => {
  const tools = (document.job?.["tools"] ?? []) as readonly string[];
  return tools.length === 0 || tools.includes("extending-stick") ? "extending-stick" : "load-break-tool";
};

/** Whether either side of a thing has a supply. */
function isLiveAt(system: System, { element }: Opening, phases: string): boolean {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
  return endsOf(complete(system.elements[element]!)).some(([, point]) =>
    [...phases].some((letter) => {
      const id: ConductorId = conductorId(point, letter as Letter);
      const node = circuit.nodeOf.get(id);
      return node !== undefined && how[node] !== 0;
    }),
  );
}

/** Names of the things of some openings, each once. */
export const namesOfOpenings = (document: StillhotDocument, openings: readonly Opening[]): Message =>
  namesOf([...new Set(openings.map(({ element }) => element))].map((id) => nameOf(document, id)));
