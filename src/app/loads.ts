import type { Component } from "svelte";
import type { PlaceId, PlaceProps } from "./frame/places";
import { later } from "./words/later";

type Load = () => Promise<{ readonly default: Component<PlaceProps> }>;

/** Where each place is. It is loaded when it is first gone to; the first one comes with the app. */
export const LOADS: Readonly<Record<Exclude<PlaceId, "sketch">, Load>> & { readonly sketch?: undefined } = {
  plan: () => later(() => import("./plan/Plan.svelte")),
  rehearse: () => later(() => import("./rehearse/Rehearse.svelte")),
  scenario: () => later(() => import("./scenario/Scenario.svelte")),
  drill: () => later(() => import("./drill/Drill.svelte")),
  debrief: () => later(() => import("./debrief/Debrief.svelte")),
  sheet: () => later(() => import("./sheet/SheetPlace.svelte")),
  learn: () => later(() => import("./learn/Learn.svelte")),
  teach: () => later(() => import("./teach/Teach.svelte")),
};
