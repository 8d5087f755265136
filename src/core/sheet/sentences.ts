import { complete, completePoint, type StillhotDocument } from "../document";
import type { Threat, Upset, WorkPointReport } from "../hazard";
import { type ElementId, isMessageKey, type Message, type MessageKey, type PointId, say } from "../terms";

/** A number as a person would write it: three figures, whole from a thousand on. */
export function figures(value: number): string | number {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e15) return "?";
  if (Math.abs(value) < 0.005) return 0;
  if (Math.abs(value) < 999.5) return Number(value.toPrecision(3));
  const digits = String(Math.round(value));
  return digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, "\u00a0");
}

/** What a person calls an element: its label, or its kind and id. */
export function elementName({ system }: StillhotDocument, id: string): string | Message {
  const saved = system.elements[id as ElementId];
  if (saved === undefined) return id;
  const { label } = complete(saved);
  return label === "" ? say("say.named", { kind: say(`kind.${saved.kind}`), id }) : label;
}

/** What a person calls a point: its label, or its id. */
export function pointName({ system }: StillhotDocument, id: string): string {
  const saved = system.points[id as PointId];
  const label = saved === undefined ? "" : completePoint(saved).label;
  return label === "" ? id : label;
}

/** One thing that could change without the crew, as half a sentence. */
export function upsetSentence(document: StillhotDocument, { kind, element, phase }: Upset): Message {
  const device = document.system.elements[element]?.kind ?? "";
  const key = `say.${kind}.${device}`;
  return say((isMessageKey(key) ? key : `say.${kind}`) as MessageKey, {
    name: elementName(document, element),
    on: phase === undefined ? "" : say("say.onPhase", { letter: phase }),
  });
}

/** Several things in a row: `a, b and c`, or `a, b or c`. */
export function inARow(items: readonly Message[], word: "say.and" | "say.or" = "say.and"): Message {
  const last = items.at(-1)!;
  return items.length === 1 ? last : say(word, { first: withCommas(items.slice(0, -1)), rest: last });
}

/** Joined by halves: joined one by one, a long list would be spelled from deeper than a program can go. */
function withCommas(items: readonly Message[]): Message {
  if (items.length === 1) return items[0]!;
  const middle = items.length >> 1;
  return say("say.comma", {
    first: withCommas(items.slice(0, middle)),
    rest: withCommas(items.slice(middle)),
  });
}

/** What happens, and what then feeds the work point. */
export function threatSentence(
  document: StillhotDocument,
  { source, conductor, volts, upsets }: Threat,
): Message {
  const gaps = {
    letter: conductor,
    volts: figures(volts),
    ...(source === null ? {} : { source: elementName(document, source) }),
  };
  if (upsets.length === 0) return say(source === null ? "say.inducedNow" : "say.fedNow", gaps);
  const isUnknown = source !== null && document.system.elements[source]?.kind === "load";
  return say(source === null ? "say.inducedIf" : isUnknown ? "say.unknownFeedsIf" : "say.fedIf", {
    ...gaps,
    upsets: inARow(upsets.map((it) => upsetSentence(document, it))),
  });
}

/** The same for threats that differ only in whose generator it is that nobody drew. */
export function anyGeneratorSentence(document: StillhotDocument, threats: readonly Threat[]): Message {
  const [{ upsets, conductor }] = threats as readonly [Threat];
  const whose = threats.flatMap((it) => it.upsets.filter(({ kind }) => kind === "start-unknown"));
  const name = inARow(
    whose.map(({ element }) => say("say.text", { text: elementName(document, element) })),
    "say.or",
  );
  const words = upsets.map((it) =>
    it.kind === "start-unknown" ? say("say.start-unknown", { name }) : upsetSentence(document, it),
  );
  return say("say.anyUnknownFeedsIf", {
    upsets: inARow(words),
    letter: conductor,
    volts: figures(Math.max(...threats.map(({ volts }) => volts))),
  });
}

/** What people would feel of it, with the grounds as drawn. */
export function exposureSentences(threat: Threat): Message[] {
  const { exposureVolts, exposureToEarthVolts, bodyMilliamps, groundAmps } = threat;
  const feels = say(groundAmps > 0 ? "say.feelsGrounded" : "say.feels", {
    exposure: figures(exposureVolts),
    milliamps: figures(bodyMilliamps),
  });
  const earth = figures(exposureToEarthVolts);
  return [
    earth === figures(exposureVolts)
      ? say("say.feelsSame", { feels })
      : say("say.feelsEarth", { feels, earth }),
    ...(groundAmps >= 0.1 ? [say("say.groundAmps", { amps: figures(groundAmps) })] : []),
  ];
}

/** How a work point stands, in short sentences, the verdict's own word left out. */
export const standingSentences = ({ verdict, margin, assumptions }: WorkPointReport): Message[] => [
  say(`say.means.${verdict}`),
  say(margin === null ? "say.margin.none" : (`say.margin.${margin}` as MessageKey)),
  assumptions < 2
    ? say(`say.assumptions.${assumptions}` as MessageKey)
    : say("say.assumptions", { count: assumptions }),
];
