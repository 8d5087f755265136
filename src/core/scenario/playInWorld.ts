import { deviceOf } from "../devices";
import {
  amended,
  jobOf,
  listOf,
  nameIn,
  nameOnStructure,
  nextGroundId,
  type SavedElement,
  scenarioOf,
  type Step,
  type StillhotDocument,
  structureOf,
} from "../document";
import { isOpening, isSwitching } from "../steps";
import { type Consequence, type JobState, play, seen } from "../procedure";
import { phasesOf } from "../procedure/job/positions";
import { documentAfter } from "../procedure/job/standing";
import { findingsAtEnd } from "../procedure/rules";
import { type ElementId, type JsonObject, type Message, say } from "../terms";
import { factsOf } from "./truth";
import type { EntryResult, LoggedVerdict } from "./log";
import {
  elementIn,
  factsShownBy,
  knowing,
  looking,
  placesOf,
  revealsBy,
  stuckPhases,
  withinReach,
  type World,
} from "./world";

/** What an action made of the world, what it showed, and what somebody else said to it. */
export interface Played {
  readonly world: World;
  readonly result: EntryResult;
  readonly answers?: readonly { readonly verb: string; readonly text: Message }[];
}

/** Keys of a record that somebody sees who has a stick on the thing. */
const POSITION_KEYS = ["open", "removed", "blown", "cut", "parted", "position", "on", "tagged", "blocked"];

/** Plays one step of the job: against the truth for what happens, on the map for what the apprentice believes. */
export function playInWorld(document: StillhotDocument, world: World, asked: Step, entry: number): Played {
  const hindrance = hindranceOf(document, world, asked);
  const tried = asked.element === undefined ? world.tried : new Set([...world.tried, asked.element]);
  const counted: World = { ...world, tried, steps: world.steps + 1 };
  if (hindrance !== undefined) {
    const shows = factsShownBy(document, counted, asked, false);
    const after = knowing(document, counted, shows, entry, "seen");
    return {
      world: after,
      result: {
        done: false,
        shown: [hindrance, ...factTexts(document, shows)],
        ...(shows.length === 0 ? {} : { reveals: shows }),
        ...verdicts(after),
      },
    };
  }
  const step = withGroundId(world, asked);
  const truth = playTruth(document, counted.truth, step);
  const known = play(counted.known, step);
  const isDone = truth.state.notDone === undefined;
  const believed = believedAfter(counted.known, known.state, truth.state, step, truth.isFused);
  let after: World = { ...counted, truth: truth.state, known: believed, at: counted.at };
  if (step.do === "inspect" && step.at !== undefined) after = looking(after, step.at);
  const shows = factsShownBy(document, after, step, isDone);
  const by = step.do === "ask" ? "told" : "seen";
  const told = revealsBy(document, after, step).map(({ text }) => say("scenario.text", { text }));
  after = knowing(document, after, shows, entry, by);
  const isAsking = step.do === "ask";
  const answers = answersTo(document, counted.truth, step, told);
  return {
    world: after,
    result: {
      done: isDone,
      shown: [
        ...(truth.consequence.text.key === "consequence.none" ? [] : [truth.consequence.text]),
        ...(isAsking ? [] : told),
        ...factTexts(document, shows),
        ...(step.do === "inspect" ? whatIsSeen(after, step.at) : []),
      ],
      findings: truth.findings,
      coached: known.findings,
      consequence: truth.consequence,
      ...(shows.length === 0 ? {} : { reveals: shows }),
      ...verdicts(after),
    },
    ...(answers.length === 0 ? {} : { answers }),
  };
}

/** What stands before somebody's eyes, which is said also where nothing of it is news. */
function whatIsSeen({ known: { document } }: World, place: string | undefined): Message[] {
  const { system } = document;
  const reach = place === undefined ? [] : withinReach(system, place);
  const things = Object.keys(system.elements).filter((id) =>
    placesOf(system, id).some((it) => reach.includes(it)),
  );
  if (things.length === 0) return [];
  const here = place === undefined ? undefined : structureOf(system, place)?.id;
  const list = things.map((id) => {
    const { open } = system.elements[id as ElementId] as { readonly open?: string };
    const isHere = structureOf(system, id)?.id === here;
    const name = isHere ? nameOnStructure(document, id) : nameIn(document, id);
    return typeof open === "string" && open !== "" ? say("attempt.seesOpen", { name, phases: open }) : name;
  });
  return [say("attempt.looked", { list: listOf(list) })];
}

const factTexts = (document: StillhotDocument, ids: readonly string[]): Message[] =>
  ids.flatMap((id) => {
    const fact = factsOf(document).get(id);
    const text = fact !== undefined && "text" in fact && fact.text !== undefined ? fact.text : fact?.label;
    return text === undefined ? [] : [say("scenario.text", { text })];
  });

/** What keeps the hands, or the operator, from doing this at all. */
function hindranceOf(document: StillhotDocument, world: World, step: Step): Message | undefined {
  const { tools } = jobOf(document);
  const isTool = isSwitching(step) && step.with !== undefined && step.with !== "";
  if (isTool && tools.length > 0 && !tools.includes(step.with))
    return say("attempt.noTool", { tool: step.with });
  if (step.do === "receive-permit" && world.truth.permit !== "requested") return say("attempt.noPermitAsked");
  if (step.do === "confirm" && step.text !== undefined && world.truth.unrepeated > 0) {
    if (step.text.trim() === "") return say("attempt.repeatNothing");
    const missing = (scenarioOf(document).operator?.repeat ?? []).filter(
      (it) => !step.text!.toLowerCase().includes(it.toLowerCase()),
    );
    if (missing.length > 0) return say("attempt.repeatAgain", { missing: missing.join(", ") });
  }
  if (!isSwitching(step)) return undefined;
  const seized = stuckPhases(document, "seized", step.element);
  const element = elementIn(world.truth.document.system, step.element);
  if (seized === "" || element === undefined) return undefined;
  const phases = [...phasesOf(element, step)].filter((it) => seized.includes(it)).join("");
  const { label } = element as { label?: string };
  return phases === "" ? undefined : say("attempt.seized", { name: label || step.element, phases });
}

/** A ground set has the same id in truth and on the map, also where a set hangs that nobody knows of. */
function withGroundId({ truth, known }: World, step: Step): Step {
  if (step.do !== "ground" || step.element !== undefined) return step;
  const isTaken = (id: string) => Object.hasOwn(known.document.system.elements, id);
  return { ...step, element: nextGroundId(truth.document.system, isTaken) };
}

interface TruthPlayed extends Pick<ReturnType<typeof play>, "state" | "findings" | "consequence"> {
  /** the handle moved and some contacts did not */
  readonly isFused: boolean;
}

/** The step as it truly goes: contacts that are fused stay closed though the handle moves. */
function playTruth(document: StillhotDocument, truth: JobState, step: Step): TruthPlayed {
  const fused = stuckPhases(document, "fused", step.element);
  const element = elementIn(truth.document.system, step.element);
  if (fused === "" || element === undefined || !isOpening(step))
    return { ...play(truth, step), isFused: false };
  const phases = phasesOf(element, step);
  const moving = [...phases].filter((it) => !fused.includes(it)).join("");
  if (moving === phases) return { ...play(truth, step), isFused: false };
  const loose = ungang(truth, step.element);
  if (moving !== "") return { ...play(loose, { ...step, phases: moving }), isFused: true };
  const consequence: Consequence = {
    kind: "none",
    amps: 0,
    volts: 0,
    text: say("attempt.handleMoves", { name: nameIn(truth.document, step.element) }),
  };
  const noted = play(loose, { do: "note", text: "" });
  return { state: noted.state, findings: [], consequence, isFused: true };
}

/** A gang of which one blade stays behind is a gang no more. */
function ungang(truth: JobState, id: string): JobState {
  const { document } = truth;
  const saved: SavedElement = document.system.elements[id as ElementId]!;
  if (!("gang" in deviceOf(saved.kind).fields)) return truth;
  const system = amended(document.system, [{ set: { [id]: { gang: false } } }]);
  return { ...truth, document: { ...document, system } };
}

/** The job as the apprentice takes it to stand: as the map has it, and what hands and detector have told. */
function believedAfter(
  before: JobState,
  after: JobState,
  truth: JobState,
  step: Step,
  isFused: boolean,
): JobState {
  const isDone = truth.notDone === undefined;
  let document = isDone ? after.document : before.document;
  const real =
    step.element === undefined
      ? undefined
      : (truth.document.system.elements as Readonly<Record<string, SavedElement>>)[step.element];
  const drawn =
    step.element === undefined
      ? undefined
      : (document.system.elements as Readonly<Record<string, SavedElement>>)[step.element];
  if (real !== undefined && drawn !== undefined && !isFused && real.kind === drawn.kind) {
    const keys = POSITION_KEYS.filter((key) => JSON.stringify(real[key]) !== JSON.stringify(drawn[key]));
    const set: JsonObject = Object.fromEntries(keys.map((key) => [key, real[key] ?? null]));
    if (keys.length > 0)
      document = documentAfter(after, amended(document.system, [{ set: { [step.element!]: set } }]));
  }
  return {
    ...after,
    document,
    tested: truth.tested,
    readings: truth.readings,
    shownLive: truth.shownLive,
    briefAgain: truth.briefAgain,
    notDone: truth.notDone,
  };
}

/** What the system operator says. */
function answersTo(
  document: StillhotDocument,
  before: JobState,
  step: Step,
  told: readonly Message[],
): NonNullable<Played["answers"]>[number][] {
  const { permit } = scenarioOf(document).operator ?? {};
  switch (step.do) {
    case "request-permit":
      return [{ verb: "heard", text: say("operator.heard") }];
    case "receive-permit":
      return [
        {
          verb: "permit",
          text: permit === undefined ? say("operator.permit") : say("scenario.text", { text: permit }),
        },
      ];
    case "confirm":
      return before.unrepeated === 0 ? [] : [{ verb: "correct", text: say("operator.correct") }];
    case "release-permit":
      return [{ verb: "released", text: say("operator.released") }];
    case "ask":
      return told.length === 0
        ? [{ verb: "answer", text: say("operator.nothing") }]
        : told.map((text) => ({ verb: "answer", text }));
    default:
      return [];
  }
}

/** How the work points stand, in truth and as believed. */
export const verdicts = ({ truth, known }: World): Pick<EntryResult, "workPoints" | "believed"> => ({
  workPoints: verdictsOf(truth),
  believed: verdictsOf(known),
});

function verdictsOf(job: JobState): Record<string, LoggedVerdict> {
  return Object.fromEntries(
    Object.entries(seen(job).workPoints).map(
      ([id, { verdict, margin, threats }]): [string, LoggedVerdict] => {
        const least = Math.min(...threats.map(({ strength }) => strength));
        const pressing = threats.filter(({ strength }) => strength === least);
        return [
          id,
          {
            verdict,
            margin,
            exposureVolts: Math.max(0, ...pressing.map(({ exposureVolts }) => exposureVolts)),
          },
        ];
      },
    ),
  );
}

/** What is wrong when somebody says that the job is done, and whether the line is in service. */
export function endOf(job: JobState): { findings: ReturnType<typeof findingsAtEnd>; restored: boolean } {
  const findings = findingsAtEnd(job);
  return { findings, restored: !findings.some(({ rule }) => rule === "left-behind") };
}
