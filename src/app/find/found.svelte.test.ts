// @vitest-environment happy-dom
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test, vi } from "vitest";
import { done, importMapFile, importModel } from "../../../tests/support/imported";
import { UnansweredWorker } from "../../../tests/support/unansweredWorker";
import {
  type ElementId,
  isUnreadable,
  type Owner,
  type PointId,
  readDocument,
  type StillhotDocument,
  structuresOf,
  type WorkPointId,
} from "../../core";
import { Session } from "../session/session.svelte";
import { learn } from "../words/catalogue";
import { englishOf } from "../words/regional";
import { english as allEnglish } from "../words/sentences";
import { english } from "../words/messages/en";
import { french } from "../words/messages/fr";
import { sketchActsFor } from "../sketch/acts";
import { sketchCommands } from "../sketch/sketchCommands";
import { everyCommand, everyThing } from "./found";
import { matching } from "../words/matching";

test.each([
  ["English", english, ["note", "photo", "seen", "phase", "rename", "house"]],
  ["French", french, ["note", "photo", "vu", "phase", "renommer", "maison"]],
] as const)("the finder knows the words that a crew types, in %s", (_language, words, typed) => {
  learn(words);
  vi.stubGlobal("Worker", UnansweredWorker);
  const session = new Session(sideline());
  const [id] = structuresOf(session.document.system).keys();
  session.select({ of: "structure", id: id! });
  const lines = everyCommand({
    session,
    sketch: { commands: {}, acts: sketchActsFor(session, {} as never) },
    menu: [],
    demos: [],
  } as never);
  const dead = typed.filter((it) => matching(lines, it).every(({ why }) => why !== undefined));
  learn(english);
  expect(dead).toEqual([]);
});

test.each([
  ["tailboard", "job briefing", "place-rehearse"],
  ["permit", "clearance", "place-rehearse"],
  ["barrel", "fuse door", "details"],
])("by %s and by %s the finder leads to %s, whichever of them the app says", (usual, regional, id) => {
  vi.stubGlobal("Worker", UnansweredWorker);
  const session = new Session(sideline());
  for (const words of [englishOf("us"), allEnglish]) {
    learn(words);
    const lines = everyCommand({ session, sketch: undefined, menu: [], demos: [] } as never);
    for (const typed of [usual, regional])
      expect([typed, ...matching(lines, typed).map((it) => it.id)]).toContain(id);
  }
});

describe("Button, key and finder give one answer", () => {
  const { system, job } = sideline();
  const [structure] = structuresOf(system).keys();
  const workPoint = Object.keys(job!["workPoints"] as object)[0]!;
  test.each<[string, readonly Owner[], isReadOnly: boolean]>([
    ["nothing", [], false],
    ["a structure", [{ of: "structure", id: structure! }], false],
    ["a point", [{ of: "point", id: Object.keys(system.points)[0] as PointId }], false],
    ["an element", [{ of: "element", id: Object.keys(system.elements)[0] as ElementId }], false],
    ["a work point", [{ of: "workPoint", id: workPoint as WorkPointId }], false],
    [
      "two things",
      Object.keys(system.points)
        .slice(0, 2)
        .map((id) => ({ of: "point", id: id as PointId })),
      false,
    ],
    ["a structure, while another window edits", [{ of: "structure", id: structure! }], true],
  ])("with %s selected", (_, selection, isReadOnly) => {
    learn(english);
    vi.stubGlobal("Worker", UnansweredWorker);
    const session = new Session(sideline());
    session.select(...selection);
    session.isReadOnly = isReadOnly;
    const opened: string[] = [];
    const screen = new Proxy({}, { get: (_target, id: string) => () => void opened.push(id) }) as never;
    const commands = sketchCommands(session, screen);
    const acts = sketchActsFor(session, commands);
    const lines = everyCommand({ session, sketch: { commands, acts }, menu: [], demos: [] } as never);
    const told = lines.filter(({ id }) => id in commands);
    expect(told.length).toBeGreaterThan(30);
    for (const { id, why } of told) {
      const act = acts.find((it) => it.id === id);
      if (act !== undefined && !isReadOnly) expect([id, act.disabled]).toEqual([id, why !== undefined]);
      if (why === undefined) continue;
      const was = [session.document, session.mode, opened.length];
      commands[id as keyof typeof commands]();
      expect([id, session.document, session.mode, opened.length]).toEqual([id, ...was]);
    }
  });
});

test("the things of a large drawing are listed without asking what each is called elsewhere, and read once", () => {
  learn(english);
  vi.stubGlobal("Worker", UnansweredWorker);
  const session = new Session(line(600));
  const offers = { session, sketch: {} } as never;
  const things = everyThing(offers);
  expect(matching(things, "cutout 599")[0]!.id).toBe("thing-element-c599");
  // What a region calls each of thousands of names is asked of no line: that takes patterns by the hundred for each of them.
  const Pattern = RegExp;
  let patterns = 0;
  vi.stubGlobal(
    "RegExp",
    class extends Pattern {
      constructor(...given: ConstructorParameters<typeof Pattern>) {
        super(...given);
        patterns++;
      }
    },
  );
  everyThing(offers);
  vi.stubGlobal("RegExp", Pattern);
  expect(patterns).toBeLessThan(things.length);
  // Whoever types on does not wait until all names have been read once more.
  const read = vi.spyOn(String.prototype, "normalize");
  expect(matching(things, "cutout 59")[0]!.id).toBe("thing-element-c59");
  expect(read.mock.calls.length).toBeLessThan(things.length);
  read.mockRestore();
});

/** A line with so many cutouts. */
function line(count: number): StillhotDocument {
  const numbers = Array.from({ length: count }, (_, n) => n);
  const points = Object.fromEntries(numbers.map((n) => [`p${n}`, { label: `${n}`, x: 100 * n, y: 0 }]));
  const elements = Object.fromEntries(
    numbers
      .slice(1)
      .map((n) => [
        `c${n}`,
        { kind: "cutout", from: `p${n - 1}`, to: `p${n}`, phases: "A", label: `Cutout ${n}` },
      ]),
  );
  return { ...sideline(), job: {}, system: { points, elements } } as never;
}

test("the finder lists no structure and its first point as two lines of one name", () => {
  learn(english);
  vi.stubGlobal("Worker", UnansweredWorker);
  const session = new Session(sideline());
  const names = everyThing({ session, sketch: {} } as never).map(({ label }) => label);
  expect(names).toContain("Pole 33");
  expect(names.filter((it, nth) => names.indexOf(it) !== nth)).toEqual([]);
});

describe("a number as it stands on the pole is found, and its structure is the first line", () => {
  const demos = readdirSync("shared/demos")
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it): [string, () => StillhotDocument] => [it, () => read(`shared/demos/${it}`)]);
  const imports = ["ieee13-assets", "ieee123", "ieee8500-lateral", "maple10-node-breaker"].map(
    (it): [string, () => StillhotDocument] => [it, () => done(importModel(`cim/${it}.xml`)).document],
  );
  const maps: [string, () => StillhotDocument][] = [
    ["a map", () => done(importMapFile("geojson/example.geojson")).document],
  ];
  test.each([...demos, ...imports, ...maps])("%s", (_, drawn) => {
    learn(english);
    vi.stubGlobal("Worker", UnansweredWorker);
    const session = new Session(drawn());
    const { system } = session.document;
    const offers = { session, sketch: { commands: {}, acts: [] }, menu: [], demos: [] } as never;
    const lines = [...everyCommand(offers), ...everyThing(offers)];
    const missed: string[] = [];
    const all = [...structuresOf(system).values()];
    for (const { id, label, kind } of all) {
      const number = POLE.exec(label)?.[1];
      if (kind !== "pole" || number === undefined) continue;
      const isAlone = all.every((it) => it.id === id || POLE.exec(it.label)?.[1] !== number);
      const typed = [label, label.toLowerCase(), label.replaceAll(" ", ""), `  ${label.toUpperCase()} `];
      if (isAlone) typed.push(number, `pole ${number}`, `Poteau ${number}`, `poteau${number}`);
      for (const it of typed)
        if (matching(lines, it)[0]?.id !== `thing-structure-${id}`)
          missed.push(`${it}: ${matching(lines, it)[0]?.label ?? "nothing"}, not ${label}`);
    }
    expect(missed).toEqual([]);
  });
});

/** A label that a pole bears: its number, with or without what it is a number of. */
const POLE = /^(?:(?:pole|poteau)\s+)?(\S*\d\S*)$/iu;

function read(path: string): StillhotDocument {
  const found = readDocument(readFileSync(path, "utf8"));
  if (isUnreadable(found)) throw new Error(`${path} does not read`);
  return found.document;
}

const sideline = () => read("shared/demos/sideline-three-transformers.stillhot.json");
