import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "guard-first",
  "common practice, no source: a wire that is down is guarded before anything else",
  `${TAP}
  sp1 span p3-p4 A lengthM=60 parted=A`,
  [
    ["switched first", "open c1", "danger sp1"],
    ["told once", "open c1; tag c1", ""],
    ["guarded at one of its poles", "barricade p4; open c1", ""],
    ["guarded somewhere else", "barricade h1; open c1", "danger sp1"],
    ["talk and paper come before it", "brief; request-permit; receive-permit", ""],
    ["a cable lies in the ground", "open c1", "", "sp1 span p3-p4 A construction=cable parted=A"],
    ["a parted neutral hangs", "open c1", "", "sp1 span p3-p4 A parted=N"],
    ["nothing is down", "open c1", "", "sp1 span p3-p4 A"],
  ],
);
