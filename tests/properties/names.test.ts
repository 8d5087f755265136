import { expect, test } from "vitest";
import {
  asHeard,
  generateTap,
  LEVELS,
  elementName,
  labelIn,
  type Message,
  pointName,
  say,
  structureName,
  structuresOf,
  type System,
} from "../../src/core";
import { french } from "../../src/core/terms/messages/fr";
import { done, importMapFile, importModel } from "../support/imported";
import { drawing8500 } from "../support/ieee8500";
import { randomJob } from "../support/randomJobs";
import { randomDocument } from "../support/randomSystems";
import { spell } from "../support/words";

interface Drawn {
  readonly system: System;
}

const DRAWINGS: [string, Drawn][] = [
  ...LEVELS.flatMap((level) =>
    [11, 12, 13].map((seed): [string, Drawn] => [
      `level ${level} seed ${seed}`,
      generateTap({ level, seed }),
    ]),
  ),
  ...[1, 2, 3, 4, 5, 6, 7, 8].map((seed): [string, Drawn] => [`job ${seed}`, randomJob(seed)]),
  ...[1, 2, 3, 4, 5, 6, 7, 8].map((seed): [string, Drawn] => [
    `drawing ${seed}`,
    randomDocument(seed, { parts: 20 }) as unknown as Drawn,
  ]),
  ...["ieee13-assets", "ieee13-devices", "ieee13-three-winding", "ieee123", "ieee8500-lateral"].map(
    (name): [string, Drawn] => [`the import of ${name}`, done(importModel(`cim/${name}.xml`)).document],
  ),
  ["the import of acep-psil", done(importModel("cim/acep-psil.xml")).document],
  ["the import of maple10", done(importModel("cim/maple10-node-breaker.xml")).document],
  ["the import of a map", done(importMapFile("geojson/example.geojson")).document],
  ["the 8500-node feeder", drawing8500("balanced")],
  ["four hundred cutouts of one label on one pole", fourHundred()],
];

/** All that a drawing names, by what it is called; a place that is all of its structure is called as that is. */
function namesIn(drawn: Drawn, catalogue?: typeof french): Map<string, string[]> {
  const { system } = drawn;
  const called = new Map<string, string[]>();
  const tell = (id: string, name: Message | string): void => {
    const heard = asHeard(spell(say("name.plain", { name }), catalogue));
    called.set(heard, [...(called.get(heard) ?? []), id]);
  };
  // A structure that follows from its points is called as the nearest of them.
  for (const { id, points, isDerived } of structuresOf(system).values())
    if (points.length > 1 && (!isDerived || labelIn(system, points[0]!) === ""))
      tell(`structure ${id}`, structureName(drawn, id));
  for (const id of Object.keys(system.points)) tell(id, pointName(drawn, id));
  for (const id of Object.keys(system.elements)) tell(id, elementName(drawn, id));
  return called;
}

test.each(DRAWINGS)("D18 no two things of %s are called alike, and none by its id", (_, drawn) => {
  for (const catalogue of [undefined, french]) {
    const called = namesIn(drawn, catalogue);
    expect([...called.values()].filter((ids) => ids.length > 1)).toEqual([]);
    expect(
      [...called].filter(([heard, [id]]) => heard === asHeard(id!) && labelIn(drawn.system, id!) === ""),
    ).toEqual([]);
  }
});

function fourHundred(): Drawn {
  const numbers = Array.from({ length: 400 }, (_, at) => at);
  return {
    system: {
      frequencyHz: 60,
      structures: { s: { label: "Pole 1" } },
      points: { p: { on: "s" }, ...Object.fromEntries(numbers.map((n) => [`q${n}`, { on: "s" }])) },
      elements: Object.fromEntries(
        numbers.map((n) => [
          `c${n}`,
          { kind: "cutout", from: "p", to: `q${n}`, phases: "A", label: "cutout" },
        ]),
      ),
    } as unknown as System,
  };
}
