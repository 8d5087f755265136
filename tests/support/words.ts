import {
  type Catalogue,
  english,
  type FileProblem,
  french,
  type Message,
  spell as spellIn,
} from "../../src/core";

export { english, french };

/** A sentence of the core, in English unless another language is asked for. */
export const spell = (message: Message | string, catalogue: Catalogue = english): string =>
  spellIn(message, catalogue);

/** One problem of a file as a line of text. */
export const spellProblem = ({ path, message }: FileProblem): string =>
  path === "" ? spell(message) : `${path}: ${spell(message)}`;
