import "fake-indexeddb/auto";
import { describe, expect, test, vi } from "vitest";
import {
  edits,
  emptyHistory,
  isRefusal,
  remember,
  type StillhotDocument,
  undo,
  writeDocument,
} from "../../core";
import { keepPhoto, keepUnderlay, photoOf, underlayOf } from "./photos";
import { allDrawings, ConflictError, drawing, keep, lastDrawing } from "./store";
import { emptyDrawing } from "../session/emptyDrawing";
import { makeRoom, sweep, takeBack, throwAway, trash } from "./trash";
import { dropVersion, keepVersion, type KeptVersion, outworn, versionBody, versionsOf } from "./versions";
import { readKept } from "./readKept";

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
const START = Date.UTC(2026, 0, 5, 12);

let next = 0;
const fresh = () => `drawing-${next++}`;
const titled = (title: string): StillhotDocument => ({ ...emptyDrawing, title });
const record = (id: string, title: string, savedAt = START) => ({
  id,
  title,
  savedAt,
  document: titled(title),
  history: emptyHistory,
});

describe("keeping a drawing", () => {
  test("each write counts up, and the last one written is found again", async () => {
    const id = fresh();
    expect(await keep(record(id, "one"), 0)).toBe(1);
    expect(await keep(record(id, "two"), 1)).toBe(2);
    expect((await lastDrawing())?.title).toBe("two");
  });

  test("K1 a write over what another window wrote is a conflict, and leaves that as it is", async () => {
    const id = fresh();
    await keep(record(id, "one"), 0);
    await keep(record(id, "theirs"), 1);
    await expect(keep(record(id, "ours"), 1)).rejects.toBeInstanceOf(ConflictError);
    await expect(keep(record(id, "ours"), 0)).rejects.toBeInstanceOf(ConflictError);
    expect((await drawing(id))?.title).toBe("theirs");
  });

  test("K2 the history comes back with its drawing: what was done can be undone after a reload", async () => {
    const id = fresh();
    const before = titled("before");
    const change = edits.setTitle("after")(before);
    if (isRefusal(change)) throw new Error("a title can be set");
    await keep(
      { ...record(id, "after"), document: change.after, history: remember(emptyHistory, change) },
      0,
    );
    const stored = (await drawing(id))!;
    const undone = undo(stored.history, stored.document)!;
    expect(writeDocument(undone.document)).toBe(writeDocument(before));
  });

  test("a write that fails for want of room leaves the drawing as it was", async () => {
    const id = fresh();
    await keep(record(id, "one"), 0);
    const full = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementationOnce(() => {
      throw new DOMException("no room", "QuotaExceededError");
    });
    await expect(keep(record(id, "two"), 1)).rejects.toMatchObject({ name: "QuotaExceededError" });
    full.mockRestore();
    expect(await drawing(id)).toMatchObject({ title: "one", rev: 1 });
    expect(await keep(record(id, "two"), 1)).toBe(2);
  });
});

describe("earlier versions", () => {
  test("the clock keeps what a write replaces, a minute apart at least", async () => {
    const id = fresh();
    for (let k = 0; k < 10; k++) await keep(record(id, `at ${k * 20} s`, START + k * 20_000), k);
    const versions = await versionsOf(id);
    expect(versions.map((it) => it.title)).toEqual(["at 120 s", "at 60 s", "at 0 s"]);
    expect((await versionBody(versions[0]!.id))?.title).toBe("at 120 s");
  });

  test("one a minute for half an hour, one an hour for a day, one a day for a month; named ones stay", () => {
    const now = START + 60 * DAY;
    const heads: KeptVersion[] = [];
    const add = (at: number, why: KeptVersion["why"]) =>
      heads.push({ id: heads.length, drawing: "d", at, why, title: "", points: 0, elements: 0 });
    for (let at = now - 60 * DAY; at < now - 2 * DAY; at += 60 * MINUTE) add(at, "clock");
    for (let at = now - 2 * DAY; at <= now; at += 30_000) add(at, "clock");
    add(now - 50 * DAY, "named");
    add(now - 50 * DAY, "plan");
    add(now - 20 * DAY, "plan");
    const gone = new Set(outworn(heads, now));
    const left = heads.filter((it) => !gone.has(it.id));
    const byClock = (from: number, to: number) =>
      left.filter((it) => it.why === "clock" && now - it.at >= from && now - it.at <= to).length;
    expect(byClock(0, 30 * MINUTE)).toBe(31);
    expect(byClock(30 * MINUTE + 1, DAY)).toBeGreaterThanOrEqual(23);
    expect(byClock(30 * MINUTE + 1, DAY)).toBeLessThanOrEqual(25);
    expect(byClock(DAY + 1, 30 * DAY)).toBeGreaterThanOrEqual(29);
    expect(byClock(DAY + 1, 30 * DAY)).toBeLessThanOrEqual(31);
    expect(byClock(30 * DAY + 1, 99 * DAY)).toBe(0);
    expect(left.filter((it) => it.why !== "clock").map((it) => it.why)).toEqual(["named", "plan"]);
    // What is left has had no time of its own yet: thinning again takes nothing more.
    expect(outworn(left, now)).toEqual([]);
  });

  test("a named one can be kept, listed, opened and deleted", async () => {
    const id = fresh();
    await keepVersion({ id, document: titled("t") }, "named", "before the storm", START);
    const [version] = await versionsOf(id);
    expect(version).toMatchObject({ why: "named", name: "before the storm", at: START });
    await dropVersion(version!.id);
    expect(await versionsOf(id)).toEqual([]);
    expect(await versionBody(version!.id)).toBeUndefined();
  });
});

describe("the trash", () => {
  test("with a drawing go its photos and what lies under it, and with no other one's", async () => {
    const [gone, left] = [fresh(), fresh()];
    const picture = new Blob(["map"]);
    for (const id of [gone, left]) {
      await keep(record(id, "traced"), 0);
      await keepPhoto(id, "c1", picture);
      await keepUnderlay(id, { picture, lie: { x: 0, y: 0, breadth: 400, turn: 0 }, isHidden: false });
    }
    await throwAway(gone, START);
    await sweep(START + 29 * DAY);
    expect(await underlayOf(gone)).toBeDefined();
    await sweep(START + 31 * DAY);
    expect([await photoOf(gone, "c1"), await underlayOf(gone)]).toEqual([undefined, undefined]);
    expect(await photoOf(left, "c1")).toBeDefined();
    expect(await underlayOf(left)).toBeDefined();
  });

  test("K3 what is thrown away comes back for thirty days, with its versions, and then it goes", async () => {
    const id = fresh();
    await keep(record(id, "gone"), 0);
    await keepVersion({ id, document: titled("gone") }, "named", "kept", START);
    await throwAway(id, START);
    expect((await allDrawings()).map((it) => it.id)).not.toContain(id);
    expect((await trash()).map((it) => it.id)).toContain(id);
    expect(await lastDrawing()).toBeUndefined();
    await sweep(START + 29 * DAY);
    await takeBack(id);
    expect((await allDrawings()).map((it) => it.id)).toContain(id);
    await throwAway(id, START);
    await sweep(START + 31 * DAY);
    expect(await drawing(id)).toBeUndefined();
    expect(await versionsOf(id)).toEqual([]);
  });

  test("a full device gives up the trash and what the clock kept, never a drawing or a named version", async () => {
    const [kept, thrown] = [fresh(), fresh()];
    await keep(record(kept, "one"), 0);
    await keep(record(kept, "two", START + 2 * MINUTE), 1);
    await keepVersion({ id: kept, document: titled("t") }, "named", "mine", START);
    await keep(record(thrown, "gone"), 0);
    await throwAway(thrown, Date.now());
    await makeRoom();
    expect((await versionsOf(kept)).map((it) => it.why)).toEqual(["named"]);
    expect((await drawing(kept))?.title).toBe("two");
    expect(await drawing(thrown)).toBeUndefined();
  });
});

describe("what lies on the shelf is read as any file", () => {
  const kept = { ...record("kept", "kept"), rev: 3 };

  test("a drawing that was kept comes back as it is, with its history", () => {
    const change = edits.setTitle("new")(kept.document);
    if (isRefusal(change)) throw new Error("refused");
    const history = remember(emptyHistory, change);
    expect(readKept({ ...kept, history })).toEqual({ ...kept, history });
  });

  test.each([
    ["nothing", null],
    ["one of a newer version", { ...titled("new"), formatVersion: 99 }],
    ["one without elements", { ...titled("half"), system: { points: {} } }],
    [
      "a place that is no number",
      { ...titled("torn"), system: { points: { p1: { x: NaN } }, elements: {} } },
    ],
    ["a title that is no text", { ...titled(""), title: {} }],
  ])("%s is not shown", (_, document) => {
    expect(readKept({ ...kept, document: document as never })).toBeUndefined();
  });

  test.each([undefined, null, "done", { done: [] }, { done: [null], undone: [] }])(
    "a history of %j is an empty one",
    (history) => {
      expect(readKept({ ...kept, history: history as never })?.history).toEqual(emptyHistory);
    },
  );

  test.each([undefined, NaN, 9e15, "yesterday"])(
    "K10 a moment %s stops no list and hides no drawing",
    async (savedAt) => {
      const id = fresh();
      await keep({ ...record(id, "torn"), savedAt: savedAt as never }, 0);
      const found = (await allDrawings()).find((it) => it.id === id)!;
      expect(new Date(found.savedAt).toISOString()).toBe("1970-01-01T00:00:00.000Z");
      expect(readKept({ ...kept, savedAt: savedAt as never })?.savedAt).toBe(0);
    },
  );
});
