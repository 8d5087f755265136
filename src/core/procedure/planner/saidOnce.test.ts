import { expect, test } from "vitest";
import { draw, parseSteps } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";
import { say } from "../../terms";
import { saidOnce } from "./saidOnce";

/** Three cutouts on one pole, and one on the next. */
const { system } = draw(`
  s1 source  p1    ABC kvLL=12.47
  ca cutout  p1-p2 A   label=ca
  cb cutout  p1-p2 B   label=cb
  cc cutout  p1-p2 C   label=cc
  sp span    p2-p3 ABC lengthM=90
  cd cutout  p3-p4 A   label=cd
  w1 work    p4    A
`);

const said = (order: string) =>
  saidOnce(
    system,
    parseSteps(order, ["p1", "p2", "p3"]).map((it) => ({ ...it, why: say("why.on") })),
  );

const told = (order: string): string =>
  said(order)
    .map(({ why: _why, do: verb, ...keys }) => [verb, ...Object.values(keys).filter((it) => it !== "live")])
    .map((it) => it.join(" "))
    .join("; ");

test.each([
  [
    "the next barrel of the pole needs no second word, and its tag comes off before",
    "untag ca; stand-clear; close ca; untag cb; unblock cb; stand-clear; close cb; stand-clear; close cc",
    "untag ca; untag cb; unblock cb; stand-clear; close ca; close cb; close cc",
  ],
  [
    "one on the next pole does",
    "stand-clear; close ca; stand-clear; close cd",
    "stand-clear; close ca; stand-clear; close cd",
  ],
  [
    "and so does one whose link is renewed between",
    "stand-clear; close ca; refuse cb; stand-clear; close cb",
    "stand-clear; close ca; refuse cb; stand-clear; close cb",
  ],
  [
    "volts that were just read are not read again",
    "close ca; test p2 ABC expect live; untag cd; test p2 AB expect live; close cd",
    "close ca; test p2 ABC; untag cd; close cd",
  ],
  [
    "those of another phase are",
    "test p2 A expect live; test p2 AB expect live; close cd",
    "test p2 A; test p2 AB; close cd",
  ],
  [
    "and those of a line that was switched since",
    "test p2 A expect live; open ca; close ca; test p2 A expect live",
    "test p2 A; open ca; close ca; test p2 A",
  ],
  ["a test for a dead line is another", "test p2 A; test p2 A expect live", "test p2 A; test p2 A"],
])("%s", (_why, order, wanted) => expect(told(order)).toBe(wanted));

test("the one word names every barrel", () => {
  const word = said("stand-clear; close ca; stand-clear; close cb").find((it) => it.do === "stand-clear")!;
  expect(spell(word.why)).toMatch(/ca.*; .*cb/);
});
