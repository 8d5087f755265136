import { type Catalogue, french as core } from "../../core";
import { french as own } from "./messages/fr";

/** The second language, apart from the rest, so that nobody waits for words that they do not read. */
export const french: Catalogue = { ...core, ...own };
