import { settingsOf, type StillhotDocument, workPointName } from "../../../document";
import { assess, threatsTo, type Upset, upsetsOf, upsetWords } from "../../../hazard";
import { threatSentence } from "../../../sheet";
import { type Message, say } from "../../../terms";
import type { Chance } from "../../generate/chance";
import { type DrillMaker, shuffledOptions } from "../question";
import { firstWorkPoint, opened } from "../situation";

const OPTIONS = 5;

/** What could make it live with one thing wrong: everything that the order opens is open, and nothing else is done. */
export const oneWrong: DrillMaker = (document, chance) => {
  const found = singleUpsets(document, chance);
  if (found === undefined) return undefined;
  const { drawn, right, wrong, name, sentenceOf } = found;
  const few = right.slice(0, 3);
  const { options, answer } = shuffledOptions(chance, [
    ...few.map((it) => ({ option: it, isRight: true })),
    ...wrong.slice(0, OPTIONS - few.length).map((it) => ({ option: it, isRight: false })),
  ]);
  return {
    kind: "one-wrong",
    document: drawn,
    ask: say("drill.ask.oneWrong", { name }),
    options: options.map((it) => ({ text: upsetWords(drawn, it), at: it.element })),
    answering: "all",
    answer,
    why: [...few.map(sentenceOf), say("drill.why.oneWrong")],
    lit: few.map(({ element }) => element),
  };
};

interface Singles {
  readonly drawn: StillhotDocument;
  readonly name: string | Message;
  /** upsets each of which makes the work point live by itself, and those that do not */
  readonly right: readonly Upset[];
  readonly wrong: readonly Upset[];
  readonly sentenceOf: (upset: Upset) => Message;
}

/** Single things that could go wrong around a work point that is opened, each kind of thing once. */
export function singleUpsets(document: StillhotDocument, chance: Chance): Singles | undefined {
  const drawn = opened(document);
  const [id, workPoint] = firstWorkPoint(document) ?? [];
  if (drawn === undefined || workPoint === undefined) return undefined;
  if (assess(drawn).workPoints[id!]?.verdict === "live") return undefined;
  const settings = settingsOf(drawn);
  const { threats } = threatsTo({ system: drawn.system, settings, workPoint });
  const single = threats.filter(({ strength }) => strength === 1);
  const nameOf = ({ kind, element }: Upset) => `${kind} ${element}`;
  const isRight = new Set(single.map(({ upsets }) => nameOf(upsets[0]!)));
  const each = new Map<string, Upset>();
  for (const it of upsetsOf(drawn.system, settings))
    if (it.strength === 1 && !each.has(nameOf(it))) each.set(nameOf(it), withoutPhase(it));
  const all = chance.shuffled([...each.values()]);
  const right = all.filter((it) => isRight.has(nameOf(it)));
  const wrong = all.filter((it) => !isRight.has(nameOf(it)));
  if (right.length === 0 || wrong.length < 2) return undefined;
  return {
    drawn,
    name: workPointName(drawn, id!),
    right,
    wrong,
    sentenceOf: (upset) =>
      threatSentence(
        drawn,
        single.find(({ upsets }) => nameOf(upsets[0]!) === nameOf(upset))!,
      ),
  };
}

const withoutPhase = ({ kind, element, strength }: Upset): Upset => ({ kind, element, strength });
