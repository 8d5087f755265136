import type { Field, Fields } from "../devices";
import type { key, StepKey } from "./keys";

/**
 * What a step does, for whoever asks about steps by their class:
 *
 * - `opens` breaks a path · `closes` makes one · `alters` moves something else that carries current
 * - `marks` hangs or takes off a tag or a block · `guards` covers or secures · `grounds`, `ungrounds` a ground set
 * - `works` puts hands on a conductor
 * - `relies` rests on the section being dead, or finds out whether it is
 * - `looks` stops and finds out how things stand
 * - `arranges` people, paper and radio · `tells` only says or writes: nothing lies between the steps on its two sides
 */
export type StepClass =
  | "opens"
  | "closes"
  | "alters"
  | "marks"
  | "guards"
  | "grounds"
  | "ungrounds"
  | "works"
  | "relies"
  | "looks"
  | "arranges"
  | "tells";

/** Where two people stop before a step, one asking and the other answering from what is there. */
export type HoldKind = "operate" | "test" | "ground" | "work" | "energize";

/** Keys that a verb may take: of those in `keys.ts`. */
export type StepFields = Fields & Readonly<Partial<Record<StepKey, Field<unknown>>>>;

/** What one file of a verb declares: everything that is asked of a step with this verb. */
export interface StepSpec<
  Verb extends string,
  F extends StepFields,
  Does extends StepClass,
  Either extends keyof F,
> {
  readonly verb: Verb;
  /** keys that it takes beside `text` and `done`: reader, schema, notation, forms and the type of the step follow from them */
  readonly fields: F;
  /** keys of which one must be given */
  readonly either?: readonly Either[];
  readonly does: readonly Does[];
  /** the crew stops before it for this; at which of several such steps is for `procedure/rehearsal/holds.ts` */
  readonly hold?: HoldKind;
  /** the verb that takes it back */
  readonly undoneBy?: string;
  /** whether it is done from wherever one stands, not at the thing that it names */
  readonly anywhere?: true;
  /** whether it goes over the radio, between the crew and the system operator */
  readonly byRadio?: true;
  /** whether all there is to see of it is that it was done, so that the sheet asks for no answer */
  readonly plain?: true;
  /**
   * how long it takes where nobody measures it [s]. Round figures for a rehearsal, of no source: they only let what waits
   * for a time happen in the middle of the work.
   */
  readonly seconds?: number;
}

/** Declares one verb. `fields` is the one definition of its keys. */
export const defineStep = <
  const Verb extends string,
  const F extends StepFields,
  const Does extends StepClass,
  const Either extends keyof F = never,
>(
  spec: StepSpec<Verb, F, Does, Either>,
): StepSpec<Verb, F, Does, Either> => spec;

type ValueOf<F> = F extends Field<infer Value> ? Exclude<Value, undefined> : never;
type Needed<F> = { [Key in keyof F]: F[Key] extends { readonly required: true } ? Key : never }[keyof F];

/** The step of one verb as a file has it. A key that the verb does not take is not there. */
export type StepOf<D> =
  D extends StepSpec<infer Verb, infer F, StepClass, infer Either>
    ? { readonly do: Verb } & { readonly [Key in Needed<F>]: ValueOf<F[Key]> } & {
        readonly [Key in Exclude<keyof F, Needed<F>>]?: ValueOf<F[Key]>;
      } & { readonly text?: string; readonly done?: boolean } & {
        readonly [Key in Exclude<keyof typeof key, keyof F | "text" | "done">]?: never;
      } & OneOf<F, Either>
    : never;

type OneOf<F, Either extends keyof F> = [Either] extends [never]
  ? unknown
  : { [Key in Either]: { readonly [Given in Key]: ValueOf<F[Given]> } }[Either];
