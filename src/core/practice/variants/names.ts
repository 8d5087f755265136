import type { Chance } from "../generate/chance";
import { type StillhotDocument, isStation, isHouse } from "../../document";

/** Invented places and stations. They are part of a variant's bytes, which never change: a longer list is a new version. */
const PLACES = [
  "Gorse Hill",
  "Juniper Road",
  "Sandpit Lane",
  "Ferry Street",
  "Larch Walk",
  "Heron Close",
  "Tannery Road",
  "Cider Lane",
  "Bracken Way",
  "Saltmarsh",
  "Kiln Bank",
  "Plover Green",
];
const STATIONS = ["Longmeadow", "Harrow Lane", "Stonecross", "Millrace", "Copper Beech", "Tollgate"];

type Labels = Readonly<Record<string, { readonly label?: string; readonly kind?: string }>>;

const structuresOf = ({ system }: StillhotDocument): readonly { label: string; kind: string }[] =>
  Object.values((system.structures ?? {}) as Labels).map(({ label = "", kind = "pole" }) => ({
    label,
    kind,
  }));

const NUMBERED = /^(?:pole|pad|vault|poteau|socle) (\d+)/i;
const ADDRESS = /^(\d+) (\D+)$/;

/** Words of a file that name a place or a station, each with another in its place. */
export function otherNames(document: StillhotDocument, chance: Chance): ReadonlyMap<string, string> {
  const structures = structuresOf(document);
  const stations = structures.flatMap((it) =>
    isStation(it)
      ? (/^(?:Poste (?:de )?(.+)|(.+) station)$/.exec(it.label)?.slice(1) ?? []).filter(Boolean)
      : [],
  );
  // `The Lindens`, `Old Mill sideline`: what is a name of them.
  const [, place] = /^(?:The )?([^:]+?)(?: \p{Ll}+)*\s?:/u.exec(document.title) ?? [];
  const streets = structures.flatMap((it) => (isHouse(it) ? (ADDRESS.exec(it.label)?.[2] ?? []) : []));
  const isName = (it: string) => /^\p{Lu}/u.test(it) && !NUMBERED.test(it);
  const places = [...new Set([...(place === undefined ? [] : [place]), ...streets])].filter(isName);
  const taken = new Set([...places, ...stations]);
  const drawn = (names: readonly string[], from: readonly string[]) => {
    const free = chance.shuffled(from.filter((it) => !taken.has(it)));
    return names.map((name, index) => [name, free[index] ?? name] as const);
  };
  return new Map([...drawn(places, PLACES), ...drawn([...new Set(stations)], STATIONS)]);
}

/** Addresses of one street in another order: whatever is hidden at one of them stands at another. */
export function otherHouses(document: StillhotDocument, chance: Chance): ReadonlyMap<string, string> {
  const byStreet = new Map<string, string[]>();
  for (const structure of structuresOf(document)) {
    const { label } = structure;
    const street = isHouse(structure) ? ADDRESS.exec(label)?.[2] : undefined;
    if (street !== undefined) byStreet.set(street, [...(byStreet.get(street) ?? []), label]);
  }
  return new Map(
    [...byStreet.values()].flatMap((labels) => {
      const others = chance.shuffled(labels);
      return labels.map((it, index) => [it, others[index]!] as const);
    }),
  );
}

/** Numbers of poles and pads, each so much higher that no two of the file's numbers become one. */
export function otherNumbers(document: StillhotDocument, chance: Chance): ReadonlyMap<string, string> {
  const own = new Set(structuresOf(document).flatMap(({ label }) => NUMBERED.exec(label)?.[1] ?? []));
  const all = new Set((JSON.stringify(document).match(/\d+/g) ?? []).filter((it) => !own.has(it)));
  const shifts = Array.from({ length: 60 }, (_, index) => index + 3).filter((shift) =>
    [...own].every((it) => !all.has(String(Number(it) + shift)) && !own.has(String(Number(it) + shift))),
  );
  const shift = shifts.length === 0 ? 0 : chance.oneOf(shifts);
  return new Map([...own].map((it) => [it, String(Number(it) + shift)]));
}
