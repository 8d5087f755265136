import {
  type ElementId,
  factsOf,
  jobOf,
  type PointId,
  ruleName,
  RULES,
  scenarioOf,
  TOOLS,
  type StillhotDocument,
  truthOf,
} from "../../../core";
import { toolName } from "../../scenario/words";
import { elementName, firstOf, pointName, structureName, t, told } from "../../words/words";
import { isMessageKey } from "../../words/catalogue";

/** Something that can be named in a scenario, and what a person calls it. */
export interface NamedThing {
  readonly id: string;
  readonly name: string;
}

/** The drawing as it truly stands, and with everything that comes in the middle: whatever a scenario may name. */
export function everything(document: StillhotDocument): StillhotDocument {
  const truth = truthOf(document);
  const { injects = {} } = scenarioOf(document);
  const { structures, points, elements } = truth.system;
  const more = Object.values(injects).map(({ add = {} }) => add);
  return {
    ...truth,
    system: {
      ...truth.system,
      structures: Object.assign({}, structures, ...more.map((it) => it.structures ?? {})),
      points: Object.assign({}, points, ...more.map((it) => it.points ?? {})) as typeof points,
      elements: Object.assign({}, elements, ...more.map((it) => it.elements ?? {})) as typeof elements,
    },
  };
}

/** All that an id of this kind can name. */
export function choicesOf(document: StillhotDocument, to: string): NamedThing[] {
  const all = everything(document);
  const elements = () =>
    (Object.keys(all.system.elements) as ElementId[]).map((id) => ({ id, name: elementName(all, id) }));
  const points = () =>
    (Object.keys(all.system.points) as PointId[]).map((id) => ({ id, name: pointName(all, id) }));
  const structures = () =>
    Object.keys(all.system.structures ?? {}).map((id) => ({ id, name: structureName(all, id) }));
  const workPoints = () =>
    Object.entries(jobOf(document).workPoints).map(([id, { label = "", at }]) => ({
      id,
      name: t("form.workPoint", { name: label || pointName(all, at) }),
    }));
  const scenario = scenarioOf(document);
  switch (to) {
    case "element":
      return elements();
    case "stand":
      return [...structures(), ...points()];
    case "thing":
      return [...elements(), ...structures(), ...points()];
    case "place":
      return [...structures(), ...points(), ...workPoints()];
    case "workPoint":
      return workPoints();
    case "fact":
      return [...factsOf(document)].map(([id, { label }]) => ({ id, name: label }));
    case "inject":
      return Object.entries(scenario.injects ?? {}).map(([id, { label }]) => ({ id, name: label }));
    case "objective":
      return (scenario.objectives ?? []).map(({ id, text }) => ({ id, name: text }));
    case "rule":
      return RULES.map(({ id }) => ({ id, name: told(ruleName(id)) }));
    case "tool":
      return TOOLS.map((id) => ({ id, name: toolName(id) }));
    default:
      return [];
  }
}

/** The title of a key, in the words of its own record where they differ. */
export const titleOf = (kind: string, key: string): string =>
  firstOf(`form.${kind}.${key}`, `form.${key}`) ?? key;

/** The help of a key, the kind's own where there is one. */
export const helpOf = (kind: string, key: string): string | undefined =>
  firstOf(`formHelp.${kind}.${key}`, `formHelp.${key}`);

/** A choice in words: a verb of a step by its own name. */
export const choiceName = (key: string, choice: string): string =>
  (key === "do"
    ? isMessageKey(`verb.${choice}`)
      ? t(`verb.${choice}` as "verb.open")
      : t("play.go")
    : firstOf(`choice.${key}.${choice}`)) ?? choice;
