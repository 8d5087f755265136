import { describe, expect, test } from "vitest";
import { fitting } from "./fitting";

const SHORT = ["Open", "Close", "Tag", "Block", "Test", "Ground"];
const LONG = SHORT.map((it) => `${it} with every word that there is`);

describe("Buttons side by side", () => {
  test.each<[string, readonly string[], number, number]>([
    ["a phone shows three and More", SHORT, 390, 3],
    ["a phone shows four where there are four", SHORT.slice(0, 4), 390, 4],
    ["a wide row shows all short ones", SHORT, 900, 6],
    ["a wide row shows fewer long ones", LONG, 900, 2],
    ["one is always shown", LONG, 600, 1],
    ["never more than eight in all", [...SHORT, ...SHORT], 3000, 7],
    ["nothing to show", [], 900, 0],
  ])("%s", (_, labels, width, wanted) => {
    expect(fitting(labels, "More", width)).toBe(wanted);
  });
});
