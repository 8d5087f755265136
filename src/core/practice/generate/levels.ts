/** What a drawing of a level may hold beside its line, its transformers and its customers. */
export type Extra =
  | "portable"
  | "solar"
  | "standby"
  | "banked"
  | "tie"
  | "bank"
  | "capacitor"
  | "loop"
  | "recloser"
  | "regulator"
  | "crossing";

/** 1 is a first day, 5 the hardest of the scenarios, 6 all that stands on one line. */
export type Level = 1 | 2 | 3 | 4 | 5 | 6;

/** Levels that there are, the easiest first. */
export const LEVELS: readonly Level[] = [1, 2, 3, 4, 5, 6];

interface LevelPlan {
  /** of the sideline; none: the transformers hang on the main line */
  readonly phases: 0 | 1 | 3;
  readonly feederPoles: readonly [low: number, high: number];
  readonly sidelinePoles: readonly [low: number, high: number];
  readonly transformers: readonly [low: number, high: number];
  /** how many of the extras */
  readonly extras: number;
  readonly of: readonly Extra[];
}

/** What a drawing of each level has: the fewest and the most of each thing. */
export const LEVEL_PLANS: Readonly<Record<Level, LevelPlan>> = {
  1: {
    phases: 0,
    feederPoles: [1, 3],
    sidelinePoles: [0, 0],
    transformers: [1, 2],
    extras: 0,
    of: [],
  },
  2: {
    phases: 1,
    feederPoles: [1, 2],
    sidelinePoles: [2, 4],
    transformers: [2, 3],
    extras: 1,
    of: ["portable", "banked", "standby", "solar"],
  },
  3: {
    phases: 3,
    feederPoles: [1, 2],
    sidelinePoles: [2, 3],
    transformers: [1, 2],
    extras: 1,
    of: ["tie", "bank", "loop", "capacitor", "standby"],
  },
  4: {
    phases: 3,
    feederPoles: [1, 2],
    sidelinePoles: [2, 4],
    transformers: [2, 2],
    extras: 2,
    of: ["tie", "recloser", "bank", "crossing", "loop", "portable", "banked"],
  },
  5: {
    phases: 3,
    feederPoles: [2, 3],
    sidelinePoles: [3, 4],
    transformers: [2, 3],
    extras: 3,
    of: ["bank", "tie", "regulator", "standby", "recloser", "capacitor", "crossing", "portable"],
  },
  6: {
    phases: 3,
    feederPoles: [2, 3],
    sidelinePoles: [3, 5],
    transformers: [2, 3],
    extras: 5,
    of: [
      "tie",
      "bank",
      "portable",
      "loop",
      "recloser",
      "regulator",
      "standby",
      "crossing",
      "capacitor",
      "banked",
      "solar",
    ],
  },
};
