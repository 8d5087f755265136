import type { Component } from "svelte";
import type { SheetId, SheetProps } from "./sheetProps";
import { later } from "./words/later";

type Load = () => Promise<{ readonly default: Component<SheetProps> }>;

/** Where each sheet is. It is loaded when it is first asked for. */
export const SHEETS: Readonly<Record<SheetId, Load>> = {
  find: () => later(() => import("./Find.svelte")),
  menu: () => later(() => import("./Menu.svelte")),
  library: () => later(() => import("./sketch/Library.svelte")),
  keys: () => later(() => import("./sketch/Keys.svelte")),
  settings: () => later(() => import("./sketch/SettingsSheet.svelte")),
  kept: () => later(() => import("./keep/Kept.svelte")),
  share: () => later(() => import("./share/ShareSheet.svelte")),
  scan: () => later(() => import("./share/Scan.svelte")),
  notation: () => later(() => import("./share/TextSheet.svelte")),
  help: () => later(() => import("./help/Help.svelte")),
};
