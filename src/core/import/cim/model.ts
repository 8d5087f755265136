import type { Ledger } from "../ledger";
import { DRAWING_PROFILE } from "../neutral";
import { say } from "../../terms";
import { type RdfModel, type RdfObject, UnreadableModel } from "./rdf";

/** How a model's numbers are turned into volts, watts and metres. */
export interface Units {
  readonly volts: number;
  readonly watts: number;
  readonly metres: number;
}

const PLAIN: Units = { volts: 1, watts: 1, metres: 1 };
/** Exchange profiles of transmission operators: kV, MW, Mvar, MVA, and km for lengths (km from memory). */
const EXCHANGE: Units = { volts: 1e3, watts: 1e6, metres: 1e3 };

/** Beyond this no base voltage is one in kilovolts: the highest standard voltage is 1200 kV (IEC 60038, from memory) [kV]. */
const MOST_KILOVOLTS = 2000;

/** The objects of a model, asked by class and by what points to them. */
export class CimModel {
  readonly ledger: Ledger;
  readonly units: Units;
  /** whether a drawing was written as this model */
  readonly isDrawing: boolean;
  readonly #objects: ReadonlyMap<string, RdfObject>;
  readonly #shown: ReadonlyMap<string, string>;
  readonly #byClass = new Map<string, RdfObject[]>();
  /** reference name → key of its target → who points there */
  readonly #pointing = new Map<string, Map<string, RdfObject[]>>();

  constructor(rdf: RdfModel, ledger: Ledger, asked?: "plain" | "kilo") {
    this.ledger = ledger;
    this.isDrawing = rdf.profiles.includes(DRAWING_PROFILE);
    this.#objects = rdf.objects;
    this.#shown = rdf.shown;
    for (const object of rdf.objects.values()) {
      listed(this.#byClass, object.className).push(object);
      for (const [name, targets] of object.references)
        for (const target of targets) {
          const of = this.#pointing.get(name) ?? new Map<string, RdfObject[]>();
          this.#pointing.set(name, of);
          listed(of, target).push(object);
        }
    }
    this.units = asked === undefined ? this.#unitsOf(rdf) : asked === "kilo" ? EXCHANGE : PLAIN;
  }

  /** Objects of some classes, in the order of the file. */
  all(...classNames: string[]): readonly RdfObject[] {
    if (classNames.length === 1) return this.#byClass.get(classNames[0]!) ?? [];
    return classNames.flatMap((it) => this.#byClass.get(it) ?? []);
  }

  classCounts(): Record<string, number> {
    return Object.fromEntries([...this.#byClass].map(([name, objects]) => [name, objects.length]));
  }

  byKey = (key: string): RdfObject | undefined => this.#objects.get(key);

  /** An id that something points to, as the file writes it. */
  shownId = (key: string): string => this.#shown.get(key) ?? key;

  /** What an object points to under the first of some names that it has. */
  target(object: RdfObject, ...names: string[]): RdfObject | undefined {
    const key = this.targetKey(object, ...names);
    return key === undefined ? undefined : this.#objects.get(key);
  }

  targetKey = (object: RdfObject, ...names: string[]): string | undefined =>
    names.map((it) => object.references.get(it)?.[0]).find((it) => it !== undefined);

  /** Who points to an object by one of some names, in the order of the file. */
  pointingTo(object: RdfObject, ...names: string[]): readonly RdfObject[] {
    return names.flatMap((it) => this.#pointing.get(it)?.get(object.key) ?? []);
  }

  /** A number, or nothing where it is not given; what is no number is an error. */
  number(object: RdfObject, name: string): number | undefined {
    const text = object.attributes.get(name);
    if (text === undefined || text === "") return undefined;
    const value = Number(text);
    if (Number.isFinite(value)) return value;
    this.ledger.error("importing.error.noNumber", { object: named(object), name, found: text });
    return undefined;
  }

  flag(object: RdfObject, name: string): boolean | undefined {
    const text = object.attributes.get(name)?.toLowerCase();
    return text === "true" || text === "1" ? true : text === "false" || text === "0" ? false : undefined;
  }

  volts = (object: RdfObject, name: string): number | undefined =>
    scaled(this.number(object, name), this.units.volts);
  watts = (object: RdfObject, name: string): number | undefined =>
    scaled(this.number(object, name), this.units.watts);
  metres = (object: RdfObject, name: string): number | undefined =>
    scaled(this.number(object, name), this.units.metres);

  /** An enumeration value, without its class. */
  choice = (object: RdfObject, ...names: string[]): string | undefined => this.targetKey(object, ...names);

  /** Line-to-line volts of the base voltage of an object, its container or its node [V]. */
  baseVolts(object: RdfObject): number | undefined {
    const base =
      this.target(object, "BaseVoltage") ??
      [this.target(object, "EquipmentContainer")].map((it) => it && this.target(it, "BaseVoltage"))[0];
    return base === undefined ? undefined : this.volts(base, "nominalVoltage");
  }

  #unitsOf({ profiles }: RdfModel): Units {
    const isExchange = profiles.some((it) => /EquipmentCore|CoreEquipment/.test(it));
    const nominal = this.all("BaseVoltage").flatMap((it) => this.number(it, "nominalVoltage") ?? []);
    if (isExchange) {
      const highest = Math.max(0, ...nominal);
      if (highest > MOST_KILOVOLTS)
        throw new UnreadableModel(
          say("importing.error.unitsClash", { found: highest, most: MOST_KILOVOLTS }),
        );
      this.ledger.note("assumed", "kilovolts", "");
      return EXCHANGE;
    }
    if (this.isDrawing) return PLAIN;
    for (const profile of profiles) this.ledger.note("warnings", "otherProfile", "", { profile });
    const loads = this.all("EnergyConsumer").flatMap((it) => this.number(it, "p") ?? []);
    const areSmall =
      nominal.length > 0 &&
      nominal.every((it) => it < 1000) &&
      loads.length > 0 &&
      loads.every((it) => Math.abs(it) < 1000);
    if (areSmall) this.ledger.error("importing.error.units");
    return PLAIN;
  }
}

const scaled = (value: number | undefined, by: number) => (value === undefined ? undefined : value * by);

function listed<Key, Item>(map: Map<Key, Item[]>, key: Key): Item[] {
  const known = map.get(key);
  if (known !== undefined) return known;
  const fresh: Item[] = [];
  map.set(key, fresh);
  return fresh;
}

/** The name that the file gives an object, or its id. */
export const nameOf = (object: RdfObject): string => object.attributes.get("name") || object.id;

/** What the id of a thing is made of: a drawing that was written as a model keeps its ids as other names. */
export const idNameOf = (model: CimModel, object: RdfObject): string =>
  (model.isDrawing ? object.attributes.get("aliasName") : undefined) ?? object.attributes.get("name") ?? "";

/** An object in a message: `Breaker "CB 2" (_br)`. */
export const named = (object: RdfObject): string => {
  const name = object.attributes.get("name");
  return name === undefined || name === ""
    ? `${object.className} ${object.id}`
    : `${object.className} "${name}" (${object.id})`;
};
