import { readdirSync, readFileSync } from "node:fs";
import { readDocument, type StillhotDocument } from "../../src/core";

const FOLDER = "shared/demos";

const read: readonly (readonly [name: string, document: StillhotDocument])[] = readdirSync(FOLDER)
  .filter((it) => it.endsWith(".stillhot.json"))
  .map((name) => {
    const found = readDocument(readFileSync(`${FOLDER}/${name}`, "utf8"));
    if (!("document" in found)) throw new Error(`${name} does not read`);
    return [name, found.document];
  });

/** Every demo by the name of its file, read once for all tests: what one of them works out of it, the next one finds. */
export const demoDrawings = (): typeof read => read;
