import "fake-indexeddb/auto";
import { beforeEach, expect, test, vi } from "vitest";
import { emptyHistory } from "../../core";
import { allDrawings, drawing, keep } from "./store";
import { emptyDrawing } from "../session/emptyDrawing";
import { bringIn, isOnShelf, putAway } from "./putAway";

const letters = new Map<string, string>();
vi.stubGlobal("localStorage", {
  getItem: (key: string) => letters.get(key) ?? null,
  setItem: (key: string, text: string) => void letters.set(key, text),
  removeItem: (key: string) => void letters.delete(key),
});

let next = 0;
let id = "";
beforeEach(() => {
  letters.clear();
  id = `drawing-${next++}`;
});

const record = (title: string, savedAt: number) => ({
  id,
  title,
  savedAt,
  document: { ...emptyDrawing, title },
  history: emptyHistory,
});
const left = (title: string, savedAt: number, rev: number, isBeingWritten = false) =>
  putAway({ ...record(title, savedAt), rev, isBeingWritten });
const bring = () =>
  bringIn(
    () => `${id}-copy`,
    (title) => `copy of ${title}`,
  );
const titles = async () =>
  (await allDrawings()).filter((it) => it.id.startsWith(id)).map(({ title, rev }) => [title, rev]);

test("what a page left behind comes onto the shelf, once", async () => {
  await keep(record("old", 1), 0);
  left("new", 2, 1);
  await bring();
  expect(await titles()).toEqual([["new", 2]]);
  await bring();
  expect(await titles()).toEqual([["new", 2]]);
});

test("so does a drawing that was never kept", async () => {
  left("first", 2, 0);
  await bring();
  expect((await drawing(id))?.document.title).toBe("first");
});

test("what came onto the shelf by itself stays as it is", async () => {
  await keep(record("old", 1), 0);
  left("new", 2, 1);
  await keep(record("new", 3), 1);
  await bring();
  expect(await titles()).toEqual([["new", 2]]);
});

test("an older write that was still under way does not stand for the newest", async () => {
  await keep(record("old", 1), 0);
  await keep(record("under way", 2), 1);
  left("newest", 3, 1, true);
  await bring();
  expect(await titles()).toEqual([["newest", 3]]);
});

test("what another window wrote meanwhile stays, and the other is a copy beside it", async () => {
  await keep(record("old", 1), 0);
  await keep(record("theirs", 2), 1);
  left("ours", 3, 1);
  await bring();
  expect((await titles()).sort()).toEqual([
    ["copy of ours", 1],
    ["theirs", 2],
  ]);
});

test("what was put away and then kept is forgotten", async () => {
  left("kept", 2, 0);
  isOnShelf();
  await bring();
  expect(await titles()).toEqual([]);
});

test.each(["{bad", "null", "5", '{"id":"x","rev":0}', '{"id":"x","rev":0,"document":{"format":"stillhot"}}'])(
  "%s in its place brings nothing and stops nothing",
  async (text) => {
    letters.set("stillhot-journal-drawing", text);
    await bring();
    expect(await titles()).toEqual([]);
    expect(letters.size).toBe(0);
  },
);
