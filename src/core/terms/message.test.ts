import { expect, test } from "vitest";
import { say } from "./message";
import { english, french, spell } from "../../../tests/support/words";

test.each(["\u202a", "\u202b", "\u202d", "\u202e", "\u2066", "\u2067", "\u2068", "\u202c", "\u2069"])(
  "a name with a letter that turns the writing around (%j) leaves the sentence as it reads",
  (turn) => {
    const sentence = spell(say("row.and", { first: `pole ${turn}12`, rest: "pole 13" }));
    expect(sentence).toBe(`pole \\u${turn.charCodeAt(0).toString(16)}12 and pole 13`);
  },
);

test.each([
  [0.198, "en", "0.198 V"],
  [0.198, "fr", "0,198 V"],
  [-1.5, "fr", "-1,5 V"],
  [7200, "fr", "7200 V"],
  ["12.47 kV, pole 3.1", "fr", "12.47 kV, pole 3.1 V"],
])("a number is written as the language writes it, a label as it is: %s in %s", (volts, language, ends) => {
  const sentence = say("volts.told", { volts });
  const spelled = spell(sentence, language === "fr" ? french : english);
  expect(spelled.replace(/[\u00a0\u202f]/g, " ").endsWith(ends)).toBe(true);
});

test("names in whatever script stay as they are", () => {
  const name = "עמוד 12 · Mât n° 3 · 電柱\u200f";
  expect(spell(say("say.text", { text: name }))).toBe(name);
});
