import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { exportMap, readDocument } from "../../core";
import type { Session } from "../session/session.svelte";
import { write } from "./write";

const read = readDocument(readFileSync("shared/demos/transformer-tap.stillhot.json", "utf8"));
if (!("document" in read)) throw new Error("the demo does not read");
const { document } = read;
const shown = () => ({ document, told: undefined, lit: [] }) as unknown as Session;

test("the drawing that is shown is written", async () => {
  const came = await write(shown(), "map", "a.geojson").answer;
  if (came === undefined || !("written" in came)) throw new Error("nothing came");
  expect(await came.written.file.text()).toBe(exportMap(document).text);
});

test("what was asked before the drawing changed does not come after it, and that is said", async () => {
  const session = shown();
  const { answer } = write(session, "map", "a.geojson");
  session.document = { ...document, title: "other" };
  expect(await answer).toEqual({ why: { key: "share.changed", with: { name: "a.geojson" } } });
});
