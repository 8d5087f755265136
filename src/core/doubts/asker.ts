import type { DoubtKind } from "../devices";
import {
  elementCountOf,
  objectionTo,
  type Settings,
  type StillhotDocument,
  type System,
  type WorkPoint,
} from "../document";
import {
  BADNESS,
  mendedIn,
  MOST_STRENGTH,
  type Question,
  type SidedVerdict,
  sidesOfWork,
  verdictOfWork,
  type Threat,
  threatKey,
  type Verdict,
  whileMending,
  workConductorsOf,
  type WorkVerdict,
} from "../hazard";
import type { ConductorId, ElementId, Letter, PointId, StructureId } from "../terms";
import { carriedOut, type Doubt, doubtsAround, MOST_THINGS } from "./doubts";

/** A drawing, and what counts as tested on it. */
export interface TestedDrawing {
  readonly document: StillhotDocument;
  readonly tested: ReadonlySet<ConductorId>;
}

/** What is asked about: a work point as the drawing stands. */
export interface DoubtsQuestion {
  readonly settings: Settings;
  readonly workPoint: WorkPoint;
  /** how it stands, which a doubt may make worse */
  readonly base: TestedDrawing;
  /** how it stands with the grounds that are to hold */
  readonly grounded: TestedDrawing;
  /** things whose position the crew has seen by having its hands on them */
  readonly handled: ReadonlySet<string>;
  /** how much it may take, in multiplications */
  readonly mostWork: number;
}

/** A finding of the search: doubts that do harm together, and how the work point would stand. */
export interface Harm {
  readonly doubts: readonly Doubt[];
  readonly now: WorkVerdict;
  readonly worst: Threat | undefined;
  readonly groundsHold: boolean;
}

/** A doubt that would do harm, alone or together with another, and what would hold if it were true. */
export interface LookFirst {
  readonly doubt: Doubt;
  /** the other doubt, where each of the two alone does no harm */
  readonly pair: Doubt | null;
  /** the conductor that it would do most to */
  readonly conductor: Letter;
  readonly verdict: Verdict;
  readonly margin: number | null;
  /** of the worst threat that it brings; null where nobody has drawn what feeds the work point [V] */
  readonly volts: number | null;
  readonly exposureVolts: number | null;
  /** how many things must go wrong beside it for those volts; 0 where they are there at once */
  readonly strength: number;
  /** whether the worker stays under the limit then, with the grounds as drawn, or those of the order where there are steps */
  readonly groundsHold: boolean;
  /** how many doubts that would do harm one look at its structure settles */
  readonly settles: number;
}

/** Asks what doubts would do, while there is work left. */
export class Asker {
  readonly doubts: readonly Doubt[];
  private readonly settings: Settings;
  private readonly workPoint: WorkPoint;
  private readonly base: TestedDrawing;
  private readonly grounded: TestedDrawing;
  private readonly before: WorkVerdict;
  /** threats of more strength than this make nothing worse; −1 where nothing could */
  private readonly worstStrength: number;
  /** the worst of each place and doubt */
  private readonly harms = new Map<string, Harm>();
  private readonly harmful = new Set<string>();
  private left: number;

  constructor({ settings, workPoint, base, grounded, handled, mostWork }: DoubtsQuestion) {
    this.settings = settings;
    this.workPoint = workPoint;
    this.base = base;
    this.grounded = grounded;
    this.left = mostWork;
    this.before = this.verdict(this.base.document.system, this.base);
    this.worstStrength = this.strengthOfHarm();
    const { system } = this.base.document;
    const isHandled = (it: Doubt) => it.doubt === "other-position" && handled.has(it.where);
    this.doubts = this.isWorst ? [] : doubtsAround(system, this.workPoint).filter((it) => !isHandled(it));
  }

  /** Whether nothing could be worse than it is: every conductor of the work point is live and over the limit. */
  get isWorst(): boolean {
    return this.worstStrength < 0;
  }

  /** The most strength at which a threat could still worsen the verdict, lower the margin or lift an exposure. */
  private strengthOfHarm(): number {
    const { verdict, margin } = this.before;
    const reached = this.reachedAt(this.before);
    return Math.max(
      { grounded: 2, isolated: 1, "could-go-live": 0, live: -1 }[verdict],
      (margin ?? MOST_STRENGTH + 1) - 1,
      ...workConductorsOf(this.workPoint).map((it) => (reached.get(it) ?? MOST_STRENGTH + 1) - 1),
    );
  }

  /** Things of the drawing that are too far off for their doubts to be gathered. */
  get beyond(): number {
    return this.isWorst ? 0 : Math.max(0, elementCountOf(this.base.document.system) - MOST_THINGS);
  }

  /** Places and doubts in the list so far. */
  get places(): number {
    return this.harms.size;
  }

  isHarmful(doubt: Doubt): boolean {
    return this.harmful.has(doubt.key);
  }

  /** Whether the work that the answer may take is done. */
  get isSpent(): boolean {
    return this.left <= 0;
  }

  /** Asks what these doubts would do together; false where the work is spent. */
  ask(doubts: readonly Doubt[]): boolean {
    if (this.isSpent) return false;
    const system = carriedOut(this.base.document.system, doubts);
    if (!this.isPossible(system)) return true;
    const now = this.judge(system);
    if (now === undefined) return true;
    for (const { key } of doubts) this.harmful.add(key);
    const worst = this.worstOf(now);
    const harm: Harm = { doubts, now, worst, groundsHold: this.holds({ doubts, worst }) };
    const key = doubts.map((it) => `${it.doubt} ${it.where}`).join(" and ");
    const known = this.harms.get(key);
    if (known === undefined || this.compare(harm, known) < 0) this.harms.set(key, harm);
    return true;
  }

  /** The worst that was found of each place and doubt. */
  get found(): readonly Harm[] {
    return [...this.harms.values()];
  }

  /** Everything that was found, the most useful look first. */
  ranked(): LookFirst[] {
    const settled = new Map<string, Set<string>>();
    for (const { doubts } of this.harms.values())
      for (const it of doubts)
        settled.set(placeOf(it), (settled.get(placeOf(it)) ?? new Set()).add(`${it.doubt} ${it.where}`));
    const settles = ({ doubts }: Harm) => settled.get(placeOf(doubts[0]!))!.size;
    return [...this.harms.values()]
      .sort(
        (a, b) =>
          this.compare(a, b) ||
          settles(b) - settles(a) ||
          a.doubts[0]!.hops - b.doubts[0]!.hops ||
          LIKELIHOOD[a.doubts[0]!.doubt] - LIKELIHOOD[b.doubts[0]!.doubt] ||
          (a.doubts[0]!.key < b.doubts[0]!.key ? -1 : 1),
      )
      .map((it) => this.entry(it, settles(it)));
  }

  /** Whether the drawing with the doubts is one that could stand: what hangs in the air is no doubt. */
  private isPossible(system: System): boolean {
    // What a scenario hides is no part of what stands there.
    const { scenario: _scenario, ...document } = this.base.document;
    return objectionTo({ ...document, system }) === undefined;
  }

  /** How the work point would stand, where that is worse than now. */
  private judge(system: System): WorkVerdict | undefined {
    // Nearly all harm takes nothing more to go wrong, or one thing: all combinations are asked only where it may take more.
    for (const strength of [0, 1, MOST_STRENGTH]) {
      if (strength > 1 ? this.worstStrength < 2 : strength > this.worstStrength) return undefined;
      const now = this.sides(system, this.base, strength);
      const isLive = now.verdict === "live" && this.before.verdict !== "live";
      const isWorse = this.isWorse(now);
      // What is asked again for its figures is counted then.
      if (isLive ? strength > 0 : !isWorse || strength < MOST_STRENGTH) this.counted(now, system);
      if (isLive) return this.verdict(system, this.base, 0);
      if (!isWorse) continue;
      const all = this.verdict(system, this.base);
      return this.isWorse(all) ? all : undefined;
    }
    return undefined;
  }

  private isWorse(now: SidedVerdict): boolean {
    const { before } = this;
    if (BADNESS[now.verdict] > BADNESS[before.verdict] || (now.margin ?? 4) < (before.margin ?? 4))
      return true;
    const [had, has] = [this.reachedAt(before), this.reachedAt(now)];
    return [...has].some(([letter, strength]) => strength < (had.get(letter) ?? Infinity));
  }

  /** By how many things going wrong each conductor reaches the exposure limit. */
  private reachedAt({ threats }: SidedVerdict): Map<Letter, number> {
    const least = new Map<Letter, number>();
    for (const { conductor, strength, exposureVolts } of threats)
      if (exposureVolts >= this.settings.exposureLimitVolts)
        least.set(conductor, Math.min(strength, least.get(conductor) ?? Infinity));
    return least;
  }

  /** The worst of what was not a threat before, or not above the limit. */
  private worstOf(now: WorkVerdict): Threat | undefined {
    const before = new Map(this.before.threats.map((it) => [threatKey(it), it]));
    const isOver = (it: Threat) => it.exposureVolts >= this.settings.exposureLimitVolts;
    if (now.isUnfed && !this.before.isUnfed && now.verdict !== "live") return undefined;
    const fresh = now.threats.filter((it) => {
      const known = before.get(threatKey(it));
      return known === undefined || (isOver(it) && !isOver(known));
    });
    const [worst] = [...(fresh.length > 0 ? fresh : now.threats)].sort(
      (a, b) => a.strength - b.strength || b.exposureVolts - a.exposureVolts || b.volts - a.volts,
    );
    return worst;
  }

  /**
   * Whether a worker stays under the limit with the grounds in place, whatever goes wrong up to the strength of the harm.
   *
   * @param system the drawing with the grounds
   */
  holds({ doubts, worst }: Pick<Harm, "doubts" | "worst">, system = this.grounded.document.system): boolean {
    const asked = carriedOut(system, doubts);
    const found = this.sides(asked, this.grounded, worst?.strength ?? 0);
    const { threats, isUnfed } = this.counted(found, asked);
    return !isUnfed && threats.every((it) => it.exposureVolts < this.settings.exposureLimitVolts);
  }

  private verdict(system: System, of: TestedDrawing, mostStrength?: number): WorkVerdict {
    return this.counted(verdictOfWork(this.questionsOf(system, of), of.tested, mostStrength), system);
  }

  /** The same for what is only compared, not yet counted. */
  private sides(system: System, of: TestedDrawing, mostStrength: number): SidedVerdict {
    return sidesOfWork(this.questionsOf(system, of), of.tested, mostStrength);
  }

  private questionsOf(system: System, { document }: TestedDrawing): readonly Question[] {
    const { settings, workPoint } = this;
    return whileMending({ system, settings, workPoint }, mendedIn(document));
  }

  private counted<Found extends SidedVerdict>(found: Found, system: System): Found {
    this.left -= found.work + COST_OF_A_RECORD * elementCountOf(system);
    return found;
  }

  /** Single ones before pairs, what hardly happens last, then by what they do. */
  private compare(a: Harm, b: Harm): number {
    return (
      a.doubts.length - b.doubts.length ||
      Number(isUnlikely(a)) - Number(isUnlikely(b)) ||
      BADNESS[b.now.verdict] - BADNESS[a.now.verdict] ||
      Number(a.groundsHold) - Number(b.groundsHold) ||
      (a.now.margin ?? 4) - (b.now.margin ?? 4) ||
      Number(this.isFelt(b)) - Number(this.isFelt(a)) ||
      Number(a.worst === undefined) - Number(b.worst === undefined)
    );
  }

  /** Whether it would put the worker over the limit; of what nobody knows the volts of, where no ground holds it. */
  private isFelt(harm: Harm): boolean {
    return harm.worst === undefined ? !harm.groundsHold : this.isOver(harm);
  }

  /** Whether it would put the worker over the limit. */
  isOver({ worst }: Harm): boolean {
    return worst === undefined || worst.exposureVolts >= this.settings.exposureLimitVolts;
  }

  private entry({ doubts: [doubt, pair], now, worst, groundsHold }: Harm, settles: number): LookFirst {
    return {
      doubt: doubt!,
      pair: pair ?? null,
      conductor: worst?.conductor ?? (this.workPoint.conductors[0] as Letter),
      verdict: now.verdict,
      margin: now.margin,
      volts: worst?.volts ?? null,
      exposureVolts: worst?.exposureVolts ?? null,
      strength: worst?.strength ?? 0,
      groundsHold,
      settles,
    };
  }
}

/** What carrying a doubt out takes for each thing of a drawing, in multiplications: measured, as the nodes of a solution are. */
export const COST_OF_A_RECORD = 50;

/** How likely drawings are wrong in each way, the likeliest first; common practice, no source. */
const LIKELIHOOD: Readonly<Record<DoubtKind, number>> = {
  "goes-on": 0,
  "other-position": 1,
  "second-transformer": 2,
  "swapped-labels": 3,
  "swapped-phases": 3,
  "other-cable": 4,
  machine: 5,
  "open-neutral": 6,
  crossing: 7,
  "other-connection": 8,
  "no-rod": 9,
  "no-pole-bond": 10,
  "thin-ground": 11,
  "no-span": 12,
};

/** A line that is drawn stands, nearly always. */
const isUnlikely = ({ doubts }: Harm): boolean => doubts.some((it) => it.doubt === "no-span");

/** Where one look settles several: the structure, or the thing itself where it is on none. */
const placeOf = ({ structure, where }: Doubt): StructureId | ElementId | PointId => structure ?? where;
