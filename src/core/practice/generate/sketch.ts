import type { DeviceKind } from "../../devices";
import type { System } from "../../document";
import type { JsonObject } from "../../terms";
import type { Chance } from "./chance";
import type { TapWords } from "./words";

/** Where something can hang: a line on a pole. */
export interface HangingSpot {
  readonly point: string;
  readonly structure: string;
  /** the pole's number */
  readonly pole: number;
  readonly phases: string;
}

/** A transformer or bank that was hung, with the points that work is done at. */
export interface HungTransformer {
  readonly name: string;
  readonly spot: HangingSpot;
  readonly phases: string;
  /** below its cutouts */
  readonly bushing: string;
  readonly secondary: string;
  /** letters of the secondary */
  readonly letters: string;
  readonly hasArrester: boolean;
}

/** The far end of a length of cable at a pad. */
export interface CableEnd {
  readonly point: string;
  readonly pad: number;
  readonly phase: string;
}

/** A system that is being put together, with what later parts hang on. */
export class Sketch {
  private readonly structures: Record<string, JsonObject> = {};
  private readonly points: Record<string, JsonObject> = {};
  private readonly elements: Record<string, JsonObject & { readonly kind: DeviceKind }> = {};
  private readonly counts = new Map<string, number>();
  private lastPole: number;
  private lastPad = 0;
  private lastHouse: number;

  /** the main line, station end first */
  readonly feeder: HangingSpot[] = [];
  /** the poles of the sideline, the first one away from the main line first */
  readonly sideline: HangingSpot[] = [];
  readonly sidelineSpans: string[] = [];
  readonly transformers: HungTransformer[] = [];
  readonly banks: HungTransformer[] = [];
  readonly cables: (readonly [CableEnd, CableEnd])[] = [];
  /** just below the device that the sideline leaves by */
  head: HangingSpot | undefined;
  private readonly stations = new Set<string>();
  readonly street: string;

  constructor(
    readonly chance: Chance,
    readonly words: TapWords,
    /** line to line [kV] */
    readonly kvLL: number,
  ) {
    this.lastPole = chance.between(10, 180);
    this.lastHouse = chance.between(1, 40);
    this.street = chance.oneOf(words.streets);
  }

  /** Volts from a phase to neutral as a transformer's plate gives them [kV]. */
  get kvToNeutral(): number {
    return PLATE_KV[this.kvLL]!;
  }

  system(): System {
    return {
      frequencyHz: 60,
      structures: this.structures,
      points: this.points,
      elements: this.elements,
    };
  }

  /** The next pole along, with one line on it. */
  newPole(phases: string): HangingSpot {
    const pole = ++this.lastPole;
    const structure = `pole${pole}`;
    this.structures[structure] = { label: this.words.pole(pole), kind: "pole" };
    return { point: this.pointOn(structure, { earthOhms: 25 }), structure, pole, phases };
  }

  /** Another line on the same pole, beyond a device. */
  beyond({ structure, pole }: HangingSpot, phases: string): HangingSpot {
    return { point: this.pointOn(structure), structure, pole, phases };
  }

  newPad(): { readonly structure: string; readonly pad: number } {
    const pad = ++this.lastPad;
    const structure = `pad${pad}`;
    this.structures[structure] = { label: this.words.pad(pad), kind: "pad" };
    return { structure, pad };
  }

  newStation(name: string): { readonly structure: string; readonly point: string } {
    const structure = this.next("station");
    this.stations.add(name);
    this.structures[structure] = { label: name, kind: "station" };
    return { structure, point: this.pointOn(structure, { kind: "station", earthOhms: 1 }) };
  }

  isStation(name: string): boolean {
    return this.stations.has(name);
  }

  /** A customer's place along the street, for so many houses. */
  newPlace(houses: number): { readonly structure: string; readonly name: string } {
    const from = this.lastHouse + this.chance.between(1, 3);
    this.lastHouse = from + houses - 1;
    const name =
      houses === 1
        ? this.words.address(from, this.street)
        : this.words.addresses(from, this.lastHouse, this.street);
    return this.placeCalled(name);
  }

  placeCalled(name: string): { readonly structure: string; readonly name: string } {
    const structure = this.next("place");
    this.structures[structure] = { label: capital(name), kind: "service" };
    return { structure, name };
  }

  /** A point on a structure; the place that it is follows from what ends there. */
  pointOn(structure: string, more: JsonObject = {}): string {
    const id = this.next("p");
    this.points[id] = { on: structure, ...more };
    return id;
  }

  /** @param prefix of its id */
  add(prefix: string, kind: DeviceKind, keys: JsonObject): string {
    const id = this.next(prefix);
    this.elements[id] = { kind, ...keys };
    return id;
  }

  private next(prefix: string): string {
    const count = (this.counts.get(prefix) ?? 0) + 1;
    this.counts.set(prefix, count);
    return `${prefix}${count}`;
  }
}

/** Usual volts of distribution lines and what their transformers' plates say. Source: ANSI C84.1 and C57.12.20, from memory. */
const PLATE_KV: Readonly<Record<number, number>> = { 12.47: 7.2, 13.2: 7.62, 13.8: 7.97, 24.94: 14.4 };

/** Voltages that a line can have, line to line [kV]; source as above. */
export const LINE_KV: readonly number[] = Object.keys(PLATE_KV).map(Number);

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
