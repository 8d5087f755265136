/** which drawing this window shows, through a reload: `last` is of all windows */
const HERE = "stillhot-drawing";

/** Notes which drawing this window shows, for when it is loaded again. */
export function rememberHere(id: string): void {
  try {
    sessionStorage.setItem(HERE, id);
  } catch {
    // Then a reload shows the drawing that was last written in any window.
  }
}

/** The drawing that this window showed; nothing in a new window. */
export function drawingHere(): string | undefined {
  try {
    return sessionStorage.getItem(HERE) ?? undefined;
  } catch {
    return undefined;
  }
}
