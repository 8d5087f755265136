import type { StepClass } from "./define";
import { type KeysOf, type Step, type StepBy, stepOf, STEPS, type StepVerb, type VerbThat } from "./list";
import { isHotStick } from "./tools";

/** Asks whether a step is of any of some classes. */
const that =
  <Class extends StepClass>(...classes: readonly Class[]) =>
  (step: Step): step is StepBy<VerbThat<Class>> =>
    stepOf(step.do).does.some((it) => (classes as readonly StepClass[]).includes(it));

/** Steps that break a path. */
export const isOpening = that("opens");
/** Steps that make a path. A barrel that is put back hangs open, so that is none. */
export const isClosing = that("closes");
/** Steps that move something that carries current. After any of them a test proves nothing any more. */
export const isSwitching = that("opens", "closes", "alters");
/** Steps that rest on the section being dead, or find out whether it is. */
export const isRelying = that("relies");
/** Steps that only tell or write something: nothing on the pole changes, and nothing lies between two others. */
export const isTelling = that("tells");
/** Steps by which a crew stops and looks, after a test that showed voltage. */
export const isLooking = that("looks", "tells");
/** Steps by which a thing is operated, marked or grounded: what the crew does to the line apart from the work. */
export const isOperating = that("opens", "closes", "alters", "marks", "grounds", "ungrounds");
/** Steps by which the crew does something to the line: switching, tags and blocks, grounds, covers, work. */
export const isActing = that("opens", "closes", "alters", "marks", "grounds", "ungrounds", "guards", "works");
/** Steps after which a test proves nothing any more. */
export const undoesTests = that("opens", "closes", "alters", "ungrounds");

/** Work by a method of live work: with a stick, or as the step says. Whether the method suits is for `hands-on-live`. */
export const isLiveWork = (step: Step): boolean =>
  step.do === "work" && (isHotStick(step.with) || (step.method ?? "bare") !== "bare");

/** The step of a verb. */
export const stepBy = <Verb extends StepVerb>(verb: Verb, keys: KeysOf<Verb>): StepBy<Verb> =>
  ({ do: verb, ...(keys as object) }) as unknown as StepBy<Verb>;

/** Keys without which a verb means nothing: each entry is a choice of keys, one of which must be given. */
export function needsOf(verb: StepVerb): readonly (readonly string[])[] {
  const { fields, either } = stepOf(verb);
  const needed = Object.entries(fields).filter(([, { required }]) => required);
  return [...needed.map(([key]) => [key]), ...(either === undefined ? [] : [either])];
}

/** Whether a verb takes a key. */
export const takes = (verb: StepVerb, key: string): boolean =>
  key === "text" || key === "done" || Object.hasOwn(stepOf(verb).fields, key);

/** Whether the `at` of a verb may name a structure as well as a point. */
export const takesStructure = (verb: StepVerb): boolean => "orStructure" in (stepOf(verb).fields.at ?? {});

/** Verbs of which something holds, in their order. */
export const verbsWith = (holds: (it: ReturnType<typeof stepOf>) => boolean): readonly StepVerb[] =>
  STEPS.map(({ verb }) => stepOf(verb))
    .filter(holds)
    .map(({ verb }) => verb);
