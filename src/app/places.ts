import type { Component } from "svelte";
import type { MessageKey } from "../core";
import type { Session } from "./session/session.svelte";

/** What a place is given: the drawing at hand, and the way to another place. */
export interface PlaceProps {
  session: Session;
  ongo: (place: string) => void;
}

export interface Place {
  readonly id: string;
  readonly title: MessageKey;
  /** Loaded when it is first gone to. The first place comes with the app. */
  readonly load?: () => Promise<{ readonly default: Component<PlaceProps> }>;
}

/** The places of the app, in the order of every menu; the digit keys go to them in this order. A new one is a line here. */
export const PLACES: readonly Place[] = [
  { id: "sketch", title: "place.sketch" },
  { id: "plan", title: "place.plan", load: () => import("./plan/Plan.svelte") },
  { id: "rehearse", title: "place.rehearse", load: () => import("./rehearse/Rehearse.svelte") },
  { id: "scenario", title: "place.scenario", load: () => import("./attempt/Attempt.svelte") },
  { id: "debrief", title: "place.debrief", load: () => import("./debrief/Debrief.svelte") },
  { id: "sheet", title: "place.sheet", load: () => import("./sheet/SheetPlace.svelte") },
  { id: "teach", title: "place.teach", load: () => import("./teach/Teach.svelte") },
];

/** The place that an address names; the first one where it names none. */
export const placeOf = (hash: string): Place => PLACES.find(({ id }) => hash === `#${id}`) ?? PLACES[0]!;
