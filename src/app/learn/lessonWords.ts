import type { StepVerb, StillhotDocument } from "../../core";
import { firstOf, t } from "../words/words";

type Labelled = Readonly<Record<string, { readonly label?: string }>>;

/** The same things by the names that they have in the language of the app, where it has any for them. */
const named = (things: Labelled): Labelled =>
  Object.fromEntries(
    Object.entries(things).map(([id, it]) => {
      const label = it.label === undefined ? undefined : firstOf(`lesson.label.${id}`);
      return [id, label === undefined ? it : { ...it, label }];
    }),
  );

/** The scenario of the first lesson with its names in the language of the app: no other drawing is translated. */
export function inOwnWords(scenario: StillhotDocument): StillhotDocument {
  const { system, job } = scenario;
  const workPoints = named((job?.["workPoints"] ?? {}) as Labelled);
  return {
    ...scenario,
    title: t("lesson.label.title"),
    system: {
      ...system,
      structures: named((system.structures ?? {}) as Labelled),
      points: named(system.points),
      elements: named(system.elements as unknown as Labelled),
    },
    job: { ...job, task: t("lesson.label.task"), workPoints },
  } as unknown as StillhotDocument;
}

/** Why a step is taken that no rule asks for by itself. */
export const whyOf = (verb: StepVerb): string => firstOf(`lesson.why.${verb}`) ?? t("lesson.why");
