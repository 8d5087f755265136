import { codePicture } from "../../core";

/** A code as the path of its dark modules, in a box of its size with the quiet zone that scanners ask for. */
export interface Code {
  readonly size: number;
  readonly path: string;
}

const QUIET = 4;

/** Letters that one code holds at most: of more, its modules would be too small for a camera. */
export const MOST_CODE_LETTERS = 1800;

/** The code of a text. */
export function codeOf(text: string): Code {
  const { size, dark } = codePicture(text);
  const path = Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => (dark(x, y) ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : "")).join(""),
  ).join("");
  return { size: size + 2 * QUIET, path };
}
