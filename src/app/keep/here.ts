/** which drawing this window shows, through a reload: `last` is of all windows */
const HERE = "stillhot-drawing";

export function rememberHere(id: string): void {
  try {
    sessionStorage.setItem(HERE, id);
  } catch {
    // Then a reload shows the drawing that was last written in any window.
  }
}

export function drawingHere(): string | undefined {
  try {
    return sessionStorage.getItem(HERE) ?? undefined;
  } catch {
    return undefined;
  }
}
