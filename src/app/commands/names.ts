import type { CommandId } from "./registry";
import type { MessageKey } from "../words/catalogue";

/** Groups of commands, in the order in which lists show them. */
export const COMMAND_GROUPS = [
  "selected",
  "draw",
  "edit",
  "go",
  "view",
  "thing",
  "file",
  "demo",
  "setting",
  "help",
] as const;

/** A heading that commands stand under, in the list of keys and in the finder. */
export type CommandGroup = (typeof COMMAND_GROUPS)[number];

/** What a command is called, and under which heading. */
export interface CommandName {
  readonly title: MessageKey;
  readonly group: CommandGroup;
  /** a key only: there is nothing to find */
  readonly unlisted?: true;
}

/** What each command is called, and where it stands in a list of them. */
export const NAMES: Readonly<Record<CommandId, CommandName>> = {
  first: { title: "command.first", group: "selected" },
  grow: { title: "command.grow", group: "draw" },
  place: { title: "act.place", group: "draw" },
  join: { title: "act.join", group: "draw" },
  gather: { title: "act.gather", group: "draw" },
  move: { title: "act.move", group: "draw" },
  tidy: { title: "act.tidy", group: "draw" },
  pin: { title: "command.pin", group: "draw" },
  stamp: { title: "act.stamp", group: "draw" },
  piece: { title: "act.piece", group: "draw" },
  trace: { title: "act.trace", group: "draw" },
  moveRight: { title: "command.moveRight", group: "draw" },
  moveLeft: { title: "command.moveLeft", group: "draw" },
  moveDown: { title: "command.moveDown", group: "draw" },
  moveUp: { title: "command.moveUp", group: "draw" },
  undo: { title: "app.undo", group: "edit" },
  redo: { title: "app.redo", group: "edit" },
  delete: { title: "act.delete", group: "edit" },
  copy: { title: "act.copy", group: "edit" },
  cut: { title: "command.cut", group: "edit" },
  paste: { title: "act.paste", group: "edit" },
  duplicate: { title: "act.duplicate", group: "edit" },
  selectAll: { title: "act.selectAll", group: "edit" },
  onward: { title: "command.onward", group: "go" },
  back: { title: "command.back", group: "go" },
  sibling: { title: "command.sibling", group: "go" },
  siblingBefore: { title: "command.siblingBefore", group: "go" },
  source: { title: "command.source", group: "go" },
  end: { title: "command.end", group: "go" },
  extend: { title: "command.extend", group: "go", unlisted: true },
  workPoint: { title: "command.workPoint", group: "go" },
  nextThreat: { title: "command.nextThreat", group: "go" },
  region: { title: "command.region", group: "go", unlisted: true },
  escape: { title: "command.escape", group: "go", unlisted: true },
  details: { title: "act.details", group: "view" },
  hot: { title: "app.hotList", group: "view" },
  outline: { title: "app.outline", group: "view" },
  mistake: { title: "views.mistake", group: "view" },
  margins: { title: "views.margins", group: "view" },
  power: { title: "views.power", group: "view" },
  zoomIn: { title: "app.zoomIn", group: "view" },
  zoomOut: { title: "app.zoomOut", group: "view" },
  fit: { title: "app.fit", group: "view" },
  open: { title: "app.open", group: "file" },
  save: { title: "app.save", group: "file" },
  find: { title: "app.find", group: "help", unlisted: true },
  keys: { title: "app.keys", group: "help" },
};
