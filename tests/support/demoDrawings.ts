import { readdirSync, readFileSync } from "node:fs";
import { readDocument, type StillhotDocument } from "../../src/core";

const FOLDER = "shared/demos";

/** Every demo by the name of its file, read. */
export const demoDrawings = (): [name: string, document: StillhotDocument][] =>
  readdirSync(FOLDER)
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((name) => {
      const read = readDocument(readFileSync(`${FOLDER}/${name}`, "utf8"));
      if (!("document" in read)) throw new Error(`${name} does not read`);
      return [name, read.document];
    });
