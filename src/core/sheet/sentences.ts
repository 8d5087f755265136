import { isLoad } from "../devices";
import { elementName, type StillhotDocument } from "../document";
import { type Threat, toldVolts, upsetWords, type WorkPointReport, startsUnknown } from "../hazard";
import { type ElementId, inARow, type Message, type MessageKey, say } from "../terms";

/** A number as a person would write it: three figures, whole from a thousand on. */
export function figures(value: number): string | number {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e15) return "?";
  if (Math.abs(value) < 0.005) return 0;
  if (Math.abs(value) < 999.5) return Number(value.toPrecision(3));
  const digits = String(Math.round(value));
  return digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, "\u00a0");
}

/** What happens, and what then feeds the work point. */
export function threatSentence(
  document: StillhotDocument,
  { source, conductor, volts, upsets }: Threat,
): Message {
  const gaps = {
    letter: conductor,
    volts: toldVolts(document.system, volts, figures),
    ...(source === null ? {} : { source: elementName(document, source) }),
  };
  if (upsets.length === 0) return say(source === null ? "say.inducedNow" : "say.fedNow", gaps);
  const isUnknown = source !== null && isLoad(document.system.elements[source]);
  return say(source === null ? "say.inducedIf" : isUnknown ? "say.unknownFeedsIf" : "say.fedIf", {
    ...gaps,
    upsets: inARow(upsets.map((it) => upsetWords(document, it))),
  });
}

/** So many supplies are named at most. */
const MOST_NAMED = 3;

/**
 * What else feeds a work point that is live as drawn: a way in has one source, and with that off the others would do.
 *
 * @param sources all that reaches the conductor as drawn
 */
export function alsoFedSentence(
  document: StillhotDocument,
  sources: readonly ElementId[],
  { source, conductor, upsets }: Threat,
): Message | undefined {
  const others = sources.filter((it) => it !== source);
  if (upsets.length > 0 || source === null || others.length === 0) return undefined;
  const named = others.slice(0, MOST_NAMED).map((it) => say("say.text", { text: elementName(document, it) }));
  const more = others.length - named.length;
  return say("say.alsoFed", {
    letter: conductor,
    others: inARow(more > 0 ? [...named, say("sheet.more", { count: more })] : named),
  });
}

/** The same for threats that differ only in whose generator it is that nobody drew. */
export function anyGeneratorSentence(document: StillhotDocument, threats: readonly Threat[]): Message {
  const [{ upsets, conductor }] = threats as readonly [Threat];
  const whose = threats.flatMap((it) => it.upsets.filter(startsUnknown));
  const name = inARow(
    whose.map(({ element }) => say("say.text", { text: elementName(document, element) })),
    "row.or",
  );
  const words = upsets.map((it) =>
    startsUnknown(it) ? upsetWords(document, it, name) : upsetWords(document, it),
  );
  return say("say.anyUnknownFeedsIf", {
    upsets: inARow(words),
    letter: conductor,
    volts: toldVolts(document.system, Math.max(...threats.map(({ volts }) => volts)), figures),
  });
}

/** What people would feel of it, with the grounds as drawn. */
export function exposureSentences({ system }: StillhotDocument, threat: Threat): Message[] {
  const { exposureVolts, exposureToEarthVolts, bodyMilliamps, groundAmps } = threat;
  const feels = say(groundAmps > 0 ? "say.feelsGrounded" : "say.feels", {
    exposure: toldVolts(system, exposureVolts, figures),
    milliamps: figures(bodyMilliamps),
  });
  const earth = figures(exposureToEarthVolts);
  return [
    earth === figures(exposureVolts)
      ? say("say.feelsSame", { feels })
      : say("say.feelsEarth", { feels, earth: toldVolts(system, exposureToEarthVolts, figures) }),
    ...(groundAmps >= 0.1 ? [say("say.groundAmps", { amps: figures(groundAmps) })] : []),
  ];
}

/** How a work point stands, in short sentences, the verdict's own word left out. */
export const standingSentences = (report: WorkPointReport): Message[] => [
  say(`say.means.${report.verdict}`),
  marginSentence(report),
  ...notAllSentences(report),
  report.assumptions < 2
    ? say(`say.assumptions.${report.assumptions}` as MessageKey)
    : say("say.assumptions", { count: report.assumptions }),
];

/** How many things must go wrong at a work point, in words. */
export const marginSentence = ({ margin }: WorkPointReport): Message =>
  say(margin === null ? "say.margin.none" : (`say.margin.${margin}` as MessageKey));

/** Where the drawing has more combinations than can be asked: that some ways may be missing. */
export const notAllSentences = ({ threatsCompleteTo }: WorkPointReport): Message[] =>
  threatsCompleteTo === undefined ? [] : [say(`say.notAll.${threatsCompleteTo}` as MessageKey)];
