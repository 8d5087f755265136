import type { StillhotDocument } from "../../document";
import { beginJob } from "../job/state";
import { customersOutIn, darkStepsIn } from "../rehearsal/customers";
import { findingsAtEnd } from "../rules";
import type { Intent } from "./intent";
import type { OrderDraft } from "./orderDraft";
import { playing } from "./playing";
import type { PlannedStep } from "./types";
import type { Wishes } from "./wishes";

/** An order of steps, played from as found, with what the rules find in it. */
export function draftOf(
  asFound: StillhotDocument,
  intent: Intent,
  wishes: Wishes,
  steps: readonly PlannedStep[],
): OrderDraft {
  const played = [...playing(asFound, steps)];
  return {
    intent,
    wishes,
    steps,
    findings: [...played.flatMap((it) => it.findings), ...findingsAtEnd(played.at(-1)!.state)].filter(
      isWrong,
    ),
    customers: customersOutIn({ begin: beginJob(asFound), steps: played }),
    darkSteps: darkStepsIn({ steps: played }),
  };
}

/** A danger or a warning: a note is none of what an order has to be mended for. */
export const isWrong = ({ severity }: { readonly severity: string }): boolean => severity !== "note";
