import type { ElementId, Owner, PointId } from "../../core";
import { whyNot } from "../commands/reasons";
import type { SketchCommands } from "../commands/registry";
import { GRID } from "../canvas/grid";
import type { Session } from "../session/session.svelte";
import { firstAct, togglePin } from "./acts";
import type { WalkDirection } from "./walk";

/** What commands need of the screen, beside the session. */
export interface Screen {
  grow(point: PointId): void;
  walk(way: WalkDirection): void;
  details(): void;
  paste(): void;
  copy(): void;
  cut(): void;
  duplicate(): void;
  tidy(): void;
  /** asks more, before what is selected is kept as an arrangement or becomes a drawing with all around it */
  ask(about: "stamp" | "piece"): void;
  /** puts a picture under the drawing */
  trace(): void;
  zoom(factor: number): void;
  fit(): void;
  show(panel: "hot" | "outline"): void;
  look(at: "mistake" | "margins" | "power"): void;
  keys(): void;
  escape(): void;
  nextRegion(): void;
}

const ZOOM = 1.4;

/** The commands of Sketch, for key, button and finder alike. */
export function sketchCommands(session: Session, screen: Screen): SketchCommands {
  const go = (way: WalkDirection) => () => screen.walk(way);
  const move = (x: number, y: number) => () => {
    session.run(session.moved(x, y, 0), { gesture: `keys ${session.movingPoints.join(" ")}` });
  };
  const does: SketchCommands = {
    first: () => firstAct(session, commands)?.run(),
    grow: () => screen.grow(session.onlyPoint!),
    place: () => (session.mode = { name: "place" }),
    join: () => (session.mode = { name: "join", from: session.onlyPoint }),
    gather: () => (session.mode = { name: "gather" }),
    move: () => (session.mode = { name: "move" }),
    tidy: screen.tidy,
    pin: () => togglePin(session),
    stamp: () => screen.ask("stamp"),
    piece: () => screen.ask("piece"),
    trace: screen.trace,
    moveRight: move(GRID, 0),
    moveLeft: move(-GRID, 0),
    moveDown: move(0, GRID),
    moveUp: move(0, -GRID),
    undo: () => session.undo(),
    redo: () => session.redo(),
    delete: () => void session.remove(),
    copy: screen.copy,
    cut: screen.cut,
    paste: screen.paste,
    duplicate: screen.duplicate,
    selectAll: () => selectAll(session),
    onward: go("onward"),
    back: go("back"),
    sibling: go("sibling"),
    siblingBefore: go("siblingBefore"),
    source: go("source"),
    end: go("end"),
    workPoint: () => session.select({ of: "point", id: session.workPoint!.at }),
    nextThreat: () => {
      const count = session.workPoint!.report!.threats.length;
      screen.show("hot");
      session.light(session.litThreat === undefined ? 0 : (session.litThreat + 1) % count);
    },
    region: screen.nextRegion,
    escape: screen.escape,
    details: screen.details,
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
  const commands = Object.fromEntries(
    Object.entries(does).map(([id, run]) => [id, whereItCan(session, id as keyof SketchCommands, run)]),
  ) as SketchCommands;
  return commands;
}

const whereItCan = (session: Session, id: keyof SketchCommands, run: () => void) => () => {
  const why = whyNot(session, id);
  if (why === undefined) run();
  else session.refusesToEdit();
};

function selectAll(session: Session) {
  const { points, elements } = session.document.system;
  session.select(
    ...Object.keys(points).map((id): Owner => ({ of: "point", id: id as PointId })),
    ...Object.keys(elements).map((id): Owner => ({ of: "element", id: id as ElementId })),
  );
}
