import { deviceUpsetsOf, type ElementChange, type Part, partsOf } from "../devices";
import { changed, complete, type SavedElement, type Settings, type System } from "../document";
import {
  type Circuit,
  indexOfElement,
  placeFor,
  reachGraphOf,
  rowsOf,
  RUNS,
  runsAs,
  type Standing,
} from "../network";
import type { ElementId, Letter } from "../terms";
import type { Upset } from "./types";
import { startsUnknown } from "./upsetWords";

/** An upset of this drawing, and what it changes of its element. */
export interface DrawnUpset extends Upset {
  readonly change: ElementChange;
}

/** Upsets of one element are remembered with the settings that they were asked under: most edits leave them alone. */
const known = new WeakMap<
  SavedElement,
  { readonly id: ElementId; readonly under: string; readonly upsets: DrawnUpset[] }
>();

function upsetsOfElement(id: ElementId, saved: SavedElement, settings: Settings): DrawnUpset[] {
  const under = `${settings.assumeGenerators} ${settings.assumedGeneratorKva}`;
  const found = known.get(saved);
  if (found !== undefined && found.id === id && found.under === under) return found.upsets;
  const upsets = deviceUpsetsOf(complete(saved), settings).map(
    ({ kind, phase, strength, change }): DrawnUpset => ({
      kind,
      element: id,
      ...(phase === undefined ? {} : { phase }),
      strength,
      change,
    }),
  );
  known.set(saved, { id, under, upsets });
  return upsets;
}

/** Everything that could change without the crew doing it, in order of element. */
export const upsetsOf = (system: System, settings: Settings): DrawnUpset[] =>
  (Object.keys(system.elements) as ElementId[]).flatMap((id) =>
    upsetsOfElement(id, system.elements[id]!, settings),
  );

/** The drawing as it would stand after these upsets. Phases of one element that move together add up. */
export function afterUpsets(system: System, upsets: readonly DrawnUpset[]): System {
  if (upsets.length === 0) return system;
  const elements = { ...system.elements };
  for (const upset of upsets) {
    const { element, change, kind, phase } = upset;
    const saved = elements[element]!;
    const again = deviceUpsetsOf(complete(saved), { assumeGenerators: true, assumedGeneratorKva: 0 }).find(
      (it) => it.kind === kind && it.phase === phase,
    );
    // Of two phases of one element the second starts from what the first left.
    const effect = startsUnknown(upset) || again === undefined ? change : again.change;
    elements[element] = changed(saved, effect);
  }
  return { ...system, elements };
}

/** What an upset does to the columns: which joins close, which conductors rejoin, which supplies start, and how they then look. */
export interface Effect {
  readonly joins: readonly number[];
  readonly rejoined: readonly { readonly stretch: number; readonly letter: number }[];
  readonly emfs: readonly { readonly emf: number; readonly part: Extract<Part, { part: "emf" }> }[];
}

/** Finds what an upset changes by asking its device for its parts before and after: no list of effects to keep in step. */
export function effectOf(circuit: Circuit, upset: DrawnUpset): Effect {
  const found = knownEffects.get(upset);
  if (found !== undefined && found.structure === circuit.structure) return found.effect;
  const { effect, restsOnOthers } = findEffect(circuit, upset);
  if (!restsOnOthers) knownEffects.set(upset, { structure: circuit.structure, effect });
  return effect;
}

const knownEffects = new WeakMap<DrawnUpset, { readonly structure: object; readonly effect: Effect }>();

/** What an upset does, and whether that rests on what else is closed: a machine at a set output holds volts only where nothing else does. */
function findEffect(circuit: Circuit, upset: DrawnUpset): { effect: Effect; restsOnOthers: boolean } {
  const index = indexOfElement(circuit, upset.element)!;
  const saved = circuit.system.elements[upset.element]!;
  const place = placeFor(circuit, index);
  const parts = (changed: typeof saved): readonly Part[] => partsOf(complete(changed), place);
  const before = parts(saved);
  const after = parts(changed(saved, upset.change));
  const rows = rowsOf(circuit, index);
  const nth = { join: 0, stretch: 0, emf: 0 };
  const joins: number[] = [];
  const rejoined: { stretch: number; letter: number }[] = [];
  const emfs: { emf: number; part: Extract<Part, { part: "emf" }> }[] = [];
  before.forEach((was, at) => {
    const is = after[at]!;
    if (was.part === "join" && is.part === "join") {
      if (is.closed && !was.closed) joins.push(rows!.join[nth.join]!);
      nth.join++;
    } else if (was.part === "stretch" && is.part === "stretch") {
      was.letters.forEach((letter, i) => {
        if (was.parted.includes(letter) && !is.parted.includes(letter))
          rejoined.push({ stretch: rows!.stretch[nth.stretch]!, letter: i });
      });
      nth.stretch++;
    } else if (was.part === "emf" && is.part === "emf") {
      const emf = rows!.emf[nth.emf]!;
      const ran = (part: typeof is) => runsAs(circuit, emf, part) !== RUNS.not;
      if (is.on && ran(is) && !ran(was)) emfs.push({ emf, part: is });
      nth.emf++;
    }
  });
  return {
    effect: { joins, rejoined, emfs },
    restsOnOthers: after.some((it) => it.part === "emf" && it.withoutGrid !== undefined),
  };
}

/** The standing of a circuit after some effects. */
export function standingAfter(circuit: Circuit, base: Standing, effects: readonly Effect[]): Standing {
  const graph = reachGraphOf(circuit);
  // The same column where nothing joins: which neutrals are tied is then known already.
  const joinsAny = effects.some(({ joins, rejoined }) => joins.length > 0 || rejoined.length > 0);
  const edgeOn = joinsAny ? base.edgeOn.slice() : base.edgeOn;
  const emfOn = base.emfOn.slice();
  for (const { joins, rejoined, emfs } of effects) {
    for (const join of joins) if (graph.edgeOfJoin[join] !== -1) edgeOn[graph.edgeOfJoin[join]!] = 1;
    for (const { stretch, letter } of rejoined) edgeOn[graph.edgesOfStretch[stretch]![letter]!] = 1;
    for (const { emf } of emfs) emfOn[emf] = 1;
  }
  return { edgeOn, emfOn };
}

/** Whether an upset joins a neutral again, which can tie neutrals to earth and so change what may be reached at all. */
export const rejoinsNeutral = (upset: Upset): boolean =>
  rejoins(upset) && upset.phase === ("N" satisfies Letter);

/** Whether something that is open closes, by a hand or by itself. */
export const closes = ({ kind }: Pick<Upset, "kind">): boolean => kind === "close" || kind === "reclose";

/** Whether it does so by itself or from afar, without a hand on it. */
export const closesByItself = ({ kind }: Pick<Upset, "kind">): boolean => kind === "reclose";

/** Whether a machine starts that is drawn. */
export const startsDrawn = ({ kind }: Pick<Upset, "kind">): boolean => kind === "start";

/** Whether the ends of a parted conductor come together again. */
export const rejoins = ({ kind }: Pick<Upset, "kind">): boolean => kind === "rejoin";

/** Whether something else touches it. */
export const isTouched = ({ kind }: Pick<Upset, "kind">): boolean => kind === "contact";
