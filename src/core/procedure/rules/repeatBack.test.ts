import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule("repeat-back", "common practice: an order is repeated back before it is carried out", TAP, [
  ["opened before it was repeated", "request-permit; receive-permit; open c1", "warning c1"],
  ["told once", "request-permit; receive-permit; open c1; tag c1", ""],
  ["repeated", "request-permit; receive-permit; confirm; open c1", ""],
  ["no order was given", "open c1", ""],
  ["briefing carries nothing out", "request-permit; receive-permit; brief", ""],
]);
