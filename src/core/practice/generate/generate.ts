import { type StillhotDocument, writeDocument } from "../../document";
import { chanceFrom } from "./chance";
import type { CustomerSort } from "./customer";
import { drawFeeder } from "./feeder";
import { jobOn } from "./job";
import { type Extra, type Level, LEVEL_PLANS } from "./levels";
import { hangBank } from "./patterns/bank";
import { bankSecondaries } from "./patterns/bankedSecondaries";
import { hangCapacitor } from "./patterns/capacitor";
import { drawCrossing } from "./patterns/crossing";
import { farTie } from "./patterns/farTie";
import { drawLoop } from "./patterns/loop";
import { shapeOf } from "./shape";
import { drawSideline, leave, type Leaving } from "./sideline";
import { LINE_KV, Sketch, type HangingSpot } from "./sketch";
import { hangTransformer } from "./transformer";
import { TAP_WORDS, type TapLanguage, type TapWords } from "./words";

/** Ways of drawing that are kept for ever: the version is part of the seed. The second draws as the first and words it anew. */
export const TAP_VERSIONS: readonly number[] = [1, 2];
const NEWEST = TAP_VERSIONS.at(-1)!;
/** The version whose chances each version takes. */
const DRAWN_AS = 1;

/** Which drawing is to be made. The same request gives the same drawing for ever. */
export interface TapRequest {
  readonly level: Level;
  /** a whole number from 0 on */
  readonly seed: number;
  readonly version?: number;
  readonly language?: TapLanguage;
}

/**
 * A tap with its job that could stand on poles, laid out by nobody. The same level, seed and version give the same bytes
 * when it is written, for ever; a language changes its words alone. Two seeds that follow one another differ in shape.
 */
export function generateTap({
  level,
  seed,
  version = NEWEST,
  language = "en",
}: TapRequest): StillhotDocument {
  const words = TAP_WORDS[version - 1]![language];
  const draft = (of: number, turn: number): StillhotDocument =>
    draftTap(level, of, `${DRAWN_AS}/${level}/${of}/${turn}`, words);
  // Even seeds stand as they come; an odd one is drawn again until it is like neither of its neighbours.
  if (seed % 2 === 0) return draft(seed, 0);
  const beside = [seed - 1, seed + 1].map((it) => shapeOf(draft(it, 0).system));
  for (let turn = 0; ; turn++) {
    const found = draft(seed, turn);
    if (!beside.includes(shapeOf(found.system))) return found;
  }
}

/** The same as a file. */
export const generateTapText = (request: TapRequest): string => writeDocument(generateTap(request));

function draftTap(level: Level, seed: number, chances: string, words: TapWords): StillhotDocument {
  const chance = chanceFrom(chances);
  const sketch = new Sketch(chance, words, chance.oneOf(LINE_KV));
  const plan = LEVEL_PLANS[level];
  const extras = extrasFor(sketch, seed, plan.of, plan.extras);
  const loops = extras.has("loop");
  drawFeeder(sketch, {
    poles: Math.max(chance.between(...plan.feederPoles), loops ? 2 : 1),
    hasRegulator: extras.has("regulator"),
  });
  const spots = plan.phases === 0 ? sketch.feeder : sidelineSpots(sketch, plan, extras);
  const bankPole = extras.has("bank") ? chance.oneOf(sketch.sideline) : undefined;
  if (bankPole !== undefined) hangBank(sketch, bankPole);
  hangTransformers(
    sketch,
    spots.filter((it) => it !== bankPole),
    chance.between(...plan.transformers),
    extras,
  );
  if (extras.has("banked")) bankSecondaries(sketch);
  if (extras.has("capacitor")) hangCapacitor(sketch);
  if (extras.has("tie")) farTie(sketch);
  if (loops) drawLoop(sketch, chance.between(2, 3));
  if (extras.has("crossing")) drawCrossing(sketch);
  return {
    format: "stillhot",
    formatVersion: 1,
    title: words.title(sketch.street),
    notes: words.notes,
    system: sketch.system(),
    job: jobOn(sketch),
  };
}

/** The first follows the seed in turn, so that a class gets all of them; the others come by chance. */
function extrasFor(
  { chance }: Sketch,
  seed: number,
  of: readonly Extra[],
  count: number,
): ReadonlySet<Extra> {
  if (count === 0) return new Set();
  const first = of[seed % of.length]!;
  return new Set([first, ...chance.shuffled(of.filter((it) => it !== first))].slice(0, count));
}

const ONE_PHASE: readonly Leaving[] = ["cutout", "clamp-and-cutout", "clamp", "solid"];
const THREE_PHASE: readonly Leaving[] = ["cutout", "switch", "gang", "clamp-and-cutout"];

/** kVA of a sideline's transformers, for the link of its cutouts. */
const SIDELINE_KVA = { 0: 0, 1: 150, 3: 600 } as const;

function sidelineSpots(
  sketch: Sketch,
  { phases, sidelinePoles }: (typeof LEVEL_PLANS)[Level],
  extras: ReadonlySet<Extra>,
): readonly HangingSpot[] {
  const { chance } = sketch;
  const letters = phases === 3 ? "ABC" : chance.oneOf(["A", "B", "C"]);
  const by = extras.has("recloser") ? "recloser" : chance.oneOf(phases === 3 ? THREE_PHASE : ONE_PHASE);
  const from = sketch.feeder[chance.between(0, sketch.feeder.length - 1)]!;
  drawSideline(
    sketch,
    leave(sketch, from, letters, by, SIDELINE_KVA[phases]),
    chance.between(...sidelinePoles),
  );
  return sketch.sideline;
}

const MACHINES = ["portable", "solar", "standby"] as const satisfies readonly CustomerSort[];

/** Transformers on as many poles, nearest first; a machine that was asked for hangs on one of them. */
function hangTransformers(
  sketch: Sketch,
  spots: readonly HangingSpot[],
  most: number,
  extras: ReadonlySet<Extra>,
): void {
  const { chance } = sketch;
  const machines: CustomerSort[] = MACHINES.filter((it) => extras.has(it));
  const count = Math.min(most, spots.length);
  const poles = extras.has("banked")
    ? spots.slice(0, count)
    : inOrder(chance.shuffled(spots).slice(0, count));
  const phase = chance.oneOf([...spots[0]!.phases]);
  poles.forEach((spot, index) => {
    const isLast = index === poles.length - 1;
    const houses = Array.from({ length: chance.between(1, 3) }, (): CustomerSort =>
      chance.percent(30) ? "row" : "house",
    );
    const own = isLast ? machines.splice(0) : machines.splice(0, chance.between(0, 1));
    hangTransformer(sketch, spot, {
      phase: extras.has("banked") ? phase : chance.oneOf([...spot.phases]),
      byClamp: spot.phases.length === 3 && sketch.sideline.length === 0 && chance.percent(50),
      customers: [...own, ...houses.slice(own.length > 1 ? 1 : 0)],
    });
  });
}

const inOrder = (spots: readonly HangingSpot[]): HangingSpot[] => [...spots].sort((a, b) => a.pole - b.pole);
