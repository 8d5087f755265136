import {
  amended,
  type HiddenFact,
  type Inject,
  perObject,
  scenarioOf,
  type StillhotDocument,
} from "../document";
import type { JsonObject } from "../terms";

/** What an apprentice may read before and during an attempt; everything else of a scenario is for afterwards. */
const OPEN_KEYS = ["level", "objectives", "prebrief", "assume", "mode", "minutes"] as const;

/** The job of a file without its steps, which may be the answer. */
const jobWithoutSteps = ({ job }: StillhotDocument): { readonly job?: JsonObject } =>
  job === undefined ? {} : { job: { ...job, steps: [] } };

/** The drawing as it truly stands before anybody touches it, every hidden fact in place. */
export const truthOf: (document: StillhotDocument) => StillhotDocument = perObject(
  (document: StillhotDocument) => {
    const { scenario: _scenario, ...rest } = document;
    const system = amended(document.system, Object.values(scenarioOf(document).truth ?? {}));
    return { ...rest, system, ...jobWithoutSteps(document) };
  },
);

/** The drawing as an apprentice gets it: the map, the task, and of the scenario only what may be read beforehand. */
export const mapOf: (document: StillhotDocument) => StillhotDocument = perObject(
  (document: StillhotDocument) => {
    const { scenario, ...rest } = document;
    const open = Object.fromEntries(
      OPEN_KEYS.filter((key) => scenario?.[key] !== undefined).map((key) => [key, scenario![key]]),
    );
    return {
      ...rest,
      ...jobWithoutSteps(document),
      ...(Object.keys(open).length === 0 ? {} : { scenario: open }),
    };
  },
);

/** Everything that can be hidden: what the map has wrong, and what happens in the middle, by id. */
export const factsOf: (document: StillhotDocument) => ReadonlyMap<string, HiddenFact | Inject> = perObject(
  (document: StillhotDocument) => {
    const { truth = {}, injects = {} } = scenarioOf(document);
    return new Map<string, HiddenFact | Inject>([...Object.entries(truth), ...Object.entries(injects)]);
  },
);

/** What a person calls a hidden fact or an inject. */
export const nameOfFact = (document: StillhotDocument, id: string): string =>
  factsOf(document).get(id)?.label ?? id;

/** The drawing as it would truly stand if these facts were no secret: the map of somebody who knows them. */
export function mapWith(document: StillhotDocument, known: readonly string[]): StillhotDocument {
  const map = mapOf(document);
  const facts = known.flatMap((id) => factsOf(document).get(id) ?? []);
  return { ...map, system: amended(map.system, facts) };
}
