/** A phone's row takes four buttons, whatever stands on them: the words wrap. */
const NARROW = 600;
const ON_A_PHONE = 4;
const MOST = 8;
/** What one letter of a button takes, as a part of its size: the average of bold letters, rounded up. */
const LETTER = 8.5 / 15;
/** Padding, border and the gap to the next button [px]. */
const AROUND = 36;

/**
 * How many of some buttons fit side by side. Where not all do, the last place is More's, and the count is without it.
 *
 * @param width of the row [px]
 * @param isLarge whether the letters are those of a gloved hand
 * @param icon width of each button's icon, 0 where it has none [px]
 */
export function fitting(
  labels: readonly string[],
  more: string,
  width: number,
  isLarge = false,
  icon = 0,
): number {
  if (width < NARROW) return labels.length <= ON_A_PHONE ? labels.length : ON_A_PHONE - 1;
  const widthOf = (label: string) => label.length * LETTER * (isLarge ? 18 : 15) + AROUND + icon;
  let left = width - 24;
  const fit = labels.slice(0, MOST).findIndex((it) => (left -= widthOf(it)) < 0);
  if (fit < 0 && labels.length <= MOST) return labels.length;
  left = width - 24 - widthOf(more) - icon;
  const beside = labels.slice(0, MOST - 1).findIndex((it) => (left -= widthOf(it)) < 0);
  return beside < 0 ? Math.min(labels.length, MOST - 1) : Math.max(1, beside);
}
