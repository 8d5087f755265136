import type { Catalogue } from "../../message";

/** Every sentence in French. */
export const french: Catalogue = {};
