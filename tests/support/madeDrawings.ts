import { generateTap, LEVELS, type System } from "../../src/core";
import { done, importMapFile, importModel } from "./imported";
import { randomJob } from "./randomJobs";
import { randomDocument } from "./randomSystems";

export interface Drawn {
  readonly system: System;
}

/** Drawings that nobody gave names by hand: made ones, random ones, and those of other programs. */
export const MADE: readonly (readonly [name: string, drawn: Drawn])[] = [
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
];
