/** So long at most what is typed into a field of words stands in that alone [ms]. */
const TAKEN_AFTER_MS = 700;

/** The field in which somebody typed, and that was not left since. */
let typedIn: EventTarget | null = null;
let due: ReturnType<typeof setTimeout> | undefined;

addEventListener(
  "input",
  ({ target }) => {
    typedIn = target;
    // Words harm nothing half written; a number does.
    if ((target as HTMLElement).dataset["words"] !== undefined) due ??= setTimeout(takeTyped, TAKEN_AFTER_MS);
  },
  { capture: true },
);
addEventListener(
  "change",
  () => {
    typedIn = null;
    clearTimeout(due);
    due = undefined;
  },
  { capture: true },
);

/**
 * Takes what is being typed as if its field had been left, which is when a field gives its words to the drawing: a page
 * that is put away, or a browser that is killed, may never come back to it.
 */
export function takeTyped(): void {
  typedIn?.dispatchEvent(new Event("change", { bubbles: true }));
}
