import type { Component } from "svelte";
import type { MessageKey } from "../core";
import type { Session } from "./session/session.svelte";
import { later } from "./words/later";

/** What a place is given: the drawing at hand, and the way to another place. */
export interface PlaceProps {
  session: Session;
  ongo: (place: string) => void;
}

export interface Place {
  readonly id: string;
  readonly title: MessageKey;
  /** The place of the menu that leads here, for one that the menu does not name itself. */
  readonly under?: string;
  /** Loaded when it is first gone to. The first place comes with the app. */
  readonly load?: () => Promise<{ readonly default: Component<PlaceProps> }>;
}

/** The places of the app. A new one is a line here. */
export const PLACES: readonly Place[] = [
  { id: "sketch", title: "place.sketch" },
  { id: "plan", title: "place.plan", load: () => later(() => import("./plan/Plan.svelte")) },
  { id: "rehearse", title: "place.rehearse", load: () => later(() => import("./rehearse/Rehearse.svelte")) },
  {
    id: "scenario",
    title: "place.scenario",
    under: "rehearse",
    load: () => later(() => import("./attempt/Attempt.svelte")),
  },
  { id: "debrief", title: "place.debrief", load: () => later(() => import("./debrief/Debrief.svelte")) },
  { id: "sheet", title: "place.sheet", load: () => later(() => import("./sheet/SheetPlace.svelte")) },
  { id: "teach", title: "place.teach", load: () => later(() => import("./teach/Teach.svelte")) },
];

/** What every menu offers, in this order; the digit keys go there in the same. */
export const MENU: readonly Place[] = PLACES.filter(({ under }) => under === undefined);

/** The place that an address names; the first one where it names none. */
export const placeOf = (hash: string): Place => PLACES.find(({ id }) => hash === `#${id}`) ?? PLACES[0]!;
