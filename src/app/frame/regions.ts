/** Goes to the next of some regions, or the one before, from wherever the focus is. */
export function nextRegion(regions: readonly string[], backward: boolean) {
  const stops = regions.flatMap((it) => document.querySelector<HTMLElement>(it) ?? []);
  const within = stops.findIndex(
    (it) => it === document.activeElement || it.parentElement?.contains(document.activeElement),
  );
  stops[(within + (backward ? -1 : 1) + stops.length) % stops.length]?.focus();
}
