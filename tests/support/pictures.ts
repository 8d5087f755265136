import { readdirSync, readFileSync } from "node:fs";
import {
  type Catalogue,
  english,
  french,
  generateTap,
  isUnreadable,
  LEVELS,
  readDocument,
  type StillhotDocument,
} from "../../src/core";
import { inWords, type Wording } from "../../src/app/keep/wording";
import { doubleThrow } from "./doubleThrow";
import { done, importMapFile, importModel } from "./imported";
import { badlyShown } from "./picture";
import { randomDocument } from "./randomSystems";

/** A drawing to be looked at, and the language of what stands on it. */
export interface ToLookAt {
  readonly name: string;
  readonly language: "en" | "fr";
  document(): StillhotDocument;
}

const CATALOGUES: Readonly<Record<ToLookAt["language"], Catalogue>> = { en: english, fr: french };

/** Where it stands badly on any screen or on paper, in words. */
export const faultsOf = ({ name, language, document }: ToLookAt): readonly string[] =>
  badlyShown(document(), CATALOGUES[language]).map((it) => `${name}, ${language}, ${it}`);

/** All that is kept in files: demos, scenarios, and feeders and maps that were taken in from other formats. */
export const KEPT: readonly ToLookAt[] = [
  ...["demos", "scenarios"].flatMap((folder) =>
    namesIn(folder, ".stillhot.json").map((file) =>
      inBoth(file, (language) => read(inLanguage(language, folder, file))),
    ),
  ),
  ...namesIn("import/cim", ".xml").map((file) =>
    inBoth(file, () => unplaced(done(importModel(`cim/${file}`)).document)),
  ),
  ...namesIn("import/geojson", ".geojson").map((file) =>
    inBoth(file, () => unplaced(done(importMapFile(`geojson/${file}`)).document)),
  ),
  ...(["utility", "generator", "off"] as const).flatMap((position) =>
    (["north", "south"] as const).map((first) =>
      inBoth(`double throw to ${position}, ${first} first`, () => doubleThrow(position, first)),
    ),
  ),
].flat();

/** Of what stands in a list in both languages each in one, one language after the other. */
export const inOneLanguage = (all: readonly ToLookAt[]): readonly ToLookAt[] =>
  all.filter((_, nth) => nth % 2 === Math.floor(nth / 2) % 2);

/** What a seed gives: a random drawing and a drawn tap, laid out by the program. */
export function madeFrom(seed: number): readonly ToLookAt[] {
  const language = seed % 2 === 0 ? "fr" : "en";
  const level = LEVELS[seed % LEVELS.length]!;
  return [
    {
      name: `random ${seed}`,
      language,
      document: () => unplaced(randomDocument(seed, { parts: 3 + (seed % 8) })),
    },
    {
      name: `level ${level}, seed ${seed}`,
      language,
      document: () => generateTap({ level, seed, language }),
    },
  ];
}

function namesIn(folder: string, end: string): readonly string[] {
  return readdirSync(`shared/${folder}`).filter((it) => it.endsWith(end));
}

function text(name: string): string {
  return readFileSync(`shared/${name}`, "utf8");
}

function inBoth(
  name: string,
  document: (language: ToLookAt["language"]) => StillhotDocument,
): readonly ToLookAt[] {
  return (["en", "fr"] as const).map((language) => ({ name, language, document: () => document(language) }));
}

/** A drawing of the library as the app opens it in a language: its own words are longer in French. */
function inLanguage(language: ToLookAt["language"], folder: string, file: string): string {
  const english = text(`${folder}/${file}`);
  if (language === "en") return english;
  const wording = JSON.parse(text(`${folder}/fr/${file.replace(".stillhot", "")}`)) as Wording;
  return inWords(english, wording);
}

function read(file: string): StillhotDocument {
  const found = readDocument(file);
  if (isUnreadable(found)) throw new Error("a drawing does not read");
  return found.document;
}

/** The same drawing where nobody placed its points. */
function unplaced(document: object): StillhotDocument {
  const bare = JSON.parse(JSON.stringify(document));
  for (const point of Object.values(bare.system.points) as { x?: number; y?: number }[]) {
    delete point.x;
    delete point.y;
  }
  return read(JSON.stringify(bare));
}
