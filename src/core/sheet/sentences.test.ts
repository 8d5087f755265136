import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { spell } from "../../../tests/support/words";
import type { LookFirst } from "../doubts";
import type { WorkPointReport } from "../hazard";
import type { ElementId } from "../terms";
import { lookFirstSentence } from "./lookFirst";
import { standingSentences } from "./sentences";

const standing = (threatsCompleteTo?: number) =>
  standingSentences({
    verdict: "isolated",
    margin: 2,
    threats: [],
    assumptions: 0,
    ...(threatsCompleteTo === undefined ? {} : { threatsCompleteTo }),
  } satisfies WorkPointReport).map((it) => spell(it));

test("how a work point stands says that not all ways were looked for, and nothing of it where they were", () => {
  const said =
    /^Not all ways were looked for: of those that take (.*) things going wrong some may be missing\.$/;
  const found = (completeTo?: number) => standing(completeTo).flatMap((it) => said.exec(it)?.[1] ?? []);
  expect([found(), found(1), found(2)]).toEqual([[], ["two or three"], ["three"]]);
  expect(standing(2)).toHaveLength(standing().length + 1);
});

test("a set that is still to be put on has no name on the drawing, and is told as one of the order", () => {
  const document = draw(`
    s1 source p1 ABC kvLL=12.47
    w1 work   p1 ABC
  `);
  const set = "g1" as ElementId;
  const entry: LookFirst = {
    doubt: {
      key: "thin-ground g1",
      doubt: "thin-ground",
      where: set,
      structure: null,
      hops: 0,
      instead: { set: { [set]: { cable: "4" } } },
    },
    pair: null,
    conductor: "A",
    verdict: "live",
    margin: 0,
    volts: 7200,
    exposureVolts: 434,
    strength: 2,
    groundsHold: false,
    settles: 1,
  };
  expect(spell(lookFirstSentence(document, entry))).toContain(
    "the cable of a ground set of the order is only 4",
  );
});
