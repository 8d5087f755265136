import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule("ground-order", "1910.269(n)(6)(i) and (ii): ground end first on, line end first off", TAP, [
  ["the phase end goes on first", "ground p2 A first phase", "danger g1"],
  ["the neutral end comes off first", "ground p2 A; unground g1 first neutral", "danger g1"],
  ["on in order", "ground p2 A first neutral", ""],
  ["on, as is usual", "ground p2 A", ""],
  ["off in order", "ground p2 A; unground g1 first phase", ""],
  ["off, as is usual", "ground p2 A; unground g1", ""],
]);
