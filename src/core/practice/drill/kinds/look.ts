import { upsetWords } from "../../../hazard";
import { say } from "../../../terms";
import { type DrillMaker, shuffledOptions } from "../question";
import { singleUpsets } from "./oneWrong";

const OPTIONS = 4;

/** Which fact to go and look at first: the one that, if it is not as the map says, makes the work point live. */
export const look: DrillMaker = (document, chance) => {
  const found = singleUpsets(document, chance);
  if (found === undefined || found.wrong.length < OPTIONS - 1) return undefined;
  const { drawn, name, right, wrong, sentenceOf } = found;
  const { options, answer } = shuffledOptions(chance, [
    { option: right[0]!, isRight: true },
    ...wrong.slice(0, OPTIONS - 1).map((it) => ({ option: it, isRight: false })),
  ]);
  return {
    kind: "look",
    document: drawn,
    ask: say("drill.ask.look", { name }),
    options: options.map((it) => ({
      text: say("drill.look", { what: upsetWords(drawn, it) }),
      at: it.element,
    })),
    answering: "one",
    answer,
    why: [sentenceOf(right[0]!), say("drill.why.look")],
    lit: [right[0]!.element],
  };
};
