import type { StillhotDocument } from "../../document";
import { isOperating } from "../../steps";
import { nameOf } from "../job/names";
import type { OrderDraft } from "./orderDraft";
import type { Alternative } from "./types";

/** Steps and price of a draft. */
export function priced(
  document: StillhotDocument,
  { intent, steps, customers }: OrderDraft,
): Omit<Alternative, "summary"> {
  const { critical } = intent.choice.customers;
  return {
    steps,
    customersOut: customers.during,
    customers,
    criticalOut: critical.map((id) => nameOf(document, id)),
    operations: steps.filter(isOperating).length,
  };
}
