import { describe, expect, test } from "vitest";
import { type Edit, edits, emptyHistory, isRefusal, remember, type StillhotDocument } from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { pasteInto } from "./pasting";

/** Notes in order what is done to a drawing: what it is kept as, what it becomes, what is said. */
function drawing(isReadOnly = false) {
  let document: StillhotDocument = emptyDrawing;
  let history = emptyHistory;
  const done: string[] = [];
  const points = () => Object.keys(document.system.points).join(" ");
  return {
    done,
    can: (edit: Edit) => !isReadOnly && !isRefusal(edit(document)),
    keepBefore: (why: string) => void done.push(`kept before ${why}: ${points()}`),
    say: () => void done.push("said why not"),
    run(edit: Edit) {
      const change = isReadOnly ? undefined : edit(document);
      if (change === undefined || isRefusal(change)) return void done.push("refused");
      document = change.after;
      history = remember(history, change);
      done.push(`has ${points()}`);
      return change;
    },
  };
}

const span = edits.writeFragment({
  points: { p1: { x: 0 }, p2: { x: 100 } },
  elements: { sp1: { kind: "span", from: "p1", to: "p2", phases: "A" } },
});
const bad = JSON.stringify({ points: {}, elements: { x1: { kind: "no such kind" } } });

describe("What is pasted", () => {
  test.each<[what: string, text: string, copied: string | undefined, done: readonly string[]]>([
    ["parts from elsewhere", span, undefined, ["kept before import: ", "has p1 p2"]],
    ["parts from elsewhere, after a copy here", span, "{}", ["kept before import: ", "has p1 p2"]],
    ["what was copied here", span, span, ["has p1 p2"]],
    ["a letter, after a copy here", "Dear all", span, ["has p1 p2"]],
    ["a letter", "Dear all", undefined, ["said why not"]],
    ["parts that no reader takes", bad, undefined, ["refused"]],
  ])("%s", (_, text, copied, done) => {
    const it = drawing();
    const made = pasteInto(it, text, copied);
    expect(it.done).toEqual(done);
    expect([...made].sort()).toEqual(done.at(-1)!.startsWith("has") ? ["p1", "p2", "sp1"] : []);
  });

  test("is kept each time as the drawing was right before", () => {
    const it = drawing();
    pasteInto(it, span, undefined);
    pasteInto(it, span, undefined);
    expect(it.done.slice(2)).toEqual(["kept before import: p1 p2", "has p1 p2 p3 p4"]);
  });

  test("keeps nothing where another window is the one that edits", () => {
    const it = drawing(true);
    pasteInto(it, span, undefined);
    expect(it.done).toEqual(["refused"]);
  });
});
