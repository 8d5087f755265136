import { expect, test } from "vitest";
import {
  assess,
  english,
  french,
  generateTap,
  isUnreadable,
  LEVELS,
  readDocument,
  type StillhotDocument,
} from "../../src/core";
import { bestLie, isAfar, lettersAt, sceneOf, symbolLengthAt } from "../../src/core/drawing";
import { badlyWritten, lettersOf, SCREENS, shownIn } from "../support/picture";
import { randomDocument } from "../support/randomSystems";

/** A random drawing that nobody placed. */
function unplaced(seed: number): StillhotDocument {
  const { system, ...rest } = JSON.parse(JSON.stringify(randomDocument(seed, { parts: 9 })));
  for (const point of Object.values(system.points) as { x?: number; y?: number }[]) {
    delete point.x;
    delete point.y;
  }
  const read = readDocument(JSON.stringify({ ...rest, system }));
  if (isUnreadable(read)) throw new Error(`seed ${seed} does not read`);
  return read.document;
}
const RANDOM = Array.from({ length: 60 }, (_, seed) => [`random ${seed}`, unplaced(seed + 1), "en"] as const);
/** Every second one in French. */
const GENERATED = LEVELS.flatMap((level) =>
  [1, 2, 3, 4].map((seed) => {
    const language = seed % 2 === 0 ? "fr" : "en";
    return [`level ${level}, seed ${seed}`, generateTap({ level, seed, language }), language] as const;
  }),
);

/** A drawing that is too large for a screen is read part by part, with symbols so long [px]. */
const READ = 24;

test.each([...GENERATED, ...RANDOM])(
  "G7 %s: what is written stands free and at its own symbol",
  (_name, document, language) => {
    const assessment = assess(document);
    const catalogue = language === "fr" ? french : english;
    const bad = SCREENS.flatMap((room) => {
      const lie = bestLie(document, room, lettersAt);
      const scene = sceneOf(document, assessment, { ...lie, catalogue });
      const whole = shownIn(scene, room);
      const { scale, sizes } = isAfar(scene, whole.scale)
        ? lettersOf(READ / symbolLengthAt(scene, 1))
        : whole;
      return badlyWritten(scene, scale, sizes).map((it) => `${room.width} × ${room.height}: ${it}`);
    });
    expect(bad).toEqual([]);
  },
);
