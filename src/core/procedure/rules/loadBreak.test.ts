import { checkRule, TAP } from "../../../../tests/support/jobNotation";

/** A second transformer on the street of the first, and the legs of that in a lead. */
const BANKED = `
  c1 cutout      p2-p3 A   fuse=K15 loadBreak=none
  t1 transformer p3-q1 A   connection=single kva=50 primaryKv=7.2 secondaryV=240
  j1 lead        q1-p6 12
  x2 cutout      p2-p9 A   fuse=K15
  t2 transformer p9-p6 A   connection=single kva=50 primaryKv=7.2 secondaryV=240
`;

checkRule(
  "load-break",
  "1910.269(l)(12)(i): a device used to open a circuit under load must be designed to interrupt the current involved",
  TAP,
  [
    ["a bare cutout under the company's limit rests on its procedure", "open c1 A", "note c1"],
    ["with no such procedure it is a danger", "open c1 A", "danger c1", "set openWithoutLoadBreakAmps=0"],
    ["over the limit", "open c1 A", "danger c1", "ld1 load h1 12 connection=delta kw=120"],
    ["a load-break tool on hooks breaks it", "open c1 A with load-break-tool", ""],
    [
      "the tool has nothing to hang on",
      "open c1 A with load-break-tool",
      "danger c1",
      "c1 cutout p2-p3 A loadBreak=none\nset openWithoutLoadBreakAmps=1",
    ],
    ["a clamp lifted with load on it", "lift k1 with clamp-stick", "danger k1"],
    [
      "a clamp lifted once the load is dropped",
      "open c1 A with load-break-tool; lift k1 with clamp-stick",
      "",
    ],
    ["a clamp lifted with exciting current only", "pull m1; lift k1", ""],
    ["a meter pulled under 33 A", "pull m1", "danger m1"],
    [
      "a meter pulled under 8 A: the limit for a bare cutout does not speak for it",
      "pull m1",
      "danger m1",
      "ld1 load h1 12 connection=delta kw=2",
    ],
    [
      "a meter pulled once the customer's main is open",
      "open mn; pull m1",
      "",
      "mn main h1-h9 12\nh9 point kind=service\nld1 load h9 12 connection=delta kw=8 customers=3",
    ],
    [
      "a span cut through under 4 A",
      "cut sp1 A with lead-cutters",
      "danger sp1",
      "ld1 load h1 12 connection=delta kw=25",
    ],
    ["a meter pulled dead", "open c1 with load-break-tool; pull m1", ""],
    [
      "a disconnect without a rating",
      "open c1 A",
      "danger c1",
      "c1 disconnect p2-p3 A\nset openWithoutLoadBreakAmps=1",
    ],
    ["a disconnect with one", "open c1 A", "", "c1 disconnect p2-p3 A loadBreakAmps=200"],
    ["a lead cut with load on it", "cut c1 A with lead-cutters", "danger c1", "c1 lead p2-p3 A"],
    // A leg of 120 V with exciting current arcs nothing; the same legs with a house behind them do.
    ["legs cut with nothing but what excites the transformer", "open c1; cut j1", "", BANKED],
    [
      "legs cut with a house behind them",
      "open c1; cut j1",
      "danger j1",
      `${BANKED}\nly load q1 12 connection=delta kw=2 customers=1`,
    ],
    ["taking the barrel out opens it too", "remove-barrel c1", "danger c1", "set openWithoutLoadBreakAmps=0"],
    ["a main breaks its own load", "open m1", "", "m1 main p6-h1 12"],
  ],
);
