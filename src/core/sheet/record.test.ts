import { english } from "../../../tests/support/words";
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { edited } from "../../../tests/support/edited";
import { edits, type JobLogLine } from "../document";
import { jobOf, readDocument } from "../document";
import { spell } from "../terms";
import { permitWords, recordOf, timesOfSteps } from "./record";
import { sheetHtml } from "./sheetHtml";

const read = readDocument(
  readFileSync(
    new URL("../../../shared/demos/sideline-three-transformers.stillhot.json", import.meta.url),
    "utf8",
  ),
);
if (!("document" in read)) throw new Error("the demo does not read");

const at = (minutes: number) => `2030-01-01T08:${String(minutes).padStart(2, "0")}:00Z`;
const LOG: readonly JobLogLine[] = [
  { at: at(0), mark: "begun" },
  { at: at(1), step: { do: "brief" }, n: 1, struck: at(2) },
  { at: at(3), step: { do: "brief" }, n: 1 },
  { at: at(4), step: { do: "receive-permit", text: "no. 4711 <b>" }, n: 2 },
  { at: at(5), step: { do: "ask" } },
  { at: at(6), step: { do: "confirm" }, n: 3, leftOut: true },
  { at: at(7), mark: "unexpected", seen: "tag", text: "Open Q1" },
];
const underWay = edited(
  read.document,
  edits.setSteps([{ do: "brief" }, { do: "receive-permit" }, { do: "confirm" }]),
  edits.setJobLog(LOG),
);
const minutes = (moment: string) => moment.slice(11, 16);

test("what was done stands in the record line by line, what was struck and left out too", () => {
  expect(recordOf(underWay, minutes).map((it) => spell(it, english))).toEqual([
    "08:00: job begun ",
    "08:01: Hold the tailboard, whole crew (struck at 08:02)",
    "08:03: Hold the tailboard, whole crew",
    "08:04: Receive the permit: no. 4711 <b>",
    "08:05: Ask the system operator",
    "08:06: left out: Repeat it back",
    "08:07: NOT AS EXPECTED: Open Q1",
  ]);
});

test("each step of the order has the time at which it was done, and none where it was left out", () => {
  expect(jobOf(underWay).steps.map(({ done }) => done)).toEqual([true, true, undefined]);
  expect([...timesOfSteps(underWay, minutes)]).toEqual([
    [1, "08:03"],
    [2, "08:04"],
  ]);
});

test("the sheet has the record and the permit's own words, as text", () => {
  expect(permitWords(underWay)).toBe("no. 4711 <b>");
  const html = sheetHtml(underWay, { catalogue: english, timeOf: minutes });
  expect(html).toContain("Permit no. 4711 &lt;b&gt;, held by");
  expect(html).toContain("08:07: NOT AS EXPECTED: Open Q1");
  expect(html).toContain('<span class="time">08:03</span>');
  expect(sheetHtml(read.document, { catalogue: english })).not.toContain("What was done");
});
