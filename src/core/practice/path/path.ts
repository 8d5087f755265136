import { type Level, LEVELS } from "../generate/levels";
import { DRILL_KINDS, type DrillKind } from "../drill/question";
import { boxAfter, type InBox } from "./boxes";
import type { Tried } from "./learner";
import { isAskedAt, type Task, TASKS, TASKS_OF_DRILL } from "./tasks";

/** A scenario of the library as the path needs it. */
export interface PathScenario {
  readonly id: string;
  readonly level: number;
  readonly tasks: readonly string[];
}

/** One thing to do on the path. */
export type PathItem = {
  readonly name: string;
  readonly level: number;
  readonly tasks: readonly string[];
} & (
  | { readonly of: "lesson"; readonly scenario: string }
  | { readonly of: "drill"; readonly kind: DrillKind; readonly level: Level }
  | { readonly of: "scenario"; readonly scenario: string }
);

/** How one thing on the path stands. */
export interface ItemProgress {
  readonly item: PathItem;
  /** it was right once */
  readonly isDone: boolean;
  /** the best of all tries, 0 to 1; nothing where it was never tried */
  readonly best: number | undefined;
  /** where it waits, if it was missed */
  readonly inBox: InBox | undefined;
}

/** How a task of the trade stands. */
export interface TaskProgress {
  readonly task: Task;
  readonly done: number;
  readonly of: number;
  readonly best: number | undefined;
  readonly next: PathItem | undefined;
}

/** All of a path, on a day. */
export interface Path {
  /** what was missed and comes back by this day, the longest wait first */
  readonly due: readonly PathItem[];
  /** what waits for a later day, the nearest first */
  readonly waiting: readonly ItemProgress[];
  /** what comes next: the first thing that was never right */
  readonly next: PathItem | undefined;
  readonly tasks: readonly TaskProgress[];
  readonly items: readonly ItemProgress[];
}

/** The scenario whose answer is played as the first lesson. */
export const FIRST_LESSON = "first-cutout";

/** What a short question of a kind and a level is called on the path. */
export const drillName = (kind: DrillKind, level: Level): string => `drill/${kind}/${level}`;
/** What a scenario of the library is called on the path. */
export const scenarioName = (id: string): string => `scenario/${id}`;
/** What the lesson by a scenario is called on the path. */
export const lessonName = (id: string): string => `lesson/${id}`;

/** Everything that there is to do, in its order: the lesson, then level by level the short questions and the scenarios. */
export function pathItems(library: readonly PathScenario[]): readonly PathItem[] {
  const scenario = ({ id, level, tasks }: PathScenario): PathItem => ({
    of: "scenario",
    name: scenarioName(id),
    scenario: id,
    level,
    tasks,
  });
  const first = library.find(({ id }) => id === FIRST_LESSON);
  return [
    ...(first === undefined
      ? []
      : [{ ...scenario(first), of: "lesson", scenario: first.id, name: lessonName(first.id) } as PathItem]),
    ...LEVELS.flatMap((level) => [
      ...DRILL_KINDS.filter((kind) => isAskedAt(kind, level)).map((kind): PathItem => ({
        of: "drill",
        name: drillName(kind, level),
        kind,
        level,
        tasks: TASKS_OF_DRILL[kind],
      })),
      ...library.filter((it) => it.level === level).map(scenario),
    ]),
  ];
}

/** How a learner stands on a day: what is done, what was best, what is next and what comes back. */
export function pathOn(day: string, tried: readonly Tried[], library: readonly PathScenario[]): Path {
  const items = pathItems(library).map((item) => progressOf(item, tried));
  const waits = items
    .filter(({ inBox }) => inBox !== undefined)
    .sort((a, b) => (a.inBox!.due < b.inBox!.due ? -1 : a.inBox!.due > b.inBox!.due ? 1 : 0));
  return {
    due: waits.filter(({ inBox }) => inBox!.due <= day).map(({ item }) => item),
    waiting: waits.filter(({ inBox }) => inBox!.due > day),
    next: firstUndone(items),
    tasks: TASKS.map((task) => taskProgress(task, items, tried)),
    items,
  };
}

const firstUndone = (items: readonly ItemProgress[]): PathItem | undefined =>
  items.find(({ isDone }) => !isDone)?.item;

function progressOf(item: PathItem, tried: readonly Tried[]): ItemProgress {
  const own = tried.filter((it) => it.item === item.name);
  return {
    item,
    isDone: own.some(({ right }) => right),
    best: bestOf(own.map(({ share }) => share)),
    inBox: boxAfter(own),
  };
}

function taskProgress(task: Task, all: readonly ItemProgress[], tried: readonly Tried[]): TaskProgress {
  const items = all.filter(({ item }) => item.tasks.includes(task));
  const names = new Set(items.map(({ item }) => item.name));
  return {
    task,
    done: items.filter(({ isDone }) => isDone).length,
    of: items.length,
    best: bestOf(
      tried.filter((it) => names.has(it.item)).map(({ share, shares }) => shares?.[task] ?? share),
    ),
    next: firstUndone(items),
  };
}

const bestOf = (shares: readonly number[]): number | undefined =>
  shares.length === 0 ? undefined : Math.max(...shares);
