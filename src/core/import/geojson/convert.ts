import { type DeviceKind, deviceOf, DEVICES, isAtCustomer, isDeviceKind, standsInLine } from "../../devices";
import { isObject, type JsonObject } from "../../terms";
import { projected } from "../cim/places";
import { DrawingDraft } from "../draft";
import type { Ledger } from "../ledger";
import { cell, type Feature, featuresOf, number, type Position, text } from "./features";
import { keysOf } from "./keys";
import { isPole, isPadLike } from "../../document";

/** How near a line's end must lie to a point that it is to end on [m]; the foreign member may say otherwise. */
const SNAP_M = 1;
/** Mean radius of the earth [m]. */
const EARTH_RADIUS_M = 6371008.8;
const RADIANS = Math.PI / 180;

const POINT_CLASSES = ["pole", "pad", "station", "service"] as const;
type PointClass = (typeof POINT_CLASSES)[number];
const isPointClass = (it: string): it is PointClass => (POINT_CLASSES as readonly string[]).includes(it);

const KINDS = (Object.keys(DEVICES) as DeviceKind[]).map((kind) => ({ kind }));
const kindsThat = (are: (it: { readonly kind: DeviceKind }) => boolean): readonly string[] =>
  KINDS.filter(are).map(({ kind }) => kind);

/** What a place and what hangs on it tell enough of, though it has two ends. */
const TRANSFORMER: DeviceKind = "transformer";
const AT_THE_CUSTOMER = kindsThat(isAtCustomer);
const HANGING = kindsThat(({ kind }) => deviceOf(kind).ends.length === 1);
/** Kinds that stand between a point and what they feed. */
const IN_A_ROW = kindsThat(
  (it) => !isAtCustomer(it) && (deviceOf(it.kind).opening !== undefined || standsInLine(it)),
);
/** Kinds that a place and what it feeds do not tell enough of. */
const ELSEWHERE = kindsThat(
  ({ kind }) =>
    kind !== TRANSFORMER && ![...AT_THE_CUSTOMER, ...HANGING, ...IN_A_ROW].some((it) => it === kind),
);

/** A map as a draft of a drawing. */
export interface ConvertedMap {
  readonly draft: DrawingDraft;
  readonly title: string;
  readonly frequencyHz: 50 | 60;
}

/** Length of an arc between two places by the haversine formula (Sinnott 1984) [m]. */
function metresBetween([lon1, lat1]: Position, [lon2, lat2]: Position): number {
  const [a, b] = [lat1 * RADIANS, lat2 * RADIANS];
  const h =
    Math.sin((b - a) / 2) ** 2 + Math.cos(a) * Math.cos(b) * Math.sin(((lon2 - lon1) * RADIANS) / 2) ** 2;
  return 2 * EARTH_RADIUS_M * Math.asin(Math.min(1, Math.sqrt(h)));
}

/** Reads a FeatureCollection of RFC 7946 in the convention of docs/import.md. */
export function convertMap(value: JsonObject, ledger: Ledger, hertz: 50 | 60 | undefined): ConvertedMap {
  const member = isObject(value["stillhot"]) ? value["stillhot"] : {};
  const crs = JSON.stringify(value["crs"] ?? null);
  if (crs !== "null" && !/CRS84/.test(crs)) ledger.error("importing.error.crs", { found: crs.slice(0, 80) });
  const map = new MapReading(featuresOf(value, ledger), ledger, Number(member["snap_m"] ?? SNAP_M));
  map.read();
  const said = member["frequencyHz"];
  if (said !== 50 && said !== 60 && hertz === undefined) ledger.note("assumed", "frequency", "");
  return {
    draft: map.draft,
    title: typeof member["title"] === "string" ? member["title"] : "",
    frequencyHz: said === 50 || said === 60 ? said : (hertz ?? 60),
  };
}

/** One map on its way into a draft. */
class MapReading {
  readonly draft: DrawingDraft;
  readonly #features: readonly Feature[];
  readonly #ledger: Ledger;
  readonly #snapM: number;
  readonly #byId: ReadonlyMap<string, Feature>;
  /** place of each point of the file */
  readonly #places = new Map<string, Position>();
  /** transformers by the point that they stand at */
  readonly #transformers = new Map<string, Feature[]>();
  /** where what is fed through devices begins: by point and fed thing */
  readonly #beyond = new Map<string, string>();

  constructor(features: readonly Feature[], ledger: Ledger, snapM: number) {
    this.draft = new DrawingDraft(ledger);
    this.#features = features;
    this.#ledger = ledger;
    this.#snapM = snapM;
    this.#byId = new Map(features.map((it) => [it.id, it]));
  }

  read(): void {
    this.#readPoints();
    const devices = this.#of("device");
    for (const device of devices) this.#checkDevice(device);
    const ours = devices.filter((it) => isDeviceKind(kindOf(it)));
    for (const it of ours.filter(isBetween)) this.#readBetween(it);
    const known = ours.filter((it) => !isBetween(it) && this.#on(it) !== undefined);
    for (const it of known.filter((it) => ELSEWHERE.includes(kindOf(it))))
      this.#ledger.error("importing.error.deviceEnds", { id: it.id, kind: kindOf(it) });
    for (const it of known.filter((it) => kindOf(it) === TRANSFORMER))
      this.#transformers.set(this.#on(it)!, [...(this.#transformers.get(this.#on(it)!) ?? []), it]);
    this.#readRows(known.filter((it) => IN_A_ROW.includes(kindOf(it))));
    for (const it of known.filter((it) => kindOf(it) === TRANSFORMER)) this.#readTransformer(it);
    this.#readCustomers(known.filter((it) => AT_THE_CUSTOMER.includes(kindOf(it))));
    for (const it of known.filter((it) => HANGING.includes(kindOf(it)))) this.#readHanging(it);
    for (const span of this.#of("span")) this.#readSpan(span);
    for (const { className } of this.#features)
      if (!isPointClass(className) && className !== "span" && className !== "device")
        this.#ledger.note("leftOut", "featureClass", "", { className });
    const flat = projected(new Map([...this.#places].map(([key, [x, y]]) => [key, { x, y }])));
    for (const point of this.draft.points.values()) {
      const spot = flat.get(this.#standsAt(point.key));
      if (spot !== undefined)
        point.place = { x: Math.round(spot.x * 10) / 10, y: Math.round(spot.y * 10) / 10 };
    }
  }

  #of = (className: string): readonly Feature[] => this.#features.filter((it) => it.className === className);

  /** The point of the file at which a derived point stands. */
  #standsAt = (key: string): string => this.draft.points.get(key)!.idOf.own.split(" ")[0]!;

  #readPoints(): void {
    for (const feature of this.#features) {
      const { id, className, places, properties } = feature;
      if (!isPointClass(className)) continue;
      const [place] = places;
      if (place === undefined) this.#ledger.note("warnings", "noPosition", id);
      else this.#places.set(id, place);
      const earthOhms = number(feature, "earth_ohms", this.#ledger);
      const evidence = text(properties, "evidence");
      this.draft.points.set(id, {
        key: id,
        label: text(properties, "label") ?? "",
        idOf: { name: id, own: id },
        kind: className,
        ...(earthOhms === undefined ? {} : { earthOhms }),
        ...(evidence === undefined ? {} : { evidence }),
      });
    }
  }

  #checkDevice(device: Feature): void {
    const kind = kindOf(device);
    if (!isDeviceKind(kind) || !(kind in DEVICES))
      this.#ledger.error("importing.error.deviceKind", { id: device.id, found: kind });
    if (isBetween(device)) return;
    if (this.#on(device) === undefined)
      this.#ledger.error("importing.error.deviceOn", {
        id: device.id,
        found: text(device.properties, "on") ?? "–",
      });
    if (!IN_A_ROW.includes(kind)) return;
    const toward = text(device.properties, "toward");
    const fed = toward === undefined ? undefined : this.#byId.get(toward);
    if (fed === undefined)
      this.#ledger.error("importing.error.deviceToward", { id: device.id, found: toward ?? "–" });
    const missing = [...(text(device.properties, "phases") ?? "")].filter(
      (it) => !(text(fed?.properties ?? {}, "phases") ?? it).includes(it),
    );
    if (fed !== undefined && missing.length > 0)
      this.#ledger.error("importing.error.devicePhase", {
        id: device.id,
        phase: missing.join(", "),
        fed: fed.id,
      });
  }

  /** The point that a device stands at: as it says, else the nearest one within reach. */
  #on(device: Feature): string | undefined {
    const on = text(device.properties, "on");
    if (on !== undefined) return this.draft.points.has(on) ? on : undefined;
    const [place] = device.places;
    return place === undefined
      ? undefined
      : this.#nearest(place).find(([, metres]) => metres <= this.#snapM)?.[0];
  }

  #nearest = (place: Position): (readonly [string, number])[] =>
    [...this.#places].map(([id, it]) => [id, metresBetween(place, it)] as const).sort((a, b) => a[1] - b[1]);

  /** A point beyond a device, at the same pole; its name is made of what it is an end of. */
  #derive(id: string, at: string): string {
    const { kind } = this.draft.points.get(at)!;
    const standing = this.#standsAt(at);
    this.draft.points.set(id, { key: id, label: "", idOf: { name: id, own: `${standing} ${id}` }, kind });
    return id;
  }

  /** Whether a point is one of the file's own, and not made of a device. */
  #isGiven = (id: string): boolean => this.draft.points.get(id)?.idOf.own === id;

  /** A device that names the points between which it stands. */
  #readBetween(it: Feature): void {
    const ends = ["from_id", "to_id", "alt_id"].flatMap((key) => {
      const named = text(it.properties, key);
      if (named === undefined) return [];
      if (!this.#isGiven(named))
        this.#ledger.error("importing.error.spanEndId", { id: it.id, key, found: named });
      return [named];
    });
    if (ends.length < 2) this.#ledger.error("importing.error.deviceEnds", { id: it.id, kind: kindOf(it) });
    else this.#add(it, ends, true);
  }

  /** Devices one behind the other, from their point toward what they feed. */
  #readRows(devices: readonly Feature[]): void {
    const rows = new Map<string, Feature[]>();
    for (const it of devices) {
      const key = rowKey(this.#on(it)!, text(it.properties, "toward") ?? "");
      rows.set(key, [...(rows.get(key) ?? []), it]);
    }
    const orderOf = (it: Feature) => number(it, "order", this.#ledger) ?? 0;
    for (const [key, row] of rows) {
      let from = this.#on(row[0]!)!;
      for (const device of row.sort((a, b) => orderOf(a) - orderOf(b))) {
        const to = this.#derive(`${this.#on(device)!}-${device.id}`, from);
        this.#add(device, [from, to], true);
        from = to;
      }
      this.#beyond.set(key, from);
    }
  }

  #add(feature: Feature, ends: readonly string[], isDirected = false, more: JsonObject = {}): void {
    const kind = (feature.className === "span" ? "span" : kindOf(feature)) as DeviceKind;
    this.draft.add({
      idOf: { name: feature.id, own: feature.id },
      label: text(feature.properties, "label") ?? "",
      shown: feature.id,
      keys: { kind, ...keysOf(feature, this.#ledger), ...more },
      ends,
      isDirected,
    });
  }

  #readTransformer(it: Feature): void {
    const on = this.#on(it)!;
    const from = this.#beyond.get(rowKey(on, it.id)) ?? on;
    this.#add(it, [from, this.#derive(`${it.id}-s`, on)], true);
  }

  /** Meter, then main, then what the customer has. */
  #readCustomers(devices: readonly Feature[]): void {
    const byPoint = new Map<string, Feature[]>();
    for (const it of devices) byPoint.set(this.#on(it)!, [...(byPoint.get(this.#on(it)!) ?? []), it]);
    for (const [on, row] of byPoint) {
      row.sort((a, b) => AT_THE_CUSTOMER.indexOf(kindOf(a)) - AT_THE_CUSTOMER.indexOf(kindOf(b)));
      let from = on;
      for (const [index, it] of row.entries()) {
        const to = this.#derive(index === row.length - 1 ? `${on}-load` : `${on}-${it.id}`, on);
        this.#add(it, [from, to], true);
        from = to;
      }
      this.#beyond.set(rowKey(on, ""), from);
    }
  }

  #readHanging(it: Feature): void {
    const on = this.#on(it)!;
    const isCustomers = kindOf(it) === "load" || kindOf(it) === "generator";
    const behind = isCustomers ? this.#beyond.get(rowKey(on, "")) : undefined;
    const bushings = /[12]/.test(text(it.properties, "phases") ?? "") ? this.#bushingsAt(on) : undefined;
    this.#add(it, [behind ?? bushings ?? on]);
  }

  /** Secondary bushings at a point, where exactly one transformer stands there. */
  #bushingsAt(point: string): string | undefined {
    const there = this.#transformers.get(point) ?? [];
    return there.length === 1 ? `${there[0]!.id}-s` : undefined;
  }

  #readSpan(span: Feature): void {
    const first = this.#endOf(span, "from_id", span.places[0]);
    const last = this.#endOf(span, "to_id", span.places.at(-1));
    if (first === undefined || last === undefined) return;
    const along = span.places
      .slice(1)
      .reduce((sum, it, index) => sum + metresBetween(span.places[index]!, it), 0);
    const lengthM = number(span, "length_m", this.#ledger) ?? Math.round(along * 10) / 10;
    this.#add(span, [first, last], false, { lengthM });
  }

  /** Where a span ends: named, else at the nearest point; then behind the devices that feed it from there. */
  #endOf(span: Feature, key: "from_id" | "to_id", place: Position | undefined): string | undefined {
    const named = text(span.properties, key);
    if (named !== undefined) {
      const end = this.#isGiven(named)
        ? this.#joined(span, named)
        : this.draft.points.has(named)
          ? named
          : this.draft.points.has(`${named}-s`)
            ? `${named}-s`
            : undefined;
      if (end === undefined)
        this.#ledger.error("importing.error.spanEndId", { id: span.id, key, found: named });
      return end;
    }
    const [nearest] = place === undefined ? [] : this.#nearest(place);
    if (nearest !== undefined && nearest[1] <= this.#snapM) return this.#joined(span, nearest[0]);
    this.#ledger.error("importing.error.spanEnd", {
      id: span.id,
      key,
      metres: nearest === undefined ? "–" : Math.round(nearest[1] * 100) / 100,
      nearest: nearest?.[0] ?? "–",
      most: this.#snapM,
    });
    return undefined;
  }

  #joined(span: Feature, point: string): string {
    const beyond = this.#beyond.get(rowKey(point, span.id));
    if (beyond !== undefined) return beyond;
    const isSecondary = cell(span.properties, "construction") === "secondary";
    const place = this.draft.points.get(point)!;
    return (
      (isSecondary && (isPole(place) || isPadLike(place)) ? this.#bushingsAt(point) : undefined) ?? point
    );
  }
}

/** A circuit alongside names its span; all else that names its points stands between them. */
const isBetween = ({ properties }: Feature): boolean => text(properties, "from_id") !== undefined;

const kindOf = ({ properties }: Feature): string => text(properties, "device") ?? "";

const rowKey = (point: string, fed: string): string => `${point}\n${fed}`;
