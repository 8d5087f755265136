import {
  conductorNames,
  elementName,
  jobOf,
  nameIn,
  settingsOf,
  type StillhotDocument,
  structureOf,
} from "../document";
import type { ConductorRanges, Doubt, GroundsWorth, LookFirst, Range, Ranges, WayRanges } from "../doubts";
import { LEAST_FELT_VOLTS, toldVolts } from "../hazard";
import {
  conductorId,
  inARow,
  type Letter,
  type Message,
  type MessageKey,
  say,
  type WorkPointId,
} from "../terms";
import { figures } from "./sentences";

/** Where to look, what may be otherwise there, and what would come of it: one line of what to look at first. */
export function lookFirstSentence(document: StillhotDocument, entry: LookFirst): Message {
  const { doubt, pair, settles } = entry;
  const line = say("lookFirst.line", {
    place: placeName(document, doubt),
    doubts: inARow([doubt, ...(pair === null ? [] : [pair])].map((it) => doubtWords(document, it))),
    outcome: feltOutcome(document, entry),
  });
  return settles > 1
    ? say("lookFirst.settles", { line, count: settles })
    : say("lookFirst.settlesOne", { line });
}

/** What the grounds do against what may be wrong with the drawing, in figures; nothing where nothing would hurt. */
export function groundsWorthSentence(document: StillhotDocument, worth: GroundsWorth): Message | undefined {
  const { hurting, held, remedy, asked, of } = worth;
  if (hurting === 0) return undefined;
  const left = hurting - held;
  const line = say(worthKey(hurting, left), { hurting, left });
  const withRemedy =
    remedy === undefined
      ? line
      : "cable" in remedy
        ? say("groundsWorth.cable", { line, cable: remedy.cable })
        : say("groundsWorth.set", { line, at: nameIn(document, remedy.setAt) });
  return asked < of ? say("groundsWorth.cut", { line: withRemedy, count: of - asked }) : withRemedy;
}

/**
 * What volts and exposure of the worst conductor may be where numbers from the map are off, and what that changes; nothing
 * of a work point that is live as drawn, nor where nothing could make it so.
 */
export function rangesSentence(
  document: StillhotDocument,
  id: WorkPointId,
  ranges: Ranges,
): Message | undefined {
  const { conductors, verdict, drawnVerdict, findings, asked, of } = ranges;
  const limitVolts = settingsOf(document).exposureLimitVolts;
  const [worst] = (Object.entries(conductors) as [Letter, ConductorRanges][]).sort(
    ([, a], [, b]) => b.exposureVolts.most - a.exposureVolts.most,
  );
  if (worst === undefined || drawnVerdict === "live") return undefined;
  const [letter, { volts, exposureVolts }] = worst;
  let line = say("ranges.line", {
    name: conductorNames(document, [conductorId(jobOf(document).workPoints[id]!.at, letter)]),
    volts: between(volts),
    exposure: between(exposureVolts),
  });
  if (goesOver(exposureVolts, limitVolts)) line = say("ranges.over", { line });
  if (verdict !== drawnVerdict)
    line = say("ranges.verdict", { line, verdict: say(`say.verdict.${verdict}`) });
  for (const { message } of findings) line = say("ranges.finding", { line, finding: message });
  return asked < of ? say("ranges.cut", { line, count: of - asked }) : line;
}

/** Whether the verdict, a finding or what side of the limit an exposure lies on is another one within the ranges. */
export function isMoreThanDrawn(
  document: StillhotDocument,
  { conductors, verdict, drawnVerdict, findings }: Ranges,
): boolean {
  const limitVolts = settingsOf(document).exposureLimitVolts;
  return (
    verdict !== drawnVerdict ||
    findings.length > 0 ||
    Object.values(conductors).some(({ exposureVolts }) => goesOver(exposureVolts, limitVolts))
  );
}

const goesOver = ({ drawn, most }: Range, limitVolts: number): boolean =>
  drawn < limitVolts && most >= limitVolts;

/**
 * What volts and exposures of a way to go live may be where numbers from the map are off, for whichever of these it is;
 * nothing where all of it lies close together.
 */
export function wayRangeSentence({ asked, of }: Ranges, ways: readonly WayRanges[]): Message | undefined {
  if (ways.length === 0) return undefined;
  const over = (figure: "volts" | "exposureVolts" | "exposureToEarthVolts"): Range => ({
    least: Math.min(...ways.map((it) => it[figure].least)),
    drawn: Math.max(...ways.map((it) => it[figure].drawn)),
    most: Math.max(...ways.map((it) => it[figure].most)),
  });
  const [volts, bonded, beside] = [over("volts"), over("exposureVolts"), over("exposureToEarthVolts")];
  if (liesClose(volts) && [bonded, beside].every((it) => it.most < LEAST_FELT_VOLTS || liesClose(it)))
    return undefined;
  const [onPole, besideIt] = [feltBetween(bonded), feltBetween(beside)];
  const numbers = asked < of ? say("ranges.nearest", { asked, of }) : say("ranges.all");
  const gaps = { numbers, volts: between(volts), bonded: onPole, beside: besideIt };
  return say(JSON.stringify(onPole) === JSON.stringify(besideIt) ? "ranges.waySame" : "ranges.way", gaps);
}

/** So far apart, as a part of the higher, two figures tell a crew the same. */
const CLOSE = 0.01;

const liesClose = ({ least, most }: Range): boolean => most - least <= CLOSE * most;

/** What is felt, in few words. */
export const feltVolts = (volts: number): Message =>
  volts < LEAST_FELT_VOLTS ? say("volts.underOne") : say("volts.told", { volts: figures(volts) });

const feltBetween = (range: Range): Message =>
  range.most < LEAST_FELT_VOLTS
    ? feltVolts(range.most)
    : range.least < LEAST_FELT_VOLTS
      ? say("ranges.upTo", { most: figures(range.most) })
      : between(range);

/** `7 020 to 7 560 V`, or one figure where both are told alike. */
function between({ least, most }: Range): Message {
  const [low, high] = [figures(least), figures(most)];
  return low === high ? say("ranges.one", { most: high }) : say("ranges.between", { least: low, most: high });
}

function worthKey(hurting: number, left: number): MessageKey {
  if (left === 0) return hurting === 1 ? "groundsWorth.allOne" : "groundsWorth.all";
  if (left === hurting) return left === 1 ? "groundsWorth.noneOne" : "groundsWorth.none";
  return left === 1 ? "groundsWorth.someOne" : "groundsWorth.some";
}

/** Where one goes to look. */
export const placeName = (document: StillhotDocument, { structure, where }: Doubt): string | Message =>
  structureOf(document.system, structure ?? where)?.label || nameIn(document, structure ?? where);

/** What may be otherwise than drawn, as half a sentence. */
function doubtWords(document: StillhotDocument, doubt: Doubt): Message {
  const { where, other, phases } = doubt;
  return say(wordsKey(document, doubt), {
    name: nameIn(document, where),
    on: phases === undefined ? "" : say("upset.onPhase", { phase: phases }),
    ...(other === undefined ? {} : { other: elementName(document, other) }),
    ...changedTo(doubt),
  });
}

/** What a doubt puts in the place of a value that its sentence names. */
function changedTo({ where, instead: { set } }: Doubt): Record<string, string> {
  const { connection, cable } = set?.[where] ?? {};
  return {
    ...(typeof connection === "string" ? { connection } : {}),
    ...(typeof cable === "string" ? { cable } : {}),
  };
}

function wordsKey(document: StillhotDocument, it: Doubt): MessageKey {
  const { system } = document;
  const { doubt, where, phases, instead } = it;
  const saved = (system.elements as Record<string, (typeof system.elements)[never] | undefined>)[where];
  const keys = instead.set?.[where] ?? {};
  switch (doubt) {
    case "goes-on":
      return placeName(document, it) === nameIn(document, where) ? "doubt.goes-on.here" : "doubt.goes-on";
    case "other-position": {
      const open = keys["open"] ?? keys["cut"];
      if (saved === undefined || typeof open !== "string") return "doubt.other-position";
      const [letter = ""] = phases ?? String(saved["phases"]);
      return open.includes(letter) ? "doubt.other-position.open" : "doubt.other-position.closed";
    }
    case "machine":
      return instead.add !== undefined
        ? "doubt.machine.undrawn"
        : "bridged" in keys
          ? Object.keys(instead.set!).length > 1
            ? "doubt.machine.bridgedRunning"
            : "doubt.machine.bridged"
          : "doubt.machine";
    case "no-rod":
      return saved === undefined ? "doubt.no-rod" : "doubt.no-rod.along";
    case "no-pole-bond":
    case "thin-ground":
      // A set that is still to be put on is not on the drawing, and has no name there.
      return saved === undefined ? `doubt.${doubt}.ofOrder` : `doubt.${doubt}`;
    default:
      return `doubt.${doubt}`;
  }
}

/** What would come of it, and whether the worker stays under the limit. */
function feltOutcome(document: StillhotDocument, entry: LookFirst): Message {
  const { exposureLimitVolts } = settingsOf(document);
  const outcome = outcomeWords(document, entry);
  if (entry.groundsHold) return say("lookFirst.held", { outcome });
  if (entry.exposureVolts === null || entry.exposureVolts < exposureLimitVolts) return outcome;
  return say("lookFirst.feels", {
    outcome,
    exposure: toldVolts(document.system, entry.exposureVolts, figures),
  });
}

function outcomeWords({ system }: StillhotDocument, { verdict, volts, strength }: LookFirst): Message {
  if (volts === null) return say(verdict === "live" ? "lookFirst.liveUnknown" : "lookFirst.unfed");
  const gaps = { volts: toldVolts(system, volts, figures) };
  if (verdict === "live" && strength === 0) return say("lookFirst.live", gaps);
  return say(`lookFirst.strength.${strength}` as MessageKey, gaps);
}
