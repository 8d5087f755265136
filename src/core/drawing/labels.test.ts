import { expect, test } from "vitest";
import { titlesOf } from "./labels";

test.each([
  ["of a number all but its word gives way", ["Pole 31", "Pole 32"], ["Pole 31 31", "Pole 32 32"]],
  [
    "what is told besides gives way before the number does",
    ["Pole 32, main line", "Station"],
    ["Pole 32 32", "Station Station"],
  ],
  ["a pole and a pad of one number keep their word", ["Pole 7", "Pad 7"], ["Pole 7 Pole 7", "Pad 7 Pad 7"]],
  [
    "what is told besides stays where nothing else tells two apart",
    ["Pole 30, main line", "Pole 30, tap"],
    ["Pole 30, main line Pole 30, main line", "Pole 30, tap Pole 30, tap"],
  ],
  ["a count stays", ["Pole 7 (1)", "Pole 7 (2)"], ["Pole 7 (1) Pole 7 (1)", "Pole 7 (2) Pole 7 (2)"]],
])("%s", (_, titles, written) => {
  expect(titlesOf(titles).map(({ short, number }) => `${short} ${number}`)).toEqual(written);
});
