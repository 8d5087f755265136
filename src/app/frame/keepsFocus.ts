/**
 * For a row of buttons of which some give way to others when they are pressed, as Open does to Close: whoever pressed it
 * by keyboard is then on the button that stands there now, and not at the top of the page.
 */
export function keepsFocus(row: Element): () => void {
  const buttons = () => [...row.querySelectorAll("button")];
  let focused: EventTarget | null = null;
  let place = -1;
  const note = ({ target }: Event) => {
    focused = target;
    place = buttons().indexOf(target as HTMLButtonElement);
  };
  const observer = new MutationObserver((changes) => {
    const isGone = changes.some(({ removedNodes }) => [...removedNodes].some((it) => it === focused));
    if (!isGone || document.activeElement !== document.body) return;
    const now = buttons();
    now[Math.min(place, now.length - 1)]?.focus();
  });
  row.addEventListener("focusin", note);
  observer.observe(row, { childList: true });
  return () => {
    observer.disconnect();
    row.removeEventListener("focusin", note);
  };
}
