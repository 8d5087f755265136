import type { StillhotDocument } from "../../document";
import { isOperating } from "../../steps";
import { nameOf } from "../job/names";
import type { Draft } from "./draft";
import type { Alternative } from "./types";

/** Steps and price of a draft. */
export function priced(document: StillhotDocument, { intent, steps }: Draft): Omit<Alternative, "summary"> {
  const { count, critical } = intent.choice.customers;
  return {
    steps,
    customersOut: count,
    criticalOut: critical.map((id) => nameOf(document, id)),
    operations: steps.filter(isOperating).length,
  };
}
