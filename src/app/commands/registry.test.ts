import { describe, expect, test } from "vitest";
import { COMMAND_GROUPS, NAMES } from "./names";
import { chordOf, commandOf, commands } from "./registry";
import { isMessageKey } from "../words/catalogue";

const press = (key: string, held: Partial<KeyboardEvent> = {}): KeyboardEvent =>
  ({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held }) as KeyboardEvent;

test("each command has a name in words, a group that is shown, and an id of its own", () => {
  for (const { id } of commands) {
    const { title, group } = NAMES[id];
    expect([title, isMessageKey(title)]).toEqual([title, true]);
    expect(COMMAND_GROUPS).toContain(group);
  }
  expect(new Set(commands.map((it) => it.id)).size).toBe(commands.length);
});

test("no key does two things in one place, nor one thing on the drawing and another around it", () => {
  const chords = commands.flatMap((it) => it.keys ?? []);
  expect(chords.filter((it, index) => chords.indexOf(it) !== index)).toEqual([]);
});

describe("a key is spelled as the registry spells it", () => {
  test.each<[string, Partial<KeyboardEvent>, string]>([
    ["z", { ctrlKey: true }, "Ctrl+z"],
    ["Z", { metaKey: true, shiftKey: true }, "Ctrl+Shift+z"],
    ["?", { shiftKey: true }, "?"],
    ["W", { shiftKey: true }, "w"],
    [" ", {}, "Space"],
    ["ArrowUp", { altKey: true }, "Alt+ArrowUp"],
    ["F6", { shiftKey: true }, "Shift+F6"],
  ])("%s %o", (key, held, chord) => {
    expect(chordOf(press(key, held))).toBe(chord);
  });
});

describe("a key finds its command", () => {
  test.each<[string, Partial<KeyboardEvent>, "drawing" | "sketch" | "app", boolean, string | undefined]>([
    ["ArrowRight", {}, "drawing", true, "onward"],
    ["ArrowRight", { shiftKey: true }, "drawing", true, "extend"],
    ["l", {}, "drawing", true, "tidy"],
    ["l", {}, "drawing", false, undefined],
    ["l", { ctrlKey: true }, "drawing", true, undefined],
    ["Insert", {}, "drawing", false, "grow"],
    ["z", { ctrlKey: true }, "sketch", false, "undo"],
    ["z", { ctrlKey: true }, "drawing", true, undefined],
    ["v", { ctrlKey: true }, "sketch", true, undefined],
    ["k", { ctrlKey: true }, "app", false, "find"],
    ["/", {}, "app", true, "find"],
    ["/", {}, "app", false, undefined],
  ])("%s %o %s, single keys %s: %s", (key, held, where, hasSingleKeys, id) => {
    expect(commandOf(press(key, held), where, hasSingleKeys)).toBe(id);
  });
});
