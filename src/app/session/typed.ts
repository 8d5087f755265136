import { flushSync } from "svelte";

/** So long at most what is typed into a field of words stands in that alone [ms]. */
const TAKEN_AFTER_MS = 700;

type TextField = HTMLInputElement | HTMLTextAreaElement;

/** The field in which somebody typed, and that was not left since. */
let typedIn: EventTarget | null = null;
let due: ReturnType<typeof setTimeout> | undefined;
/** When the field was gone to, by the clock: the history outlives the page. */
let visitedAt = 0;
/** What of this visit's words the drawing has already. */
let taken: string | undefined;
let gesture: string | undefined;

/** Words harm nothing half written; a number, a day or a name of the format does. Fields of words say so themselves. */
const isOfWords = (target: EventTarget | null): target is TextField =>
  target instanceof HTMLElement && target.dataset["words"] !== undefined;

/** What gathers all that one visit to a field of words changes into one entry of the history; only while it changes. */
export const visitOfWords = () => gesture;

/** Follows what is typed anywhere on the page, from now on. */
export function followTyping(): void {
  addEventListener("focusin", arrive, { capture: true });
  addEventListener("input", type, { capture: true });
  addEventListener("change", begin, { capture: true });
  addEventListener("change", end);
}

function arrive() {
  visitedAt = Date.now();
  taken = undefined;
}

function type({ target }: Event) {
  typedIn = target;
  if (isOfWords(target)) due ??= setTimeout(() => takeWords(target), TAKEN_AFTER_MS);
}

function begin(event: Event) {
  const { target } = event;
  typedIn = null;
  clearTimeout(due);
  due = undefined;
  if (!isOfWords(target)) return;
  if (target.value === taken) event.stopPropagation();
  else gesture = `words ${visitedAt}`;
}

function end() {
  gesture = undefined;
}

/**
 * Takes what is being typed as if its field had been left, which is when a field gives its words to the drawing: a page
 * that is put away, or a browser that is killed, may never come back to it.
 */
export function takeTyped(): void {
  typedIn?.dispatchEvent(new Event("change", { bubbles: true }));
}

/** The same while somebody goes on typing: what their field would tidy away, as a space at the end, stays in it. */
function takeWords(field: TextField): void {
  due = undefined;
  const { value, selectionStart, selectionEnd } = field;
  // A field that is emptied may go with its words: that waits until it is left.
  if (value === "") return;
  takeTyped();
  taken = value;
  flushSync();
  if (field.value === value) return;
  field.value = value;
  field.setSelectionRange(selectionStart, selectionEnd);
}
