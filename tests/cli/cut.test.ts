import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { drawing, files, line, tap } from "./line";

/** A feeder of two switches before the tap, a second tap with a customer, and names as people say them. */
function feeder() {
  const { system, ...rest } = tap();
  const at = (label: string) => ({ label });
  return {
    ...rest,
    system: {
      points: {
        ...system.points,
        p0: at("Substation"),
        pa: at("Pole 7"),
        p1: at("Pole 8"),
        p2: at("Pole 9"),
        h1: at("Pole 9 North"),
      },
      elements: {
        s1: { kind: "source", phases: "ABC", at: "p0", kvLL: 12.47, label: "Quarry Lane station" },
        sp1: { kind: "span", phases: "ABC", from: "p0", to: "pa", lengthM: 900 },
        r1: { kind: "recloser", phases: "ABC", from: "pa", to: "p1", label: "Main recloser" },
        c1: system.elements.c1,
        sp2: { kind: "span", phases: "A", from: "p2", to: "h1", lengthM: 40 },
        ld9: { kind: "load", phases: "ABC", at: "pa", kw: 300, kvar: 90, customers: 4 },
        t1: system.elements.t1,
        ld1: system.elements.ld1,
      },
    },
  };
}

describe("cut", () => {
  test("prints the piece, and on standard error what was cut, why it cannot matter, and when it can", async () => {
    const at = files({ "feeder.stillhot.json": feeder() });
    const { code, out, err } = await line([
      "cut",
      at("feeder.stillhot.json"),
      "--around",
      "p2",
      "--openings",
      "2",
    ]);
    expect(code).toBe(0);
    const piece = JSON.parse(out);
    expect(Object.keys(piece.system.points)).not.toContain("p0");
    expect(piece.system.elements.s1).toMatchObject({ kind: "source", at: "pa", phases: "ABC" });
    expect(piece.system.elements.s1.equal.volts).toHaveLength(4);
    expect(err).toMatch(/Cut off beyond .*Pole 7/s);
    expect(err).toMatch(/cannot matter/);
    expect(err).toMatch(/can matter once/);
    expect(err).not.toMatch(/\bsafe\b/);
  });

  test.each([
    ["as on a map, whose symbols would lie over each other, is laid out by the program", 10, false],
    ["so that it can be read stays where it is", 160, true],
  ])("a piece that stands %s", async (_, apart, stays) => {
    const { system, ...rest } = feeder();
    const points = Object.fromEntries(
      Object.entries(system.points).map(([id, it], nth) => [id, { ...it, x: nth * apart, y: 0 }]),
    );
    const at = files({ "map.stillhot.json": { ...rest, system: { ...system, points } } });
    const { out } = await line(["cut", at("map.stillhot.json"), "--around", "p2", "--openings", "2"]);
    const piece = JSON.parse(out) as { system: { points: Record<string, { x?: number }> } };
    const placed = Object.values(piece.system.points).map(({ x }) => x !== undefined);
    expect(new Set(placed)).toEqual(new Set([stays]));
  });

  test("the piece is checked as the whole is", async () => {
    const at = files({ "feeder.stillhot.json": feeder() });
    const cut = await line([
      "cut",
      at("feeder.stillhot.json"),
      "--around",
      "Pole 9",
      "-o",
      at("piece.stillhot.json"),
    ]);
    expect(cut.code).toBe(0);
    expect(JSON.parse(readFileSync(at("piece.stillhot.json"), "utf8")).job.workPoints).toEqual({
      w1: { at: "p2", conductors: "A" },
    });
    const [whole, piece, around] = await Promise.all([
      line(["check", at("feeder.stillhot.json"), "--json"]),
      line(["check", at("piece.stillhot.json"), "--json"]),
      line(["check", at("feeder.stillhot.json"), "--around", "Pole 9", "--json"]),
    ]);
    const verdict = ({ out }: { out: string }) => JSON.parse(out).workPoints.w1.verdict;
    expect(verdict(piece)).toBe(verdict(whole));
    expect(verdict(around)).toBe(verdict(whole));
    expect(JSON.parse(around.out).conductors["p0/A"]).toBeUndefined();
    expect(JSON.parse(around.out).conductors["p2/A"]).toEqual(JSON.parse(whole.out).conductors["p2/A"]);
  });

  test.each([
    ["nothing of the name", ["--around", "Pole 77"], /nothing here is called Pole 77/],
    ["several of the name", ["--around", "pole"], /things are called pole: .*Pole 7.*\(/s],
    ["no place", [], /--around NAME/],
    ["no number of openings", ["--around", "p2", "--openings", "few"], /--openings few/],
  ] as const)("%s: exit code 2, the reason, nothing on standard output", async (_name, words, reason) => {
    const at = files({ "feeder.stillhot.json": feeder() });
    const { code, out, err } = await line(["cut", at("feeder.stillhot.json"), ...words]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(reason);
  });

  test("where nothing can be cut that is said, and the drawing stays whole", async () => {
    const at = files({ "tap.stillhot.json": drawing() });
    const { code, out, err } = await line(["cut", at("tap.stillhot.json"), "--around", "p1"]);
    expect(code).toBe(0);
    expect(Object.keys(JSON.parse(out).system.points)).toHaveLength(3);
    expect(err).toMatch(/Nothing was cut/);
  });
});
