import type * as Paper from "./share/paper";
import { SHEETS } from "./sheets";
import { later } from "./words/later";

/**
 * Fetches what a first press is likely to ask for, one after another, so that it opens at once. Called when the first
 * picture stands and the hands rest.
 *
 * @param onpaper told first: a page about to print waits for nothing, so what lays it out must be there before
 */
export async function fetchSoon(onpaper: (paper: typeof Paper) => void): Promise<void> {
  // Who then asks for what could not be fetched is told so.
  await later(() => import("./share/paper")).then(onpaper, () => undefined);
  for (const fetch of SOON) await fetch().catch(() => undefined);
}

const SOON: readonly (() => Promise<unknown>)[] = [
  () => later(() => import("./sketch/Outline.svelte")),
  () => later(() => import("./sketch/HotList.svelte")),
  () => later(() => import("./sketch/Inspector.svelte")),
  () => later(() => import("./sketch/dialogs")),
  () => later(() => import("./sketch/presses")),
  () => later(() => import("./session/removing")),
  SHEETS.menu,
  SHEETS.find,
  SHEETS.library,
  () => later(() => import("./canvas/Legend.svelte")),
  () => later(() => import("./views/views.svelte")),
  () => later(() => import("./views/ViewPanel.svelte")),
  () => later(() => import("./plan/Plan.svelte")),
];
