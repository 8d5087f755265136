import { conductorNames } from "../../../document";
import { assess, mayBeHot } from "../../../hazard";
import { type ConductorId, partsOfConductor, say } from "../../../terms";
import { wayTo } from "../paths";
import { type DrillMaker, shuffledOptions } from "../question";
import { withOneOut, withoutJob } from "../situation";

const TRIES = 6;
const OPTIONS = 6;

/** What is live now: some conductors of a drawing with one thing out. */
export const live: DrillMaker = (document, chance) => {
  for (let turn = 0; turn < TRIES; turn++) {
    const drawn = withOneOut(withoutJob(document), chance);
    const { conductors } = assess(drawn);
    const one = onePerPoint(Object.keys(conductors) as ConductorId[]).map((id) => ({
      option: { text: conductorNames(drawn, [id]), at: partsOfConductor(id).point, conductor: id },
      isRight: mayBeHot(conductors[id]!.state),
    }));
    const [hot, cold] = [true, false].map((is) => chance.shuffled(one.filter((it) => it.isRight === is)));
    if (hot!.length === 0 || cold!.length < 2) continue;
    const most = Math.min(hot!.length, chance.between(1, OPTIONS / 2));
    const { options, answer } = shuffledOptions(chance, [
      ...hot!.slice(0, most),
      ...cold!.slice(0, OPTIONS - most),
    ]);
    const ways = answer.flatMap((index) => {
      const { conductor, text } = options[index]!;
      const way = wayTo(drawn, conductor);
      return [
        {
          words: say("drill.why.hot", { where: text, way: way?.words ?? say("drill.way.induced") }),
          lit: way?.lit,
        },
      ];
    });
    return {
      kind: "live",
      document: drawn,
      ask: say("drill.ask.live"),
      options,
      answering: "all",
      answer,
      why: [...ways.map(({ words }) => words), say("drill.why.cold")],
      lit: ways.flatMap(({ lit }) => lit ?? []),
    };
  }
  return undefined;
};

/** One phase of each point: the others stand as it does more often than not. */
function onePerPoint(ids: readonly ConductorId[]): ConductorId[] {
  const points = new Map<string, ConductorId>();
  for (const id of ids) {
    const { point, letter } = partsOfConductor(id);
    if (letter !== "N" && !points.has(point)) points.set(point, id);
  }
  return [...points.values()];
}
