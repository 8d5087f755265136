// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { UnansweredWorker } from "../../../tests/support/unansweredWorker";
import { isUnreadable, readDocument, structuresOf } from "../../core";
import { Session } from "../session/session.svelte";
import { learn } from "../words/catalogue";
import { english } from "../words/messages/en";
import { french } from "../words/messages/fr";
import { sketchActsFor } from "../sketch/acts";
import { everyCommand, everyThing } from "./found";
import { matching } from "../words/matching";

test.each([
  ["English", english, ["note", "photo", "seen", "phase", "rename", "house"]],
  ["French", french, ["note", "photo", "vu", "phase", "renommer", "maison"]],
] as const)("the finder knows the words that a crew types, in %s", (_language, words, typed) => {
  learn(words);
  vi.stubGlobal("Worker", UnansweredWorker);
  const session = new Session(sideline());
  const [id] = structuresOf(session.document.system).keys();
  session.select({ of: "structure", id: id! });
  const lines = everyCommand({
    session,
    sketch: { commands: {}, acts: sketchActsFor(session, {} as never) },
    menu: [],
    demos: [],
  } as never);
  const dead = typed.filter((it) => matching(lines, it).every(({ why }) => why !== undefined));
  learn(english);
  expect(dead).toEqual([]);
});

test("the finder lists no structure and its first point as two lines of one name", () => {
  learn(english);
  vi.stubGlobal("Worker", UnansweredWorker);
  const session = new Session(sideline());
  const names = everyThing({ session, sketch: {} } as never).map(({ label }) => label);
  expect(names).toContain("Pole 33");
  expect(names.filter((it, nth) => names.indexOf(it) !== nth)).toEqual([]);
});

function sideline() {
  const read = readDocument(readFileSync("shared/demos/sideline-three-transformers.stillhot.json", "utf8"));
  if (isUnreadable(read)) throw new Error("the demo does not read");
  return read.document;
}
