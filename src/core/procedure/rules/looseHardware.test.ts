import { expect, test } from "vitest";
import { checkRule, draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { french, spell } from "../../../../tests/support/words";

checkRule(
  "loose-hardware",
  "common practice: nothing on a pole is shaken while something on it hangs loose",
  `${TAP}
  a1 arrester p2 A loose=true
`,
  [
    ["the cutout on its pole is opened", "open c1", "danger a1"],
    ["the clamp on its pole is lifted", "lift k1", "danger a1"],
    ["another pole", "open c2", ""],
    ["secured first", "secure a1; open c1", ""],
    ["secured by its pole", "secure p1; open c1", ""],
    ["an arrester that is whole and fast", "open c1", "", "a1 arrester p2 A"],
    ["a failed one may come apart too", "open c1", "danger a1", "a1 arrester p2 A failed=A"],
    ["cut clear", "cut l1; lift k1", "", "l1 lead p2-p20 A\na1 arrester p20 A loose=true"],
    ["the clamps of a ground set go on beside it", "open c1; ground p2 A", "danger a1"],
    ["on another pole", "open c1; ground p4 A", ""],
    ["a tag shakes nothing", "tag c1", ""],
  ],
);

checkRule(
  "loose-hardware",
  "common practice, no source: what is burned, cracked or broken is held before the pole is shaken",
  `${TAP}
  k1 clamp p1-p2 A condition=burned
  sp0 span p2-p9 A
  c9 cutout p9-p10 A
`,
  [
    ["the burned clamp itself", "lift k1 A with clamp-stick", "danger k1"],
    ["a cutout on its pole", "open c1 A", "danger k1"],
    ["held first", "secure k1; open c1 A", ""],
    ["another pole", "open c9 A", ""],
    ["seized is stiff, not loose", "open c1 A", "", "k1 clamp p1-p2 A condition=seized"],
  ],
);

test.each([
  ["a1 arrester p2 A loose=true", "hangs loose there"],
  ["a1 arrester p2 A failed=A", "has failed there"],
  ["a1 arrester p2 A condition=cracked", "is cracked and may break there"],
])("what is wrong with it is told in the word that was drawn: %s", (drawn, wanted) => {
  const [last] = playAll(draw(`${TAP}\n${drawn}`), parseSteps("open c1", [])).slice(-1);
  const told = last!.findings.find(({ rule }) => rule === "loose-hardware")!;
  expect(spell(told.message)).toMatch(new RegExp(`${wanted}$`));
});

test.each(["condition=burned", "condition=cracked", "condition=broken", "condition=rotten", "failed=A"])(
  "in French what is wrong with it suits a name of either gender: %s",
  (drawn) => {
    const [last] = playAll(draw(`${TAP}\na1 arrester p2 A ${drawn}`), parseSteps("open c1", [])).slice(-1);
    const told = last!.findings.find(({ rule }) => rule === "loose-hardware")!;
    const is = spell(told.message, french);
    expect(is).toMatch(/ y a /);
    expect(is).not.toMatch(/ y est /);
  },
);
