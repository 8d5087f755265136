import { describe, expect, test } from "vitest";
import { matching } from "./matching";

const lines = [
  { label: "Pin in place, or unpin", around: "Draw" },
  { label: "Add a point", around: "Draw" },
  { label: "Open a file", around: "Drawings and files" },
  { label: "Open the demo Quarry Lane", around: "Demos" },
  { label: "Épingler, ou détacher", around: "Dessiner" },
];

const found = (typed: string) => matching(lines, typed).map(({ label }) => label);

describe("what is typed finds lines", () => {
  test.each<[string, readonly string[]]>([
    ["", lines.map(({ label }) => label)],
    ["open", ["Open a file", "Open the demo Quarry Lane"]],
    ["demo open", ["Open the demo Quarry Lane"]],
    ["POINT", ["Add a point"]],
    ["pin", ["Pin in place, or unpin", "Épingler, ou détacher"]],
    ["epingler", ["Épingler, ou détacher"]],
    ["draw", ["Pin in place, or unpin", "Add a point", "Open a file"]],
    ["quarry  lane!", ["Open the demo Quarry Lane"]],
    ["quarrylane", ["Open the demo Quarry Lane"]],
    ["breaker", []],
  ])("%s", (typed, labels) => {
    expect(found(typed)).toEqual(labels);
  });

  test.each([
    ["30", "Pole 30"],
    ["pole 30", "Pole 30"],
    ["POLE-30", "Pole 30"],
    ["p30", "P 30, main line"],
    ["130", "Pole 130"],
    ["300", "300 Elm Street"],
    ["cutout 3", "Pole 3, cutout"],
  ])("a number is a number: %s is %s first", (typed, first) => {
    const names = [
      "300 Elm Street",
      "Pole 300",
      "Pole 130",
      "P 300",
      "Pole 30",
      "P 30, main line",
      "Pole 13, cutout",
      "Pole 3, cutout",
    ];
    const named = names.map((label) => ({ label, around: "Drawn" }));
    expect(matching(named, typed)[0]?.label).toBe(first);
  });

  test("and the line that begins with it comes first", () => {
    expect(found("p")[0]).toBe("Pin in place, or unpin");
    expect(found("a")[0]).toBe("Add a point");
  });
});

test("words that stand together are meant sooner than the same ones apart", () => {
  const days = ["Vane, Oct 31, 2026, 9:20 PM", "Vane, Oct 20, 2026, 9:20 PM"];
  const listed = days.map((label) => ({ label, around: "" }));
  expect(matching(listed, "vane oct 20").map(({ label }) => label)).toEqual([days[1], days[0]]);
  expect(matching(listed, "oct 31").map(({ label }) => label)).toEqual([days[0]]);
});
