import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "release-order",
  "1910.269(m)(3)(x) to (xii): everyone clear and grounds off, then released, then tags off",
  TAP,
  [
    [
      "people are still on the line",
      "request-permit; receive-permit; open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1; release-permit",
      "danger job, danger g1",
    ],
    [
      "a ground is still on",
      "request-permit; receive-permit; open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; release-permit",
      "danger g1",
    ],
    [
      "a tag comes off before the release",
      "request-permit; receive-permit; open c1; tag c1; untag c1",
      "warning c1",
    ],
    ["after it", "request-permit; receive-permit; open c1; tag c1; release-permit; untag c1", ""],
    ["a tag comes off over people on the line", "open c1; tag c1; work w1; untag c1", "danger c1"],
    ["a block comes off over people on the line", "lift k1; block k1; work w1; unblock k1", "danger k1"],
    [
      "both, once everybody is clear",
      "lift k1; block k1; tag k1; work w1; all-clear; untag k1; unblock k1",
      "",
    ],
    ["a tag without any permit", "open c1; tag c1; untag c1", ""],
    ["nothing to release", "release-permit", "note job"],
  ],
);
