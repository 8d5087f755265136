import { MOST_CONTROLS, MOST_THREATS } from "../tolerances";
import {
  type CircuitElement,
  isConductor,
  isSupply,
  isTransformer,
  lowSidesOf,
  openPhasesOf,
} from "../../devices";
import {
  complete,
  conductorsOf,
  elementsOfKind,
  groundSetsAt,
  jobOf,
  savedElement,
  settingsOf,
  type Step,
} from "../../document";
import { isOpening } from "../../steps";
import {
  type Assessment,
  type Threat,
  type Upset,
  type Verdict,
  closes,
  startsDrawn,
  startsUnknown,
} from "../../hazard";
import {
  conductorId,
  type ElementId,
  type Letter,
  type Message,
  type Owner,
  type PointId,
  type WorkPointId,
} from "../../terms";
import { actsFor } from "./acts";
import { consequenceOf, isHarm } from "../effects/consequence";
import { advance } from "./play";
import { seen } from "../job/seen";
import type { JobState } from "../job/state";

/** Some acts, or one fact to find out, that could take a threat away. */
export interface Control {
  readonly id: string;
  readonly steps: readonly Step[];
  /** a customer of whom it would have to be known that no generator stands there */
  readonly fact?: ElementId;
}

/** How a work point stands when something has been done. */
export interface ControlEffect {
  readonly verdict: Verdict;
  readonly margin: number | null;
}

/** A control that was tried on a copy, with what came of it. */
export interface TriedControl extends Control {
  /** for the whole work point, with everything that is ticked */
  readonly effect: ControlEffect;
  /** what must then go wrong before this threat passes the limit; null where nothing up to three things does */
  readonly strength: number | null;
  /** the most that a worker on the bonded pole would then feel of it [V] */
  readonly exposureVolts: number;
  readonly customersOut: number;
  /** what doing it would bring about, where that is an arc, a fault or a shock */
  readonly harm?: Message;
}

/** A threat with the controls that could be put against it. */
export interface ControlledThreat {
  readonly threat: Threat;
  /** with what is ticked */
  readonly strength: number | null;
  /** best first */
  readonly controls: readonly TriedControl[];
}

/** How a work point stands before and with the controls that are ticked. */
export interface ControlSheet {
  readonly before: ControlEffect;
  /** with what is ticked */
  readonly now: ControlEffect;
  readonly steps: readonly Step[];
  readonly threats: readonly ControlledThreat[];
  /** threats that are not listed */
  readonly more: number;
}

/**
 * What would take each threat to a work point away, tried one by one on top of what is ticked. An act that itself arcs,
 * faults or shocks as things stand, such as a ground on what is live, is no control: it is offered once it can be done.
 */
export function controlsFor(
  state: JobState,
  workPoint: WorkPointId,
  ticked: readonly string[],
): ControlSheet | undefined {
  const report = seen(state).workPoints[workPoint];
  if (report === undefined) return undefined;
  const known = new Map<string, Control>();
  const ofThreat = report.threats.slice(0, MOST_THREATS).map((threat) => {
    const controls = candidatesFor(state, workPoint, threat);
    for (const control of controls) known.set(control.id, control);
    return { threat, controls };
  });
  const chosen = ticked.flatMap((id) => known.get(id) ?? []);
  const done = tryOut(state, chosen);
  const after = done.state;
  const supplied = customersSupplied(seen(state), state);
  const tried = new Map<string, Trial & { readonly customersOut: number }>();
  const trial = (control: Control) => {
    const known = tried.get(control.id);
    if (known !== undefined) return known;
    const { state: then, harms } = ticked.includes(control.id) ? done : tryOut(after, [control]);
    const fresh = { state: then, harms, customersOut: supplied - customersSupplied(seen(then), then) };
    tried.set(control.id, fresh);
    return fresh;
  };
  return {
    before: effectOn(state, workPoint),
    now: effectOn(after, workPoint),
    steps: chosen.flatMap((it) => it.steps),
    more: Math.max(0, report.threats.length - MOST_THREATS),
    threats: ofThreat.map(({ threat, controls }) => ({
      threat,
      strength: strengthOf(threat, after, workPoint),
      controls: controls
        .map((control): TriedControl => {
          const { state: then, harms, customersOut } = trial(control);
          const harm = harms.get(control.id);
          return {
            ...control,
            effect: effectOn(then, workPoint),
            strength: strengthOf(threat, then, workPoint),
            exposureVolts: exposureOf(threat, then, workPoint),
            customersOut,
            ...(harm === undefined ? {} : { harm }),
          };
        })
        .filter(
          (it) => ticked.includes(it.id) || (it.harm === undefined && (it.strength ?? 4) > threat.strength),
        )
        .sort(byWorth)
        // What was ticked stays in sight, or it could not be unticked.
        .filter((it, rank) => rank < MOST_CONTROLS || ticked.includes(it.id)),
    })),
  };
}

/** The threat gone first, then the largest margin, then the fewest customers out, then the fewest acts. */
const byWorth = (a: TriedControl, b: TriedControl): number =>
  (b.strength ?? 4) - (a.strength ?? 4) ||
  (b.effect.margin ?? 4) - (a.effect.margin ?? 4) ||
  a.customersOut - b.customersOut ||
  a.steps.length - b.steps.length;

function effectOn(state: JobState, workPoint: WorkPointId): ControlEffect {
  const { verdict, margin } = seen(state).workPoints[workPoint]!;
  return { verdict, margin };
}

/** The least strength at which what made this threat, with or without more, still passes the limit. */
function strengthOf(threat: Threat, state: JobState, workPoint: WorkPointId): number | null {
  const { exposureLimitVolts } = settingsOf(state.document);
  const left = remnantsOf(threat, state, workPoint).filter((it) => it.exposureVolts >= exposureLimitVolts);
  return left.length === 0 ? null : Math.min(...left.map((it) => it.strength));
}

const exposureOf = (threat: Threat, state: JobState, workPoint: WorkPointId): number =>
  Math.max(0, ...remnantsOf(threat, state, workPoint).map((it) => it.exposureVolts));

/** Threats in which what made this one takes part. */
const remnantsOf = ({ conductor, upsets }: Threat, state: JobState, workPoint: WorkPointId): Threat[] =>
  seen(state).workPoints[workPoint]!.threats.filter(
    (it) =>
      it.conductor === conductor && upsets.every((one) => it.upsets.some((other) => isSameUpset(one, other))),
  );

const isSameUpset = (a: Upset, b: Upset): boolean => a.element === b.element && a.phase === b.phase;

/** How the job stands once some controls were tried, and which of them brought harm about. */
interface Trial {
  readonly state: JobState;
  readonly harms: ReadonlyMap<string, Message>;
}

function tryOut(start: JobState, controls: readonly Control[]): Trial {
  const harms = new Map<string, Message>();
  let state = start;
  for (const { id, steps, fact } of controls) {
    for (const step of steps) {
      const before = state;
      state = advance(before, step);
      const consequence = consequenceOf(step, before, state);
      if (isHarm(consequence)) harms.set(id, consequence.text);
    }
    if (fact !== undefined) state = withoutGenerator(state, fact);
  }
  return { state, harms };
}

/** The drawing as if it were known that nobody at a load owns a generator: for a try, never for a plan. */
function withoutGenerator(state: JobState, load: ElementId): JobState {
  const { document } = state;
  const saved = document.system.elements[load];
  if (saved === undefined) return state;
  const elements = { ...document.system.elements, [load]: { ...saved, customers: 0 } };
  return { ...state, document: { ...document, system: { ...document.system, elements } } };
}

function customersSupplied({ conductors }: Assessment, { asFound }: JobState): number {
  let count = 0;
  for (const [, it] of elementsOfKind(asFound.system, "load")) {
    const isSupplied = [...it.phases].some((letter) => {
      const state = conductors[conductorId(it.at, letter as Letter)]?.state;
      return state === "energized" || state === "backfed";
    });
    if (isSupplied) count += it.customers;
  }
  return count;
}

function candidatesFor(state: JobState, workPoint: WorkPointId, { upsets, path }: Threat): Control[] {
  const { system } = state.document;
  const found = new Map<string, Control>();
  const add = (steps: readonly Step[], fact?: ElementId) => {
    if (steps.length === 0) return;
    const id = JSON.stringify([steps, fact ?? ""]);
    found.set(id, { id, steps, ...(fact === undefined ? {} : { fact }) });
  };
  for (const upset of upsets) {
    const { element } = upset;
    if (closes(upset)) {
      const tag = stepOf(state, element, "tag");
      const block = stepOf(state, element, "block");
      add(tag);
      add(block);
      if (tag.length > 0) add([...tag, ...block]);
    }
    if (startsUnknown(upset)) {
      const at = savedElement(system.elements, element)!["at"] as PointId;
      add([{ do: "inspect", at }], element);
    }
    if (startsDrawn(upset)) add(stepOf(state, element, "stop"));
  }
  for (const id of path) {
    const saved = system.elements[id];
    if (saved === undefined) continue;
    const element: CircuitElement = complete(saved);
    if (isTransformer(element)) for (const { at } of lowSidesOf(element)) add(groundAt(state, at));
    if (isConductor(element) || isSupply(element)) continue;
    if (openPhasesOf(element) !== "") continue;
    const open = actsFor(state, { of: "element", id })
      .filter(({ step }) => isOpening(step))
      .at(-1)?.step;
    if (open === undefined) continue;
    const tag = stepOf(state, id, "tag");
    const block = stepOf(state, id, "block");
    add([open]);
    add([open, ...tag]);
    add([open, ...block, ...tag]);
  }
  const at = jobOf(state.document).workPoints[workPoint]?.at;
  if (at !== undefined) add(groundAt(state, at));
  return [...found.values()];
}

/** One act on a thing, where the hands can do it. */
const stepOf = (state: JobState, id: ElementId, verb: Step["do"]): Step[] =>
  actsFor(state, { of: "element", id })
    .filter(({ step }) => step.do === verb)
    .map(({ step }) => step);

/** A ground set at a point that has none: on its conductors, to its neutral. */
function groundAt(state: JobState, at: string): Step[] {
  const { system } = state.document;
  if (groundSetsAt(system, at).length > 0 || (conductorsOf(system).get(at) ?? []).length === 0) return [];
  return actsFor(state, { of: "point", id: at } as Owner)
    .filter(({ step }) => step.do === "ground")
    .map(({ step }) => step);
}
