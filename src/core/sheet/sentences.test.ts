import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { spell } from "../../../tests/support/words";
import type { LookFirst } from "../doubts";
import { assess, type WorkPointReport } from "../hazard";
import type { ConductorId, ElementId, WorkPointId } from "../terms";
import { lookFirstSentence } from "./lookFirst";
import { alsoFedSentence, standingSentences } from "./sentences";

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

// A bank whose lost phase is held by its other two, and by a machine behind it.
const HELD_TWICE = `
  s1 source      sub   ABC kvLL=12.47
  m1 span        sub-p1 ABC lengthM=900
  m2 span        p1-p2 ABC lengthM=80 parted=B
  bk transformer p2-f1 ABC connection=Yg-D kva=300 primaryKv=12.47 secondaryV=480
  gx generator   f1    ABC kva=100 volts=480 on=true
  w1 work        p2    B
`;

test.each([
  ["a machine, and the line by way of the bank", HELD_TWICE, "B is fed by source as well."],
  ["the bank alone", `${HELD_TWICE}\ngx generator f1 ABC kva=100 volts=480`, undefined],
])("what else feeds a place that is live as drawn is told: %s", (_why, drawing, wanted) => {
  const document = draw(drawing);
  const { workPoints, conductors } = assess(document);
  const [threat] = workPoints["w1" as WorkPointId]!.threats;
  const { sources } = conductors["p2/B" as ConductorId]!;
  const told = alsoFedSentence(document, sources, threat!);
  expect(told === undefined ? undefined : spell(told)).toBe(wanted);
});
