import type { PaletteName } from "../../core";

/**
 * How much of a picture shows under the drawing. At most so much that every line keeps a contrast of 3 : 1 to the darkest
 * and the lightest spot that a picture may have there (WCAG 2.2, 1.4.11); a test holds it.
 */
export const DIMMED: Readonly<Record<PaletteName, number>> = { sun: 0.26, night: 0.18, paper: 0.26 };
