/**
 * One command and the keys that do it. The keys, the list of keys and the finder all read it here; what each is called
 * stands in `names.ts`, which the first picture does without.
 *
 * `where` says when its keys count: while the drawing has the focus, anywhere in Sketch, or anywhere in the app. One that is
 * `native` is done by the browser's own event of that key.
 */
interface CommandKeys {
  readonly id: string;
  readonly where: "drawing" | "sketch" | "app";
  /** as `Ctrl+Shift+z`; a lone character can be turned off */
  readonly keys?: readonly string[];
  readonly native?: true;
}

/** Every command that has keys: its id, where its keys count, and its keys. */
export const COMMANDS = [
  { id: "first", where: "drawing", keys: ["Space"] },
  { id: "grow", where: "drawing", keys: ["Insert", "+"] },
  { id: "place", where: "drawing" },
  { id: "join", where: "drawing" },
  { id: "gather", where: "drawing" },
  { id: "move", where: "drawing" },
  { id: "tidy", where: "drawing", keys: ["l"] },
  { id: "pin", where: "drawing", keys: ["p"] },
  { id: "stamp", where: "drawing", keys: ["k"] },
  { id: "trace", where: "drawing" },
  { id: "piece", where: "drawing" },
  { id: "moveRight", where: "drawing", keys: ["Alt+ArrowRight"] },
  { id: "moveLeft", where: "drawing", keys: ["Alt+ArrowLeft"] },
  { id: "moveDown", where: "drawing", keys: ["Alt+ArrowDown"] },
  { id: "moveUp", where: "drawing", keys: ["Alt+ArrowUp"] },
  { id: "undo", where: "sketch", keys: ["Ctrl+z"] },
  { id: "redo", where: "sketch", keys: ["Ctrl+Shift+z", "Ctrl+y"] },
  { id: "delete", where: "drawing", keys: ["Delete", "Backspace"] },
  { id: "copy", where: "sketch", keys: ["Ctrl+c"] },
  { id: "cut", where: "sketch", keys: ["Ctrl+x"] },
  { id: "paste", where: "sketch", keys: ["Ctrl+v"], native: true },
  { id: "duplicate", where: "sketch", keys: ["Ctrl+d"] },
  { id: "selectAll", where: "sketch", keys: ["Ctrl+a"] },
  { id: "onward", where: "drawing", keys: ["ArrowRight"] },
  { id: "back", where: "drawing", keys: ["ArrowLeft"] },
  { id: "sibling", where: "drawing", keys: ["ArrowDown"] },
  { id: "siblingBefore", where: "drawing", keys: ["ArrowUp"] },
  { id: "source", where: "drawing", keys: ["Home"] },
  { id: "end", where: "drawing", keys: ["End"] },
  {
    id: "extend",
    where: "drawing",
    keys: [
      "Shift+ArrowRight",
      "Shift+ArrowLeft",
      "Shift+ArrowDown",
      "Shift+ArrowUp",
      "Shift+Home",
      "Shift+End",
    ],
  },
  { id: "workPoint", where: "drawing", keys: ["w"] },
  { id: "nextThreat", where: "drawing", keys: ["t"] },
  { id: "region", where: "sketch", keys: ["F6", "Shift+F6"] },
  { id: "escape", where: "sketch", keys: ["Escape"] },
  { id: "details", where: "drawing", keys: ["Enter"] },
  { id: "hot", where: "drawing" },
  { id: "outline", where: "drawing" },
  { id: "mistake", where: "drawing" },
  { id: "margins", where: "drawing" },
  { id: "power", where: "drawing" },
  { id: "zoomIn", where: "drawing", keys: ["="] },
  { id: "zoomOut", where: "drawing", keys: ["-"] },
  { id: "fit", where: "drawing", keys: ["0"] },
  { id: "open", where: "app", keys: ["Ctrl+o"] },
  { id: "save", where: "app", keys: ["Ctrl+s"] },
  { id: "find", where: "app", keys: ["/", "Ctrl+k"] },
  { id: "keys", where: "drawing", keys: ["?"] },
] as const satisfies readonly CommandKeys[];

type Command = (typeof COMMANDS)[number];

/** The id of a command. */
export type CommandId = Command["id"];

/** A command that counts everywhere in the app. */
export type AppCommand = Extract<Command, { where: "app" }>["id"];

/** A command of Sketch. */
export type SketchCommand = Exclude<CommandId, AppCommand>;

/** Each command of Sketch, ready to be done. Where it cannot be, it does nothing, or the session says why. */
export type SketchCommands = Readonly<Record<Exclude<SketchCommand, "extend">, () => void>>;

/** All of them, as the lists read them. */
export const commands: readonly (CommandKeys & { readonly id: CommandId })[] = COMMANDS;

/** A key as the registry spells it. Shift counts with named keys and Ctrl only: it is how some characters are typed. */
export function chordOf(
  event: Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey" | "shiftKey">,
): string {
  const isCtrl = event.ctrlKey || event.metaKey;
  const key = event.key === " " ? "Space" : event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const isShift = event.shiftKey && (isCtrl || key.length > 1);
  return [isCtrl && "Ctrl", event.altKey && "Alt", isShift && "Shift", key]
    .filter((it) => it !== false)
    .join("+");
}

/** A key that is one character alone, which the person can turn off. */
const isSingle = (chord: string): boolean => chord.length === 1;

type IdWhere<Where> = Extract<Command, { where: Where }>["id"];

/** The command that a key does here, if any. */
export function commandOf<Where extends Command["where"]>(
  event: KeyboardEvent,
  where: Where,
  hasSingleKeys: boolean,
): IdWhere<Where> | undefined {
  const chord = chordOf(event);
  if (isSingle(chord) && !hasSingleKeys) return undefined;
  const found = commands.find(
    (it) => it.where === where && it.native !== true && it.keys?.includes(chord) === true,
  );
  return found?.id as string as IdWhere<Where> | undefined;
}
