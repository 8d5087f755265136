import { allClear } from "./allClear";
import { ask } from "./ask";
import { barricade } from "./barricade";
import { brief } from "./brief";
import { checkDetector } from "./checkDetector";
import { confirm } from "./confirm";
import { cover, uncover } from "./cover";
import { cut, join } from "./cut";
import type { StepClass, StepFields, StepOf, StepSpec } from "./define";
import { ground, unground } from "./ground";
import { handOver } from "./handOver";
import { inspect } from "./inspect";
import { attach, lift } from "./lift";
import { note } from "./note";
import { close, open } from "./open";
import { receivePermit, releasePermit, requestPermit } from "./permit";
import { pull, replace } from "./pull";
import { refuse } from "./refuse";
import { removeBarrel, replaceBarrel } from "./barrel";
import { secure } from "./secure";
import { setPosition } from "./setPosition";
import { standClear } from "./standClear";
import { start, stop } from "./start";
import { block, unblock } from "./block";
import { tag, untag } from "./tag";
import { test } from "./test";
import { wait } from "./wait";
import { work } from "./work";

/** Every verb. A new one is its file and a line here. */
export const STEPS = [
  brief,
  requestPermit,
  receivePermit,
  open,
  close,
  lift,
  attach,
  cut,
  tag,
  untag,
  block,
  unblock,
  checkDetector,
  test,
  ground,
  unground,
  pull,
  replace,
  cover,
  uncover,
  inspect,
  barricade,
  secure,
  ask,
  join,
  refuse,
  removeBarrel,
  replaceBarrel,
  setPosition,
  start,
  stop,
  wait,
  work,
  allClear,
  confirm,
  standClear,
  releasePermit,
  handOver,
  note,
] as const;

type Definition = (typeof STEPS)[number];

/** The name of a verb, as `do` of a step has it. */
export type StepVerb = Definition["verb"];

/** Every verb, in the order of the list. */
export const STEP_VERBS = STEPS.map(({ verb }) => verb) as readonly StepVerb[];

/** One step of a job, as saved. Narrow it by `do`. */
export type Step = StepOf<Definition>;
/** The step of one verb, or of any of some verbs. */
export type StepBy<Verb extends StepVerb> = Extract<Step, { readonly do: Verb }>;
/** What a step of a verb says beside it. */
export type KeysOf<Verb extends StepVerb> =
  StepBy<Verb> extends infer S ? (S extends Step ? Omit<S, "do"> : never) : never;
/** The verbs of a class. */
export type VerbThat<Class extends StepClass> = ClassedVerb<Definition, Class>;
type ClassedVerb<D, Class> = D extends { readonly verb: infer Verb; readonly does: readonly (infer Does)[] }
  ? Extract<Class, Does> extends never
    ? never
    : Verb
  : never;

/** A verb as all of them answer. */
export type AnyStep = StepSpec<StepVerb, StepFields, StepClass, string>;

const BY_VERB = new Map<string, AnyStep>(STEPS.map((it) => [it.verb, it]));

/** @throws where there is no such verb, which the reader does not let in */
export const stepOf = (verb: StepVerb): AnyStep => BY_VERB.get(verb)!;
