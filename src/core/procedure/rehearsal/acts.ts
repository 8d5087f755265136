import {
  type CircuitElement,
  GROUNDING_CABLES,
  isBeside,
  isGroundSet,
  isLiftedOff,
  isMachine,
  isSupply,
  openingOf,
  openPhasesOf,
  partingVerbs,
} from "../../devices";
import {
  complete,
  conductorsOf,
  groundSetsAt,
  jobOf,
  nextGroundId,
  structuresOf,
  workPointsOf,
} from "../../document";
import { cablesWithin, isBarricaded } from "../../hazard";
import {
  isRelying,
  isSwitching,
  SPIKE,
  TRACER,
  type KeysOf,
  type Step,
  stepBy,
  stepOf,
  type StepVerb,
} from "../../steps";
import {
  type ElementId,
  type Message,
  type Owner,
  type PointId,
  say,
  type StructureId,
  type WorkPointId,
} from "../../terms";
import { isTagged } from "../job/isolation";
import { nameOf } from "../job/names";
import { seen } from "../job/seen";
import { toolFor } from "../job/tools";
import { advance } from "./play";
import type { JobState } from "../job/state";

/** Something that can be done next, as a step of the job. */
export interface Act {
  readonly id: string;
  readonly label: Message;
  readonly step: Step;
  /** does something to the line: a larger button */
  readonly commits?: boolean;
}

/**
 * What can be done with a thing as the job stands, the most likely first; with the job itself where there is none.
 *
 * @param noteText what a note says until somebody writes in it
 */
export function actsFor(state: JobState, owner: Owner | undefined, noteText = ""): Act[] {
  if (owner === undefined) return jobActs(state, noteText);
  if (owner.of === "workPoint") {
    const at = jobOf(state.document).workPoints[owner.id]?.at;
    return at === undefined ? [] : pointActs(state, at);
  }
  if (owner.of === "structure") return structureActs(state, owner.id);
  if (owner.of === "point") return pointActs(state, owner.id);
  const saved = state.document.system.elements[owner.id];
  return saved === undefined ? [] : elementActs(state, owner.id, complete(saved));
}

const act = <Verb extends StepVerb>(
  verb: Verb,
  keys: KeysOf<Verb>,
  label: Message = say(`verb.${verb}`),
  id: string = verb,
): Act => {
  const step: Step = stepBy(verb, keys);
  return {
    id,
    label,
    step,
    ...(isSwitching(step) || isRelying(step) || step.do === "unground" ? { commits: true } : {}),
  };
};

/** Work is pressed large only where its point stands grounded. */
function working(state: JobState, id: WorkPointId, label: Message, named: boolean): Act {
  const { commits: _, ...plain } = act("work", { at: id }, label, named ? `work-${id}` : "work");
  const isGrounded = seen(state).workPoints[id]?.verdict === "grounded";
  return isGrounded ? { ...plain, commits: true } : plain;
}

/** Whether the hands can do it as things stand. */
const isPossible = (state: JobState, { step }: Act): boolean => advance(state, step).notDone === undefined;

/** What a pair of verbs does to each phase of a thing: opening what is closed, closing what is open. */
function operating(
  state: JobState,
  id: ElementId,
  element: CircuitElement,
  opens: StepVerb,
  closes: StepVerb,
): Act[] {
  const { phases } = element as { phases: string };
  const isGang = openingOf(element)?.gang ?? false;
  const open = openPhasesOf(element);
  const one = (verb: StepVerb, letters: string, named: boolean): Act =>
    act(
      verb,
      { element: id, ...(isGang ? {} : { phases: letters }), ...withTool(state, verb, element) },
      named ? say("verb.onPhases", { verb: say(`verb.${verb}`), phases: letters }) : say(`verb.${verb}`),
      named ? `${verb}-${letters}` : verb,
    );
  if (isGang || phases.length === 1) return [one(open === "" ? opens : closes, phases, false)];
  const still = [...phases].filter((it) => !open.includes(it)).join("");
  return [
    ...[...phases].map((letter) => one(open.includes(letter) ? closes : opens, letter, true)),
    ...(still.length > 1 ? [one(opens, still, true)] : []),
    ...(open.length > 1 ? [one(closes, open, true)] : []),
  ];
}

/** The tool that fits best of those that the crew has. Joining a lead takes none of those that cut it. */
function withTool({ document }: JobState, verb: StepVerb, element: CircuitElement): Pick<Step, "with"> {
  const tool = verb === "join" ? undefined : toolFor(element, jobOf(document).tools, breaksPath(verb));
  return tool === undefined ? {} : { with: tool };
}

const breaksPath = (verb: StepVerb): boolean => stepOf(verb).does.includes("opens");

function elementActs(state: JobState, id: ElementId, element: CircuitElement): Act[] {
  const acts: Act[] = [];
  const verbs = partingVerbs(element);
  if (isGroundSet(element)) acts.push(act("unground", { element: id, first: "phase" }));
  if (verbs !== undefined) acts.push(...operating(state, id, element, ...verbs));
  if (isMachine(element) || isSupply(element)) acts.push(act(element.on ? "stop" : "start", { element: id }));
  if ("position" in element)
    for (const position of ["utility", "generator", "off"] as const)
      if (element.position !== position)
        acts.push(
          act(
            "set-position",
            { element: id, position },
            say(`verb.position.${position}`),
            `position-${position}`,
          ),
        );
  if ("loose" in element || isLiftedOff(element)) acts.push(act("secure", { element: id }));
  if (isBeside(element)) acts.push(act("ask", { element: id }));
  acts.push(act(isTagged(state, id) ? "untag" : "tag", { element: id }));
  if ("blocked" in element) acts.push(act(element.blocked ? "unblock" : "block", { element: id }));
  if ("removed" in element) {
    const { removed, blown, phases } = element;
    acts.push(
      ...(blown === "" ? [] : [act("refuse", { element: id, phases: blown })]),
      removed === ""
        ? act("remove-barrel", { element: id, phases })
        : act("replace-barrel", { element: id, phases: removed }),
    );
  }
  acts.push(act(state.covered.has(id) ? "uncover" : "cover", { element: id }));
  return acts.filter((it) => isPossible(state, it));
}

/** At a structure with one point whatever is done there; else what is done to all of it. */
function structureActs(state: JobState, id: StructureId): Act[] {
  const points = structuresOf(state.document.system).get(id)?.points ?? [];
  if (points.length === 1) return pointActs(state, points[0]!);
  return [act("inspect", { at: id }), act("barricade", { at: id })].filter((it) => isPossible(state, it));
}

function pointActs(state: JobState, at: PointId): Act[] {
  const { document } = state;
  const letters = conductorsOf(document.system).get(at) ?? [];
  const phases = letters.filter((it) => it !== "N").join("");
  const works = workPointsOf(document).filter(([, it]) => it.at === at);
  const grounds = groundSetsAt(document.system, at).map(([id]) => id);
  const acts: Act[] = [
    ...(phases === ""
      ? []
      : cablesWithin(document.system, at).length > 0
        ? [
            act("test", { at, phases, with: TRACER }, say("verb.trace"), "trace"),
            act("test", { at, phases, with: SPIKE }, say("verb.spike")),
          ]
        : [act("test", { at, phases })]),
    ...grounds.map((id) =>
      act(
        "unground",
        { element: id, first: "phase" },
        say("verb.ungroundNamed", { name: id }),
        `unground-${id}`,
      ),
    ),
    ...(phases === ""
      ? []
      : [
          act("ground", {
            element: nextGroundId(document.system),
            at,
            phases,
            to: letters.includes("N") ? "neutral" : "earth",
            cable: GROUNDING_CABLES[0],
            first: "neutral",
          }),
        ]),
    ...works.map(([id]) => working(state, id, say("verb.work"), works.length > 1)),
    ...(isBarricaded(document.system, state.barricaded, at) ? [] : [act("barricade", { at })]),
    act("inspect", { at }),
    act(state.covered.has(at) ? "uncover" : "cover", { at }),
    act("secure", { at }),
  ];
  return acts.filter((it) => isPossible(state, it));
}

/** What is done or said without a thing in hand, what is due first. */
function jobActs(state: JobState, noteText: string): Act[] {
  const works = workPointsOf(state.document);
  const named = (id: WorkPointId, at: PointId) =>
    works.length > 1
      ? say("verb.workNamed", {
          name: jobOf(state.document).workPoints[id]?.label ?? nameOf(state.document, at),
        })
      : say("verb.work");
  const due: Act[] = [
    ...(state.briefed && state.briefAgain === undefined ? [] : [act("brief", {})]),
    ...(state.permit === "none" || state.permit === "released" ? [act("request-permit", {})] : []),
    ...(state.permit === "requested" ? [act("receive-permit", {})] : []),
    ...(state.unrepeated > 0 ? [act("confirm", {})] : []),
    act("check-detector", {}),
    ...works.map(([id, { at }]) => working(state, id, named(id, at), works.length > 1)),
    act("all-clear", {}),
    act("stand-clear", {}),
    ...(state.permit === "held" ? [act("release-permit", {})] : []),
    act("confirm", {}),
    act("ask", {}),
    act("wait", { seconds: 300 }, say("verb.waitMinutes", { minutes: 5 })),
    act("note", { text: noteText }),
    act("brief", {}),
    act("request-permit", {}),
    act("receive-permit", {}),
  ];
  const taken = new Set<string>();
  return due.filter(({ id }) => !taken.has(id) && taken.add(id));
}
