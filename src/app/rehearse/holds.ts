import {
  type Assessment,
  type Breaking,
  conductorId,
  elementsOfKind,
  holdBefore,
  type HoldKind,
  isolationPoints,
  isTagged,
  jobOf,
  type JobState,
  lettersOf,
  type Message,
  phasesAt,
  type Step,
  type WorkPointId,
} from "../../core";
import { elementName, figures, pointName, t, told } from "../words/words";
import { say } from "../words/catalogue";
import { hotOnStructure } from "./hotOnStructure";

/** One challenge of a hold point, and what the drawing says to it. The killer stands first. */
export interface Challenge {
  readonly id: string;
  readonly asks: string;
  readonly says: string;
}

/** Where the crew stops, and what one asks and the other answers there. */
export interface Hold {
  readonly kind: HoldKind;
  /** names this hold within its run */
  readonly key: string;
  readonly challenges: readonly Challenge[];
}

/**
 * Where two people stop before a step: one asks, the other answers from what is there. Nothing at other steps.
 *
 * @param assessment how the job stands
 * @param breaks currents that the step would break
 * @param run names the run of the job that it is
 */
export function challengesBefore(
  state: JobState,
  assessment: Assessment | undefined,
  step: Step,
  breaks: readonly Breaking[] = [],
  run = "",
): Hold | undefined {
  const kind = holdBefore(state.played, step);
  if (kind === undefined) return undefined;
  const key = `${run} ${kind} ${state.played.length}`;
  return {
    kind,
    key,
    challenges: CHALLENGES[kind].map((id) => ({
      id: `${key} ${id}`,
      asks: t(`challenge.${kind}.${id}` as "challenge.operate.feeds"),
      says: told(answerOf(kind, id, { state, assessment, breaks }, step)),
    })),
  };
}

const CHALLENGES = {
  operate: ["feeds", "device", "breaks", "permit", "loose", "people"],
  test: ["ways", "detector", "place", "reach", "reader"],
  ground: ["tested", "first", "cable", "stick", "clear"],
  work: ["live", "grounds", "tags", "near", "names"],
  energize: ["people", "grounds", "tags", "permit", "away"],
} as const satisfies Record<HoldKind, readonly string[]>;

const drawn = (text: string): Message => say("challenge.drawn", { text });
const looked = say("challenge.look");
const listed = (names: readonly string[]): Message =>
  drawn(names.length === 0 ? t("list.none") : names.join(", "));

interface Asked {
  readonly state: JobState;
  readonly assessment: Assessment | undefined;
  readonly breaks: readonly Breaking[];
}

function answerOf(kind: HoldKind, id: string, { state, assessment, breaks }: Asked, step: Step): Message {
  const { document } = state;
  const grounds = elementsOfKind(document.system, "ground").map(([name, { at }]) =>
    t("challenge.groundAt", { name, place: pointName(document, at) }),
  );
  const isolating = isolationPoints(state).map((it) =>
    t(isTagged(state, it) ? "challenge.tagged" : "challenge.untagged", { name: elementName(document, it) }),
  );
  const tagged = (Object.keys(document.system.elements) as Parameters<typeof isTagged>[1][])
    .filter((it) => isTagged(state, it))
    .map((it) => elementName(document, it));
  switch (`${kind}.${id}`) {
    case "operate.feeds":
    case "work.live":
      if (assessment === undefined) return looked;
      return drawn(
        Object.entries(assessment.workPoints)
          .map(([point, { verdict, threats }]) =>
            t("challenge.verdict", {
              name: jobOf(document).workPoints[point as WorkPointId]?.label ?? point,
              verdict: t(`verdict.${verdict}`),
              count: threats.length,
            }),
          )
          .join("; "),
      );
    case "operate.device":
      return drawn(elementName(document, step.element ?? ""));
    case "operate.breaks": {
      const worst = [...breaks].sort((a, b) => b.amps - a.amps)[0];
      return worst === undefined
        ? drawn(t("challenge.breaksNothing"))
        : drawn(t("challenge.breaksAmps", { amps: figures(worst.amps), limit: figures(worst.limit.amps) }));
    }
    case "operate.permit":
    case "energize.permit":
      return drawn(t(`challenge.permit.${state.permit}`));
    case "test.ways":
      return listed(isolating);
    case "test.detector":
      return drawn(t(`challenge.detector.${state.detector}`));
    case "test.place":
      return step.do === "test"
        ? drawn(`${pointName(document, step.at)} ${phasesAt(document.system, step)}`)
        : looked;
    case "ground.tested": {
      if (step.do !== "ground") return looked;
      const letters = lettersOf(phasesAt(document.system, step));
      const not = letters.filter((it) => !state.tested.has(conductorId(step.at, it)));
      return drawn(
        not.length === 0 ? t("challenge.allTested") : t("challenge.notTested", { phases: not.join(" ") }),
      );
    }
    case "ground.first":
      return drawn(t(step.first === "phase" ? "order.firstPhase" : "order.firstNeutral"));
    case "ground.cable":
      return drawn(step.cable ?? t("inspect.fuseNone"));
    case "work.near": {
      // Of what is not known nobody says that nothing is hot.
      if (assessment === undefined) return looked;
      const hot = hotOnStructure(assessment, state.document, step);
      return drawn(hot === undefined ? t("challenge.noneDrawnHot") : told(hot));
    }
    case "work.grounds":
    case "energize.grounds":
      return listed(grounds);
    case "work.tags":
      return listed(isolating);
    case "energize.tags":
      return listed(tagged);
    case "energize.people":
      return drawn(t(state.allClearRepeated ? "challenge.allClear" : "challenge.noAllClear"));
    default:
      return looked;
  }
}
