import { english } from "../../../tests/support/words";
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { complete, isUnreadable, jobOf, readDocument, type StillhotDocument } from "../document";
import { assess } from "../hazard";
import {
  bestLie,
  type Box,
  distanceOf,
  isAfar,
  LEAST_SYMBOL,
  lettersAt,
  type Note,
  overlaps,
  overviewOf,
  placeNotes,
  ringAt,
  type Scene,
  sceneOf,
  symbolLengthAt,
  type Way,
} from ".";
import {
  badlyWritten,
  boxOfNote,
  type Room,
  SCREENS,
  shownIn,
  symbolsOf,
} from "../../../tests/support/picture";
import { type ElementId, type PointId } from "../terms";

const shared = new URL("../../../shared/", import.meta.url);
const drawings = ["demos", "scenarios"].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, shared))
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((name): [string, StillhotDocument] => {
      const read = readDocument(readFileSync(new URL(`${folder}/${name}`, shared), "utf8"));
      if (isUnreadable(read)) throw new Error(`${name} does not read`);
      return [name.replace(".stillhot.json", ""), read.document];
    }),
);

/** What tells a hazard is never left out. */
const ALWAYS: readonly Note["kind"][] = ["title", "work", "open", "tag", "badge"];

const symbolBoxes = (scene: Scene): Box[] => symbolsOf(scene).map(({ middle }) => middle);

describe.each(drawings)("%s is laid out", (_name, document) => {
  const assessment = assess(document);
  const scenes = (["across", "down"] as const).map((way): [Way, Scene] => [
    way,
    sceneOf({ ...document }, assessment, { catalogue: english, way }),
  ]);

  test.each(scenes)(
    "running %s, every point and device has a place, and every way is square",
    (_way, scene) => {
      expect([...scene.points.keys()].sort()).toEqual(Object.keys(document.system.points).sort());
      for (const { laid } of scene.routes.values())
        laid!.spots.slice(1).forEach((to, nth) => {
          const from = laid!.spots[nth]!;
          expect(Math.min(Math.abs(to.x - from.x), Math.abs(to.y - from.y))).toBeLessThan(1e-6);
        });
    },
  );

  test.each(scenes)("running %s, no plate covers another, and no symbol another", (_way, scene) => {
    const plates = scene.plates.map(({ box }) => box);
    const symbols = symbolBoxes(scene);
    for (const boxes of [plates, symbols])
      for (const [nth, one] of boxes.entries())
        for (const other of boxes.slice(nth + 1)) expect(overlaps(one, other)).toBe(false);
  });

  test.each(scenes)(
    "running %s, labels cover no symbol and no other note, and no badge is left out",
    (_way, scene) => {
      for (const scale of [0.5, 0.75, 1]) {
        const placed = placeNotes(scene, scale);
        const symbols = symbolBoxes(scene);
        const shown = new Set(placed.map(({ note }) => note));
        const wanted = scene.pieces.flatMap(({ notes }) => notes).filter(({ kind }) => ALWAYS.includes(kind));
        expect(wanted.filter((it) => !shown.has(it)).map(({ text }) => text)).toEqual([]);
        const boxes = placed.map((it) => ({ note: it.note, box: boxOfNote(it, scale) }));
        for (const [nth, { note, box }] of boxes.entries()) {
          if (note.kind === "elementLabel")
            expect(
              symbols.some((it) => overlaps(it, box)),
              note.text,
            ).toBe(false);
          for (const other of boxes.slice(nth + 1))
            if (note.kind !== "work" && other.note.kind !== "work")
              expect(overlaps(box, other.box), `${note.text} / ${other.note.text}`).toBe(false);
        }
      }
    },
  );

  test.each(SCREENS)(
    "G7 shown whole in $width × $height, what is written stands free and at its own symbol",
    (room) => {
      const scene = sceneOf({ ...document }, assessment, {
        catalogue: english,
        ...bestLie(document, room, lettersAt),
      });
      const { scale, sizes } = shownIn(scene, room);
      if (isAfar(scene, scale)) expect(overviewOf(scene).plates).toHaveLength(scene.plates.length);
      expect(badlyWritten(scene, scale, sizes)).toEqual([]);
    },
  );
});

/** What a desk and a phone have for the drawing in the sketch [px]. */
const DESK = { width: 734, height: 540 };
const PHONE = { width: 390, height: 595 };
const SMALL_PHONE = { width: 360, height: 491 };

const demos = readdirSync(new URL("demos/", shared))
  .filter((it) => it.endsWith(".stillhot.json"))
  .map((it) => it.replace(".stillhot.json", ""));
const named = (name: string): StillhotDocument => drawings.find(([it]) => it === name)![1];
const wholeIn = (document: StillhotDocument, room: Room): Scene =>
  sceneOf(document, assess(document), {
    catalogue: english,
    ...bestLie(document, withoutButtons(room), lettersAt),
  });

describe.each([
  ["a desk", DESK, 26],
  ["a phone", PHONE, 25],
  ["a phone in Plan", { width: 390, height: 484 }, LEAST_SYMBOL],
  ["a small phone", SMALL_PHONE, LEAST_SYMBOL],
])("on %s", (_where, room, least) => {
  /** With so little room two pads, two risers and what joins them in a loop are read part by part. */
  const isShownWhole = (name: string) => least > LEAST_SYMBOL || name !== "underground-loop";

  test.each(demos.filter(isShownWhole))(
    `G8 the demo %s is shown whole, with symbols of ${least} px`,
    (name) => {
      const scene = wholeIn(named(name), room);
      expect(symbolLengthAt(scene, shownIn(scene, room).scale)).toBeGreaterThanOrEqual(least);
    },
  );
});

/** What the flags of a drawing say where it is shown whole in a room. */
const flagsIn = (document: StillhotDocument, room: Room): readonly string[] => {
  const scene = wholeIn(document, room);
  const { scale, sizes } = shownIn(scene, room);
  return placeNotes(scene, scale, sizes).flatMap(({ note, lines }) =>
    note.kind === "work" ? (lines ?? note.lines!).join(" ") : [],
  );
};

test.each(demos)("the flag of %s says where work is and what is to be done, in whole words", (name) => {
  const { task, workPoints } = jobOf(named(name));
  const flags = flagsIn(named(name), DESK);
  expect(flags).toHaveLength(Object.keys(workPoints).length);
  for (const flag of flags) {
    expect(flag).toMatch(/^Work here: \S+ \S+, [ABC]( [ABC])* /);
    expect(flag.endsWith(` ${task}`)).toBe(true);
  }
});

test("on a phone every flag says what is to be done", () => {
  const without = demos.filter((name) =>
    flagsIn(named(name), PHONE).some((it) => !it.endsWith(` ${jobOf(named(name)).task}`)),
  );
  expect(without).toEqual([]);
});

test("a job that is told at length has its place's own words on the flag", () => {
  const long = { ...named("transformer-tap") };
  const job = {
    ...long.job,
    task: "Replace the arrester on T1, and look at the bracket, the ground lead and both neighbours",
  };
  expect(flagsIn({ ...long, job }, DESK)).toEqual(["Work here: Pole 12, B T1 bushing and arrester lead"]);
});

test.each(demos)(
  "G8 on a desk two names in five and the letters of three-phase lines of the demo %s are read",
  (name) => {
    const scene = wholeIn(named(name), DESK);
    const { scale, sizes } = shownIn(scene, DESK);
    const shown = placeNotes(scene, scale, sizes).map(({ note }) => note);
    const names = (notes: readonly Note[]) => notes.filter(({ kind }) => kind === "elementLabel").length;
    expect(names(shown)).toBeGreaterThanOrEqual(0.4 * names(scene.pieces.flatMap(({ notes }) => notes)));
    const letters = shown.flatMap(({ kind, text }) => (kind === "letter" ? text : []));
    expect(letters).toEqual(expect.arrayContaining(["A", "B", "C"]));
  },
);

test.each(demos)("on a phone the flag of %s hides no ring of a work place", (name) => {
  const scene = wholeIn(named(name), PHONE);
  const { scale, sizes } = shownIn(scene, PHONE);
  const flags = placeNotes(scene, scale, sizes).filter(({ note }) => note.kind === "work");
  expect(flags.length).toBeGreaterThan(0);
  for (const flag of flags)
    for (const { note } of flags) {
      const { x, y } = note.ring!;
      const half = ringAt(note, scale) / scale;
      const ring = { left: x - half, right: x + half, top: y - half, bottom: y + half };
      expect(overlaps(boxOfNote(flag, scale), ring)).toBe(false);
    }
});

test("a tap crosses the other conductors of its line by one bridge, not by one for each", () => {
  const { elements } = wholeIn(named("transformer-tap"), DESK);
  const taps = [...elements.values()].flatMap(({ shapes }) =>
    shapes.flatMap((it) => (it.shape === "strand" && it.points.length > 8 ? it.points.length / 2 : [])),
  );
  expect(taps.length).toBeGreaterThan(0);
  // From the conductor to the symbol, with six spots of a bridge between.
  expect(Math.max(...taps)).toBe(9);
});

test.each(demos)(
  "on %s a tag hangs on what tells how its device stands, or where both have no room as one at the device",
  (name) => {
    const { system, ...rest } = named(name);
    const elements = Object.fromEntries(
      Object.entries(system.elements).map(([id, it]) => {
        const element = complete(it);
        const isOpener = "tagged" in element && "open" in element && "phases" in element;
        return [id, isOpener ? { ...it, open: element.phases, tagged: true } : it];
      }),
    ) as typeof system.elements;
    const scene = wholeIn({ ...rest, system: { ...system, elements } }, DESK);
    const { scale, sizes } = shownIn(scene, DESK);
    const placed = placeNotes(scene, scale, sizes);
    const words = placed.filter(({ note }) => note.kind === "open");
    expect(words.length).toBeGreaterThan(0);
    for (const word of words) {
      const tag = placed.find(({ note }) => note.kind === "tag" && note.owner.id === word.note.owner.id);
      if (tag === undefined) continue;
      const [one, other] = [boxOfNote(word, scale), boxOfNote(tag, scale)];
      const hangsOnIt = Math.abs((other.left - one.right) * scale - 2) < 0.001 && tag.y === word.y;
      const [nearest] = symbolsOf(scene).sort((a, b) => distanceOf(a.box, other) - distanceOf(b.box, other));
      if (!hangsOnIt) expect(nearest!.id).toBe(word.note.owner.id);
    }
  },
);

test("what a pole always has is drawn quieter than what the crew put there", () => {
  const { plates, elements } = wholeIn(groundedTap(), DESK);
  const strokes = (of: Iterable<Scene["pieces"][number]>) =>
    [...of].flatMap(({ shapes }) => shapes.flatMap((it) => (it.shape === "stroke" ? it : [])));
  expect(strokes(plates).length).toBeGreaterThan(0);
  expect(strokes(plates).every((it) => it.isQuiet === true)).toBe(true);
  const set = strokes([elements.get("g1" as ElementId)!]);
  expect(set.length).toBeGreaterThan(0);
  expect(set.some((it) => it.isQuiet === true)).toBe(false);
});

test("G8 a tap of six poles is shown whole on a phone, with symbols of 28 px", () => {
  const scene = wholeIn(named("sideline-three-transformers"), PHONE);
  expect(symbolLengthAt(scene, shownIn(scene, PHONE).scale)).toBeGreaterThanOrEqual(28);
});

test.each(["across", "down"] as const)(
  "a loop of pads running %s stands in one row from its one riser to its other one, wherever it is open",
  (way) => {
    const { points } = sceneOf(named("underground-loop"), undefined, { catalogue: english, way });
    const [along, beside] = way === "across" ? [0, 1] : [1, 0];
    const pads = ["p6", "p7", "p8", "p9", "p10", "p11"].map((id) => points.get(id as PointId)!.spine);
    expect(new Set(pads.map((it) => it[beside])).size).toBe(1);
    const places = pads.map((it) => it[along]!);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  },
);

/** A demo with a ground set at its work place. */
function groundedTap(): StillhotDocument {
  const document = named("sideline-three-transformers");
  const elements = {
    ...document.system.elements,
    g1: { kind: "ground", at: "p6", phases: "C" },
  } as unknown as StillhotDocument["system"]["elements"];
  return { ...document, system: { ...document.system, elements } };
}

/** The row of buttons over the drawing is no room for it. */
const withoutButtons = ({ width, height }: Room): Room => ({ width, height: height - 70 });

/** Two spans of three phases on from one another, whose poles stand by hand so far apart. */
function spansByHand(x: number, y: number): StillhotDocument {
  const at = (nth: number) => ({ x: nth * x, y: nth * y });
  const span = { kind: "span", phases: "ABC", lengthM: 60 };
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "By hand",
      system: {
        points: {
          p1: { kind: "station", ...at(0) },
          p2: { kind: "pole", ...at(1) },
          p3: { kind: "pole", ...at(2) },
        },
        elements: {
          s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
          sp1: { ...span, from: "p1", to: "p2" },
          sp2: { ...span, from: "p2", to: "p3" },
        },
      },
    }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read));
  return read.document;
}

test.each([
  [240, 0, 0.8],
  [0, 240, 0.8],
  [170, 170, 0.8],
  [-200, 90, 0.8],
  [160, 60, 0.8],
  [120, 0, 0.8],
  [0, 120, 1],
  [90, 0, 0.8],
])(
  "a three-phase span to a pole that stands by hand at %i, %i says all its letters from a scale of %f on",
  (x, y, least) => {
    const document = spansByHand(x, y);
    const scene = sceneOf(document, assess(document), { catalogue: english });
    for (const scale of [0.8, 1, 1.25, 1.5].filter((it) => it >= least)) {
      const placed = new Set(placeNotes(scene, scale).map(({ note }) => note));
      for (const span of ["sp1", "sp2"]) {
        const notes = scene.pieces.filter(({ owner }) => owner.id === span).flatMap((it) => it.notes);
        const said = new Set(
          notes.filter((it) => it.kind === "letter" && placed.has(it)).map(({ text }) => text),
        );
        expect([...said].toSorted(), `${span} at ${scale}`).toEqual(["A", "B", "C", "N"]);
      }
    }
  },
);
