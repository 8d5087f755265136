import type { DrillKind } from "../drill/question";
import type { Level } from "../generate/levels";

/** What an apprentice must be able to do, by the keys and in the order of docs/training-coverage.md. */
export const TASKS = [
  "tools",
  "identify",
  "operate",
  "orders",
  "verify",
  "reconfigure",
  "energize",
  "hazards",
  "practice",
  "open-and-ground",
  "live-parts",
  "grounds-and-tags",
  "clearance",
  "backfeed",
  "plan",
] as const;

/** One of those. */
export type Task = (typeof TASKS)[number];

/** The tasks that each kind of short question is about. */
export const TASKS_OF_DRILL: Readonly<Record<DrillKind, readonly Task[]>> = {
  live: ["hazards", "live-parts"],
  "one-wrong": ["backfeed", "hazards"],
  detector: ["verify", "open-and-ground"],
  tool: ["tools", "operate"],
  ground: ["grounds-and-tags", "open-and-ground"],
  order: ["plan", "clearance", "energize"],
  mistake: ["practice", "grounds-and-tags", "clearance"],
  look: ["identify", "verify"],
};

/** The level from which a kind is asked on the path, where it is not the first: simpler drawings seldom have such a question. */
const ASKED_FROM: Readonly<Partial<Record<DrillKind, Level>>> = { look: 2 };

/** Whether short questions of a kind are asked of drawings of a level. */
export const isAskedAt = (kind: DrillKind, level: Level): boolean => level >= (ASKED_FROM[kind] ?? 1);
