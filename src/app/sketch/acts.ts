import {
  type CircuitElement,
  comesAway,
  complete,
  completePoint,
  edits,
  type ElementId,
  evidenceOfAll,
  groundSetsAt,
  isBeside,
  isConductor,
  isLiftedOff,
  isLine,
  isMachine,
  isSupply,
  jobOf,
  openingOf,
  openPhasesOf,
  pointCountOf,
  type PointId,
  type Structure,
  type StructureId,
  type WorkPointId,
} from "../../core";
import { whatIsMissing } from "../commands/reasons";
import type { IconName } from "../frame/Icon.svelte";
import { groundOn, growingPointOf } from "../grow/point";
import { type Session, SELECTING } from "../session/session.svelte";
import type { MessageKey } from "../words/catalogue";
import { later } from "../words/later";
import { today } from "../words/today";
import { t } from "../words/words";
import type { SketchCommands } from "../commands/registry";

/** One thing that can be done with what is selected. */
export interface SketchAct {
  readonly id: string;
  readonly label: string;
  readonly icon?: IconName;
  readonly run: () => void;
  /** changes the record: a larger button */
  readonly commits?: boolean;
  readonly disabled?: boolean;
}

/** What can be done now, the most likely first. The bar shows the first few, and the rest behind More. */
export function sketchActsFor(session: Session, commands: SketchCommands): SketchAct[] {
  const { selection, document } = session;
  if (selection.length === 0) return idleActs(session, commands);
  if (selection.length > 1) return editing(session, commands);
  const [only] = selection;
  if (only!.of === "structure") return structureActs(session, only!.id, commands);
  if (only!.of === "point") return [...pointActs(session, only!.id, commands), ...editing(session, commands)];
  if (only!.of === "workPoint") return editing(session, commands);
  const saved = document.system.elements[only!.id];
  if (saved === undefined) return [];
  return [...elementActs(session, only!.id, complete(saved)), ...editing(session, commands)];
}

function idleActs(session: Session, commands: SketchCommands): SketchAct[] {
  const by = actsBy(session, commands);
  const isEmpty = pointCountOf(session.document.system) === 0;
  return [
    ...(isEmpty
      ? [
          {
            id: "source",
            label: t("act.source"),
            icon: "grow" as const,
            commits: true,
            run: () => void start(session),
          },
        ]
      : []),
    by("place", "plus"),
    by("join", "grow"),
    by("gather", "fit"),
    by("paste"),
    by("selectAll"),
    by("tidy", "tidy"),
    by("trace", "picture"),
  ];
}

async function start(session: Session) {
  const { startWithSource } = await later(() => import("../grow/parts"));
  const made = session.run(startWithSource)?.made?.[0];
  if (made !== undefined) session.select({ of: "point", id: made as PointId });
}

/** What is done at a structure as a whole; where it has one point, what is done there too. */
function structureActs(session: Session, id: StructureId, commands: SketchCommands): SketchAct[] {
  const structure = session.structureOf(id);
  if (structure === undefined) return [];
  const { points } = structure;
  const [first] = points;
  const [grow, ...others] =
    first === undefined
      ? []
      : points.length === 1
        ? pointActs(session, first, commands)
        : [growAct(session, commands)];
  const [details, ...rest] = editing(session, commands);
  return [
    ...(grow === undefined ? [] : [grow]),
    {
      id: "seen",
      label: t("act.seen"),
      icon: "views",
      commits: true,
      disabled: isSeenToday(session, structure),
      run: () => see(session, structure),
    },
    ...(details === undefined ? [] : [{ ...details, label: t("act.here") }]),
    ...others,
    ...rest,
  ];
}

/** Whether all that is on a structure was seen today: nothing is left to note. */
export const isSeenToday = ({ document }: Session, structure: Structure): boolean =>
  structure.seenOn === today() && evidenceOfAll(document.system, structure) === "seen";

/** Notes that somebody stood there today and saw all that is on it. */
export const see = (session: Session, { id }: Structure): void =>
  void session.run(edits.seeStructure(id, today()), { offersUndo: true });

/** Acts that are commands: a button, a key and the finder do the same, and where one cannot, none can. */
const actsBy =
  (session: Session, commands: SketchCommands) =>
  (id: CommandAct, icon?: IconName): SketchAct => ({
    id,
    label: t(`act.${id}`),
    ...(icon === undefined ? {} : { icon }),
    disabled: whatIsMissing(session, id) !== undefined,
    run: commands[id],
  });

/** Commands that a button does too: those that have a word on one. */
type CommandAct = {
  [Id in keyof SketchCommands]: `act.${Id}` extends MessageKey ? Id : never;
}[keyof SketchCommands];

const growAct = (session: Session, commands: SketchCommands): SketchAct => ({
  ...actsBy(session, commands)("grow", "grow"),
  commits: true,
});

function pointActs(session: Session, id: PointId, commands: SketchCommands): SketchAct[] {
  const { document } = session;
  const { phases } = growingPointOf(document, id);
  const work = Object.entries(jobOf(document).workPoints).find(([, it]) => it.at === id);
  const hasGround = groundsAt(session, id);
  return [
    growAct(session, commands),
    work === undefined
      ? {
          id: "work",
          label: t("act.work"),
          disabled: phases === "",
          run: () => workAt(session, id),
        }
      : {
          id: "unwork",
          label: t("act.unwork"),
          run: () => void session.remove({ workPoints: [work[0]] }),
        },
    hasGround.length === 0
      ? {
          id: "ground",
          label: t("act.ground"),
          disabled: phases === "",
          run: () => session.run(groundOn(document, id, phases)),
        }
      : {
          id: "unground",
          label: t("act.unground"),
          run: () => void session.remove({ elements: hasGround }),
        },
    actsBy(session, commands)("join"),
  ];
}

/** Puts a work point there, and shows its verdict. */
export function workAt(session: Session, at: PointId, keys: { readonly does?: readonly string[] } = {}) {
  const made = session.run(edits.addWorkPoint(at, keys))?.made?.[0];
  if (made !== undefined) session.chooseWorkPoint(made as WorkPointId);
}

const groundsAt = ({ document }: Session, point: string): string[] =>
  groundSetsAt(document.system, point).map(([id]) => id);

function elementActs(session: Session, id: ElementId, element: CircuitElement): SketchAct[] {
  const run = (command: Parameters<Session["run"]>[0]) => () => void session.run(command);
  const acts: SketchAct[] = [];
  if ("open" in element) acts.push(...operating(session, id, element));
  if (isConductor(element)) {
    acts.push({
      id: openPhasesOf(element) === "" ? "part" : "rejoin",
      label: openPhasesOf(element) === "" ? t(isLine(element) ? "act.part" : "act.cut") : t("act.rejoin"),
      run: run(openPhasesOf(element) === "" ? edits.open(id) : edits.close(id)),
    });
  }
  if (isLine(element))
    acts.push({
      id: "nearby",
      label: t("grow.nearby"),
      run: run(edits.addElement("nearby", {}, { span: id, relation: "crossing", kvLL: 34.5 })),
    });
  acts.push(...phaseChanges(session, id, element));
  const at = ("from" in element ? element.from : "at" in element ? element.at : undefined) as
    | PointId
    | undefined;
  if (at !== undefined)
    acts.push({
      id: "work",
      label: t("act.work"),
      run: () => workAt(session, at, { does: [id] }),
    });
  if (isMachine(element) || isSupply(element) || isBeside(element)) {
    const [starts, stops] = isMachine(element)
      ? ([t("act.start"), t("act.stop")] as const)
      : ([t("act.turnOn"), t("act.turnOff")] as const);
    acts.push({
      id: element.on ? "off" : "on",
      label: element.on ? stops : starts,
      commits: true,
      run: run(element.on ? edits.turnOff(id) : edits.turnOn(id)),
    });
  }
  if ("position" in element)
    for (const [position, key] of [
      ["utility", "act.toUtility"],
      ["generator", "act.toGenerator"],
      ["off", "act.toOff"],
    ] as const)
      if (element.position !== position)
        acts.push({
          id: position,
          label: t(key),
          commits: true,
          run: run(edits.setPosition(id, position)),
        });
  if ("tagged" in element)
    acts.push({
      id: element.tagged ? "untag" : "tag",
      label: t(element.tagged ? "act.untag" : "act.tag"),
      run: run(element.tagged ? edits.untag(id) : edits.tag(id)),
    });
  if ("blocked" in element)
    acts.push({
      id: element.blocked ? "unblock" : "block",
      label: t(element.blocked ? "act.unblock" : "act.block"),
      run: run(element.blocked ? edits.unblock(id) : edits.block(id)),
    });
  return acts;
}

/** The other phases that the line has where this begins: it goes onto them with all that lies behind it. */
function phaseChanges(session: Session, id: ElementId, element: CircuitElement): SketchAct[] {
  if (!("from" in element) || !/^[ABC]{1,2}$/.test(element.phases)) return [];
  const { phases: there } = growingPointOf(session.document, element.from);
  return ([1, 2] as const)
    .map((by) => ({ by, phases: edits.turnedLetters(element.phases, by) }))
    .filter(({ phases }) => [...phases].every((it) => there.includes(it)))
    .map(({ by, phases }) => ({
      id: `phase-${phases}`,
      label: t("act.phase", { phases }),
      run: () => void changePhase(session, id, by),
    }));
}

async function changePhase(session: Session, id: ElementId, by: 1 | 2) {
  const { onPhase } = await later(() => import("./onPhase"));
  session.run(onPhase(id, by), { offersUndo: true });
}

/** Opening and closing, phase by phase unless the phases move together. */
function operating(
  session: Session,
  id: ElementId,
  element: Extract<CircuitElement, { open: string }>,
): SketchAct[] {
  const open = openPhasesOf(element);
  const isGang = openingOf(element)?.gang ?? element.phases.length === 1;
  const [opens, closes] = isLiftedOff(element)
    ? [t("act.lift"), t("act.attach")]
    : comesAway(element)
      ? [t("act.pull"), t("act.replace")]
      : [t("act.open"), t("act.close")];
  if (isGang || element.phases.length === 1) {
    const isOpen = open !== "";
    return [
      {
        id: isOpen ? "close" : "open",
        label: isOpen ? closes : opens,
        commits: true,
        run: () => void session.run(isOpen ? edits.close(id) : edits.open(id)),
      },
    ];
  }
  const isAllOpen = open === element.phases;
  const all: SketchAct = {
    id: isAllOpen ? "close-all" : "open-all",
    label: t(isAllOpen ? "act.closeAll" : "act.openAll"),
    run: () => void session.run(isAllOpen ? edits.close(id) : edits.open(id)),
  };
  const byPhase = [...element.phases].map((phase): SketchAct => {
    const isOpen = open.includes(phase);
    return {
      id: `${isOpen ? "close" : "open"}-${phase}`,
      label: `${isOpen ? closes : opens} ${phase}`,
      commits: true,
      run: () => void session.run(isOpen ? edits.close(id, phase) : edits.open(id, phase)),
    };
  });
  return [...byPhase, all];
}

/** What can be done with anything. */
function editing(session: Session, commands: SketchCommands): SketchAct[] {
  const by = actsBy(session, commands);
  return [
    ...(session.selection.length === 1 ? [by("details", "details")] : []),
    by("move"),
    by("delete", "trash"),
    by("copy"),
    by("duplicate"),
    { ...by("pin", "pin"), ...(isPinned(session) ? { label: t("act.unpin") } : {}) },
    by("stamp", "stamp"),
    by("piece"),
    ...(session.mode.name === "gather"
      ? [{ id: "done", label: t("act.done"), run: () => (session.mode = SELECTING) }]
      : []),
  ];
}

/** Whether every point that is selected, or at an end of what is, stays where it is. */
const isPinned = ({ document, movingPoints }: Session): boolean =>
  movingPoints.length > 0 &&
  movingPoints.every((id) => completePoint(document.system.points[id as PointId]!).pinned);

/** Pins the points of what is selected; pinned already, they are let go. */
export function togglePin(session: Session) {
  const ids = session.movingPoints;
  session.run(isPinned(session) ? edits.unpin(ids) : edits.pin(ids), { offersUndo: true });
}

/** What the space bar does to the selected thing: its first act that changes the record. */
export const firstAct = (session: Session, commands: SketchCommands): SketchAct | undefined =>
  sketchActsFor(session, commands).find((it) => it.commits === true && it.disabled !== true);
