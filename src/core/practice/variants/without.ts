import {
  type Condition,
  type Reveal,
  type Scenario,
  scenarioOf,
  type StillhotDocument,
} from "../../document";
import type { TapLanguage } from "../generate/words";
import { placesOfFact, revealsOf } from "../../scenario/world";

/**
 * A scenario in which one thing that it hides is not there: the map is right about it. Who looks where it would have shown
 * earns what finding it earned. The answer stays: who looks first, and then does what would have been needed, does nothing wrong.
 */
export function withoutFact(
  document: StillhotDocument,
  fact: string,
  language: TapLanguage = "en",
): StillhotDocument {
  const scenario = scenarioOf(document);
  const looked = lookedFor(document, fact);
  const { [fact]: _hidden, ...truth } = scenario.truth ?? {};
  const { [fact]: _inject, ...injects } = scenario.injects ?? {};
  const { debrief, without: _without, ...rest } = scenario;
  const changed: Scenario = {
    ...rest,
    truth,
    injects,
    reveals: (scenario.reveals ?? []).filter(({ shows = [] }) => !shows.includes(fact)),
    traps: (scenario.traps ?? []).filter((it) => it.fact !== fact && !names(it.when, fact)),
    criteria: (scenario.criteria ?? []).map((it) =>
      names(it.when, fact) ? { ...it, text: LOOKED[language], when: withLook(it.when, fact, looked) } : it,
    ),
    hints: (scenario.hints ?? []).map((it) =>
      it.until === undefined || !names(it.until, fact)
        ? it
        : { ...it, until: withLook(it.until, fact, looked) },
    ),
    ...(debrief === undefined ? {} : { debrief: { ...debrief, happened: [] } }),
  };
  return { ...document, scenario: changed as unknown as NonNullable<StillhotDocument["scenario"]> };
}

/** Part of a variant's bytes, which never change: so it stands here and not in the catalogue. */
const LOOKED: Readonly<Record<TapLanguage, string>> = {
  en: "Where the map could have been wrong, it is looked at; here it was right.",
  fr: "Là où la carte pouvait se tromper, on va voir ; ici elle disait vrai.",
};

const names = (condition: Condition, fact: string): boolean =>
  JSON.stringify(condition).includes(`"knows":${JSON.stringify(fact)}`);

/** Whoever has done one of these would have seen it. */
function lookedFor(document: StillhotDocument, fact: string): Condition {
  const step = ({ by, at, element }: Pick<Reveal, "by" | "at" | "element">): Condition => ({
    step: {
      do: by,
      ...(at === undefined ? {} : { at }),
      ...(element === undefined ? {} : { element }),
    },
  });
  const told = revealsOf(document, fact).map(step);
  const seen = placesOfFact(document, fact).map((at) => step({ by: "inspect", at }));
  const ways = told.length > 0 ? told : seen;
  return ways.length === 1 ? ways[0]! : { any: ways };
}

/** The same condition, with the look in place of what would have been known by it. */
function withLook(condition: Condition, fact: string, looked: Condition): Condition {
  const { knows, any, all, not, ...rest } = condition;
  const within = (it: Condition) => withLook(it, fact, looked);
  return {
    ...(knows === fact ? looked : knows === undefined ? {} : { knows }),
    ...(any === undefined ? {} : { any: any.map(within) }),
    ...(all === undefined ? {} : { all: all.map(within) }),
    ...(not === undefined ? {} : { not: within(not) }),
    ...rest,
  };
}
