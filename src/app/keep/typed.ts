/** The field in which somebody typed, and that was not left since. */
let typedIn: EventTarget | null = null;

addEventListener("input", ({ target }) => (typedIn = target), { capture: true });
addEventListener("change", () => (typedIn = null), { capture: true });

/**
 * Takes what is being typed as if its field had been left, which is when a field gives its words to the drawing: a page
 * that is put away may never come back to it.
 */
export function takeTyped(): void {
  typedIn?.dispatchEvent(new Event("change", { bubbles: true }));
}
