import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  assess,
  type Assessment,
  bestLie,
  english,
  french,
  jobOf,
  lettersAt,
  NOTE_SIZES,
  placeNotes,
  sceneOf,
  type StillhotDocument,
} from "../../core";
import { atWork } from "../../../tests/support/atWork";
import { isLong } from "../../../tests/support/long";
import { inOneLanguage, KEPT, type ToLookAt } from "../../../tests/support/pictures";
import { contains, COVERED, type Size, viewOf, ZOOM_BUTTONS } from "./camera";
import { firstLook, sizesAt, wholeWithNotes } from "./whole";

/** What a phone leaves for the drawing, upright and on its side [px]. */
const PHONES: readonly Size[] = [
  { width: 390, height: 595 },
  { width: 390, height: 484 },
  { width: 360, height: 491 },
  { width: 654, height: 274 },
];

const files = readdirSync("shared/demos");
const inBoth = KEPT.filter(({ name }) => files.includes(name));
/** Each in one language after the other, and in the long run in both. */
const demos = isLong ? inBoth : inOneLanguage(inBoth);

/** What Sketch on a desk, Sketch on a phone and Plan on a phone leave for the drawing [px]. */
const WHOLE: readonly Size[] = [
  { width: 734, height: 540 },
  { width: 390, height: 595 },
  { width: 390, height: 484 },
];

/** Read and assessed once for all sizes. */
const assessed = new Map<string, readonly [drawing: StillhotDocument, assessment: Assessment]>();
function assessedOf({ name, language, document }: ToLookAt) {
  const key = `${name} ${language}`;
  const known = assessed.get(key);
  if (known) return known;
  const drawing = document();
  const fresh = [drawing, assess(drawing)] as const;
  assessed.set(key, fresh);
  return fresh;
}

/** A drawing as a board of a size draws it. */
function sceneFor(demo: ToLookAt, size: Size) {
  const [drawing, assessment] = assessedOf(demo);
  return sceneOf(drawing, assessment, {
    catalogue: { en: english, fr: french }[demo.language],
    ...bestLie(drawing, { width: size.width, height: size.height - ZOOM_BUTTONS }, lettersAt),
  });
}

/** Worked out once for each drawing and size: several laws are asked of it. */
const written = new Map<string, ReturnType<typeof writes>>();
function writtenOn(demo: ToLookAt, size: Size) {
  const key = `${demo.name} ${demo.language} ${size.width} ${size.height}`;
  const known = written.get(key) ?? writes(demo, size);
  written.set(key, known);
  return known;
}

/** What is written of a drawing where the board first shows it, and whether all of each is in view, over the row of buttons. */
function writes(demo: ToLookAt, size: Size) {
  const room = { width: size.width, height: size.height - COVERED };
  const scene = sceneFor(demo, size);
  const [work] = scene.works.values();
  const camera = firstLook(scene, scene.bounds!, size, NOTE_SIZES, work!.spine);
  const { scale } = camera;
  const view = viewOf(camera, room);
  const placed = placeNotes(scene, scale, sizesAt(NOTE_SIZES, scene, scale), undefined, view);
  return placed.map(({ note, lines = note.lines ?? [note.text], x, y, width, height }) => {
    const box = {
      left: x - width / 2 / scale,
      right: x + width / 2 / scale,
      top: y - height / 2 / scale,
      bottom: y + height / 2 / scale,
    };
    return {
      kind: note.kind,
      says: lines.join(" "),
      isInView: contains(view, box),
      isOnPlate: scene.plates.some((it) => contains(it.plate.box, box)),
    };
  });
}

describe.each(PHONES)("on a phone with $width × $height for the drawing", (size) => {
  test.each(demos)(
    "each flag of $name, $language, is in view and tells place and task in whole words",
    (demo) => {
      const { task, workPoints } = jobOf(demo.document());
      const flags = writtenOn(demo, size).filter(({ kind }) => kind === "work");
      expect(flags).toHaveLength(Object.keys(workPoints).length);
      for (const { says, isInView } of flags) expect(isInView, says).toBe(true);
      expect(flags.map(({ says }) => says).filter((it) => !it.endsWith(` ${task}`))).toEqual([]);
    },
  );

  test.each(demos)("no structure of $name, $language, is written as a mere number", (demo) => {
    const titles = writtenOn(demo, size).filter(({ kind }) => kind === "title");
    expect(titles.map(({ says }) => says).filter((it) => /^\d+$/.test(it))).toEqual([]);
  });
});

describe.each(WHOLE)("with $width × $height for the drawing", (size) => {
  test.each(demos)("the first picture of $name, $language, is whole", (demo) => {
    const scene = sceneFor(demo, size);
    const [work] = scene.works.values();
    const whole = wholeWithNotes(scene, scene.bounds!, size, NOTE_SIZES);
    expect(firstLook(scene, scene.bounds!, size, NOTE_SIZES, work!.spine)).toEqual(whole);
  });
});

/** What Sketch and Plan on a phone leave for the drawing [px]. */
const AT_WORK: readonly Size[] = [
  { width: 360, height: 491 },
  { width: 390, height: 484 },
];

const TELLING = ["badge", "open", "tag", "title", "work", "count"];

/** The same drawing while work goes on. */
const goingOn = (demo: ToLookAt): ToLookAt => ({
  ...demo,
  name: `${demo.name} at work`,
  document: () => atWork(demo.document()),
});

describe.each(AT_WORK)("at work, with $width × $height for the drawing", (size) => {
  test.each(demos)(
    "the picture of $name, $language, is whole, and all that tells a state is over the buttons",
    (demo) => {
      const drawn = goingOn(demo);
      const scene = sceneFor(drawn, size);
      const [work] = scene.works.values();
      const whole = wholeWithNotes(scene, scene.bounds!, size, NOTE_SIZES);
      expect(firstLook(scene, scene.bounds!, size, NOTE_SIZES, work!.spine)).toEqual(whole);
      const hidden = writtenOn(drawn, size).filter(
        ({ kind, isInView }) => TELLING.includes(kind) && !isInView,
      );
      expect(hidden).toEqual([]);
    },
  );

  test.each(inBoth.filter(({ name }) => name.startsWith("sideline-three")))(
    "what is isolated at a pole of $name, $language, is told on the plate of that",
    (demo) => {
      const isolated = writtenOn(goingOn(demo), size).filter(({ says }) => /^(ISO|ISOLÉ)$/.test(says));
      expect(isolated.map(({ isOnPlate }) => isOnPlate)).toEqual([true, true, true]);
    },
  );
});

test.each(WHOLE.slice(0, 2))("with $width × $height the cutouts of the first demo are named", (size) => {
  const demo = inBoth.find(
    ({ name, language }) => name === "sideline-three-transformers.stillhot.json" && language === "en",
  )!;
  const named = writtenOn(demo, size).map(({ says }) => says);
  for (const it of ["sideline cutout", "T1 cutout", "T2 cutout", "T3 cutout"])
    expect(named).toContainEqual(expect.stringContaining(it));
});
