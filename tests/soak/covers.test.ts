import { expect, test } from "vitest";
import { DEVICES } from "../../src/core/devices";
import { nastyDocument } from "../secondOpinion/nasty";
import { randomDocument } from "../support/randomSystems";

/** Keys that say nothing of volts and amperes: of whom, how it is known, how it looks, what a tool may do with it. */
const NOT_ELECTRICAL = new Set([
  ...["label", "evidence", "condition", "note", "planned", "leave", "by", "taggedBy", "normallyOpen"],
  ...["fuse", "continuousAmps", "loadBreak", "loadBreakAmps", "arcChuteAmps", "interruptingAmps"],
  ...["visibleGap", "critical", "count", "charged", "loose"],
]);

/**
 * What the soak's drawings lack: matrices of one's own have their check against the circuit simulator, equal sources theirs against the
 * drawing that they stand for, marks their rules'.
 * A sectionalizer is drawn only as a plain one of one handle: how it joins is that of a disconnect, whose neutral, gang and
 * remote are drawn; its count of trips moves nothing in what is solved.
 */
const LACKING = [
  "source equal",
  "span zOhmsPerKm",
  "span bMicroSPerKm",
  "sectionalizer neutral",
  "sectionalizer gang",
  "sectionalizer counts",
  "sectionalizer remote",
  "transfer tagged",
  "transfer blocked",
  "capacitor tagged",
  "capacitor blocked",
  "ground tagged",
];

test("the drawings of the soak have every kind, and every electrical key but those named here", () => {
  const given = new Set<string>();
  for (let seed = 0; seed < 300; seed++)
    for (const { system } of [nastyDocument(seed, 6), randomDocument(seed, { parts: 6 })] as {
      system: { elements: Record<string, { kind: string }> };
    }[])
      for (const element of Object.values(system.elements))
        for (const key of Object.keys(element)) given.add(`${element.kind} ${key}`);
  const all = Object.entries(DEVICES).flatMap(([kind, { fields }]) =>
    Object.entries(fields as Record<string, { readonly internal?: true }>)
      .filter(([key, { internal }]) => internal !== true && !NOT_ELECTRICAL.has(key))
      .filter(([key]) => key !== "on" || kind === "source" || kind === "generator" || kind === "nearby")
      .map(([key]) => `${kind} ${key}`),
  );
  expect(all.filter((it) => !given.has(it))).toEqual(LACKING);
});
