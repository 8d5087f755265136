import { expect, test } from "vitest";
import { isRefusal } from "../terms";
import {
  type Edit,
  edits,
  emptyHistory,
  type History,
  isUnreadable,
  readDocument,
  readHistory,
  redo,
  remember,
  type StillhotDocument,
  undo,
  undoKept,
  writeDocument,
} from ".";
import { spell, spellProblem } from "../../../tests/support/words";

const read = (text: string): StillhotDocument => {
  const file = readDocument(text);
  if (isUnreadable(file)) throw new Error(file.problems.map(spellProblem).join("\n"));
  return file.document;
};

const start = read(
  '{"format":"stillhot","formatVersion":1,"system":{"points":{"p1":{},"p2":{}},"elements":{}}}',
);

interface State {
  readonly document: StillhotDocument;
  readonly history: History;
}

const run = ({ document, history }: State, edit: Edit, gesture?: string): State => {
  const change = edit(document);
  if (isRefusal(change)) throw new Error(spell(change.refused));
  return { document: change.after, history: remember(history, change, gesture) };
};

const begin: State = { document: start, history: emptyHistory };
const drag = (x: number) => edits.movePoints(["p1", "p2"], { x, y: 0 });

test("undo and redo go back and forth, and name the edit", () => {
  const edited = run(run(begin, edits.setTitle("a")), edits.addPoint());
  const once = undo(edited.history, edited.document)!;
  expect(spell(once.label)).toBe("Add a point");
  const twice = undo(once.history, once.document)!;
  expect(writeDocument(twice.document)).toBe(writeDocument(start));
  expect(undo(twice.history, twice.document)).toBeUndefined();
  const again = redo(twice.history, twice.document)!;
  expect(writeDocument(again.document)).toBe(writeDocument(once.document));
  expect(redo(redo(again.history, again.document)!.history, edited.document)).toBeUndefined();
});

test("a new edit forgets what was undone", () => {
  const edited = run(begin, edits.addPoint());
  const back = undo(edited.history, edited.document)!;
  const { history } = run({ document: back.document, history: back.history }, edits.setTitle("b"));
  expect(history.undone).toEqual([]);
});

test("one gesture is one entry, however many moves it made, and keeps only where it began and ended", () => {
  let state = run(begin, drag(5), "drag 1");
  const size = state.history.done[0]!.size;
  for (let n = 0; n < 300; n++) state = run(state, drag(5), "drag 1");
  expect(state.history.done.length).toBe(1);
  expect(state.history.done[0]!.size).toBeLessThan(size + 50);
  const back = undo(state.history, state.document)!;
  expect(writeDocument(back.document)).toBe(writeDocument(start));
  const again = redo(back.history, back.document)!;
  expect(writeDocument(again.document)).toBe(writeDocument(state.document));
});

test("a gesture of unlike edits is one entry too", () => {
  const edited = run(run(run(begin, edits.addPoint(), "g"), drag(20), "g"), edits.setTitle("c"), "g");
  expect(edited.history.done.length).toBe(1);
  expect(writeDocument(undo(edited.history, edited.document)!.document)).toBe(writeDocument(start));
});

test("another gesture, or one that was undone in between, is an entry of its own", () => {
  const two = run(run(begin, drag(5), "drag 1"), drag(5), "drag 2");
  expect(two.history.done.length).toBe(2);
  const back = undo(two.history, two.document)!;
  const again = redo(back.history, back.document)!;
  expect(
    run({ document: again.document, history: again.history }, drag(5), "drag 2").history.done.length,
  ).toBe(3);
});

test("memory is bounded: old entries are forgotten, by number and by size", () => {
  let many = begin;
  for (let n = 0; n < 600; n++) many = run(many, edits.setTitle(`title ${n}`));
  expect(many.history.done.length).toBe(500);
  let large = begin;
  for (let n = 0; n < 120; n++) large = run(large, edits.setNotes(`${n} ${"x".repeat(99_000)}`));
  expect(large.history.done.length).toBeLessThan(45);
  expect(undo(large.history, large.document)!.document.notes).toMatch(/^118 /);
});

test("a history is plain JSON, so that it can be stored beside its document", () => {
  const { document, history } = run(run(begin, edits.addPoint()), drag(10), "drag");
  const stored = JSON.parse(JSON.stringify(history)) as History;
  expect(stored).toEqual(history);
  const back = undo(stored, document)!;
  expect(writeDocument(undo(back.history, back.document)!.document)).toBe(writeDocument(start));
});

test.each<readonly [string, (history: History) => unknown]>([
  ["a label that says nothing", ({ done }) => ({ done: [{ ...done[0], label: {} }], undone: [] })],
  ["an entry without patches", ({ done }) => ({ done: [{ ...done[0], inverse: undefined }], undone: [] })],
  ["an entry that is none", () => ({ done: [null], undone: [] })],
])("K10 a kept history with %s is an empty one", (_, spoil) => {
  expect(readHistory(spoil(run(begin, drag(10)).history))).toEqual(emptyHistory);
});

test.each<readonly [string, object[]]>([
  ["lead nowhere", [{ op: "replace", path: ["system", "points", "p9", "x"], value: 1 }]],
  ["make no drawing", [{ op: "replace", path: ["system", "points"], value: 5 }]],
  ["are none", [{ op: "sing", path: [] }]],
])("K10 a kept history whose patches %s is refused when it is used", (_, inverse) => {
  const { document, history } = run(begin, drag(10));
  const kept = readHistory({ done: [{ ...history.done[0], inverse }], undone: [] });
  expect(undoKept(kept, document)).toHaveProperty("refused");
  expect(undoKept(history, document)).toMatchObject({ document: start });
});
