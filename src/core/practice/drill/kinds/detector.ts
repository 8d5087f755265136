import { conductorNames, settingsOf } from "../../../document";
import { assess, type ConductorReport } from "../../../hazard";
import { type ConductorId, partsOfConductor, say } from "../../../terms";
import { figures } from "../../../sheet";
import { wayTo } from "../paths";
import { type DrillMaker, shuffledOptions } from "../question";
import { withOneOut, withoutJob } from "../situation";

const TRIES = 6;
const OPTIONS = 4;
/** Volts that a person might expect there. */
const USUAL_VOLTS = [120, 277, 3600, 7200, 14400];
/** Two answers are not to be taken for one another, nor the meter's error for either. */
const APART = 1.4;

/** What the detector will say there. */
export const detector: DrillMaker = (document, chance) => {
  const { hazardVolts } = settingsOf(document);
  for (let turn = 0; turn < TRIES; turn++) {
    const drawn = withOneOut(withoutJob(document), chance);
    const { conductors } = assess(drawn);
    const asked = chance.shuffled(Object.entries(conductors) as [ConductorId, ConductorReport][]);
    // What is hot in no plain way teaches most; a line that is dead is asked for as often as one that is not.
    const found =
      asked.find(([, { state }]) => state === "backfed" || state === "induced") ??
      asked.find(([, { state }]) => state === (turn % 2 === 0 ? "isolated" : "energized"));
    if (found === undefined) continue;
    const [id, { volts }] = found;
    const isDead = volts < hazardVolts;
    if (!isDead && volts < APART * hazardVolts) continue;
    const others = USUAL_VOLTS.filter((it) => it > APART * volts || it < volts / APART);
    const wrong = chance.shuffled(isDead ? USUAL_VOLTS : [0, ...others]).slice(0, OPTIONS - 1);
    const optionOf = (value: number) => ({
      text:
        value < hazardVolts
          ? say("drill.volts.none", { limit: hazardVolts })
          : say("drill.volts", { volts: figures(Number(value.toPrecision(2))) }),
    });
    const { options, answer } = shuffledOptions(chance, [
      { option: optionOf(volts), isRight: true },
      ...wrong.map((it) => ({ option: optionOf(it), isRight: false })),
    ]);
    const way = wayTo(drawn, id);
    const where = conductorNames(drawn, [id]);
    return {
      kind: "detector",
      document: drawn,
      ask: say("drill.ask.detector", { where }),
      about: partsOfConductor(id).point,
      conductor: id,
      options,
      answering: "one",
      answer,
      why: [
        say("drill.why.detector", { where, volts: figures(volts) }),
        way === undefined
          ? say(isDead ? "drill.why.cold" : "drill.why.induced")
          : say("drill.why.hot", { where, way: way.words }),
      ],
      lit: way?.lit ?? [],
    };
  }
  return undefined;
};
