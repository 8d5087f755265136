import "fake-indexeddb/auto";
import { beforeEach, expect, test, vi } from "vitest";
import { emptyHistory } from "../../core";
import { allDrawings, drawing, keep } from "./store";
import { emptyDrawing } from "../session/emptyDrawing";
import { bringIn, isOnShelf, putAway } from "./putAway";

const letters = new Map<string, string>();
/** Letters that the browser's small store takes at most. */
let room = Infinity;
vi.stubGlobal(
  "localStorage",
  new Proxy(
    {
      getItem: (key: string) => letters.get(key) ?? null,
      setItem: (key: string, text: string) => {
        if (text.length > room) throw new DOMException("no room", "QuotaExceededError");
        letters.set(key, text);
      },
      removeItem: (key: string) => void letters.delete(key),
    },
    {
      ownKeys: () => [...letters.keys()],
      getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
    },
  ),
);

let next = 0;
let id = "";
beforeEach(() => {
  letters.clear();
  room = Infinity;
  id = `drawing-${next++}`;
});

const record = (title: string, savedAt: number) => ({
  id,
  title,
  savedAt,
  document: { ...emptyDrawing, title },
  history: emptyHistory,
});
/** A drawing as a page leaves it that had read `rev`, at so many edits of its own. */
const left = (title: string, savedAt: number, rev: number, page?: { page: string; edit: number }) =>
  putAway({ ...record(title, savedAt), rev, ...page });
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

test("an older write of the same page does not stand for its newest, and a newer one is not undone", async () => {
  await keep({ ...record("under way", 2), page: "a", edit: 1 }, 0);
  left("newest", 3, 0, { page: "a", edit: 2 });
  await bring();
  expect(await titles()).toEqual([["newest", 2]]);
  await keep({ ...record("after it", 4), page: "a", edit: 5 }, 2);
  left("newest", 3, 1, { page: "a", edit: 2 });
  await bring();
  expect(await titles()).toEqual([["after it", 3]]);
});

test("K9 a clock that was set back takes nothing away", async () => {
  await keep(record("old", 1000), 0);
  left("new", 2, 1);
  await bring();
  expect(await titles()).toEqual([["new", 2]]);
});

test("K9 what two windows leave behind at once is brought in, each", async () => {
  left("one", 2, 0);
  putAway({ ...record("two", 3), id: `${id}-two`, rev: 0 });
  await bring();
  expect((await titles()).map(([title]) => title).sort()).toEqual(["one", "two"]);
});

test("without room for its history the drawing itself is put away", async () => {
  const history = { done: [], undone: [], long: "x".repeat(5000) } as never;
  room = 5000;
  putAway({ ...record("kept", 2), history, rev: 0 });
  await bring();
  expect(await drawing(id)).toMatchObject({ title: "kept", history: emptyHistory });
});

test("what the shelf does not take stays where it is, and is told", async () => {
  left("no room", 2, 0);
  const put = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
    throw new DOMException("no room", "QuotaExceededError");
  });
  const leftOver = await bring();
  put.mockRestore();
  expect(leftOver.map((it) => [it.left.title, (it.error as Error).name])).toEqual([
    ["no room", "QuotaExceededError"],
  ]);
  await bring();
  expect(await titles()).toEqual([["no room", 1]]);
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
  isOnShelf(id);
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
