import { type Attempt, isOver, scoreOf, secondsOf, suspended } from "../../core";

/** The two versions of the standard, as a lesson package names them. */
export type LessonVersion = "1.2" | "2004";

/** The functions that a learning system gives a lesson, by the names of its version, as one. */
export interface RunTime {
  get(element: string): string;
  set(element: string, value: string): void;
  commit(): void;
  end(): void;
}

type Functions = Readonly<Record<string, (...given: string[]) => string>>;

/** Where the interface stands, and how its functions are called. */
const NAMES = {
  "1.2": { api: "API", prefix: "LMS", begin: "LMSInitialize", end: "LMSFinish" },
  "2004": { api: "API_1484_11", prefix: "", begin: "Initialize", end: "Terminate" },
} as const;

/** Frames that are looked through at most. */
const MOST_FRAMES = 500;

/**
 * The interface of the learning system that shows the lesson: in a frame around it, else in the window that opened it or one
 * around that. Nothing is sent anywhere: what a lesson tells goes to that object.
 *
 * @see SCORM 2004 4th edition, run-time environment, 3.3; SCORM 1.2, run-time environment, 3.3
 */
export function findRunTime(version: LessonVersion, from: Window = window): RunTime | undefined {
  const { api, prefix, begin, end } = NAMES[version];
  const found =
    findAround(from, api) ?? (from.opener === null ? undefined : findAround(from.opener as Window, api));
  if (found?.[begin]?.("") !== "true") return undefined;
  const call = (name: string, ...given: string[]) => found[`${prefix}${name}`]?.(...given) ?? "";
  return {
    get: (element) => call("GetValue", element),
    set: (element, value) => void call("SetValue", element, value),
    commit: () => void call("Commit", ""),
    end: () => void found[end]?.(""),
  };
}

function findAround(from: Window, api: string): Functions | undefined {
  let at = from;
  for (let n = 0; n < MOST_FRAMES; n++) {
    // A frame of another origin tells nothing of itself.
    try {
      const found = (at as unknown as Readonly<Record<string, unknown>>)[api];
      if (typeof found === "object" && found !== null) return found as Functions;
    } catch {
      return undefined;
    }
    if (at.parent === at) return undefined;
    at = at.parent;
  }
  return undefined;
}

/** Letters that each version keeps of what a lesson has to remember. */
const MOST_LETTERS: Readonly<Record<LessonVersion, number>> = { "1.2": 4096, "2004": 64_000 };

const two = (value: number): string => String(value).padStart(2, "0");

/** A length of time as each version writes it [s]. */
export function sessionTime(version: LessonVersion, seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  if (version === "2004") return `PT${whole}S`;
  const hours = Math.floor(whole / 3600);
  return `${String(hours).padStart(4, "0")}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}

/** What a lesson says of an attempt: elements of the data model with their values, in the order in which they are set. */
export function toldOf(
  version: LessonVersion,
  attempt: Attempt,
  secondsBefore: number,
): readonly (readonly [element: string, value: string])[] {
  const letters = suspended(attempt);
  const remembered = letters.length <= MOST_LETTERS[version] ? letters : "";
  const { passed, percent, objectives } = scoreOf(attempt);
  const isEnd = isOver(attempt);
  const seconds = secondsOf(attempt) - secondsBefore;
  const shareOf = (earned: number, of: number) => (of === 0 ? 0 : earned / of);
  if (version === "1.2") {
    const status = (isMet: boolean) => (isEnd ? (isMet ? "passed" : "failed") : "incomplete");
    return [
      ["cmi.core.lesson_status", status(passed)],
      ["cmi.core.session_time", sessionTime(version, seconds)],
      ["cmi.core.exit", isEnd ? "" : "suspend"],
      ["cmi.suspend_data", remembered],
      ...(isEnd ? scored("cmi.core.score", percent) : []),
      ...objectives.flatMap(({ id, earned, of, met }, n): [string, string][] => [
        [`cmi.objectives.${n}.id`, id],
        [`cmi.objectives.${n}.status`, status(met)],
        ...(isEnd ? scored(`cmi.objectives.${n}.score`, Math.round(100 * shareOf(earned, of))) : []),
      ]),
    ];
  }
  const completion = isEnd ? "completed" : "incomplete";
  const success = (isMet: boolean) => (isEnd ? (isMet ? "passed" : "failed") : "unknown");
  return [
    ["cmi.completion_status", completion],
    ["cmi.success_status", success(passed)],
    ["cmi.session_time", sessionTime(version, seconds)],
    ["cmi.exit", isEnd ? "normal" : "suspend"],
    ["cmi.suspend_data", remembered],
    ...(isEnd ? [["cmi.score.scaled", String(percent / 100)] as const, ...scored("cmi.score", percent)] : []),
    ...objectives.flatMap(({ id, earned, of, met }, n): [string, string][] => [
      [`cmi.objectives.${n}.id`, id],
      [`cmi.objectives.${n}.success_status`, success(met)],
      [`cmi.objectives.${n}.completion_status`, completion],
      ...(isEnd
        ? ([[`cmi.objectives.${n}.score.scaled`, String(Math.round(100 * shareOf(earned, of)) / 100)]] as [
            string,
            string,
          ][])
        : []),
    ]),
  ];
}

/** Points out of a hundred. */
const scored = (element: string, percent: number): [string, string][] => [
  [`${element}.min`, "0"],
  [`${element}.max`, "100"],
  [`${element}.raw`, String(percent)],
];
