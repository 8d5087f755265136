import { type SavedElement } from "../../document";
import { complex, type Complex, type JsonObject } from "../../terms";
import { named, nameOf } from "./model";
import type { RdfObject } from "./rdf";
import type { Reading } from "./reading";
import { addRegulator } from "./regulators";

/** What a winding's end says, whether it stands at a tank or at the transformer itself. */
interface WindingEnd {
  readonly object: RdfObject;
  readonly point: string | undefined;
  readonly volts: number;
  readonly va: number;
  readonly kind: string;
  readonly isGrounded: boolean;
  readonly clock: number | undefined;
}

/** Transformers: banks with their windings, units from tanks, regulators. */
export function readTransformers(reading: Reading): void {
  for (const object of reading.model.all("PowerTransformer")) {
    if (reading.isOut(object)) continue;
    const tanks = reading.model
      .pointingTo(object, "PowerTransformer")
      .filter((it) => it.className === "TransformerTank");
    if (tanks.length > 0) readTanks(reading, object, tanks);
    else readWindings(reading, object);
  }
  for (const className of PHASE_SHIFTERS)
    for (const object of reading.model.all(className))
      reading.model.ledger.note("approximated", "phaseShifter", nameOf(object));
}

/** What turns the volts of a transformer by its taps, by the classes of all versions. */
const PHASE_SHIFTERS = [
  "PhaseTapChanger",
  "PhaseTapChangerLinear",
  "PhaseTapChangerSymmetrical",
  "PhaseTapChangerAsymmetrical",
  "PhaseTapChangerTabular",
];

const byEndNumber = ({ model }: Reading, ends: readonly RdfObject[]): RdfObject[] =>
  [...ends].sort((a, b) => (model.number(a, "endNumber") ?? 0) - (model.number(b, "endNumber") ?? 0));

function pointOf(reading: Reading, end: RdfObject, of: RdfObject, index: number): string | undefined {
  const terminal = reading.model.target(end, "Terminal");
  if (terminal !== undefined) return reading.topology.pointOfTerminal(terminal, of, index + 1);
  return reading.topology.endsOf(of, index + 1)?.[index];
}

// ---- three-phase transformers that name their windings ----

function readWindings(reading: Reading, object: RdfObject): void {
  const { model } = reading;
  const ends = byEndNumber(
    reading,
    model.pointingTo(object, "PowerTransformer").filter((it) => it.className === "PowerTransformerEnd"),
  ).map((end, index) => windingOf(reading, end, object, index));
  if (ends.length < 2) {
    model.ledger.error("importing.error.windings", { object: named(object), found: ends.length });
    return;
  }
  const used = atMostThree(reading, object, ends);
  if (used === undefined) return;
  const [first, second, third] = used as [WindingEnd, WindingEnd, WindingEnd?];
  if (used.some(({ point }) => point === undefined)) return;
  if (used.some(({ volts }) => volts === 0) || first.va === 0) {
    model.ledger.error("importing.error.ratings", { object: named(object) });
    return;
  }
  if (third !== undefined) {
    readThreeWindings(reading, object, [first, second, third]);
    return;
  }
  const changers = used.flatMap((it) => changersAt(reading, it.object));
  if (first.volts === second.volts && changers.length > 0) {
    addRegulator(
      reading,
      object,
      [first.point!, second.point!],
      [..."ABC"].map((letter) => ({ letter, ends: [first.object, second.object] })),
    );
    return;
  }
  const connection = connectionOf(reading, object, first, second);
  if (connection === undefined) return;
  const percent = meshPercent(reading, first, second);
  if (percent === undefined) model.ledger.note("assumed", "leakage", nameOf(object));
  reading.add(object, {
    ends: [first.point!, second.point!],
    keys: {
      kind: "transformer",
      ...bankKeys(reading, object, connection, first, second),
      ...(percent === undefined ? {} : { rPercent: percent[0], xPercent: percent[1] }),
      ...coreOf(reading, object, used),
      ...starOf(reading, first, "primaryStarOhms"),
      ...starOf(reading, second, "secondaryStarOhms"),
    },
  });
}

/** What any three-phase bank says of its primary and its first low side. */
const bankKeys = (
  reading: Reading,
  object: RdfObject,
  connection: string,
  first: WindingEnd,
  second: WindingEnd,
) => ({
  phases: "ABC",
  ...reading.withoutNeutral,
  connection,
  kva: first.va / 1000,
  primaryKv: first.volts / 1000 / tapRatio(reading, object, first),
  secondaryV: second.volts * tapRatio(reading, object, second),
});

function windingOf(reading: Reading, end: RdfObject, of: RdfObject, index: number): WindingEnd {
  const { model } = reading;
  const kind = model.choice(end, "connectionKind") ?? "Y";
  return {
    object: end,
    point: isBuried(reading, end, of, index)
      ? buriedPoint(reading, end, of, index)
      : pointOf(reading, end, of, index),
    volts: model.volts(end, "ratedU") ?? 0,
    va: model.watts(end, "ratedS") ?? 0,
    kind: kind.replace(/n$/, ""),
    isGrounded: kind.endsWith("n") || model.flag(end, "grounded") === true,
    clock: model.number(end, "phaseAngleClock"),
  };
}

/** Whether a third winding comes out of the tank nowhere. */
const isBuried = ({ model, topology }: Reading, end: RdfObject, of: RdfObject, index: number): boolean =>
  index === 2 &&
  model.target(end, "Terminal") === undefined &&
  topology.terminalsOf(of).length === 2 &&
  (model.volts(end, "ratedU") ?? 0) > 0;

function buriedPoint({ draft }: Reading, end: RdfObject, of: RdfObject, index: number): string {
  draft.ledger.note("assumed", "buriedWinding", nameOf(of));
  draft.points.set(end.key, {
    key: end.key,
    label: "",
    idOf: { name: `${nameOf(of)}-${index + 1}`, own: end.key },
    kind: "station",
  });
  return end.key;
}

/** Three windings that name their leakage in pairs; that of each by the rating of the first. */
function readThreeWindings(
  reading: Reading,
  object: RdfObject,
  ends: readonly [WindingEnd, WindingEnd, WindingEnd],
): void {
  const [first, second, third] = ends;
  const pairs = [
    meshPercent(reading, first, second),
    meshPercent(reading, first, third),
    second.va === 0 ? undefined : meshPercent(reading, second, third),
  ] as const;
  const between = pairs[2] === undefined ? undefined : complex.scale(pairs[2], first.va / second.va);
  const leakage =
    pairs[0] === undefined || pairs[1] === undefined || between === undefined
      ? undefined
      : leakageKeys([pairs[0], pairs[1], between]);
  addThreeWindings(reading, object, ends, leakage, coreOf(reading, object, ends), object);
}

/** Leakage of each pair of sides as keys of the drawing. */
const leakageKeys = (pairs: readonly [Complex, Complex, Complex] | undefined): JsonObject | undefined =>
  pairs === undefined
    ? undefined
    : {
        rPercent: pairs[0][0],
        xPercent: pairs[0][1],
        rThirdPercent: pairs[1][0],
        xThirdPercent: pairs[1][1],
        rBetweenPercent: pairs[2][0],
        xBetweenPercent: pairs[2][1],
      };

/** Three windings, each at a point of its own. */
function addThreeWindings(
  reading: Reading,
  object: RdfObject,
  [first, second, third]: readonly [WindingEnd, WindingEnd, WindingEnd],
  leakage: JsonObject | undefined,
  core: JsonObject,
  of: RdfObject,
): void {
  const lows = [second, third];
  const connection = [first, ...lows].map(wordOf).join("-");
  if (!/^(Yg?|D)-(Yg?|D)-(Yg?|D)$/.test(connection)) {
    reading.model.ledger.error("importing.error.connection", { object: named(object), connection });
    return;
  }
  // Two wyes behind a delta turn alike, as the first of them does.
  const [leading] = lows.filter(({ kind }) => kind !== "D");
  const fits = lows.every((low) =>
    fitsClock(reading, object, first, low, first.kind === "D" && low.kind !== "D" ? leading! : low),
  );
  if (!fits) return;
  if (leakage === undefined) reading.model.ledger.note("assumed", "leakage", nameOf(object));
  reading.add(of, {
    ends: [first, second, third].map(({ point }) => point!),
    keys: {
      kind: "threeWinding",
      ...bankKeys(reading, object, connection, first, second),
      thirdV: third.volts * tapRatio(reading, object, third),
      ...leakage,
      ...core,
      ...starOf(reading, first, "primaryStarOhms"),
      ...starOf(reading, second, "secondaryStarOhms"),
      ...starOf(reading, third, "thirdStarOhms"),
    },
  });
}

/**
 * Two windings, or three: an unloaded one stays, since it holds the volts of the others. One that the file gives no volts is
 * left out where nothing hangs on it, and so is what is beyond three; more that are loaded are an error.
 */
function atMostThree(reading: Reading, object: RdfObject, ends: WindingEnd[]): WindingEnd[] | undefined {
  const isUsed = (it: WindingEnd) => it.point !== undefined && reading.isUsedByOthers(it.point, object);
  const idle = ends.filter(
    (it, index) => index > 0 && !isUsed(it) && (it.volts === 0 || it.point === undefined || ends.length > 3),
  );
  const used = ends.length === 2 ? ends : ends.filter((it) => !idle.includes(it));
  if (used.length < 2 || used.length > 3) {
    reading.model.ledger.error("importing.error.windingsLoaded", {
      object: named(object),
      windings: ends.length,
    });
    return undefined;
  }
  if (ends.length === 2) return ends;
  for (const { point } of idle) {
    reading.draft.ledger.note("leftOut", "idleWinding", nameOf(object));
    if (point !== undefined) reading.draft.points.delete(point);
  }
  return used;
}

const wordOf = ({ kind, isGrounded }: WindingEnd): string =>
  kind === "Y" ? (isGrounded ? "Yg" : "Y") : kind;

function connectionOf(
  reading: Reading,
  object: RdfObject,
  first: WindingEnd,
  second: WindingEnd,
): string | undefined {
  const connection = `${wordOf(first)}-${wordOf(second)}`;
  if (!["D-Yg", "Yg-Yg", "Y-D", "Yg-D", "D-D", "Yg-Y", "Y-Y"].includes(connection)) {
    reading.model.ledger.error("importing.error.connection", { object: named(object), connection });
    return undefined;
  }
  return fitsClock(reading, object, first, second, second) ? connection : undefined;
}

/** Whether a low side stands turned as ours does: not at all, or between a wye and a delta so that the lower volts lag. */
function fitsClock(
  reading: Reading,
  object: RdfObject,
  first: WindingEnd,
  low: WindingEnd,
  leading: WindingEnd,
): boolean {
  const turn =
    ((low.clock ?? first.clock ?? NaN) - (low.clock === undefined ? 0 : (first.clock ?? 0)) + 12) % 12;
  const isTurned = (first.kind === "D") !== (low.kind === "D");
  const lagging = leading.volts > first.volts ? 11 : 1;
  if (Number.isNaN(turn)) reading.model.ledger.note("assumed", "clock", nameOf(object));
  else if (turn !== (isTurned ? lagging : 0)) {
    const connection = `${wordOf(first)}-${wordOf(low)}`;
    reading.model.ledger.error("importing.error.clock", { object: named(object), connection, clock: turn });
    return false;
  }
  return true;
}

/** Leakage of a pair of windings in per cent of the first one's rating, or nothing where the file gives none. */
function meshPercent({ model }: Reading, first: WindingEnd, second: WindingEnd): Complex | undefined {
  for (const [from, to] of [
    [first, second],
    [second, first],
  ] as const) {
    const mesh = model
      .pointingTo(from.object, "FromTransformerEnd")
      .find((it) => model.targetKey(it, "ToTransformerEnd") === to.object.key);
    if (mesh === undefined) continue;
    const base = (from.volts * from.volts) / from.va;
    return [percentOf(model.number(mesh, "r"), base), percentOf(model.number(mesh, "x"), base)];
  }
  const ohms = (it: WindingEnd): Complex => [
    model.number(it.object, "r") ?? 0,
    model.number(it.object, "x") ?? 0,
  ];
  const ratio = (first.volts / second.volts) ** 2;
  const sum = complex.add(ohms(first), complex.scale(ohms(second), ratio));
  if (complex.magnitude(sum) === 0) return undefined;
  const base = (first.volts * first.volts) / first.va;
  return [percentOf(sum[0], base), percentOf(sum[1], base)];
}

const percentOf = (ohms: number | undefined, baseOhms: number): number => (100 * (ohms ?? 0)) / baseOhms;

/** What a core draws at rated volts, by the rating of the end where the file tells it. */
function coreOf({ model }: Reading, object: RdfObject, ends: readonly WindingEnd[]): JsonObject {
  for (const end of ends) {
    const core = model
      .pointingTo(end.object, "TransformerEnd")
      .find((it) => it.className === "TransformerCoreAdmittance");
    const from = core ?? end.object;
    const b = model.number(from, "b");
    if (b === undefined || (core === undefined && b === 0)) continue;
    const scale = (100 * end.volts * end.volts) / end.va;
    return coreKeys((model.number(from, "g") ?? 0) * scale, Math.abs(b) * scale);
  }
  model.ledger.note("assumed", "noCore", nameOf(object));
  return { excitingPercent: 0 };
}

const coreKeys = (loss: number, exciting: number): JsonObject => ({
  excitingPercent: exciting,
  ...(loss > 0 ? { coreLossPercent: loss } : {}),
});

/** What the star point of a winding stands on, where that is not the neutral itself. */
function starOf({ model }: Reading, { object: end, isGrounded }: WindingEnd, key: string): JsonObject {
  const [r, x] = [model.number(end, "rground") ?? 0, model.number(end, "xground") ?? 0];
  return isGrounded && (r > 0 || x > 0) ? { [key]: [r, x] } : {};
}

/** What a tap changer on an end makes of its turns [1]. */
function tapRatio(reading: Reading, object: RdfObject, { object: end }: WindingEnd): number {
  const { model } = reading;
  const [changer] = changersAt(reading, end);
  if (changer === undefined) return 1;
  const step = model.number(changer, "step") ?? model.number(changer, "normalStep") ?? 0;
  const ratio =
    1 +
    ((step - (model.number(changer, "neutralStep") ?? 0)) *
      (model.number(changer, "stepVoltageIncrement") ?? 0)) /
      100;
  if (ratio !== 1) model.ledger.note("approximated", "tapInRatio", nameOf(object));
  return ratio;
}

const changersAt = ({ model }: Reading, end: RdfObject): readonly RdfObject[] =>
  model.pointingTo(end, "TransformerEnd").filter((it) => it.className === "RatioTapChanger");

// ---- tanks ----

interface TankEnd {
  readonly object: RdfObject;
  readonly info: RdfObject;
  readonly phases: string;
  readonly point: string;
  readonly volts: number;
  readonly va: number;
}

interface Tank {
  readonly object: RdfObject;
  readonly ends: readonly TankEnd[];
}

function readTanks(reading: Reading, of: RdfObject, tanks: readonly RdfObject[]): void {
  const read = tanks.map((it) => tankOf(reading, it, of));
  if (!read.every((it) => it !== undefined)) return;
  const units = read;
  const hasChanger = ({ ends }: Tank) => ends.some((it) => changersAt(reading, it.object).length > 0);
  const isRegulator = (it: Tank) =>
    it.ends.length === 2 && it.ends[0]!.volts === it.ends[1]!.volts && hasChanger(it);
  if (units.every(isRegulator)) {
    const letters = units.map((it) => ({
      letter: it.ends[0]!.phases.replace(/N/g, ""),
      ends: it.ends.map((end) => end.object),
    }));
    addRegulator(
      reading,
      of,
      [units[0]!.ends[0]!.point, units[0]!.ends[1]!.point],
      letters.flatMap(({ letter, ends }) => [...letter].map((one) => ({ letter: one, ends }))),
    );
    return;
  }
  const bank = units.length > 1 ? bankOf(units) : undefined;
  if (bank !== undefined) {
    const [first] = units as [Tank];
    const kva = units.reduce((sum, it) => sum + it.ends[0]!.va, 0) / 1000;
    reading.add(of, {
      ends: [first.ends[0]!.point, first.ends[1]!.point],
      keys: { ...bank, kva, ...unitKeys(reading, first), ...reading.withoutNeutral },
    });
    return;
  }
  for (const unit of units) addUnit(reading, of, unit, units.length > 1);
}

function tankOf(reading: Reading, tank: RdfObject, of: RdfObject): Tank | undefined {
  const { model } = reading;
  const infoKey = model.targetKey(tank, "TransformerTankInfo", "AssetDatasheet");
  const info = model.target(tank, "TransformerTankInfo", "AssetDatasheet");
  if (info === undefined) {
    model.ledger.error("importing.error.tankInfo", {
      tank: named(tank),
      transformer: `${of.className} "${nameOf(of)}"`,
      id: infoKey === undefined ? "" : model.shownId(infoKey),
    });
    return undefined;
  }
  const infos = model
    .pointingTo(info, "TransformerTankInfo")
    .filter((it) => it.className === "TransformerEndInfo");
  const tankEnds = byEndNumber(reading, model.pointingTo(tank, "TransformerTank"));
  const isStepping = tankEnds.some((it) => changersAt(reading, it).length > 0);
  const ends: TankEnd[] = [];
  for (const [index, end] of tankEnds.entries()) {
    const number = model.number(end, "endNumber") ?? index + 1;
    const endInfo = infos.find((it) => model.number(it, "endNumber") === number);
    const point = pointOf(reading, end, of, index);
    if (point === undefined) return undefined;
    const volts = endInfo === undefined ? undefined : model.volts(endInfo, "ratedU");
    // A regulator's rating is not asked for.
    const va =
      endInfo === undefined ? undefined : (model.watts(endInfo, "ratedS") ?? (isStepping ? 0 : undefined));
    if (endInfo === undefined || volts === undefined || va === undefined) {
      model.ledger.error("importing.error.endInfo", { tank: named(tank), transformer: named(of), number });
      return undefined;
    }
    ends.push({
      object: end,
      info: endInfo,
      phases: model.choice(end, "orderedPhases", "phases") ?? "",
      point,
      volts,
      va,
    });
  }
  if (ends.length >= 2) return { object: tank, ends };
  model.ledger.error("importing.error.windings", { object: named(tank), found: ends.length });
  return undefined;
}

/** Pairs of windings of the format's wye-to-delta banks, low side lagging, stepping down and up. */
const LAGGING = { down: ["AN-AB", "BN-BC", "CN-CA"], up: ["AN-AC", "BN-BA", "CN-CB"] };

/** Single-phase tanks that together are a bank of ours. */
function bankOf(units: readonly Tank[]): SavedElement | undefined {
  if (units.some((it) => it.ends.length !== 2)) return undefined;
  const [{ ends: first }] = units as [Tank];
  const areAlike = units.every((it) =>
    it.ends.every(
      (end, i) => end.volts === first[i]!.volts && end.va === first[i]!.va && end.point === first[i]!.point,
    ),
  );
  if (!areAlike) return undefined;
  const pairs = units.map((it) => it.ends.map((end) => full(end.phases)).join("-")).sort();
  const same = ["AN-AN", "BN-BN", "CN-CN"];
  const lineVolts = (volts: number) => volts * Math.sqrt(3);
  if (pairs.join() === same.join())
    return {
      kind: "transformer",
      phases: "ABC",
      connection: "Yg-Yg",
      primaryKv: lineVolts(first[0]!.volts) / 1000,
      secondaryV: lineVolts(first[1]!.volts),
    };
  const isStepUp = first[1]!.volts > lineVolts(first[0]!.volts);
  const lagging = LAGGING[isStepUp ? "up" : "down"];
  if (!pairs.every((it) => lagging.includes(it)) || new Set(pairs).size !== pairs.length) return undefined;
  return {
    kind: "transformer",
    phases: pairs.map((it) => it[0]!).join(""),
    connection: pairs.length === 3 ? "Yg-D" : "openY-openD",
    primaryKv: lineVolts(first[0]!.volts) / 1000,
    secondaryV: first[1]!.volts,
  };
}

/** A phase alone is one to the neutral. */
const full = (phases: string): string => (/^[ABC]$/.test(phases) ? `${phases}N` : phases);

function addUnit(reading: Reading, of: RdfObject, unit: Tank, isOneOfMany: boolean): void {
  const { model } = reading;
  const [first, second, third] = unit.ends as [TankEnd, TankEnd, TankEnd | undefined];
  const piece = isOneOfMany ? full(first.phases).replace("N", "") : "";
  const lowPoints = [...new Set(unit.ends.slice(1).map((it) => it.point))];
  if (lowPoints.length === 2 && addThreeSided(reading, of, unit, lowPoints, piece)) return;
  if (third !== undefined && third.point !== second.point) {
    model.ledger.error("importing.error.legsApart", { tank: named(unit.object) });
    return;
  }
  const keys = unitKeysOf(reading, unit);
  if (keys === undefined) {
    model.ledger.error("importing.error.tankPhases", {
      tank: named(unit.object),
      phases: unit.ends.map((it) => it.phases || "–").join(" / "),
    });
    return;
  }
  reading.add(of, {
    ends: [first.point, second.point],
    piece,
    keys: { ...keys, kva: first.va / 1000, ...unitKeys(reading, unit), ...reading.withoutNeutral },
  });
}

/** A unit with windings at two places beyond its primary. @returns false where these are the two legs of one winding, or not known */
function addThreeSided(
  reading: Reading,
  of: RdfObject,
  unit: Tank,
  lowPoints: readonly string[],
  piece: string,
): boolean {
  const { ends } = unit;
  const [first] = ends as [TankEnd];
  const primary = [...full(first.phases).replace("N", "")].sort().join("");
  const groups = lowPoints.map((point) =>
    ends.flatMap((it, nth) => (nth > 0 && it.point === point ? [nth] : [])),
  );
  const leakage = leakageKeys(testedPairs(reading, unit, groups));
  const core = noLoadOf(reading, unit);
  if (primary === "ABC" || primary === "") {
    const [high, low, third, ...others] = windingsOfTank(reading, ends);
    if (third === undefined || others.length > 0) return false;
    addThreeWindings(reading, unit.object, [high!, low!, third], leakage, core, of);
    return true;
  }
  const sides = groups.map((group) =>
    lowSideOf(
      group.map((nth) => ends[nth]!),
      primary,
    ),
  );
  if (!/^[ABC]{1,2}$/.test(primary) || !sides.every((it) => it !== undefined)) return false;
  if (leakage === undefined) reading.model.ledger.note("assumed", "leakage", nameOf(unit.object));
  reading.add(of, {
    ends: [first.point, ...lowPoints],
    piece,
    keys: {
      kind: "threeWinding",
      phases: primary,
      connection: "single",
      kva: first.va / 1000,
      primaryKv: first.volts / 1000,
      secondaryV: sides[0]!.volts,
      secondary: sides[0]!.wires,
      thirdV: sides[1]!.volts,
      third: sides[1]!.wires,
      ...leakage,
      ...core,
      ...reading.withoutNeutral,
    },
  });
  return true;
}

/** What stands at one place beyond the primary of a unit: a split winding, or one to the neutral. */
function lowSideOf(
  [one, other]: readonly TankEnd[],
  primary: string,
): { readonly volts: number; readonly wires: "split" | "two-wire" } | undefined {
  if (other !== undefined)
    return one!.phases === "s1N" && other.phases === "Ns2"
      ? { volts: one!.volts + other.volts, wires: "split" }
      : undefined;
  if (/^s12N?$/.test(one!.phases)) return { volts: one!.volts, wires: "split" };
  return full(one!.phases) === `${primary[0]!}N` ? { volts: one!.volts, wires: "two-wire" } : undefined;
}

function unitKeysOf(reading: Reading, { object, ends }: Tank): SavedElement | undefined {
  const [first, second, third] = ends as [TankEnd, TankEnd, TankEnd | undefined];
  const primary = full(first.phases).replace("N", "");
  const primaryKv = first.volts / 1000;
  const single = {
    kind: "transformer" as const,
    phases: [...primary].sort().join(""),
    connection: "single",
    primaryKv,
  };
  if (/^[ABC]{1,2}$/.test(primary)) {
    if (primary === "CA" || primary === "BA" || primary === "CB")
      reading.model.ledger.note("approximated", "turnedUnit", nameOf(object));
    const low = lowSideOf(third === undefined ? [second] : [second, third], single.phases);
    if (low === undefined) return undefined;
    return {
      ...single,
      secondaryV: low.volts,
      ...(low.wires === "split" ? {} : { secondary: low.wires }),
    };
  }
  return primary === "ABC" || primary === "" ? threePhaseTank(reading, object, ends) : undefined;
}

/** The ends of a three-phase tank, as those of a transformer that names its windings. */
const windingsOfTank = ({ model }: Reading, ends: readonly TankEnd[]): WindingEnd[] =>
  ends.map((it) => {
    const kind = model.choice(it.info, "connectionKind") ?? "Y";
    return {
      object: it.object,
      point: it.point,
      volts: it.volts,
      va: it.va,
      kind: kind.replace(/n$/, ""),
      isGrounded: kind.endsWith("n") || model.flag(it.object, "grounded") === true,
      clock: model.number(it.info, "phaseAngleClock"),
    };
  });

function threePhaseTank(
  reading: Reading,
  tank: RdfObject,
  ends: readonly TankEnd[],
): SavedElement | undefined {
  const [first, second] = windingsOfTank(reading, ends) as [WindingEnd, WindingEnd];
  if (ends.length > 2) return undefined;
  const connection = connectionOf(reading, tank, first, second);
  if (connection === undefined) return undefined;
  return {
    kind: "transformer",
    phases: "ABC",
    connection,
    primaryKv: first.volts / 1000,
    secondaryV: second.volts * tapRatio(reading, tank, second),
    ...starOf(reading, first, "primaryStarOhms"),
    ...starOf(reading, second, "secondaryStarOhms"),
  };
}

/** Leakage and exciting current of a unit by its tests. */
function unitKeys(reading: Reading, unit: Tank): JsonObject {
  const { model } = reading;
  const percent = testedPercent(reading, unit);
  const name = nameOf(unit.object);
  const fromWindings = unit.ends.reduce(
    (sum, { info, volts, va }) => sum + percentOf(model.number(info, "r"), (volts * volts) / va),
    0,
  );
  if (percent === undefined) model.ledger.note("assumed", "leakage", name);
  return {
    ...(percent !== undefined
      ? { rPercent: percent[0], xPercent: percent[1] }
      : fromWindings > 0
        ? { rPercent: fromWindings }
        : {}),
    ...noLoadOf(reading, unit),
  };
}

/**
 * Short-circuit tests as leakage of the whole unit [%]: |z| = Z/(U²/S), r = loss/S. On a centre tap the primary has
 * (z12 + z13 − z23)/2, each half what is left of its pair, and the whole winding a quarter of both halves.
 */
function testedPercent(reading: Reading, unit: Tank): Complex | undefined {
  const between = testsOf(reading, unit);
  const first = between(0, 1);
  if (unit.ends.length === 2 || first === undefined) return first;
  const [second, halves] = [between(0, 2), between(1, 2)];
  if (second === undefined || halves === undefined) return first;
  const primary = complex.scale(complex.subtract(complex.add(first, second), halves), 0.5);
  const ofHalves = complex.subtract(complex.add(first, second), complex.scale(primary, 2));
  return complex.add(primary, complex.scale(ofHalves, 0.25));
}

/**
 * The same of a unit with windings at two places beyond its primary, those at each place by their numbers: the leakage of each
 * pair of sides, to the secondary, to the third, and between these.
 */
function testedPairs(
  reading: Reading,
  unit: Tank,
  groups: readonly (readonly number[])[],
): readonly [Complex, Complex, Complex] | undefined {
  const between = testsOf(reading, unit);
  const tests = unit.ends.map((_, nth) => (nth === 0 ? complex.zero : between(0, nth)));
  const halves = between(1, 2);
  if (halves === undefined || !tests.every((it) => it !== undefined)) return undefined;
  const primary = complex.scale(complex.subtract(complex.add(tests[1]!, tests[2]!), halves), 0.5);
  const share = (group: readonly number[]): Complex => {
    const own = group.map((nth) => complex.subtract(tests[nth]!, primary));
    return complex.scale(own.reduce(complex.add), 1 / own.length ** 2);
  };
  const [low, third] = groups.map(share) as [Complex, Complex];
  return [complex.add(primary, low), complex.add(primary, third), complex.add(low, third)];
}

/** What a short-circuit test between two ends of a tank gave, by the rating of the end that was energised [%]. */
function testsOf({ model }: Reading, { ends }: Tank): (from: number, to: number) => Complex | undefined {
  return (from, to) => {
    const [a, b] = [ends[from], ends[to]];
    if (a === undefined || b === undefined) return undefined;
    for (const [energised, grounded] of [
      [a, b],
      [b, a],
    ] as const) {
      const test = model
        .pointingTo(energised.info, "EnergisedEnd")
        .find(
          (it) =>
            it.className === "ShortCircuitTest" &&
            (it.references.get("GroundedEnds") ?? []).includes(grounded.info.key),
        );
      if (test === undefined) continue;
      const base = (energised.volts * energised.volts) / energised.va;
      const z = percentOf(model.number(test, "leakageImpedance"), base);
      const power = model.watts(test, "basePower") ?? energised.va;
      const r = (100 * (model.number(test, "loss") ?? 0) * 1000) / power;
      return [r, Math.sqrt(Math.max(0, z * z - r * r))];
    }
    return undefined;
  };
}

/** What a core draws at rated volts: its losses, and its exciting current without them. */
function noLoadOf({ model }: Reading, { object, ends }: Tank): JsonObject {
  for (const { info, va } of ends) {
    const test = model.pointingTo(info, "EnergisedEnd").find((it) => it.className === "NoLoadTest");
    if (test === undefined) continue;
    const exciting = model.number(test, "excitingCurrent") ?? 0;
    const loss = (100 * (model.number(test, "loss") ?? 0) * 1000) / (model.watts(test, "basePower") ?? va);
    return coreKeys(loss, Math.sqrt(Math.max(0, exciting * exciting - loss * loss)));
  }
  model.ledger.note("assumed", "noCore", nameOf(object));
  return { excitingPercent: 0 };
}
