import { type PointId } from "../../core";
import type { SketchCommand } from "../commands/registry";
import { GRID } from "../canvas/grid";
import type { Session } from "../session/session.svelte";
import { type Doors, firstAct, togglePin } from "./acts";
import { walk, type Way } from "./walk";

/** What commands need of the screen, beside the session. */
export interface Screen {
  readonly doors: Doors;
  zoom(factor: number): void;
  fit(): void;
  show(panel: "hot" | "outline"): void;
  look(at: "mistake" | "margins" | "power"): void;
  keys(): void;
  escape(): void;
  nextRegion(): void;
}

const ZOOM = 1.4;

/** What each command of Sketch does; where it cannot be done it does nothing, or the session says why. */
export function sketchCommands(
  session: Session,
  screen: Screen,
): Readonly<Record<Exclude<SketchCommand, "extend">, () => void>> {
  const { doors } = screen;
  const onlyPoint = (): PointId | undefined => {
    const [only] = session.selection;
    if (session.selection.length !== 1) return undefined;
    if (only?.of === "structure") return session.structureOf(only.id)?.points[0];
    return only?.of === "point" ? only.id : undefined;
  };
  const go = (way: Way) => () => {
    const next = walk(session.document, session.selection.at(-1), way);
    if (next !== undefined) session.select(next);
  };
  const move = (x: number, y: number) => () => {
    const moving = session.movingPoints;
    if (moving.length === 0) return;
    session.run(session.moved(x, y, 0), { gesture: `keys ${moving.join(" ")}` });
  };
  return {
    first: () => firstAct(session, doors)?.run(),
    grow: () => {
      const point = onlyPoint();
      if (point !== undefined) doors.grow(point);
    },
    place: () => (session.mode = { name: "place" }),
    join: () => (session.mode = { name: "join", from: onlyPoint() }),
    gather: () => (session.mode = { name: "gather" }),
    move: () => {
      if (session.movingPoints.length > 0) session.mode = { name: "move" };
    },
    tidy: doors.tidy,
    pin: () => togglePin(session),
    stamp: doors.stamp,
    moveRight: move(GRID, 0),
    moveLeft: move(-GRID, 0),
    moveDown: move(0, GRID),
    moveUp: move(0, -GRID),
    undo: () => session.undo(),
    redo: () => session.redo(),
    delete: () => session.remove(),
    copy: doors.copy,
    cut: doors.cut,
    paste: doors.paste,
    duplicate: doors.duplicate,
    selectAll: doors.selectAll,
    onward: go("onward"),
    back: go("back"),
    sibling: go("sibling"),
    siblingBefore: go("siblingBefore"),
    source: go("source"),
    end: go("end"),
    workPoint: () => {
      if (session.workPoint !== undefined) session.select({ of: "point", id: session.workPoint.at });
    },
    nextThreat: () => {
      const count = session.workPoint?.report?.threats.length ?? 0;
      if (count === 0) return;
      screen.show("hot");
      session.light(session.litThreat === undefined ? 0 : (session.litThreat + 1) % count);
    },
    region: screen.nextRegion,
    escape: screen.escape,
    details: doors.details,
    hot: () => screen.show("hot"),
    outline: () => screen.show("outline"),
    mistake: () => screen.look("mistake"),
    margins: () => screen.look("margins"),
    power: () => screen.look("power"),
    zoomIn: () => screen.zoom(ZOOM),
    zoomOut: () => screen.zoom(1 / ZOOM),
    fit: screen.fit,
    keys: screen.keys,
  };
}
