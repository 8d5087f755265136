import { expect, test } from "vitest";
import { assess, readDocument, type Step, type StillhotDocument } from "../../src/core";
import { gapsToMeet, mismatchOf } from "../../src/core/procedure/effects/gap";
import { beginJob } from "../../src/core/procedure/job/state";
import { advance } from "../../src/core/procedure/rehearsal/play";
import { drawFrom, randomDocument } from "../support/randomSystems";

/** A random drawing with one more source, of these volts and this angle or others, that an open switch parts from some line of it. */
function withOneMoreSource(seed: number): StillhotDocument | undefined {
  const draw = drawFrom(seed);
  const file = randomDocument(seed, { parts: 6 });
  const { points, elements } = file.system;
  const lines = Object.values(elements).filter((it) =>
    ["span", "clamp", "cutout"].includes(String(it["kind"])),
  );
  if (lines.length === 0) return undefined;
  const { to, phases } = draw.oneOf(lines);
  points["more"] = { x: 0, y: 0, kind: "pole" };
  elements["sMore"] = {
    kind: "source",
    at: "more",
    phases,
    kvLL: draw.oneOf([12.47, 12.47, 4.16, 24.9]),
    angleDeg: draw.oneOf([0, 10, 30, -120]),
  };
  elements["dMore"] = { kind: "disconnect", from: to, to: "more", phases, open: phases };
  const read = readDocument(JSON.stringify({ ...file, job: undefined }));
  return "document" in read ? read.document : undefined;
}

const foundIn = (document: StillhotDocument): string[] =>
  assess(document).findings.flatMap(({ rule, where }) => (rule === "phase-check" ? [where] : []));

test("H24: what is a danger to close is told of the drawing once it is closed, and nothing else is", () => {
  let dangers = 0;
  const wrong: string[] = [];
  for (let seed = 1; seed <= 120; seed++) {
    const document = withOneMoreSource(seed);
    if (document === undefined) continue;
    const asFound = foundIn(document);
    for (const [id, element] of Object.entries(document.system.elements)) {
      const open = (element as { open?: string }).open ?? "";
      if (!("to" in element) || open === "") continue;
      const before = beginJob(document);
      const close = { do: "close", element: id, phases: open } as Step;
      const after = advance(before, close);
      const meeting = gapsToMeet(close, before, after);
      // A side that hangs on a fault, or on a machine, is no supply to be joined with.
      if (!meeting.every(({ from, to }) => from.state === "energized" && to.state === "energized")) continue;
      const isDanger = mismatchOf(close, before, after) !== undefined;
      if (isDanger) dangers++;
      const isTold = foundIn(after.document).some((it) => !asFound.includes(it));
      if (isDanger !== isTold) wrong.push(`seed ${seed}: ${id} is ${isDanger ? "" : "no "}danger to close`);
    }
  }
  expect(wrong).toEqual([]);
  expect(dangers).toBeGreaterThan(20);
});
