import { readdirSync, readFileSync } from "node:fs";
import { wcagContrast } from "culori";
import { describe, expect, test } from "vitest";
import { edits, isUnreadable, readDocument, type StillhotDocument } from "../document";
import { assess } from "../hazard";
import { type ElementId, isRefusal, type JsonObject } from "../terms";
import {
  badgeOf,
  escapeXml,
  freest,
  hitAt,
  type Look,
  overlaps,
  PALETTES,
  placeNotes,
  routesOf,
  sceneOf,
  strokesOf,
  toSvg,
  worstOf,
} from ".";
import { english, spell } from "../../../tests/support/words";

const folder = new URL("../../../shared/demos/", import.meta.url);
const demos = readdirSync(folder)
  .filter((it) => it.endsWith(".stillhot.json"))
  .map((name): [string, StillhotDocument] => {
    const read = readDocument(readFileSync(new URL(name, folder), "utf8"));
    if (isUnreadable(read)) throw new Error(`${name} does not read`);
    return [name.replace(".stillhot.json", ""), read.document];
  });

test(
  "thousands of things at one point are laid out, each on one of the directions that it may have",
  {
    // Linear this takes a tenth of a second, quadratic it took a minute.
    timeout: 30_000,
  },
  () => {
    const many = Object.fromEntries(
      Array.from({ length: 20_000 }, (_, nth) => [
        `x${nth}`,
        nth % 2 === 0
          ? { kind: "load", at: "p1", phases: "A", kw: 1 }
          : { kind: "span", from: "p1", to: "p2", phases: "A" },
      ]),
    );
    const { system } = drawing({ p1: "0 0", p2: "0 0" }, many);
    const routes = routesOf(system);
    const angles = [...routes.values()].map(({ along }) => (Math.atan2(along.y, along.x) * 180) / Math.PI);
    expect(angles).toHaveLength(20_000);
    expect(
      new Set(angles.map((it) => Math.abs(it % 22.5)).filter((it) => it > 1e-6 && it < 22.5 - 1e-6)),
    ).toEqual(new Set());
  },
);

test("a flag is never cut, on a drawing that a person placed too", () => {
  const { system, ...rest } = drawing(
    { p1: "0 0", p2: "200 0" },
    { s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 } },
  );
  const job = {
    task: "Replace the cracked insulator on pole 32",
    workPoints: { w1: { at: "p2", conductors: "C" } },
  };
  const scene = sceneOf({ ...rest, system, job }, undefined, {
    catalogue: english,
  });
  const [flag] = placeNotes(scene, 1).filter(({ note }) => note.kind === "work");
  expect(flag!.note.lines).toEqual(["Work here: point p2, C", "Replace the cracked", "insulator on pole 32"]);
});

/** Spots along a polyline, close to each other. */
function alongOf(spine: readonly number[]): { x: number; y: number }[] {
  return Array.from({ length: spine.length / 2 - 1 }, (_, nth) => nth * 2).flatMap((k) =>
    Array.from({ length: 21 }, (_, step) => ({
      x: spine[k]! + ((spine[k + 2]! - spine[k]!) * step) / 20,
      y: spine[k + 1]! + ((spine[k + 3]! - spine[k + 1]!) * step) / 20,
    })),
  );
}

/** A drawing of points at `x y` and elements in the file's own keys. */
function drawing(points: Record<string, string>, elements: Record<string, object>): StillhotDocument {
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "t",
      system: {
        points: Object.fromEntries(
          Object.entries(points).map(([id, place]) => {
            const [x, y] = place.split(" ").map(Number);
            return [id, { x, y, label: `point ${id}` }];
          }),
        ),
        elements,
      },
    }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

const LOOKS: readonly Look[] = [
  "energized",
  "backfed",
  "induced",
  "faulted",
  "isolated",
  "grounded",
  "neutral",
  "unknown",
];

describe.each(demos)("the demo %s", (_name, document) => {
  const assessment = assess(document);
  const scene = sceneOf(document, assessment, { catalogue: english });

  test("draws every point and every element once", () => {
    expect([...scene.points.keys()].sort()).toEqual(Object.keys(document.system.points).sort());
    expect([...scene.elements.keys()].sort()).toEqual(Object.keys(document.system.elements).sort());
  });

  test("draws the same again, and everything unknown without an assessment", () => {
    expect(sceneOf(document, assessment, { catalogue: english })).toEqual(scene);
    const strands = sceneOf(document, undefined, { catalogue: english }).pieces.flatMap((it) =>
      it.shapes.filter((shape) => shape.shape === "strand"),
    );
    const looks = strands.map((it) => it.look);
    const ofNearby = Object.values(document.system.elements).filter((it) => it.kind === "nearby").length;
    expect(looks.filter((it) => it !== "unknown").length).toBeLessThanOrEqual(ofNearby);
  });

  test.each([0.4, 0.7, 1, 1.5])("no note covers another at a zoom of %s", (scale) => {
    const boxes = placeNotes(scene, scale).map(({ x, y, width, height, note }) => ({
      note,
      left: x - width / 2 / scale + 1e-6,
      right: x + width / 2 / scale - 1e-6,
      top: y - height / 2 / scale + 1e-6,
      bottom: y + height / 2 / scale - 1e-6,
    }));
    const covered = boxes.flatMap((a, k) =>
      boxes
        .slice(k + 1)
        .filter((b) => overlaps(a, b) && a.note.kind !== "work" && b.note.kind !== "work")
        .map((b) => `${a.note.text} / ${b.note.text}`),
    );
    expect(covered).toEqual([]);
  });

  test("a touch on a thing finds that thing", () => {
    for (const [id, { spine }] of scene.points) expect(hitAt(scene, spine[0]!, spine[1]!, 4)?.id).toBe(id);
    for (const [id, { spine }] of scene.elements) {
      const found = alongOf(spine).map(({ x, y }) => hitAt(scene, x, y, 4)?.id);
      expect(found, id).toContain(id);
    }
  });
});

test("the SVG is one picture with a name, and labels in it are text", () => {
  const document = drawing(
    { a: "0 0", b: "200 0" },
    { sp: { kind: "span", from: "a", to: "b", phases: "A", label: '<script>alert("x")</script> & \u0007' } },
  );
  const svg = toSvg(sceneOf(document, undefined, { catalogue: english }), PALETTES.sun, {
    title: "A <b>",
    description: "x & y",
  });
  expect(svg).toContain('role="img"');
  expect(svg).toContain('<title id="title">A &lt;b&gt;</title>');
  expect(svg).toContain("&lt;script&gt;");
  expect(svg).not.toContain("<script");
  expect(svg).not.toContain("\u0007");
  expect(escapeXml(`<&>"'`)).toBe("&lt;&amp;&gt;&quot;&#39;");
});

test("a pin is seen on the screen and in no picture", () => {
  const span = { sp: { kind: "span", from: "a", to: "b", phases: "A" } };
  const loose = drawing({ a: "0 0", b: "200 0" }, span);
  const pinned = edits.pin(["a"])(loose);
  if (isRefusal(pinned)) throw new Error(spell(pinned.refused));
  const [before, after] = [loose, pinned.after].map((it) => sceneOf(it, undefined, { catalogue: english }));
  const count = (scene: typeof before) => scene!.pieces.flatMap((it) => it.shapes).length;
  expect(count(after)).toBeGreaterThan(count(before));
  const words = { title: "", description: "" };
  expect(toSvg(after!, PALETTES.paper, words)).toBe(toSvg(before!, PALETTES.paper, words));
});

test.each(demos)("the ring around the work place of %s hides no symbol", (_, document) => {
  const scene = sceneOf(document, assess(document), { catalogue: english });
  const svg = toSvg(scene, PALETTES.sun, { title: "", description: "" });
  const [rings, symbols] = [/<circle[^>]*fill="none"[^>]*\/>/g, /<polygon|<circle[^>]*stroke-width="2\.5"/];
  const last = [...svg.matchAll(rings)].at(-1)!.index;
  expect(last).toBeLessThan(svg.search(symbols));
});

test("an empty drawing is a picture too", () => {
  expect(
    toSvg(sceneOf(drawing({}, {}), undefined, { catalogue: english }), PALETTES.paper, {
      title: "",
      description: "",
    }),
  ).toContain("<svg");
});

test("elements between points at one place stand beside them, and beside each other", () => {
  const document = drawing(
    { a: "0 0", b: "0 0" },
    {
      k1: { kind: "clamp", from: "a", to: "b", phases: "A" },
      k2: { kind: "clamp", from: "a", to: "b", phases: "A" },
      k3: { kind: "cutout", from: "b", to: "a", phases: "A" },
    },
  );
  const centres = [...routesOf(document.system).values()].map((it) => it.centre);
  for (const [k, a] of centres.entries()) {
    expect(Math.hypot(a.x, a.y)).toBeGreaterThan(30);
    for (const b of centres.slice(k + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(40);
  }
});

test("parallel elements between the same points run side by side, whichever way they are drawn", () => {
  const document = drawing(
    { a: "0 0", b: "200 0" },
    {
      s1: { kind: "span", from: "a", to: "b", phases: "A" },
      s2: { kind: "span", from: "b", to: "a", phases: "A" },
    },
  );
  const [one, other] = [...routesOf(document.system).values()];
  expect(Math.abs(one!.centre.y - other!.centre.y)).toBeGreaterThan(40);
});

test.each([
  [[], 90, 90],
  [[90], 90, -45],
  [[0, 180], 90, 90],
])("beside %j the freest direction near %i is %i", (taken, preferred, expected) => {
  const found = freest(taken, preferred);
  if (taken.includes(preferred)) expect(Math.abs(found - preferred)).toBeGreaterThanOrEqual(45);
  else expect(found).toBe(expected);
});

describe("No fact by colour alone", () => {
  test("each look has a pattern of its own", () => {
    const patterns = LOOKS.map((look) =>
      JSON.stringify(strokesOf(look).map(({ width, dash }) => [width, dash])),
    );
    expect(new Set(patterns).size).toBe(LOOKS.length);
  });

  test("each look but the neutral has letters of its own, none that names a conductor", () => {
    const letters = LOOKS.filter((it) => it !== "neutral").map(badgeOf);
    expect(new Set(letters).size).toBe(letters.length);
    for (const it of letters) expect(it).not.toMatch(/^[ABCN12]?$/);
  });

  test.each(["sun", "night", "paper"] as const)("lines and letters of %s stand out", (name) => {
    const { paper, ink, hot, isolated, grounded, accent, band, bandInk } = PALETTES[name];
    expect(wcagContrast(ink, paper)).toBeGreaterThanOrEqual(7);
    for (const colour of [hot, isolated, grounded, accent])
      expect(wcagContrast(colour, paper)).toBeGreaterThanOrEqual(4.5);
    expect(wcagContrast(bandInk, band)).toBeGreaterThanOrEqual(7);
  });

  test("where one word stands for several conductors, the worst one speaks", () => {
    expect(worstOf(["isolated", "backfed", "grounded"])).toBe("backfed");
    expect(worstOf(["grounded", "unknown"])).toBe("unknown");
    expect(worstOf([])).toBe("ink");
  });
});

describe("a customer's who may have a machine that nobody drew", () => {
  const tap = (cutout: object, customer: object, settings: JsonObject = {}): StillhotDocument => ({
    ...drawing(
      { p1: "0 0", p2: "200 0", p3: "400 0" },
      {
        s1: { kind: "source", at: "p1", phases: "A", kvLL: 12.47 },
        c1: { kind: "cutout", from: "p1", to: "p2", phases: "A", ...cutout },
        t1: {
          kind: "transformer",
          from: "p2",
          to: "p3",
          phases: "A",
          connection: "single",
          kva: 25,
          primaryKv: 7.2,
          secondaryV: 240,
        },
        ld1: { kind: "load", at: "p3", phases: "12", kw: 3, connection: "delta", ...customer },
      },
    ),
    settings,
  });
  const inscribedOn = (document: StillhotDocument) =>
    sceneOf(document, assess(document), { catalogue: english })
      .elements.get("ld1" as ElementId)!
      .shapes.flatMap((it) => (it.shape === "inscription" ? [it.text] : []));

  test.each([
    ["dead as drawn", tap({ open: "A" }, { customers: 1 }), ["G?"]],
    ["fed", tap({}, { customers: 1 }), []],
    ["nobody's load", tap({ open: "A" }, { customers: 0 }), []],
    ["machines not assumed", tap({ open: "A" }, { customers: 1 }, { assumeGenerators: false }), []],
  ])("%s", (_, document, texts) => {
    expect(inscribedOn(document)).toEqual(texts);
  });

  test("says so from the switching on that takes its feed away, and no longer than that", () => {
    const closed = tap({}, { customers: 1 });
    const opened = edits.open("c1")(closed);
    if (isRefusal(opened)) throw new Error(spell(opened.refused));
    expect([closed, opened.after, closed].map(inscribedOn)).toEqual([[], ["G?"], []]);
  });
});

test("the volts of a source stand beside it, and that it is off", () => {
  const volts = (source: object) =>
    placeNotes(
      sceneOf(
        drawing(
          { p1: "", p2: "" },
          {
            s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47, ...source },
            sp1: { kind: "span", from: "p1", to: "p2", phases: "ABC" },
          },
        ),
        undefined,
        { catalogue: english },
      ),
      1,
    ).flatMap(({ note }) => (note.owner.id === "s1" && note.kind === "elementLabel" ? [note.text] : []));
  expect(volts({})).toEqual(["12.47 kV"]);
  expect(volts({ on: false })).toEqual(["12.47 kV, off"]);
});
