import { readdirSync, readFileSync } from "node:fs";
import { builtinModules } from "node:module";
import { dirname, join, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import packageJson from "../package.json";
import { english as appEnglish } from "../src/app/words/messages/en";
import { cli as cliEnglish } from "../src/cli/messages/en";
import { DEVICES } from "../src/core/devices";
import { english } from "../src/core";

/** The core's folders in import order: each may import itself and those above it. */
const order = [
  "terms",
  "reference",
  "devices",
  "steps",
  "document",
  "notation",
  "network",
  "phasor",
  "import",
  "hazard",
  "piece",
  "procedure",
  "words",
  "doubts",
  "drawing",
  "sheet",
  "scenario",
  "practice",
];

/** The storeys of the procedure in import order, in the same way. Its `index.ts` gathers them. */
const storeys = ["job", "effects", "rules", "rehearsal", "planner"];

/** The rooms of the app in import order, in the same way. What stands beside them (`App.svelte`) imports any. */
const rooms = [
  "words",
  "settings",
  "worker",
  "session",
  "frame",
  "tools",
  "canvas",
  "share",
  "keep",
  "grow",
  "company",
  "views",
  "commands",
  "sketch",
  "find",
  "plan",
  "rehearse",
  "scenario",
  "teach",
  "sheet",
  "drill",
  "learn",
  "debrief",
  "help",
];

/** Packages that the core may use: each is pure, without the DOM, files, a clock or chance. */
const pure = ["immer", "fflate", "qr", "graphology", "graphology-types", "saxes"];

const root = resolve(dirname(fileURLToPath(import.meta.url)), "..");
const declared = new Set(Object.keys(packageJson.devDependencies));
/** Asked for at run time and done without when it is not there. */
const optional = ["@sparticuz/chromium"];
const builtin = new Set(builtinModules);

interface Source {
  /** path from the root of the project, with `/` */
  readonly path: string;
  readonly text: string;
}

function sourcesIn(folder: string): Source[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((it) => it.isFile() && /\.(ts|js|mjs|svelte)$/.test(it.name))
    .map((it) => join(it.parentPath, it.name))
    .map((file) => ({
      path: relative(root, file).split(sep).join("/"),
      text: readFileSync(file, "utf8"),
    }));
}

/** What a file imports, types and workers included. */
function importsOf({ path, text }: Source): string[] {
  const script = path.endsWith(".svelte")
    ? [...text.matchAll(/<script\b[^>]*>(.*?)<\/script>/gs)].map((it) => it[1]).join("\n")
    : text;
  const imported = ts.preProcessFile(script, true, true).importedFiles.map((it) => it.fileName);
  const urls = [...script.matchAll(/new URL\(\s*["'`]([^"'`]+)["'`],\s*import\.meta\.url/g)];
  return [...imported, ...urls.map((it) => it[1]!)];
}

const isRelative = (specifier: string) => specifier.startsWith(".");
const packageOf = (specifier: string) =>
  specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");

/** Where an import leads: a path from the root, which starts with `../` when it leaves the project. */
const targetOf = (path: string, specifier: string) =>
  relative(root, resolve(root, dirname(path), specifier.replace(/\?.*$/, "")))
    .split(sep)
    .join("/");

const isTest = (path: string) => /\.test\.ts$/.test(path);
const isIn = (folder: string, path: string) => path === folder || path.startsWith(`${folder}/`);
const isDoor = (path: string) => /^src\/core(\/index(\.ts)?)?$/.test(path);
const coreFolder = (path: string) => /^src\/core\/([^/]+)\//.exec(`${path}/`)?.[1];
const room = (path: string) => /^src\/app\/([^/]+)\//.exec(path)?.[1];

/** Why a file may not import this, or nothing when it may. */
function objection(path: string, specifier: string): string | undefined {
  if (specifier.startsWith("/")) return "an absolute path holds on one machine only";
  if (!isRelative(specifier)) return packageObjection(path, specifier);
  const target = targetOf(path, specifier);
  if (target.startsWith("..")) return "it lies outside the project";
  if (isIn("src/core", path)) return coreObjection(path, target);
  const inCore = isIn("src/core", target);
  if (isIn("src", path) && inCore && !isDoor(target)) return "the only door to the core is src/core/index.ts";
  if (isIn("src/cli", path) && isIn("src/app", target)) return "the command line never imports the app";
  if (isIn("src/app", path) && isIn("src/cli", target)) return "the app never imports the command line";
  if (isIn("src/app", path) && isIn("src/app", target)) return roomObjection(path, target);
  return undefined;
}

function packageObjection(path: string, specifier: string): string | undefined {
  const name = packageOf(specifier);
  const isBuiltin = specifier.startsWith("node:") || builtin.has(name);
  if (isIn("src/core", path) && !isTest(path) && !pure.includes(name)) {
    return `the core is pure: of packages it may import only ${pure.join(", ")}`;
  }
  if (isIn("src/app", path) && isBuiltin && !isTest(path)) return "a browser has no Node modules";
  if (isIn("src/cli", path) && /^(svelte|konva)$/.test(name)) return "the command line has no screen";
  if (isBuiltin || specifier.startsWith("virtual:") || optional.includes(name)) return undefined;
  return declared.has(name) ? undefined : `package.json does not name ${name}`;
}

function coreObjection(path: string, target: string): string | undefined {
  if (isIn("shared", target)) return undefined; // the published tables, as data
  if (!isIn("src/core", target)) {
    return isTest(path) && isIn("tests", target) ? undefined : "the core imports only the core and shared/";
  }
  const from = coreFolder(path);
  if (from === undefined || from.startsWith("index.")) return undefined; // index.ts itself gathers everything
  if (isDoor(target)) return "index.ts is the door for others; inside the core, name the folder";
  const to = coreFolder(target)!;
  const [storey, other] = [storeyOf(path), storeyOf(target)];
  return (
    orderObjection(order, from, to) ??
    (storey === undefined || other === undefined ? undefined : orderObjection(storeys, storey, other))
  );
}

const storeyOf = (path: string) => /^src\/core\/procedure\/([^/]+)\//.exec(path)?.[1];

function roomObjection(path: string, target: string): string | undefined {
  const from = room(path);
  if (from === undefined) return undefined; // the app itself gathers the rooms
  const to = room(target);
  return to === undefined ? "a room knows nothing of the app around it" : orderObjection(rooms, from, to);
}

function orderObjection(inOrder: readonly string[], from: string, to: string): string | undefined {
  const before = inOrder.slice(0, inOrder.indexOf(from));
  if (!inOrder.includes(from)) return `${from} has no place in the order (tests/architecture.test.ts)`;
  return from === to || before.includes(to)
    ? undefined
    : `${from} may import itself and ${before.join(", ") || "nothing else"}`;
}

const objections = (sources: readonly Source[]) =>
  sources.flatMap((source) =>
    importsOf(source).flatMap((specifier) => {
      const why = objection(source.path, specifier);
      return why ? [`${source.path} imports "${specifier}": ${why}`] : [];
    }),
  );

/** Two types of one name, each with the reason why it must be. */
const ALIKE: Readonly<Record<string, string>> = {
  MessageKey: "core, app and command line have a catalogue each, whose keys it is",
  Language: "app and command line are each translated into languages of their own",
};

test("no two exported types, interfaces or classes carry one name", () => {
  const named = new Map<string, string[]>();
  for (const { path, text } of sourcesIn("src").filter((it) => !isTest(it.path)))
    for (const [, name] of text.matchAll(
      /^\s*export (?:abstract )?(?:type|interface|class|enum) (\w+)(?=[\s<])/gm,
    ))
      named.set(name!, [...(named.get(name!) ?? []), path]);
  expect(named.size).toBeGreaterThan(400);
  const twice = [...named].filter(([, paths]) => paths.length > 1);
  expect(twice.filter(([name]) => !Object.hasOwn(ALIKE, name))).toEqual([]);
  expect(twice.map(([name]) => name).sort()).toEqual(Object.keys(ALIKE).sort());
});

describe("A folder imports only what it may", () => {
  test.each(["src/core", "src/app", "src/cli", "tests", "scripts", "bin"])("%s", (folder) => {
    expect(objections(sourcesIn(folder))).toEqual([]);
  });

  test.each([
    ["src/core", order],
    ["src/core/procedure", storeys],
    ["src/app", rooms],
  ])("every folder of %s has its place in the order, and every place its folder", (folder, inOrder) => {
    const inside = sourcesIn(folder).map(({ path }) => path.slice(folder.length + 1).split("/"));
    const folders = new Set(inside.filter((it) => it.length > 1).map(([name]) => name!));
    expect([...folders].sort()).toEqual(inOrder.toSorted());
  });
});

/** Circles that are meant: what one gesture ends in begins the next, and a form holds forms. */
const CIRCLES: Readonly<Record<string, readonly string[]>> = {
  "src/app/tools": [
    "dragging.ts",
    "gathering.ts",
    "idle.ts",
    "panning.ts",
    "pointingGround.ts",
    "pointingThing.ts",
  ],
  "src/app/teach/form": ["Asked.svelte", "ListForm.svelte", "MapForm.svelte", "RecordForm.svelte"],
};

/** From whom arrows lead to whom. */
type Arrows = Map<string, Set<string>>;

/** The arrows among what stands beside each other in each folder: files, and folders as one thing with all that is in them. */
function arrowsByFolder(sources: readonly Source[]): ReadonlyMap<string, Arrows> {
  const paths = new Set(sources.map(({ path }) => path));
  const fileOf = (target: string) =>
    ["", ".ts", ".svelte.ts", "/index.ts"].map((it) => target + it).find((it) => paths.has(it));
  const folders = new Map<string, Arrows>();
  for (const source of sources)
    for (const specifier of importsOf(source).filter(isRelative)) {
      const target = fileOf(targetOf(source.path, specifier));
      if (target === undefined) continue;
      const [from, to] = [source.path.split("/"), target.split("/")];
      const shared = from.findIndex((it, depth) => it !== to[depth]);
      const folder = from.slice(0, shared).join("/");
      const arrows = folders.get(folder) ?? new Map<string, Set<string>>();
      folders.set(
        folder,
        arrows.set(from[shared]!, (arrows.get(from[shared]!) ?? new Set()).add(to[shared]!)),
      );
    }
  return folders;
}

/** What stands in a circle, or between two: all that is left when what leads nowhere, and where nothing leads, is taken away. */
function inCircles(arrows: Arrows): string[] {
  const left = new Set([...arrows.keys()].filter((from) => !arrows.get(from)!.has(from)));
  for (let before = -1; before !== left.size;) {
    before = left.size;
    for (const it of left) {
      const leads = [...arrows.get(it)!].some((to) => left.has(to));
      const isLedTo = [...left].some((from) => arrows.get(from)!.has(it));
      if (!leads || !isLedTo) left.delete(it);
    }
  }
  return [...left].sort();
}

test("files and folders beside each other import each other in no circle but the gestures' and the forms'", () => {
  const shipped = sourcesIn("src").filter(({ path }) => !isTest(path));
  const found = [...arrowsByFolder(shipped)].map(([folder, arrows]) => [folder, inCircles(arrows)] as const);
  expect(found.length).toBeGreaterThan(30);
  expect(Object.fromEntries(found.filter(([, circle]) => circle.length > 0))).toEqual(CIRCLES);
});

test("a circle of imports is found between files, and between a file and a folder", () => {
  const files = {
    "src/a.ts": "./b",
    "src/b.ts": "./c/d",
    "src/c/d.ts": "../a",
    "src/c/e.ts": "./d",
    "src/f.ts": "./a",
  };
  const sources = Object.entries(files).map(([path, from]) => ({
    path,
    text: `export * from ${JSON.stringify(from)};`,
  }));
  const arrows = arrowsByFolder(sources);
  expect(inCircles(arrows.get("src")!)).toEqual(["a.ts", "b.ts", "c"]);
  expect(inCircles(arrows.get("src/c")!)).toEqual([]);
});

/**
 * Comparisons with a device kind, lists of kinds and tables by kind. What a thing is and how it behaves is asked of the
 * thing (`src/core/devices/faces.ts`), so that a new kind brings every answer in its own file.
 */
function askedByKind(text: string): string[] {
  const kind = `"(?:${Object.keys(DEVICES).join("|")})"`;
  const [asked, list] = [
    String.raw`(?<!consequence\??\.)\bkind"?\]?!?`,
    String.raw`\[[^\[\]]*${kind}[^\[\]]*\]`,
  ];
  const patterns = [
    String.raw`${asked}\s*[!=]==\s*${kind}|${kind}\s*[!=]==\s*[\w.]*${asked}`,
    String.raw`${list}(?: as const)?\)?\.(?:includes|has)\([^)]*${asked}\)`,
    String.raw`switch \([\w.!]*${asked}\) \{\s*case ${kind}`,
    String.raw`(?:Set|Record)<(?:DeviceKind|CircuitElement\["kind"\]).*`,
    String.raw`new Set\(\[\s*${kind},\s*${kind}[^\]]*\]`,
  ];
  return patterns.flatMap((it) => text.match(new RegExp(it, "g")) ?? []);
}

test("nothing outside src/core/devices asks for a device kind", () => {
  const found = sourcesIn("src").flatMap(({ path, text }) =>
    isTest(path) || isIn("src/core/devices", path) ? [] : askedByKind(text).map((it) => `${path}: ${it}`),
  );
  expect(found).toEqual([]);
});

test.each([
  ['it.kind === "cutout"', 1],
  ['saved["kind"] !== "ground"', 1],
  ['"load" === other.kind', 1],
  ['["span", "lead"].includes(element.kind)', 1],
  ['switch (element.kind) {\n  case "span":', 1],
  ['const IN_A_ROW = new Set(["clamp", "cutout", "elbow"]);', 1],
  ['const DROPS: ReadonlySet<CircuitElement["kind"]> = new Set();', 1],
  ['was.kind === is.kind && it.kind === "pole"', 0],
  ['consequence.kind === "fault"', 0],
  ['step.do === "ground"', 0],
  ['elementsOfKind(system, "ground")', 0],
])("%s asks for a kind: %d", (text, count) => {
  expect(askedByKind(text)).toHaveLength(count);
});

/**
 * Comparisons with a kind of anything else outside the file that defines the question: what a note, an upset, a consequence
 * or a structure is has one function each. Those that are left, with their reason.
 */
const COMPARED: Readonly<Record<string, string>> = {
  "src/app/canvas/Canvas.svelte": "a finger in a glove, of what the browser calls the pointer",
  "src/app/tools/pointingThing.ts": "the same finger: it pulls the drawing, where a mouse pulls the thing",
  "src/app/plan/Callout.svelte": "its own kind, which it is handed",
  "src/core/import/cim/transformers.ts": "windings by the standard's own words",
  "src/core/document/structureKinds.ts": "the questions themselves",
  "src/core/hazard/upsets.ts": "the questions themselves",
  "src/core/hazard/upsetWords.ts": "the question that needs words of its own",
  "src/core/procedure/effects/consequence.ts": "the questions themselves",
  "src/core/scenario/scoring.ts": "the questions themselves",
  "src/core/drawing/shapes.ts": "the questions themselves",
  "src/core/drawing/notes.ts": "places notes, each kind in its own way",
  "src/core/sheet/sheetHtml.ts":
    "whether a control says that it stands open: of all pictures this one alone asks",
};

test("a kind of anything is compared in a handful of places", () => {
  const found = sourcesIn("src").filter(
    ({ path, text }) =>
      !isTest(path) &&
      !isIn("src/core/devices", path) &&
      /\bkind"?\]?!? [!=]== "|" [!=]== [\w.]*\bkind\b/.test(text.replace(/typeof \w+ [!=]== "\w+"/g, "")),
  );
  expect(found.map(({ path }) => path).sort()).toEqual(Object.keys(COMPARED).sort());
});

/** Where every exported name says what it is: what is computed there is read with its units, shapes and sources. */
const described = ["src/core", "src/app", "src/cli"];

test.each(described)("every name that %s exports says what it is", (folder) => {
  const bare = sourcesIn(folder).flatMap(({ path, text }) =>
    isTest(path) || path.endsWith("/index.ts") || isCatalogue(path)
      ? []
      : ts
          .createSourceFile(path, text, ts.ScriptTarget.Latest, true)
          .statements.filter(
            (it) =>
              ts.canHaveModifiers(it) &&
              ts.getModifiers(it)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true &&
              ts.getJSDocCommentsAndTags(it).length === 0,
          )
          .map((it) => `${path}: ${it.getText().split("\n")[0]}`),
  );
  expect(bare).toEqual([]);
});

/** What the core remembers from one call to the next otherwise than by the object it was asked of, and why. */
const REMEMBERED: Readonly<Record<string, string>> = {
  "src/core/network/circuitOf.ts":
    "of two drawings that differ in a few settings nothing says which was first, so the newest circuit is tried",
  "src/core/document/read.ts":
    "a text has no identity to remember by, and is read again far more often than changed",
  "src/core/drawing/scene.ts":
    "a drawing is known by its system, which an edit lets go: the scene that the next one is made from would go with it",
};

test("the core remembers nothing from call to call but by the object that it was asked of", () => {
  const found = sourcesIn("src/core").filter(
    ({ path, text }) => !isTest(path) && /^(?:export )?(?:let|var) /m.test(text),
  );
  expect(found.map(({ path }) => path).sort()).toEqual(Object.keys(REMEMBERED).sort());
});

test("nothing but the one face through which things are asked takes a value `as never`", () => {
  const found = sourcesIn("src").filter(({ path, text }) => !isTest(path) && /\bas never\b/.test(text));
  expect(found.map(({ path }) => path)).toEqual(["src/core/devices/faces.ts"]);
});

/** Packages that no file imports, and who needs them. */
const neededBy: Readonly<Record<string, string>> = {
  "@stryker-mutator/vitest-runner": "scripts/mutate.mjs, by its name",
  "@types/culori": "the compiler, for culori",
  "@types/node": "the compiler, for Node's own modules",
  "graphology-types": "the compiler, for graphology",
  "happy-dom": "the tests that name it as their environment",
  "oxlint-tsgolint": "oxlint, which starts it for the rules that ask for types",
  "scorm-again": "tests/e2e/scorm.e2e.mjs, by its path",
  "svelte-check": "scripts/test.mjs, by its path",
  "workbox-build": "vite-plugin-pwa, which asks for it beside itself",
  "workbox-window": "vite-plugin-pwa, which asks for it beside itself",
};

test("every package that is declared is used", () => {
  const config = readdirSync(root)
    .filter((it) => /\.config\.(ts|js)$/.test(it))
    .map((path): Source => ({ path, text: readFileSync(join(root, path), "utf8") }));
  const sources = [...config, ...["src", "tests", "scripts", "bin"].flatMap(sourcesIn)];
  const imported = new Set(sources.flatMap(importsOf).map(packageOf));
  const found = sources.map(({ text }) => text).join("\n");
  const isUsed = (name: string) =>
    imported.has(name) || name in neededBy || new RegExp(`["'\`]${name}/`).test(found);
  expect([...declared].filter((name) => !isUsed(name))).toEqual([]);
  expect(Object.keys(neededBy).filter((name) => !declared.has(name))).toEqual([]);
});

/** What the app fetches when it is needed and which says nothing, or says it in words that it is handed, so that it needs no sentences. */
const silent = [
  "./board",
  "./further",
  "./keep/demos",
  "./wording",
  "../../../shared/demos/sideline-three-transformers.stillhot.json?raw",
  "../../../shared/demos/fr/sideline-three-transformers.json",
  "./keep/offline",
  "./photos",
  "./trash",
  "./solve",
  "../worker/solve",
  "./reading",
  "./writeAndPaint",
  "./share/fingerprint",
  "./sentences",
  "./french",
  "./regional",
  "./frame/focus",
];

test("whatever the app fetches when it is needed comes by `later`, with its sentences", () => {
  const shipped = sourcesIn("src/app").filter(({ path }) => !isTest(path));
  const bare = shipped.flatMap(({ path, text }) =>
    [...text.matchAll(/(later\(\(\) => )?import\(\s*["'](\.[^"']*)["']/g)]
      .filter(([, byLater, file]) => byLater === undefined && !silent.includes(file!))
      .map(([, , file]) => `${path} imports "${file}"`),
  );
  expect(bare).toEqual([]);
});

test("every worker of the app runs one script, so that what they share is fetched and kept once", () => {
  const found = sourcesIn("src/app").filter(({ path, text }) => !isTest(path) && /\bnew Worker\(/.test(text));
  expect(found.map(({ path }) => path)).toEqual(["src/app/worker/startWorker.ts"]);
});

/** Keys of sentences that no text names, neither whole nor as a pattern such as `kind.${kind}`. */
function unsaid(keys: readonly string[], sources: readonly Source[]): string[] {
  const text = sources.map((it) => it.text).join("\n");
  const named = new Set([...text.matchAll(/["'`]([\w.-]+)["'`]/g)].map((it) => it[1]));
  const patterns = [...text.matchAll(/`(\w+\.[\w.-]*\$\{[^`]*)`/g)].map(
    (it) => new RegExp(`^${it[1]!.replaceAll(".", "\\.").replace(/\$\{.*?\}/g, ".+")}$`),
  );
  return keys.filter((key) => !named.has(key) && !patterns.some((it) => it.test(key)));
}

const CATALOGUES = ["src/core/terms/messages", "src/app/words/messages", "src/cli/messages"];

/** Whether a file holds sentences: of a folder of them, or those that stand beside a rule. */
const isCatalogue = (path: string): boolean =>
  path.endsWith(".words.ts") || CATALOGUES.some((it) => isIn(it, path));

test.each([
  ["the core", english, ["src", "scripts", "bin"]],
  ["the app", appEnglish, ["src/app"]],
  ["the command line", cliEnglish, ["src/cli"]],
])("M1 every sentence of %s is said somewhere", (_, sentences, folders) => {
  expect(unsaid(Object.keys(sentences), speaking(folders))).toEqual([]);
});

/** What speaks in these folders. */
const speaking = (folders: readonly string[]): Source[] =>
  folders.flatMap(sourcesIn).filter(({ path }) => !isTest(path) && !isCatalogue(path));

// The other way round, types hold it: the core's `say` takes none but the core's own keys.
test("M1 a sentence of the core is said by the core, or else by both the app and the command line", () => {
  const leftTo = unsaid(Object.keys(english), speaking(["src/core"]));
  const notBoth = (folder: string) => unsaid(leftTo, speaking([folder])).map((key) => `${folder}: ${key}`);
  expect(["src/app", "src/cli"].flatMap(notBoth)).toEqual([]);
});

test("a sentence is found by its key, by a pattern, and nowhere else", () => {
  const text = 'say("kind.span"); t(`views.${name}.title`); // "app.on" and app.off';
  const keys = ["kind.span", "kind.lead", "views.flow.title", "views.flow", "app.on", "app.off"];
  expect(unsaid(keys, [{ path: "x.ts", text }])).toEqual(["kind.lead", "views.flow", "app.off"]);
});

/** The checks themselves, so that a silent change to them is seen: [file, what it imports, allowed]. */
test.each([
  ["src/core/phasor/solve.ts", "../network", true],
  ["src/core/network/compile.ts", "../phasor/solve", false],
  ["src/core/network/compile.ts", "../index", false],
  ["src/core/network/compile.ts", "..", false],
  ["src/core/index.ts", "./drawing", true],
  ["src/core/document/read.ts", "../steps", true],
  ["src/core/steps/open.ts", "../document", false],
  ["src/core/procedure/rules/rule.ts", "../job/state", true],
  ["src/core/procedure/rules/rule.ts", "../planner/plan", false],
  ["src/core/procedure/job/state.ts", "../effects/gap", false],
  ["src/core/reference/gloves.ts", "../../../shared/reference/gloves.json", true],
  ["src/core/reference/gloves.ts", "../../../../shared/reference/gloves.json", false],
  ["src/core/document/edits/open.ts", "immer", true],
  ["src/core/document/read.ts", "node:fs", false],
  ["src/core/document/read.ts", "konva/lib/Stage.js", false],
  ["src/core/document/read.ts", "svelte", false],
  ["src/core/terms/ids.ts", "../../app/session/session.svelte", false],
  ["src/core/terms/ids.test.ts", "vitest", true],
  ["src/app/canvas/board.ts", "../../core", true],
  ["src/app/canvas/board.ts", "../../core/index.ts", true],
  ["src/app/canvas/board.ts", "../../core/terms", false],
  ["src/app/canvas/board.ts", "../../cli/main", false],
  ["src/app/canvas/board.ts", "../session/session.svelte", true],
  ["src/app/session/session.svelte.ts", "../canvas/board", false],
  ["src/app/canvas/board.ts", "../loads", false],
  ["src/app/loads.ts", "./canvas/board", true],
  ["src/app/canvas/board.ts", "node:fs", false],
  ["src/app/canvas/board.ts", "left-pad", false],
  ["src/cli/main.ts", "../core", true],
  ["src/cli/main.ts", "node:fs", true],
  ["src/cli/main.ts", "../app/session", false],
])("%s importing %s: %s", (path, specifier, allowed) => {
  expect(objection(path, specifier) === undefined).toBe(allowed);
});

test("imports are found in modules, components, types and workers", () => {
  const text = `<script lang="ts">
    import type { A } from "./a";
    import B from "./B.svelte";
    const c = () => import("./c");
    const d = new Worker(new URL("./d.ts", import.meta.url), { type: "module" });
  </script>
  <p>import "./not-this"</p>`;
  expect(importsOf({ path: "x.svelte", text })).toEqual(["./a", "./B.svelte", "./c", "./d.ts"]);
});
