import { english } from "../../../../tests/support/words";
import { expect, test } from "vitest";
import { manyOnOnePole } from "../../../../tests/support/manyOnOnePole";
import { badlyShown, SCREENS, shownIn } from "../../../../tests/support/picture";
import { edits, isUnreadable, readValue, type StillhotDocument } from "../../document";
import { assess } from "../../hazard";
import { type ElementId, isRefusal, type JsonObject } from "../../terms";
import { bestLie, changeOf, hitAt, lettersAt, overviewOf, placeNotes, sceneOf } from "..";

const crowded = (cutouts: number, works = {}): StillhotDocument => {
  const system = manyOnOnePole(cutouts, {
    c7: { open: "A" },
    c8: { open: "A", tagged: true },
    c9: { removed: "A" },
  }) as unknown as JsonObject;
  const found = readValue({
    format: "stillhot",
    formatVersion: 1,
    title: "",
    system,
    job: { workPoints: works },
  });
  if (isUnreadable(found)) throw new Error("unreadable");
  return found.document;
};

const onScreen = (drawing: StillhotDocument, room = SCREENS[0]!, catalogue = english) =>
  sceneOf(drawing, assess(drawing), { ...bestLie(drawing, room, lettersAt), catalogue });

test("more on a pole than anybody could make out is one mark, with what is open and tagged counted", () => {
  const scene = onScreen(crowded(400));
  const plate = scene.plates.find(({ plate }) => plate.title === "Pole 1")!;
  expect(plate.notes.map(({ kind, text }) => `${kind} ${text}`)).toEqual([
    "title Pole 1",
    "mark 400 devices",
    "count 3 open · T",
  ]);
  expect(plate.overall).toBe("energized");
  expect(scene.elements.get("c1" as ElementId)!.shapes).toEqual([]);
  // What leaves it is drawn as ever, and from afar it is a mark like the others.
  expect(scene.elements.get("on" as ElementId)!.shapes.length).toBeGreaterThan(0);
  expect(overviewOf(scene).plates.map(({ notes }) => notes.map(({ text }) => text).join())).toEqual([
    "Station",
    "1,3 open · T",
    "2",
  ]);
});

test("ten thousand on a pole are drawn as few pieces as two are", () => {
  expect(onScreen(crowded(10_000)).pieces.length).toBe(onScreen(crowded(400)).pieces.length);
});

test("as many as can be made out are drawn one by one", () => {
  const scene = onScreen(crowded(140));
  expect(scene.plates.flatMap(({ notes }) => notes.map(({ kind }) => kind))).toEqual([
    "title",
    "title",
    "title",
  ]);
  expect(scene.elements.get("c1" as ElementId)!.shapes.length).toBeGreaterThan(0);
});

test("a touch of the mark means the pole, not one of all that is there", () => {
  const scene = onScreen(crowded(400));
  const [x, y] = scene.plates.find(({ plate }) => plate.title === "Pole 1")!.spine as [number, number];
  expect(hitAt(scene, x, y, 10)).toEqual({ of: "structure", id: "q" });
});

test("the mark stands on every screen, and nothing lies on anything, with work there too", () => {
  for (const works of [{}, { w1: { at: "p0", conductors: "A" } }]) {
    const drawing = crowded(400, works);
    expect(badlyShown(drawing, english)).toEqual([]);
    for (const room of SCREENS) {
      const scene = onScreen(drawing, room);
      const { scale, sizes } = shownIn(scene, room);
      expect(placeNotes(scene, scale, sizes).map(({ note }) => note.text)).toContain("400 devices");
    }
  }
});

test("one that comes back to its own pole by another has one plate there", () => {
  const system = manyOnOnePole(400);
  Object.assign(system.points, { back: { on: "q" } });
  Object.assign(system.elements, {
    back: { kind: "span", from: "z", to: "back", phases: "A", lengthM: 100 },
  });
  const found = readValue({ format: "stillhot", formatVersion: 1, title: "", system: system as never });
  const { document } = found as { document: StillhotDocument };
  const scene = onScreen(document);
  expect(scene.plates.map(({ plate }) => plate.title).sort()).toEqual(["Pole 1", "Pole 2", "Station"]);
  expect(scene.elements.get("back" as ElementId)!.shapes.length).toBeGreaterThan(0);
});

test("what is opened among them is counted at once", () => {
  const before = crowded(400);
  const was = onScreen(before);
  const opened = edits.open("c5", "A")(before);
  if (isRefusal(opened)) throw new Error("refused");
  const scene = onScreen(opened.after);
  const change = changeOf(scene);
  expect(change?.before).toBe(was);
  const notes = change?.of === "pieces" ? change.come.flatMap(({ notes }) => notes) : [];
  expect(notes.map(({ text }) => text)).toContain("4 open · T");
});
