/** What a person goes on with, here or inside: a place, a card or a list says so of one of its parts. */
const NEXT = "[data-next]";
/** Where one thing of several gives way to another, as Open does to Close, or goes away: the one at its place is next. */
const ROW = "ul, ol, tbody, [role=toolbar]";
const STOPS = "button:not(:disabled), summary, [tabindex='0']";
const PRESSES = "a[href], summary, button, input, select, textarea";
const TAKES_FOCUS = `[tabindex], ${PRESSES}`;
const HEADINGS = "h1, h2, h3";

/**
 * Keeps the keyboard from falling to the top of the page. Where what has the focus goes away, or can no longer be pressed,
 * the focus goes to what a person goes on with, as near as it can be: in what the lost thing stood in, from the inside outward.
 *
 * @returns ends it
 */
export function keepsFocus(): () => void {
  /** what has the focus, what it stands in, and its place in each row of that, from the inside outward */
  let held: readonly Held[] = [];
  /** the same of what had it last outside of any dialog */
  let below: readonly Held[] = [];

  const note = ({ target }: Event) => {
    held = heldBy(target as Element);
    if ((target as Element).closest("dialog") === null) below = held;
  };
  /** Whoever clicks beside everything has let go of it. */
  const leave = ({ target, relatedTarget }: FocusEvent) => {
    if (relatedTarget !== null) return;
    queueMicrotask(() => {
      if (document.activeElement === document.body && document.hasFocus() && isThere(target as Element))
        held = [];
    });
  };
  const mend = () => {
    const lost = held[0]?.element;
    const { activeElement } = document;
    if (lost === undefined || isThere(lost) || (activeElement !== document.body && activeElement !== lost))
      return;
    const next = nextAround(held) ?? nextAround(below) ?? document.querySelector("main");
    // What is read stays where it is: a step begins at its top, also where its first answer stands further down.
    if (next !== null) take(next, { preventScroll: true });
  };
  const observer = new MutationObserver(mend);
  document.addEventListener("focusin", note);
  document.addEventListener("focusout", leave);
  observer.observe(document.body, {
    childList: true,
    subtree: true,
    attributes: true,
    attributeFilter: ["disabled"],
  });
  return () => {
    observer.disconnect();
    document.removeEventListener("focusin", note);
    document.removeEventListener("focusout", leave);
  };
}

/** Takes the keyboard to a place that was just gone to: to what it begins with, or else to its heading. */
export function arriveIn(place: ParentNode): void {
  const [next] = [NEXT, "main h2, main h3", "main [data-drawing]", "main"].flatMap((it) => seenIn(place, it));
  if (next === undefined) return;
  // A part of the page that begins in sight stays where it is, and so does the drawing above it; a press is brought into sight whole.
  const stays = !next.matches(PRESSES) && next.getBoundingClientRect().top < window.innerHeight;
  take(next, { preventScroll: stays });
}

interface Held {
  readonly element: Element;
  /** how many stops of the row come before what has the focus; nothing where this is no row */
  readonly before: number | undefined;
}

function heldBy(target: Element): readonly Held[] {
  const held: Held[] = [];
  for (
    let element: Element | null = target;
    element !== null && element !== document.body;
    element = element.parentElement
  ) {
    const stops = element.matches(ROW) ? [...element.querySelectorAll(STOPS)] : undefined;
    held.push({ element, before: stops?.indexOf(target) });
    if (element.matches("dialog")) break;
  }
  return held;
}

function nextAround(held: readonly Held[]): Element | undefined {
  for (const { element, before } of held.filter((it) => isThere(it.element))) {
    const stops = before === undefined ? [] : seenIn(element, STOPS);
    const next =
      stops[Math.min(Math.max(0, before ?? 0), stops.length - 1)] ??
      seenIn(element, NEXT)[0] ??
      (element.matches(TAKES_FOCUS) ? element : undefined) ??
      seenIn(element, HEADINGS)[0];
    if (next !== undefined) return next;
  }
  return undefined;
}

const seenIn = (around: ParentNode, what: string): Element[] =>
  [...around.querySelectorAll(what)].filter((it) => it.checkVisibility?.() ?? true);

const isThere = (element: Element): boolean => element.isConnected && !element.matches(":disabled");

function take(element: Element, options?: FocusOptions): void {
  if (!(element instanceof HTMLElement)) return;
  if (!element.matches(TAKES_FOCUS)) element.tabIndex = -1;
  element.focus(options);
}
