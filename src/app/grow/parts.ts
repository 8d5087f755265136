import {
  type Command,
  complete,
  completePoint,
  type DeviceKind,
  edits,
  isRefusal,
  type JsonObject,
  type Message,
  type PointId,
  type StillhotDocument,
} from "../../core";
import { t } from "../words/words";
import { nextNumber } from "./number";
import { placeNext, type Spot } from "./place";
import { groundOn, type Place, placeOf } from "./point";
import { type MessageKey, say } from "../words/catalogue";

export type Group = "next" | "line" | "switching" | "equipment" | "hazard" | "whole";
export const GROUPS: readonly Group[] = ["whole", "next", "line", "switching", "equipment", "hazard"];

/** One thing that can come next at a point: a part that places, connects and labels itself. */
export interface GrowPart {
  readonly id: string;
  readonly group: Group;
  readonly title: MessageKey;
  /** whether it makes sense on these phases at this kind of point */
  readonly fits: (place: Place) => boolean;
  readonly command: (document: StillhotDocument, point: string, phases: string) => Command;
}

const isPrimary = ({ phases }: Place) => /[ABC]/.test(phases);
const isSecondary = ({ phases }: Place) => /[12]/.test(phases);
const isAnything = ({ phases }: Place) => phases !== "";

const SPAN = 120;
const DEVICE = 80;
const HOUSE = 90;
const HOUSES_APART = 60;

/** Does edits one after another, each of which may ask what the one before made; they are one entry in the history. */
const inTurn =
  (
    label: Message,
    build: (step: (command: Command) => readonly string[], now: () => StillhotDocument) => void,
  ): Command =>
  (before) => {
    const commands: Command[] = [];
    let document = before;
    let refused: ReturnType<Command> | undefined;
    build(
      (command) => {
        if (refused !== undefined) return [];
        const done = command(document);
        if (isRefusal(done)) {
          refused = done;
          return [];
        }
        commands.push(command);
        document = done.after;
        return done.made ?? [];
      },
      () => document,
    );
    return refused ?? edits.together(label, commands)(before);
  };

/** A number that no label of this kind has yet: `Pole 3`. */
function nextLabel(document: StillhotDocument, key: MessageKey): string {
  const labels = new Set(
    Object.values<Readonly<Record<string, JsonObject>>>({
      structures: document.system.structures ?? {},
      points: document.system.points,
      elements: document.system.elements,
    }).flatMap((map) => Object.values(map).map((it) => it["label"])),
  );
  for (let n = 1; ; n++) {
    const label = t(key, { n });
    if (!labels.has(label)) return label;
  }
}

interface Growing {
  readonly length?: number;
  readonly isBranch?: boolean;
  readonly keys?: JsonObject;
  /** catalogue key of its own label, numbered */
  readonly label?: MessageKey;
  /** what the new point is */
  readonly point?: "pole" | "pad" | "service" | "bare";
}

/** A two-ended part with a new point at its far end. */
const grow =
  (kind: DeviceKind, { length = DEVICE, isBranch = false, keys = {}, label, point = "bare" }: Growing) =>
  (document: StillhotDocument, from: string, phases: string): Command => {
    const { x, y } = placeNext(document, from, length, { isBranch });
    const own = {
      phases,
      ...(label === undefined ? {} : { label: nextLabel(document, label) }),
      ...keys,
    };
    if (point === "bare") return edits.growFrom(from, kind, { x, y }, own);
    return edits.growFrom(
      from,
      kind,
      { x, y, kind: point, ...(point === "pole" ? { earthOhms: 25 } : {}) },
      own,
      newStructure(document, from, point),
    );
  };

/** What stands next: with a number of its own, proposed from the last one. */
const newStructure = (
  document: StillhotDocument,
  from: string,
  kind: "pole" | "pad" | "service",
): JsonObject => ({
  label: nextNumber(document, from, `grow.${kind}Label`),
  ...(kind === "pole" ? {} : { kind }),
});

/** A part at the point itself. */
const hang =
  (kind: DeviceKind, keys: JsonObject = {}, label?: MessageKey) =>
  (document: StillhotDocument, at: string, phases: string): Command =>
    edits.addElement(
      kind,
      { at },
      {
        phases,
        ...(label === undefined ? {} : { label: nextLabel(document, label) }),
        ...keys,
      },
    );

/** Line-to-line kilovolts of the nearest source, for what must be rated for them. */
function kvOf(document: StillhotDocument): number {
  for (const saved of Object.values(document.system.elements)) {
    const element = complete(saved);
    if (element.kind === "source") return element.kvLL;
  }
  return 12.47;
}

const toNeutralKv = (document: StillhotDocument): number =>
  Math.round((kvOf(document) / Math.sqrt(3)) * 100) / 100;

const single = (document: StillhotDocument, phases: string, kva: number): JsonObject => ({
  phases: phases.charAt(0),
  connection: "single",
  kva,
  primaryKv: toNeutralKv(document),
  secondaryV: 240,
});

const bank =
  (connection: "Yg-D" | "Yg-Yg", secondaryV: number) =>
  (document: StillhotDocument, from: string): Command =>
    grow("transformer", {
      label: "grow.transformerLabel",
      isBranch: true,
      keys: { phases: "ABC", connection, kva: 75, primaryKv: kvOf(document), secondaryV },
    })(document, from, "ABC");

/** A cutout, a transformer behind it, and so many houses with a meter each. */
const tapWithHouses =
  (houses: number) =>
  (document: StillhotDocument, from: string, phases: string): Command =>
    inTurn(say("grow.stamped"), (step, now) => {
      const phase = phases.charAt(0);
      const { direction } = placeNext(document, from, DEVICE * 2 + HOUSE + 60, {
        width: houses * HOUSES_APART + 40,
        isBranch: true,
      });
      const at = completePoint(document.system.points[from as PointId]!);
      const on = (along: number, across: number): Spot => {
        const [cos, sin] = [Math.cos((direction * Math.PI) / 180), Math.sin((direction * Math.PI) / 180)];
        return {
          x: Math.round(at.x + along * cos - across * sin),
          y: Math.round(at.y + along * sin + across * cos),
        };
      };
      const [top = ""] = step(
        edits.growFrom(
          from,
          "cutout",
          { ...on(DEVICE, 0) },
          {
            phases: phase,
            label: nextLabel(now(), "grow.cutoutLabel"),
            fuse: { type: "K", amps: 10 },
          },
        ),
      );
      const [low = ""] = step(
        edits.growFrom(
          top,
          "transformer",
          { ...on(DEVICE * 2, 0) },
          {
            ...single(now(), phase, houses > 1 ? 37.5 : 25),
            label: nextLabel(now(), "grow.transformerLabel"),
          },
        ),
      );
      for (let house = 0; house < houses; house++)
        addHouse(step, now, low, on(DEVICE * 2 + HOUSE, (house - (houses - 1) / 2) * HOUSES_APART));
    });

function addHouse(
  step: (command: Command) => readonly string[],
  now: () => StillhotDocument,
  from: string,
  { x, y }: Spot,
) {
  const label = nextLabel(now(), "grow.customersLabel");
  const [panel = ""] = step(
    edits.growFrom(from, "meter", { x, y, kind: "service" }, { phases: "12" }, { label, kind: "service" }),
  );
  step(edits.addElement("load", { at: panel }, { phases: "12", label, kw: 3, kvar: 0.6, customers: 1 }));
}

/** A riser with elbows at both ends of a cable. */
const dip = (_document: StillhotDocument, from: string, phases: string): Command =>
  inTurn(say("grow.stamped"), (step, now) => {
    const next = (at: string, length: number) => {
      const { x, y } = placeNext(now(), at, length);
      return { x, y };
    };
    const [top = ""] = step(
      edits.growFrom(from, "cutout", next(from, DEVICE), {
        phases,
        label: nextLabel(now(), "grow.cutoutLabel"),
      }),
    );
    const [far = ""] = step(
      edits.growFrom(
        top,
        "span",
        { ...next(top, SPAN), kind: "pad" },
        {
          phases,
          construction: "cable",
        },
        newStructure(now(), top, "pad"),
      ),
    );
    step(edits.growFrom(far, "elbow", next(far, DEVICE), { phases }));
  });

const otherSource = (document: StillhotDocument, from: string, phases: string): Command =>
  inTurn(say("grow.stamped"), (step, now) => {
    const { x, y } = placeNext(document, from, DEVICE);
    const [far = ""] = step(
      edits.growFrom(
        from,
        "disconnect",
        { x, y, kind: "station", label: t("grow.otherSource"), earthOhms: 1 },
        {
          phases,
          label: nextLabel(now(), "grow.tieLabel"),
          open: phases,
          normallyOpen: true,
        },
      ),
    );
    step(edits.addElement("source", { at: far }, { phases, kvLL: kvOf(now()) }));
  });

const transferWithSet = (document: StillhotDocument, from: string): Command =>
  inTurn(say("grow.stamped"), (step) => {
    const { x, y, direction } = placeNext(document, from, DEVICE, { width: 140 });
    const [cos, sin] = [Math.cos((direction * Math.PI) / 180), Math.sin((direction * Math.PI) / 180)];
    const [panel = ""] = step(edits.addPoint({ x, y, kind: "service" }));
    const [set = ""] = step(
      edits.addPoint({
        x: Math.round(x - cos * 20 - sin * 60),
        y: Math.round(y - sin * 20 + cos * 60),
        kind: "service",
      }),
    );
    step(edits.addElement("transfer", { from, alt: set, to: panel }, { phases: "12" }));
    step(edits.addElement("generator", { at: set }, { phases: "12", kva: 10, volts: 240 }));
    step(
      edits.addElement(
        "load",
        { at: panel },
        { phases: "12", kw: 4, kvar: 0.8, customers: 1, label: nextLabel(document, "grow.customersLabel") },
      ),
    );
  });

export const PARTS: readonly GrowPart[] = [
  { id: "tap4", group: "whole", title: "grow.tap4", fits: isPrimary, command: tapWithHouses(4) },
  { id: "tap", group: "whole", title: "grow.tap", fits: isPrimary, command: tapWithHouses(1) },
  {
    id: "house",
    group: "whole",
    title: "grow.house",
    fits: isSecondary,
    command: (document, from) =>
      inTurn(say("grow.stamped"), (step, now) => addHouse(step, now, from, placeNext(document, from, HOUSE))),
  },
  { id: "dip", group: "whole", title: "grow.dip", fits: isPrimary, command: dip },
  { id: "otherSource", group: "whole", title: "grow.tieToSource", fits: isPrimary, command: otherSource },
  {
    id: "span",
    group: "next",
    title: "grow.span",
    fits: isPrimary,
    command: grow("span", { length: SPAN, point: "pole", keys: { lengthM: 60 } }),
  },
  {
    id: "cable",
    group: "next",
    title: "grow.cable",
    fits: isPrimary,
    command: grow("span", { length: SPAN, point: "pad", keys: { lengthM: 60, construction: "cable" } }),
  },
  {
    id: "secondary",
    group: "next",
    title: "grow.secondary",
    fits: isSecondary,
    command: grow("span", { length: SPAN, point: "pole", keys: { lengthM: 30, construction: "secondary" } }),
  },
  { id: "lead", group: "line", title: "grow.lead", fits: isAnything, command: grow("lead", {}) },
  {
    id: "clamp",
    group: "line",
    title: "grow.clamp",
    fits: isPrimary,
    command: grow("clamp", { isBranch: true }),
  },
  {
    id: "cutout",
    group: "switching",
    title: "grow.cutout",
    fits: isPrimary,
    command: grow("cutout", {
      label: "grow.cutoutLabel",
      isBranch: true,
      keys: { fuse: { type: "K", amps: 25 } },
    }),
  },
  {
    id: "disconnect",
    group: "switching",
    title: "grow.disconnect",
    fits: isPrimary,
    command: grow("disconnect", { label: "grow.disconnectLabel" }),
  },
  {
    id: "gang",
    group: "switching",
    title: "grow.gang",
    fits: ({ phases }) => isPrimary({ phases } as Place) && phases.length > 1,
    command: grow("disconnect", { label: "grow.disconnectLabel", keys: { gang: true, loadBreakAmps: 600 } }),
  },
  {
    id: "tie",
    group: "switching",
    title: "grow.tie",
    fits: isPrimary,
    command: (document, from, phases) =>
      grow("disconnect", { label: "grow.tieLabel", keys: { open: phases, normallyOpen: true } })(
        document,
        from,
        phases,
      ),
  },
  {
    id: "recloser",
    group: "switching",
    title: "grow.recloser",
    fits: isPrimary,
    command: grow("recloser", { label: "grow.recloserLabel" }),
  },
  {
    id: "sectionalizer",
    group: "switching",
    title: "grow.sectionalizer",
    fits: isPrimary,
    command: grow("sectionalizer", { label: "grow.sectionalizerLabel" }),
  },
  {
    id: "breaker",
    group: "switching",
    title: "grow.breaker",
    fits: (place) => isPrimary(place) && place.kind === "station",
    command: grow("breaker", { label: "grow.breakerLabel" }),
  },
  { id: "elbow", group: "switching", title: "grow.elbow", fits: isPrimary, command: grow("elbow", {}) },
  {
    id: "meter",
    group: "next",
    title: "grow.meter",
    fits: isAnything,
    command: grow("meter", { length: HOUSE, point: "service" }),
  },
  { id: "main", group: "switching", title: "grow.main", fits: isSecondary, command: grow("main", {}) },
  { id: "transfer", group: "switching", title: "grow.transfer", fits: isSecondary, command: transferWithSet },
  {
    id: "transformer",
    group: "equipment",
    title: "grow.transformer",
    fits: isPrimary,
    command: (document, from, phases) =>
      grow("transformer", {
        label: "grow.transformerLabel",
        isBranch: true,
        keys: single(document, phases, 25),
      })(document, from, phases.charAt(0)),
  },
  {
    id: "bank",
    group: "equipment",
    title: "grow.bank",
    fits: ({ phases }) => phases === "ABC",
    command: bank("Yg-D", 240),
  },
  {
    id: "wyeBank",
    group: "equipment",
    title: "grow.wyeBank",
    fits: ({ phases }) => phases === "ABC",
    command: bank("Yg-Yg", 208),
  },
  {
    id: "regulator",
    group: "equipment",
    title: "grow.regulator",
    fits: isPrimary,
    command: grow("regulator", { label: "grow.regulatorLabel" }),
  },
  {
    id: "load",
    group: "equipment",
    title: "grow.load",
    fits: isAnything,
    command: hang("load", { kw: 3, kvar: 0.6, customers: 1 }, "grow.customersLabel"),
  },
  {
    id: "generator",
    group: "equipment",
    title: "grow.generator",
    fits: isAnything,
    command: (document, at, phases) =>
      hang("generator", { kva: 7.5, volts: /[12]/.test(phases) ? 240 : Math.round(kvOf(document) * 1000) })(
        document,
        at,
        phases,
      ),
  },
  {
    id: "capacitor",
    group: "equipment",
    title: "grow.capacitor",
    fits: isPrimary,
    command: (document, at, phases) =>
      hang("capacitor", { kvar: 300, kvLL: kvOf(document) })(document, at, phases),
  },
  { id: "arrester", group: "equipment", title: "grow.arrester", fits: isPrimary, command: hang("arrester") },
  { id: "ground", group: "hazard", title: "grow.ground", fits: isAnything, command: groundOn },
  { id: "fault", group: "hazard", title: "grow.fault", fits: isAnything, command: faultOn },
  {
    id: "source",
    group: "hazard",
    title: "grow.source",
    fits: ({ phases }) => !/[12]/.test(phases),
    command: (document, at, phases) =>
      edits.addElement("source", { at }, { phases: phases === "" ? "ABC" : phases, kvLL: kvOf(document) }),
  },
];

function faultOn(document: StillhotDocument, at: string, phases: string): Command {
  return edits.addElement(
    "fault",
    { at },
    { phases, ...(placeOf(document, at).hasNeutral ? {} : { to: "earth" }) },
  );
}

/** What can join two points that are there. */
export const JOINS: readonly { id: string; title: MessageKey; kind: DeviceKind; keys: JsonObject }[] = [
  { id: "span", title: "grow.span", kind: "span", keys: {} },
  { id: "lead", title: "grow.lead", kind: "lead", keys: {} },
  { id: "clamp", title: "grow.clamp", kind: "clamp", keys: {} },
  { id: "cutout", title: "grow.cutout", kind: "cutout", keys: {} },
  { id: "disconnect", title: "grow.disconnect", kind: "disconnect", keys: {} },
  { id: "tie", title: "grow.tie", kind: "disconnect", keys: { normallyOpen: true, open: true } },
];

/** Phases on which two points can be joined: those that both have; where one has none yet, the other's. */
export function commonPhases(document: StillhotDocument, a: string, b: string): string {
  const [first, second] = [placeOf(document, a).phases, placeOf(document, b).phases];
  if (first === "" || second === "") return first || second || "ABC";
  return [...first].filter((it) => second.includes(it)).join("") || first;
}

/** A drawing that begins with a source at a station. */
export const startWithSource: Command = inTurn(say("grow.stamped"), (step, now) => {
  const [station = ""] = step(
    edits.addPoint({
      x: 0,
      y: 0,
      kind: "station",
      label: nextLabel(now(), "grow.stationLabel"),
      earthOhms: 1,
    }),
  );
  step(edits.addElement("source", { at: station }, { phases: "ABC", kvLL: 12.47 }));
});
