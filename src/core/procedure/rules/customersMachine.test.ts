import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "customers-machine",
  "common practice, no source: a customer's machine is the customer's",
  `${TAP}
  gx generator h1 12 kva=6 volts=240`,
  [
    ["the crew starts it", "start gx", "danger gx"],
    ["the crew has it stopped", "stop gx", "", "gx generator h1 12 kva=6 volts=240 on=true"],
    ["a station's supply is no customer's", "stop s1; start s1", ""],
  ],
);
