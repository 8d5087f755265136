import { handlingOf } from "../../../devices";
import { complete, elementName } from "../../../document";
import { beginJob, type Breaking, breakingsOf, play, stepSentence } from "../../../procedure";
import { figures } from "../../../sheet";
import { type Message, say } from "../../../terms";
import { type DrillMaker, shuffledOptions } from "../question";
import { closedDevices, takingOut, withoutJob } from "../situation";

/** Less than this nobody could tell from nothing [A]. */
const LEAST_AMPS = 0.1;
/** The limit is not so near that the meter decides. */
const CLEAR_OF_LIMIT = 1.15;

/** May this tool open that, and what current is it. */
export const tool: DrillMaker = (given, chance) => {
  const document = withoutJob(given);
  for (const id of chance.shuffled(closedDevices(document))) {
    const tools = handlingOf(complete(document.system.elements[id]!))!.tools;
    const step = takingOut(document, id, tools.length === 0 ? undefined : chance.oneOf(tools));
    const begin = beginJob(document);
    const worst = worstOf(breakingsOf(step, begin, play(begin, step).state));
    if (worst === undefined || !isClear(worst)) continue;
    const may = worst.amps <= worst.limit.amps;
    const other = worst.amps > 20 ? worst.amps / 10 : worst.amps * 10;
    const { options, answer } = shuffledOptions(
      chance,
      [may, !may].flatMap((it) =>
        [worst.amps, other].map((amps) => ({
          option: { text: say(it ? "drill.tool.may" : "drill.tool.mayNot", { amps: figures(amps) }) },
          isRight: it === may && amps === worst.amps,
        })),
      ),
    );
    return {
      kind: "tool",
      document,
      ask: say("drill.ask.tool", { step: stepSentence(document, step) }),
      about: id,
      options,
      answering: "one",
      answer,
      why: [whyOf(elementName(document, id), worst, may)],
      lit: [id],
    };
  }
  return undefined;
};

const worstOf = (breakings: readonly Breaking[]): Breaking | undefined =>
  [...breakings].sort((a, b) => b.amps - a.amps)[0];

const isClear = ({ amps, limit }: Breaking): boolean =>
  amps >= LEAST_AMPS && (amps > CLEAR_OF_LIMIT * limit.amps || CLEAR_OF_LIMIT * amps < limit.amps);

const whyOf = (name: string | Message, { letter, amps, limit }: Breaking, may: boolean): Message =>
  say(may ? "drill.why.toolMay" : "drill.why.toolMayNot", {
    name,
    letter,
    amps: figures(amps),
    limit: figures(limit.amps),
  });
