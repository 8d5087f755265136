import { POINT_ADVANTAGE } from "./tolerances";
import { changeOf, type Scene, type SceneChange } from "./scene";
import { type Owner, ownerKey } from "../terms";
import { type Box, distanceTo, type Located } from "./shapes";

/** Things by place, so that a touch asks only the few that are near it. */
class GridIndex {
  readonly #cells: Map<string, readonly Located[]>;
  static readonly cell = 240;

  constructor(pieces: readonly Located[], cells: Iterable<[string, readonly Located[]]> = []) {
    this.#cells = new Map(cells);
    for (const [key, come] of byCell(pieces))
      this.#cells.set(key, [...(this.#cells.get(key) ?? []), ...come]);
  }

  /** The index after a change of the scene. */
  after(change: SceneChange): GridIndex {
    if (change.of === "looks") return this;
    const cells = new Map(this.#cells);
    for (const [key, left] of byCell(change.gone)) {
      const those = new Set(left.map(({ owner }) => ownerKey(owner)));
      cells.set(
        key,
        cells.get(key)!.filter((it) => !those.has(ownerKey(it.owner))),
      );
    }
    return new GridIndex(change.come, cells);
  }

  /** Every thing whose box may touch this one, each once, in no certain order. */
  near(box: Box): ReadonlySet<Located> {
    const found = new Set<Located>();
    for (const key of keysOf(box)) for (const piece of this.#cells.get(key) ?? []) found.add(piece);
    return found;
  }
}

function byCell(pieces: readonly Located[]): Map<string, Located[]> {
  const cells = new Map<string, Located[]>();
  for (const piece of pieces)
    for (const key of keysOf(piece.box)) {
      const list = cells.get(key);
      if (list === undefined) cells.set(key, [piece]);
      else list.push(piece);
    }
  return cells;
}

function keysOf({ left, top, right, bottom }: Box): string[] {
  const keys = [];
  const { cell } = GridIndex;
  for (let x = Math.floor(left / cell); x <= Math.floor(right / cell); x++)
    for (let y = Math.floor(top / cell); y <= Math.floor(bottom / cell); y++) keys.push(`${x} ${y}`);
  return keys;
}

const indexes = new WeakMap<Scene, GridIndex>();
/** The grid index of a scene, made when it is first asked for; from that of the scene before where there is one. */
export function indexOf(scene: Scene): GridIndex {
  const known = indexes.get(scene);
  if (known !== undefined) return known;
  const change = changeOf(scene);
  const index = change === undefined ? undefined : indexes.get(change.before);
  const fresh = index === undefined ? new GridIndex(scene.pieces) : index.after(change!);
  indexes.set(scene, fresh);
  return fresh;
}

/**
 * What a touch at (x, y) means: the nearest thing whose spine lies within `radius` units, else the structure on whose
 * ground it falls, or nothing.
 */
export function hitAt(scene: Scene, x: number, y: number, radius: number): Owner | undefined {
  const box = { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
  let best: Owner | undefined;
  let ground: Owner | undefined;
  let nearest = Infinity;
  for (const { owner, spine, box: own } of indexOf(scene).near(box)) {
    if (owner.of === "workPoint") continue;
    if (owner.of === "structure" && isIn(own, x, y)) ground = owner;
    const isPlace = owner.of === "point" || owner.of === "structure";
    const distance = distanceTo(spine, x, y);
    const reach = isPlace ? radius * POINT_ADVANTAGE + 4 : radius;
    if (distance > reach) continue;
    const worth = isPlace ? distance * POINT_ADVANTAGE - 2 : distance;
    if (worth < nearest) {
      nearest = worth;
      best = owner;
    }
  }
  return best ?? ground;
}

const isIn = ({ left, top, right, bottom }: Box, x: number, y: number): boolean =>
  left <= x && x <= right && top <= y && y <= bottom;
