import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Edit, edits, isRefusal, readDocument, type StillhotDocument, writeDocument } from "../../core";
import { Receiver, Sender } from "./copies";

const read = readDocument(readFileSync("shared/demos/quarry-lane.stillhot.json", "utf8"));
if (!("document" in read)) throw new Error("the demo does not read");
const start = read.document;

const after = (document: StillhotDocument, edit: Edit): StillhotDocument => {
  const change = edit(document);
  if (isRefusal(change)) throw new Error(JSON.stringify(change));
  return change.after;
};

/** As the other side gets it. */
const through = <Value>(value: Value): Value => structuredClone(value);

test("the copy follows edit by edit, and only the first is sent whole", () => {
  const [sender, receiver] = [new Sender(), new Receiver()];
  let document = start;
  const points = Object.keys(start.system.points);
  for (let n = 0; n < 8; n++) {
    const sent = sender.send(document);
    expect("whole" in sent).toBe(n === 0);
    const copy = receiver.receive(through(sent));
    expect(writeDocument(copy!)).toBe(writeDocument(document));
    // Every other drawing is never sent: the next one brings both edits.
    for (let edit = 0; edit < 1 + (n % 2); edit++)
      document = after(document, edits.movePoints([points[n]!], { x: 20 + edit, y: 0 }));
  }
});

test("a drawing that no edits lead to, and one for a side that is new, is sent whole", () => {
  const [sender, receiver] = [new Sender(), new Receiver()];
  receiver.receive(through(sender.send(start)));
  const other = structuredClone(start);
  expect("whole" in sender.send(other)).toBe(true);
  const edited = after(other, edits.setTitle("other"));
  expect("patches" in sender.send(edited)).toBe(true);
  sender.startAfresh();
  expect("whole" in sender.send(edited)).toBe(true);
});

test("patches for a drawing that is not there are not put on another", () => {
  const [sender, receiver] = [new Sender(), new Receiver()];
  sender.send(start); // lost on its way
  const edited = after(start, edits.setTitle("other"));
  expect(receiver.receive(through(sender.send(edited)))).toBeUndefined();
});
