/** What a person can tell from a picture whose words are covered, and whose colours nobody sees. */
import { english } from "../../../tests/support/words";
import { wcagContrast } from "culori";
import { describe, expect, test } from "vitest";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import { atWork } from "../../../tests/support/atWork";
import {
  type CircuitElement,
  DEVICES,
  deviceOf,
  type DeviceKind,
  isGroundSet,
  openingOf,
  openKeyOf,
  positionOf,
  symbolOf,
} from "../devices";
import { complete } from "../document";
import { assess, STATES } from "../hazard";
import {
  alongOf,
  badgeOf,
  frameOf,
  type Look,
  outlinesOf,
  type PaletteName,
  PALETTES,
  type PlacedNote,
  placeNotes,
  ringStrokesOf,
  sceneOf,
  strokesOf,
  toSvg,
  worstOf,
} from ".";

const LOOKS: readonly Look[] = STATES;
const COLOURS = Object.keys(PALETTES) as PaletteName[];

const demos = demoDrawings().flatMap(([name, document]) => [
  [`${name} as found`, document] as const,
  [`${name} at work`, atWork(document)] as const,
]);

/** What opens, each in service and in every way in which it may stand otherwise. */
const openers = (Object.keys(DEVICES) as DeviceKind[]).flatMap((kind) => {
  const closed = complete({ kind, from: "p1", to: "p2", at: "p1", phases: "A" });
  if (openingOf(closed) === undefined || openKeyOf(kind) !== "open") return [];
  const ways = ["open", ...["blown", "removed"].filter((key) => key in deviceOf(kind).fields)];
  return [{ kind, ways: [{}, ...ways.map((key) => ({ [key]: "A" }))].map((it) => ({ ...closed, ...it })) }];
});

describe("With all words covered and no colour seen", () => {
  test("each state of a line is stroked otherwise than any other", () => {
    const patterns = LOOKS.map((look) =>
      JSON.stringify([strokesOf(look).map(({ width, dash }) => [width, dash]), alongOf(look)?.mark]),
    );
    expect(new Set(patterns).size).toBe(LOOKS.length);
  });

  test.each(openers)("a $kind has another outline in each way in which it stands", ({ ways }) => {
    expect(positionOf(ways[0] as CircuitElement)).toBeUndefined();
    // Letters inside a symbol are covered as well.
    const outlines = ways.map((it) =>
      JSON.stringify(symbolOf(it as CircuitElement).filter(({ mark }) => mark !== "letters")),
    );
    expect(outlines.length).toBeGreaterThan(1);
    expect(new Set(outlines).size).toBe(ways.length);
  });

  test("what hangs on a device has the outline of a tag or of a block, which no state and no position has", () => {
    const outlines = (kind: PlacedNote["note"]["kind"], text: string) =>
      outlinesOf({ note: { kind, text } as PlacedNote["note"], x: 0, y: 0, width: 60, height: 16 });
    expect(outlines("open", "OPEN")).toEqual([]);
    for (const look of LOOKS) expect(outlines("badge", badgeOf(look))).toEqual([]);
    const [tag, hole] = outlines("tag", "T");
    const [cross] = outlines("tag", "X");
    // Five corners, with a hole within them; twelve corners.
    expect([tag!.length, hole!.length, cross!.length].map((it) => it / 2)).toEqual([5, 4, 12]);
    expect(outlines("tag", "T X").map((it) => it.length)).toEqual([tag, hole, cross].map((it) => it!.length));
  });

  test("live, dead and grounded have frames of their own on every ground, as a flag has", () => {
    for (const name of COLOURS) {
      const frames = (["energized", "isolated", "grounded"] as const).map((look) => {
        const { fill, dash, radius } = frameOf("badge", look, PALETTES[name]);
        return JSON.stringify([fill !== PALETTES[name].paper, dash, radius]);
      });
      expect(new Set(frames).size).toBe(3);
    }
  });

  test.each(demos)(
    "on %s nothing runs through what is open, and each ground set has its clamp",
    (_, document) => {
      const scene = sceneOf(document, assess(document), { catalogue: english });
      const wrong = [...scene.elements].filter(([id, { shapes }]) => {
        const element = complete(document.system.elements[id]!);
        if (isGroundSet(element))
          return !shapes.some((it) => it.shape === "stroke" && it.closed && !it.isQuiet);
        if (openKeyOf(element.kind) !== "open" || positionOf(element) === undefined) return false;
        const { centre } = scene.routes.get(id)!;
        return shapes.some((it) => it.shape === "strand" && isThrough(it.points, [centre.x, centre.y]));
      });
      expect(wrong.map(([id]) => id)).toEqual([]);
    },
  );

  test.each(demos)("of %s the ring tells where work is", (_, document) => {
    const scene = sceneOf(document, assess(document), { catalogue: english });
    const works = Object.values(document.job?.["workPoints"] ?? {}) as { at: string }[];
    const rings = placeNotes(scene, 1).flatMap(({ note }) => note.ring ?? []);
    const spots = works.map(({ at }) => scene.points.get(at as never)!.spine);
    expect(rings.map(({ x, y }) => [x, y])).toEqual(spots);
  });
});

describe("Around a work place the ring", () => {
  test("is another where what is worked on is live, isolated or grounded; what nobody knows is as what is live", () => {
    const stroked = (look: Look) =>
      JSON.stringify(ringStrokesOf(look).map(({ width, dash, inset }) => [width, dash, inset]));
    const rings = (["energized", "isolated", "grounded", "ink"] as const).map(stroked);
    expect(new Set(rings).size).toBe(rings.length);
    for (const look of ["backfed", "induced", "faulted", "unknown"] as const)
      expect(stroked(look)).toBe(rings[0]);
  });

  test.each(demos)(
    "of %s is drawn by the worst state of the conductors that are worked on",
    (_, document) => {
      const assessment = assess(document);
      const scene = sceneOf(document, assessment, { catalogue: english });
      const reports: Readonly<Record<string, { readonly state: Look } | undefined>> = assessment.conductors;
      const works = Object.entries(document.job?.["workPoints"] ?? {}) as [
        string,
        { at: string; conductors: string },
      ][];
      expect(works.length).toBeGreaterThan(0);
      for (const [id, { at, conductors }] of works) {
        const states = [...conductors].map((it) => reports[`${at}/${it}`]!.state);
        expect(scene.works.get(id as never)!.notes[0]!.look).toBe(worstOf(states));
      }
    },
  );
});

describe("By day, by night and on paper", () => {
  test.each(demos)("%s is the same picture but for its colours", (_, document) => {
    const scene = sceneOf(document, assess(document), { catalogue: english });
    const pictures = COLOURS.map((name) =>
      toSvg(scene, PALETTES[name], { title: "", description: "" }).replace(/#[0-9A-F]{6}/g, "#"),
    );
    expect(pictures[0]).toContain("#");
    expect(new Set(pictures).size).toBe(1);
  });

  test.each(COLOURS)("each stroke and each frame of %s stands out from what it lies on", (name) => {
    const palette = PALETTES[name];
    // Of what is no text WCAG 2.2, SC 1.4.11, asks 3:1.
    const standsOut = (what: string, ...colours: readonly (string | undefined)[]) => {
      for (const ground of [palette.paper, palette.plate]) {
        const contrasts = colours.map((it) => (it === undefined ? 0 : wcagContrast(it, ground)));
        expect(Math.max(...contrasts), `${what} on ${ground}`).toBeGreaterThanOrEqual(3);
      }
    };
    standsOut("a ring", palette.accent);
    for (const look of LOOKS) {
      standsOut(look, ...strokesOf(look).map(({ colour }) => palette[colour]));
      const { fill, edge } = frameOf("badge", look, palette);
      standsOut(`the frame of ${look}`, fill, edge);
    }
    for (const kind of ["open", "tag", "work"] as const) {
      const { fill, edge } = frameOf(kind, "ink", palette);
      standsOut(kind, fill, edge);
    }
    for (const kind of ["open", "tag", "work", "badge", "letter"] as const)
      for (const look of kind === "badge" ? LOOKS : (["ink"] as const)) {
        const { fill, ink } = frameOf(kind, look, palette);
        expect(wcagContrast(ink, fill!), `${kind} ${look}`).toBeGreaterThanOrEqual(4.5);
      }
  });
});

/** Whether a polyline has a stretch that passes a spot. */
function isThrough(points: readonly number[], [x, y]: readonly [number, number]): boolean {
  for (let k = 0; k + 3 < points.length; k += 2) {
    const [ax, ay, bx, by] = points.slice(k, k + 4) as [number, number, number, number];
    const along = Math.hypot(ax - x, ay - y) + Math.hypot(bx - x, by - y);
    if (along - Math.hypot(bx - ax, by - ay) < 0.01) return true;
  }
  return false;
}
