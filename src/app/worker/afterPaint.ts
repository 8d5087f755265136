/** A page out of sight paints nothing: then this is how long one waits [ms]. */
const AT_MOST_MS = 60;

/** Does something once the next frame is painted, or soon where none is. */
export function afterPaint(act: () => void): void {
  let isDone = false;
  const once = () => {
    if (!isDone) act();
    isDone = true;
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, AT_MOST_MS);
}
