import { checkRule, TAP } from "../../../../tests/support/jobNotation";

const OTHERS = `${TAP}
  sw2 disconnect p4-p8 A open=A tagged=true blocked=true taggedBy=Crew_9
  sw3 disconnect p4-p9 A open=A tagged=true
  gz  ground     p8    A by=Crew_9
  gy  ground     p9    A
  job crew=Crew_4
`;

checkRule(
  "others-tag",
  "1910.269(m)(3)(ix) to (xii): a tag comes off by those whose it is, and a permit is released by its holder, or handed over",
  OTHERS,
  [
    ["another's tag comes off", "untag sw2", "danger sw2"],
    ["another's block comes off", "unblock sw2", "danger sw2"],
    ["a thing is closed under another's tag", "unblock sw2; close sw2", "danger sw2"],
    ["another's ground comes off", "unground gz", "danger gz"],
    ["one's own tag comes off", "untag sw3", ""],
    ["one's own ground comes off", "unground gy", ""],
    ["one's own tag is hung beside it, and comes off again", "tag sw2; untag sw2", ""],
    ["the other's own is still there then", "tag sw2; untag sw2; untag sw2", "danger sw2"],
    ["what was handed over", "hand-over sw2 to Crew_4; untag sw2", ""],
    ["handed over to somebody else yet", "hand-over sw2 to Crew_7; untag sw2", "danger sw2"],
    ["a ground that was handed over", "hand-over gz to Crew_4; unground gz", ""],
    [
      "the permit is released by somebody else",
      "request-permit; receive-permit with lead; release-permit with helper",
      "danger job",
    ],
    ["by its holder", "request-permit; receive-permit with lead; release-permit with lead", ""],
    [
      "by the one whom it was handed to",
      "request-permit; receive-permit with lead; hand-over permit=true to helper; release-permit with helper",
      "",
    ],
    [
      "the permit is held by another from the beginning",
      "release-permit with lead",
      "danger job",
      "job permitHolder=other permit=held",
    ],
    [
      "the crew gives back a permit that another holds, and names nobody",
      "release-permit",
      "danger job",
      "job permitHolder=other permit=held",
    ],
    [
      "it was handed to the crew first",
      "hand-over permit=true to Crew_4; release-permit",
      "",
      "job permitHolder=other permit=held",
    ],
    ["its own, found held", "release-permit", "", "job permitHolder=Crew_4 permit=held"],
    ["its own, held by one of it", "request-permit; receive-permit with lead; release-permit", ""],
  ],
);
