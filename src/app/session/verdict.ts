import { pointCountOf } from "../../core";
import type { Viewing } from "./viewing.svelte";
import { pointName, t, threatSentence } from "../words/words";

/** The verdict of a work point, as the bar over the drawing tells it. */
export interface VerdictWords {
  readonly look: "live" | "could-go-live" | "isolated" | "grounded" | "unknown" | "none";
  readonly headline: string;
  readonly place: string;
  readonly detail: string;
  readonly facts: readonly string[];
}

/** How many things nobody has seen. */
export const unseenWords = (count: number): string =>
  count === 1 ? t("verdict.assumptionsOne") : t("verdict.assumptions", { count });

/** The verdict on the shown work point, as the strip says it. It never says safe. */
export function verdictWords(viewing: Viewing): VerdictWords {
  const { document, workPoint, isStale, failed } = viewing;
  if (failed !== undefined)
    return {
      look: "unknown",
      headline: t("verdict.failed"),
      place: "",
      detail: t("verdict.failedWhy", { why: failed }),
      facts: [],
    };
  if (pointCountOf(document.system) === 0)
    return {
      look: "none",
      headline: t("verdict.empty"),
      place: "",
      detail: t("verdict.emptyHelp"),
      facts: [],
    };
  if (workPoint === undefined)
    return { look: "none", headline: t("verdict.none"), place: "", detail: t("verdict.noneHelp"), facts: [] };
  const place = t("verdict.at", { name: workPoint.label ?? pointName(document, workPoint.at) });
  const { report } = workPoint;
  if (isStale || report === undefined)
    return {
      look: "unknown",
      headline: t("verdict.working"),
      place,
      detail: t("verdict.workingHelp"),
      facts: [],
    };
  const { verdict, margin, threatsCompleteTo, assumptions } = report;
  return {
    look: verdict,
    headline: t(`verdict.${verdict}`),
    place,
    detail: detailOf(viewing),
    facts: [
      margin === null ? t("verdict.marginNone") : t("verdict.margin", { margin }),
      ...(threatsCompleteTo === undefined ? [] : [t("verdict.notAll")]),
      ...(assumptions === 0 ? [] : [unseenWords(assumptions)]),
    ],
  };
}

function detailOf({ document, workPoint }: Viewing): string {
  const { verdict, threats } = workPoint!.report!;
  const count = threats.length;
  const [first] = threats;
  if (verdict === "live" || verdict === "could-go-live") {
    if (first === undefined) return t("verdict.nothingFound");
    const sentence = threatSentence(document, first);
    if (count === 1) return sentence;
    return count === 2
      ? t("verdict.oneMore", { sentence })
      : t("verdict.more", { sentence, count: count - 1 });
  }
  const found =
    count === 0
      ? t("verdict.nothingFound")
      : count === 1
        ? t("verdict.threatCountOne")
        : t("verdict.threatCount", { count });
  return t(verdict === "grounded" ? "verdict.groundedDetail" : "verdict.isolatedDetail", { threats: found });
}
