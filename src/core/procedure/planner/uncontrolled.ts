import { conductorNames, settingsOf, type StillhotDocument, workPointsOf } from "../../document";
import { assess, type Threat } from "../../hazard";
import { circuitOf, reachGraphOf } from "../../network";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  type Letter,
  type Message,
  say,
  type WorkPointId,
} from "../../terms";
import { figure, nameOf } from "../job/names";
import { seen } from "../job/seen";
import type { OrderDraft } from "./orderDraft";
import { stateReady, workedOn } from "./intent";
import type { DeadEnds } from "./search";
import type { Uncontrolled } from "./types";
import type { SupplyPath } from "./ways";

/** Threats of ways without anything that opens, each once, and what would open them. */
export function uncontrolledBy(document: StillhotDocument, { ways, stuck }: DeadEnds): Uncontrolled[] {
  const { workPoints } = assess(document);
  const threatsOf = (id: WorkPointId): readonly Threat[] => workPoints[id]!.threats;
  const found: Uncontrolled[] = [];
  const add = (source: ElementId | undefined, control: Message): void => {
    for (const [id] of workPointsOf(document)) {
      const threat =
        threatsOf(id).find((it) => it.source === source && it.strength === 0) ??
        threatsOf(id).find((it) => it.source === source) ??
        threatsOf(id)[0];
      if (threat === undefined) continue;
      if (
        found.some(
          (it) => it.workPoint === id && it.source === threat.source && it.control.key === control.key,
        )
      )
        continue;
      found.push({ ...threat, workPoint: id, control });
    }
  };
  for (const way of ways) add(way.source, whatWouldOpen(document, way));
  for (const { element } of ways.length > 0 ? [] : stuck)
    add(undefined, say("plan.control.breaks", { name: nameOf(document, element) }));
  return found;
}

/** What would open a way: where it leads to a terminal of something that is changed, and not to the work point, that is said. */
function whatWouldOpen(document: StillhotDocument, { source, edges: [first] }: SupplyPath): Message {
  const circuit = circuitOf(document.system);
  const { from, to } = reachGraphOf(circuit);
  const ends = first === undefined ? [] : [from[first], to[first]];
  const beside = workedOn(document).find(
    (id) => !isInHand(document, id) && ends.includes(circuit.nodeOf.get(id) ?? -1),
  );
  const name = nameOf(document, source);
  return beside === undefined
    ? say("plan.control.opens", { source: name })
    : say("plan.control.opens.terminal", { source: name, where: conductorNames(document, [beside]) });
}

const isInHand = (document: StillhotDocument, id: ConductorId): boolean =>
  workPointsOf(document).some(([, { at, conductors }]) =>
    [...conductors].some((letter) => conductorId(at, letter as Letter) === id),
  );

/** Threats that a draft leaves without a control when work begins, by what the rules still find, and what would give one. */
export function stillThreatening(
  document: StillhotDocument,
  { intent, findings }: OrderDraft,
): Uncontrolled[] {
  const { exposureLimitVolts } = settingsOf(document);
  const { workPoints } = seen(stateReady(document, intent));
  const found: Uncontrolled[] = [];
  const add = (isIt: (threat: Threat) => boolean, control: (at: string | Message) => Message): void => {
    for (const [id, { at }] of workPointsOf(document))
      for (const threat of workPoints[id]!.threats.filter(isIt)) {
        if (found.some((it) => it.workPoint === id && isSameThreat(it, threat))) continue;
        found.push({ ...threat, workPoint: id, control: control(nameOf(document, at)) });
      }
  };
  const rulesFound = new Set(findings.map(({ rule }) => rule));
  for (const where of new Set(findings.filter(({ rule }) => rule === "visible-gap").map((it) => it.where)))
    add(
      ({ upsets }) => upsets.some(({ element }) => element === where),
      () => say("plan.control.gap", { name: nameOf(document, where) }),
    );
  if (rulesFound.has("ground-rating")) {
    const most = Math.max(
      0,
      ...Object.values(workPoints).flatMap((it) => it.threats.map(({ groundAmps }) => groundAmps)),
    );
    add(
      ({ groundAmps }) => groundAmps === most,
      (at) => say("plan.control.cable", { amps: figure(most), at }),
    );
  }
  add(
    ({ strength, exposureVolts }) => strength <= 2 && exposureVolts >= exposureLimitVolts,
    (at) => say(rulesFound.has("ground-return") ? "plan.control.neutral" : "plan.control.ground", { at }),
  );
  return found;
}

/** What the same mistakes do to several conductors is one threat. */
const isSameThreat = (a: Threat, b: Threat): boolean => JSON.stringify(a.upsets) === JSON.stringify(b.upsets);
