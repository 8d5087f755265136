import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  assess,
  bestLie,
  english,
  french,
  jobOf,
  lettersAt,
  NOTE_SIZES,
  placeNotes,
  sceneOf,
} from "../../core";
import { KEPT, type ToLookAt } from "../../../tests/support/pictures";
import { contains, type Size, viewOf, ZOOM_BUTTONS } from "./camera";
import { sizesAt, wholeWithNotes } from "./whole";

/** What a phone leaves for the drawing, upright and on its side [px]. */
const PHONES: readonly Size[] = [
  { width: 390, height: 595 },
  { width: 360, height: 491 },
  { width: 844, height: 230 },
];

/** On the smallest phone these have no room for the task, or are read part by part: one flag of each says the place alone, which is less than it ought to. */
const WITHOUT_TASK = [
  "360 sideline-far-end-tie.stillhot.json fr",
  "360 underground-loop.stillhot.json en",
  "360 underground-loop.stillhot.json fr",
];

const files = readdirSync("shared/demos");
const demos = KEPT.filter(({ name }) => files.includes(name));

/** What the flags of a drawing say where the board shows it whole, and whether all of each is in view. */
function flagsOn({ language, document }: ToLookAt, size: Size) {
  const drawing = document();
  const room = { width: size.width, height: size.height - ZOOM_BUTTONS };
  const scene = sceneOf(drawing, assess(drawing), {
    catalogue: { en: english, fr: french }[language],
    ...bestLie(drawing, room, lettersAt),
  });
  const camera = wholeWithNotes(scene, scene.bounds!, size, NOTE_SIZES);
  const { scale } = camera;
  const view = viewOf(camera, size);
  const placed = placeNotes(scene, scale, sizesAt(NOTE_SIZES, scene, scale), undefined, view);
  return placed
    .filter(({ note }) => note.kind === "work")
    .map(({ note, lines = note.lines!, x, y, width, height }) => ({
      says: lines.join(" "),
      isInView: contains(view, {
        left: x - width / 2 / scale,
        right: x + width / 2 / scale,
        top: y - height / 2 / scale,
        bottom: y + height / 2 / scale,
      }),
    }));
}

describe.each(PHONES)("on a phone with $width × $height for the drawing", (size) => {
  test.each(demos)(
    "each flag of $name, $language, is in view and tells place and task in whole words",
    (demo) => {
      const { task, workPoints } = jobOf(demo.document());
      const flags = flagsOn(demo, size);
      expect(flags).toHaveLength(Object.keys(workPoints).length);
      for (const { says, isInView } of flags) expect(isInView, says).toBe(true);
      const short = flags.filter(({ says }) => !says.endsWith(` ${task}`));
      const isKnown = WITHOUT_TASK.includes(`${size.width} ${demo.name} ${demo.language}`);
      expect(short).toHaveLength(isKnown ? 1 : 0);
    },
  );
});
