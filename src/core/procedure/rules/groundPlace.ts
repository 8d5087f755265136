import { MOST_PLACES, MOST_STRENGTH_HELD } from "../tolerances";
import {
  elementsOfKind,
  jobOf,
  pointsOnStructure,
  type SavedElement,
  settingsOf,
  type StillhotDocument,
  type WorkPoint,
} from "../../document";
import { conductorsOf, nextGroundId } from "../../document";
import { assess, type Threat, toldVolts } from "../../hazard";
import { endsOf } from "../../network";
import { citationOf } from "../../reference";
import { type PointId, type WorkPointId } from "../../terms";
import { say } from "./say";
import { elementOf, figure, nameOf } from "../job/names";
import { defineRule } from "./rule";
import { seen } from "../job/seen";
import { threatWords } from "../job/threatWords";
import { isLiveWork } from "../../steps";

/** Grounds stand where they keep the worker's exposure under the limit. Says where one more would be enough. */
export const groundPlace = defineRule({
  id: "ground-place",
  severity: "danger",
  citation: citationOf("n3-epz"),
  check(step, _before, after) {
    if (step.do !== "work" || isLiveWork(step)) return undefined;
    const { document } = after;
    const id = step.at;
    const workPoint = jobOf(document).workPoints[id];
    const hasGround = elementsOfKind(document.system, "ground").length > 0;
    if (workPoint === undefined || !hasGround) return undefined;
    const worst = overLimit(document, seen(after).workPoints[id]?.threats ?? []);
    if (worst === undefined) return undefined;
    const enough = placesFor(document, workPoint, worst).find(
      (point) => overLimit(document, threatsWithGround(document, id, point)) === undefined,
    );
    return {
      where: id,
      message: say("rule.ground-place", {
        threat: threatWords(document, worst),
        exposure: toldVolts(document.system, worst.exposureVolts, figure),
        limit: settingsOf(document).exposureLimitVolts,
      }),
      help:
        enough === undefined
          ? say("rule.ground-place.none")
          : say("rule.ground-place.help", { place: nameOf(document, enough) }),
    };
  },
});

/** The threat with the highest exposure, if that is over the limit. */
function overLimit(document: StillhotDocument, threats: readonly Threat[]): Threat | undefined {
  const { exposureLimitVolts } = settingsOf(document);
  return threats
    .filter((it) => it.strength <= MOST_STRENGTH_HELD && it.exposureVolts >= exposureLimitVolts)
    .sort((a, b) => b.exposureVolts - a.exposureVolts)[0];
}

/** Where a ground could go: the work point itself, its pole, then along the way that the volts come. */
function placesFor({ system }: StillhotDocument, { at }: WorkPoint, { path }: Threat): PointId[] {
  const along = path.toReversed().flatMap((id) => {
    const element = elementOf(system, id);
    return element === undefined ? [] : endsOf(element).map(([, point]) => point);
  });
  return [...new Set([at, ...pointsOnStructure(system, at), ...along])].slice(0, MOST_PLACES);
}

function threatsWithGround(document: StillhotDocument, id: WorkPointId, point: PointId): readonly Threat[] {
  const { system } = document;
  const letters = conductorsOf(system).get(point) ?? [];
  const phases = letters.filter((it) => it !== "N").join("");
  if (phases === "" || !letters.includes("N")) return [FELT_STILL];
  const set = { kind: "ground", at: point, phases, cable: "4/0" } as SavedElement;
  const elements = { ...system.elements, [nextGroundId(system)]: set };
  return assess({ ...document, system: { ...system, elements } }).workPoints[id]?.threats ?? [];
}

/** Stands for a place where no ground can go. */
const FELT_STILL = { strength: 0, exposureVolts: Infinity } as Threat;
