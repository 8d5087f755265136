import "fake-indexeddb/auto";
import { expect, test } from "vitest";
import { edits, isRefusal, isUnreadable, readDocument, type StillhotDocument } from "../../core";
import { shelves } from "../keep/shelves";
import { placeOwn } from "./placeOwn";
import { dropStamp, keepStamp, ownStamps, renameStamp } from "./stamps";

function drawing(): StillhotDocument {
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "t",
      system: {
        points: { p1: {}, p2: { x: 120 }, p3: { x: 120, y: 80 }, p4: { x: 240 } },
        elements: {
          s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
          sp1: { kind: "span", from: "p1", to: "p2", phases: "ABC" },
          c1: { kind: "cutout", from: "p2", to: "p3", phases: "A" },
          sp2: { kind: "span", from: "p2", to: "p4", phases: "ABC" },
        },
      },
    }),
  );
  if (isUnreadable(read)) throw new Error("it reads");
  return read.document;
}

function stamp(): edits.Stamp {
  const made = edits.stampOf(drawing(), { elements: ["c1"] }, "Mill tap");
  if (isRefusal(made)) throw new Error(made.refused.key);
  return made;
}

test("a stamp is kept, found again, renamed and deleted", async () => {
  await keepStamp(stamp());
  const [kept] = await ownStamps();
  expect(kept?.stamp).toEqual(stamp());
  await renameStamp(kept!, "Sawmill tap");
  expect((await ownStamps()).map((it) => it.stamp?.name)).toEqual(["Sawmill tap"]);
  await dropStamp(kept!.id);
  expect(await ownStamps()).toEqual([]);
});

test("what lies among them and is none has no stamp, and does no harm to the others", async () => {
  await keepStamp(stamp());
  const database = await shelves();
  await database.put("stamps", { id: "bad", savedAt: 1, join: "p1", text: "<script>" });
  await database.put("stamps", { id: "odd", savedAt: 2, join: 7, text: null } as never);
  expect((await ownStamps()).map((it) => it.stamp?.name)).toEqual([undefined, undefined, "Mill tap"]);
});

test("it is put to a free side, as one edit, on the phases that were chosen", () => {
  const document = drawing();
  const change = placeOwn(stamp(), document, "p2", "B")(document);
  if (isRefusal(change)) throw new Error(change.refused.key);
  const { points, elements } = change.after.system as unknown as Record<
    string,
    Record<string, { y?: number }>
  >;
  // East and west runs the line, south is the first cutout.
  expect(points!["p5"]).toMatchObject({ x: 120, y: -80 });
  expect(elements!["c2"]).toMatchObject({ from: "p2", to: "p5", phases: "B" });
});
