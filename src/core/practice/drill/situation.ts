import { canGoOff, handlingOf } from "../../devices";
import { complete, jobOf, perObject, type Step, type StillhotDocument, type WorkPoint } from "../../document";
import { beginJob, type JobState, plan, play } from "../../procedure";
import { isOpening } from "../../steps";
import { type ElementId, lettersOf, type WorkPointId } from "../../terms";
import type { Chance } from "../generate/chance";

/** Steps of a clean order for the drawing's own job; none where there is none. */
export const orderFor: (document: StillhotDocument) => readonly Step[] = perObject(
  (document: StillhotDocument) => {
    const { ok, steps } = plan(document, { alternatives: false });
    return ok ? steps.map(({ why: _why, ...step }): Step => step) : [];
  },
);

/** How the job stands before the first step that is so, and the steps up to there. */
export function before(
  document: StillhotDocument,
  isSo: (step: Step) => boolean,
): { readonly state: JobState; readonly steps: readonly Step[] } | undefined {
  const steps = orderFor(document);
  const at = steps.findIndex(isSo);
  if (at === -1) return undefined;
  const played = steps.slice(0, at);
  return {
    state: played.reduce((state, step) => play(state, step).state, beginJob(document)),
    steps: played,
  };
}

/** The drawing with what the order opens opened, and nothing else done: no tag, no block, no ground. */
export function opened(document: StillhotDocument): StillhotDocument | undefined {
  const opening = orderFor(document).slice(0, firstWork(document)).filter(isOpening);
  if (opening.length === 0) return undefined;
  const { document: after } = opening.reduce((state, step) => play(state, step).state, beginJob(document));
  return { ...after, job: document.job! };
}

/** Which step of the drawing's order first puts hands on the line, from 0; 0 where none does. */
export const firstWork = (document: StillhotDocument): number =>
  Math.max(
    0,
    orderFor(document).findIndex(({ do: verb }) => verb === "work"),
  );

/** The work point that is asked about. */
export const firstWorkPoint = (document: StillhotDocument): readonly [WorkPointId, WorkPoint] | undefined =>
  (Object.entries(jobOf(document).workPoints) as [WorkPointId, WorkPoint][])[0];

/** The drawing alone, where the work on it does not matter to the question. */
export const withoutJob = ({ job: _, ...drawing }: StillhotDocument): StillhotDocument => drawing;

/** Devices that are in and that a hand can take out, whole. */
export function closedDevices({ system }: StillhotDocument): ElementId[] {
  return (Object.keys(system.elements) as ElementId[]).filter((id) => {
    const element = complete(system.elements[id]!);
    return handlingOf(element)?.moves === "phases" && canGoOff(element);
  });
}

/** The step by which a hand takes a device out. */
export function takingOut({ system }: StillhotDocument, id: ElementId, tool?: string): Step {
  const element = complete(system.elements[id]!);
  const { off } = handlingOf(element)!;
  return {
    do: off,
    element: id,
    ...("phases" in element && off !== "pull" ? { phases: lettersOf(element.phases).join("") } : {}),
    ...(tool === undefined ? {} : { with: tool }),
  } as Step;
}

/** The drawing with one of its devices, or none, out by chance. */
export function withOneOut(document: StillhotDocument, chance: Chance): StillhotDocument {
  const devices = closedDevices(document);
  if (devices.length === 0 || chance.percent(20)) return document;
  const step = takingOut(document, chance.oneOf(devices));
  return { ...document, system: play(beginJob(document), step).state.document.system };
}
