import { conductorsOf, pointName, workPointName } from "../../../document";
import { play, seen } from "../../../procedure";
import { type Letter, type PointId, say } from "../../../terms";
import { type DrillMaker, shuffledOptions } from "../question";
import { before, firstWorkPoint } from "../situation";

const OPTIONS = 4;

/** Where the ground must stand: everything up to there is done, one set is left to go on. */
export const ground: DrillMaker = (document, chance) => {
  const [id, workPoint] = firstWorkPoint(document) ?? [];
  const found = before(document, ({ do: verb }) => verb === "ground");
  if (id === undefined || workPoint === undefined || found === undefined) return undefined;
  const { state } = found;
  const drawn = state.document;
  const held = (at: PointId): boolean => {
    const step = { do: "ground", at, phases: workPoint.conductors, to: "neutral", cable: "2/0" } as const;
    const after = seen(play(state, step).state);
    return (
      after.workPoints[id]?.verdict === "grounded" &&
      !after.findings.some(({ where, rule }) => where === id && rule === "equipotential")
    );
  };
  const around = conductorsOf(drawn.system);
  const places = chance.shuffled(
    (Object.keys(drawn.system.points) as PointId[]).filter(
      (it) =>
        it !== workPoint.at &&
        [..."N", ...workPoint.conductors].every((letter) => around.get(it)?.includes(letter as Letter)),
    ),
  );
  const all = [workPoint.at, ...places.slice(0, OPTIONS - 1)].map((at) => ({
    option: { text: pointName(drawn, at), at },
    isRight: held(at),
  }));
  if (all.length < 3 || all.filter((it) => it.isRight).length !== 1) return undefined;
  const { options, answer } = shuffledOptions(chance, all);
  return {
    kind: "ground",
    document: { ...drawn, job: document.job! },
    ask: say("drill.ask.ground", { name: workPointName(drawn, id) }),
    options,
    answering: "one",
    answer,
    why: [say("drill.why.ground")],
    lit: [],
  };
};
