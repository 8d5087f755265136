import { settingsOf, type StillhotDocument, workPointsOf } from "../../document";
import { assess, type Threat } from "../../hazard";
import { type ElementId, type Message, say, type WorkPointId } from "../../terms";
import { figure, nameOf } from "../job/names";
import { seen } from "../job/seen";
import type { OrderDraft } from "./orderDraft";
import { stateReady } from "./intent";
import type { DeadEnds } from "./search";
import type { Uncontrolled } from "./types";

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
  for (const { source } of ways) add(source, say("plan.control.opens", { source: nameOf(document, source) }));
  for (const { element } of ways.length > 0 ? [] : stuck)
    add(undefined, say("plan.control.breaks", { name: nameOf(document, element) }));
  return found;
}

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
