import type { StillhotDocument } from "../../core";
import type { Session } from "../session/session.svelte";
import type { MessageKey } from "../words/catalogue";

/** What a place is given: the drawing at hand, the way to another place, and a way to take up another drawing. */
export interface PlaceProps {
  session: Session;
  ongo: (place: string) => void;
  /** @returns whether it is the drawing at hand now: what was there may have to be kept first */
  ontake: (document: StillhotDocument) => Promise<boolean>;
}

/** A place of the app: where one is, as the menu and the address have it. */
export interface Place {
  readonly id: string;
  readonly title: MessageKey;
  /** The place of the menu that leads here, for one that the menu does not name itself. */
  readonly under?: string;
}

/** The places of the app. A new one is a line here, and one in `../loads.ts` that says where it is. */
export const PLACES = [
  { id: "sketch", title: "place.sketch" },
  { id: "plan", title: "place.plan" },
  { id: "rehearse", title: "place.rehearse" },
  { id: "scenario", title: "place.scenario", under: "rehearse" },
  { id: "drill", title: "place.drill", under: "rehearse" },
  { id: "debrief", title: "place.debrief" },
  { id: "sheet", title: "place.sheet" },
  { id: "teach", title: "place.teach" },
  { id: "learn", title: "place.learn" },
] as const satisfies readonly Place[];

/** The id of a place. */
export type PlaceId = (typeof PLACES)[number]["id"];

/** What every menu offers, in this order; the digit keys go there in the same. */
export const MENU: readonly Place[] = PLACES.filter((it: Place) => it.under === undefined);

/** The place that an address names; the first one where it names none. */
export const placeOf = (hash: string): Place & { readonly id: PlaceId } =>
  PLACES.find(({ id }) => hash === `#${id}`) ?? PLACES[0];
