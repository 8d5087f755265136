import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "automatic-device",
  "1910.269(m)(3)(iii): automatic or remote switches that could reclose an opened means are tagged and the feature disabled",
  `${TAP}
  k1 recloser p1-p2 A
  w1 work p3 A
`,
  [
    ["a recloser with its reclosing on", "open k1; tag k1; check-detector; test p3 A", "danger k1"],
    ["a remote switch", "open k1; tag k1; ground p3 A", "danger k1", "k1 disconnect p1-p2 A remote=true"],
    ["blocked", "open k1; block k1; tag k1; check-detector; test p3 A", ""],
    [
      "one that neither recloses nor listens",
      "open k1; tag k1; test p3 A",
      "",
      "k1 recloser p1-p2 A reclosing=false",
    ],
    ["nothing rests on it yet", "open k1", ""],
  ],
);
