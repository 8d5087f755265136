// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { UnansweredWorker } from "../../../tests/support/unansweredWorker";
import { isUnreadable, readDocument } from "../../core";
import { Session } from "../session/session.svelte";
import { learn } from "../words/catalogue";
import { english } from "../words/messages/en";
import { everyThing } from "./found";

test("the finder lists no structure and its first point as two lines of one name", () => {
  learn(english);
  vi.stubGlobal("Worker", UnansweredWorker);
  const read = readDocument(readFileSync("shared/demos/sideline-three-transformers.stillhot.json", "utf8"));
  if (isUnreadable(read)) throw new Error("the demo does not read");
  const session = new Session(read.document);
  const names = everyThing({ session, sketch: {} } as never).map(({ label }) => label);
  expect(names).toContain("Pole 33");
  expect(names.filter((it, nth) => names.indexOf(it) !== nth)).toEqual([]);
});
