import { expect, test } from "vitest";
import { english } from "./messages/en";
import { learn, say, spell } from "./message";

learn(english);

test.each(["\u202a", "\u202b", "\u202d", "\u202e", "\u2066", "\u2067", "\u2068", "\u202c", "\u2069"])(
  "a name with a letter that turns the writing around (%j) leaves the sentence as it reads",
  (turn) => {
    const sentence = spell(say("say.and", { first: `pole ${turn}12`, rest: "pole 13" }));
    expect(sentence).toBe(`pole \\u${turn.charCodeAt(0).toString(16)}12 and pole 13`);
  },
);

test("names in whatever script stay as they are", () => {
  const name = "עמוד 12 · Mât n° 3 · 電柱\u200f";
  expect(spell(say("say.text", { text: name }))).toBe(name);
});
