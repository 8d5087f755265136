import {
  type Edit,
  type Spot,
  completePoint,
  type DeviceKind,
  edits,
  type JsonObject,
  type PointId,
  type StillhotDocument,
  isStation,
} from "../../core";
import { type MessageKey, say } from "../words/catalogue";
import { t } from "../words/words";
import {
  barn,
  cutout,
  doubleThrow,
  openBank,
  padmount,
  ratioBank,
  streetLight,
  transferWithSet,
  twoSecondaries,
  unequalUnits,
} from "./arrangements";
import {
  DEVICE,
  grow,
  hang,
  HOUSE,
  HOUSES_APART,
  inTurn,
  kvOf,
  newStructure,
  nextLabel,
  single,
  SPAN,
} from "./growing";
import { placeNext } from "./place";
import { groundOn, type GrowingPoint, growingPointOf } from "./point";
import { type Answers, type PartQuestion, kvaFrom, lettersFrom, linkFrom } from "./sizes";

/** A heading of the list of parts. */
export type Group = "next" | "line" | "switching" | "equipment" | "hazard" | "whole";

/** The headings, in their order. */
export const GROUPS: readonly Group[] = ["whole", "next", "line", "switching", "equipment", "hazard"];

/** A point that something grows from. */
export type GrowPlace = GrowingPoint & {
  /** whether a bank of a customer's volts feeds it */
  readonly isLow?: boolean;
};

/** One thing that can come next at a point: a part that places, connects and labels itself. */
export interface GrowPart {
  readonly id: string;
  readonly group: Group;
  readonly title: MessageKey;
  /** whether it makes sense on these phases at this kind of point */
  readonly fits: (place: GrowPlace) => boolean;
  /** what is asked before it is drawn */
  readonly asks?: readonly PartQuestion[];
  readonly edit: (document: StillhotDocument, point: string, phases: string, answers: Answers) => Edit;
}

const isPrimary = ({ phases }: GrowPlace) => /[ABC]/.test(phases);
const isSecondary = ({ phases }: GrowPlace) => /[12]/.test(phases);
const isAnything = ({ phases }: GrowPlace) => phases !== "";
const isThree = ({ phases }: GrowPlace) => phases === "ABC";
/** A customer's side: legs, or three phases behind a bank. */
const isCustomers = (place: GrowPlace) => isSecondary(place) || (isThree(place) && place.isLow === true);

const bank =
  (connection: "Yg-D" | "Yg-Yg", secondaryV: number) =>
  (document: StillhotDocument, from: string, _phases: string, { kva }: Answers): Edit =>
    grow("transformer", {
      label: "grow.transformerLabel",
      isBranch: true,
      keys: { connection, ...kvaFrom(kva, 25, 3), primaryKv: kvOf(document), secondaryV },
    })(document, from, "ABC");

/** A cutout, a transformer behind it, and so many houses with a meter each. */
const tapWithHouses =
  (houses: number) =>
  (document: StillhotDocument, from: string, phases: string, answers: Answers): Edit =>
    inTurn(say("grow.stamped"), (step, now) => {
      const phase = lettersFrom(answers, phases);
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
            ...linkFrom(answers),
          },
        ),
      );
      const [low = ""] = step(
        edits.growFrom(
          top,
          "transformer",
          { ...on(DEVICE * 2, 0) },
          {
            ...single(now(), phase),
            ...kvaFrom(answers.kva, houses > 1 ? 37.5 : 25),
            label: nextLabel(now(), "grow.transformerLabel"),
          },
        ),
      );
      for (let house = 0; house < houses; house++)
        addHouse(step, now, low, on(DEVICE * 2 + HOUSE, (house - (houses - 1) / 2) * HOUSES_APART));
    });

function addHouse(
  step: (edit: Edit) => readonly string[],
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
const dip = (_document: StillhotDocument, from: string, phases: string): Edit =>
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

const otherSource = (document: StillhotDocument, from: string, phases: string): Edit =>
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

/** All that can be grown at a point, by heading. */
export const PARTS: readonly GrowPart[] = [
  {
    id: "tap4",
    group: "whole",
    title: "grow.tap4",
    fits: isPrimary,
    asks: ["phase", "link", "kva"],
    edit: tapWithHouses(4),
  },
  {
    id: "tap",
    group: "whole",
    title: "grow.tap",
    fits: isPrimary,
    asks: ["phase", "link", "kva"],
    edit: tapWithHouses(1),
  },
  {
    id: "house",
    group: "whole",
    title: "grow.house",
    fits: isSecondary,
    edit: (document, from) =>
      inTurn(say("grow.stamped"), (step, now) => addHouse(step, now, from, placeNext(document, from, HOUSE))),
  },
  { id: "barn", group: "whole", title: "grow.barn", fits: isSecondary, edit: barn },
  { id: "streetLight", group: "whole", title: "grow.streetLight", fits: isSecondary, edit: streetLight },
  {
    id: "padmount",
    group: "whole",
    title: "grow.padmount",
    fits: isPrimary,
    asks: ["phase", "kva"],
    edit: padmount,
  },
  { id: "doubleThrow", group: "whole", title: "grow.doubleThrow", fits: isPrimary, edit: doubleThrow },
  { id: "dip", group: "whole", title: "grow.dip", fits: isPrimary, edit: dip },
  { id: "otherSource", group: "whole", title: "grow.tieToSource", fits: isPrimary, edit: otherSource },
  {
    id: "span",
    group: "next",
    title: "grow.span",
    fits: isPrimary,
    edit: grow("span", { length: SPAN, point: "pole", keys: { lengthM: 60 } }),
  },
  {
    id: "cable",
    group: "next",
    title: "grow.cable",
    fits: isPrimary,
    edit: grow("span", { length: SPAN, point: "pad", keys: { lengthM: 60, construction: "cable" } }),
  },
  {
    id: "secondary",
    group: "next",
    title: "grow.secondary",
    fits: isSecondary,
    edit: grow("span", { length: SPAN, point: "pole", keys: { lengthM: 30, construction: "secondary" } }),
  },
  { id: "lead", group: "line", title: "grow.lead", fits: isAnything, edit: grow("lead", {}) },
  {
    id: "clamp",
    group: "line",
    title: "grow.clamp",
    fits: isPrimary,
    edit: grow("clamp", { isBranch: true }),
  },
  {
    id: "cutout",
    group: "switching",
    title: "grow.cutout",
    fits: isPrimary,
    asks: ["link"],
    edit: cutout,
  },
  {
    id: "disconnect",
    group: "switching",
    title: "grow.disconnect",
    fits: isPrimary,
    edit: grow("disconnect", { label: "grow.disconnectLabel" }),
  },
  {
    id: "gang",
    group: "switching",
    title: "grow.gang",
    fits: ({ phases }) => isPrimary({ phases } as GrowingPoint) && phases.length > 1,
    edit: grow("disconnect", { label: "grow.disconnectLabel", keys: { gang: true, loadBreakAmps: 600 } }),
  },
  {
    id: "tie",
    group: "switching",
    title: "grow.tie",
    fits: isPrimary,
    edit: (document, from, phases) =>
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
    edit: grow("recloser", { label: "grow.recloserLabel" }),
  },
  {
    id: "sectionalizer",
    group: "switching",
    title: "grow.sectionalizer",
    fits: isPrimary,
    edit: grow("sectionalizer", { label: "grow.sectionalizerLabel" }),
  },
  {
    id: "breaker",
    group: "switching",
    title: "grow.breaker",
    fits: (place) => isPrimary(place) && isStation(place),
    edit: grow("breaker", { label: "grow.breakerLabel" }),
  },
  { id: "elbow", group: "switching", title: "grow.elbow", fits: isPrimary, edit: grow("elbow", {}) },
  {
    id: "meter",
    group: "next",
    title: "grow.meter",
    fits: isAnything,
    edit: grow("meter", { length: HOUSE, point: "service" }),
  },
  { id: "main", group: "switching", title: "grow.main", fits: isCustomers, edit: grow("main", {}) },
  { id: "transfer", group: "switching", title: "grow.transfer", fits: isCustomers, edit: transferWithSet },
  {
    id: "transformer",
    group: "equipment",
    title: "grow.transformer",
    fits: isPrimary,
    asks: ["phase", "kva"],
    edit: (document, from, phases, answers) =>
      grow("transformer", {
        label: "grow.transformerLabel",
        isBranch: true,
        keys: { ...single(document, lettersFrom(answers, phases)), ...kvaFrom(answers.kva, 25) },
      })(document, from, lettersFrom(answers, phases)),
  },
  {
    id: "bank",
    group: "equipment",
    title: "grow.bank",
    fits: isThree,
    asks: ["kva"],
    edit: bank("Yg-D", 240),
  },
  {
    id: "wyeBank",
    group: "equipment",
    title: "grow.wyeBank",
    fits: isThree,
    asks: ["kva"],
    edit: bank("Yg-Yg", 208),
  },
  {
    id: "unequal",
    group: "equipment",
    title: "grow.unequal",
    fits: isThree,
    asks: ["kva", "kvaB", "kvaC"],
    edit: unequalUnits,
  },
  {
    id: "openBank",
    group: "equipment",
    title: "grow.openBank",
    fits: ({ phases }) => /^[ABC]{2,3}$/.test(phases),
    asks: ["pair", "kva"],
    edit: openBank,
  },
  {
    id: "threeWinding",
    group: "equipment",
    title: "grow.threeWinding",
    fits: isPrimary,
    asks: ["kva"],
    edit: twoSecondaries,
  },
  {
    id: "ratioBank",
    group: "equipment",
    title: "grow.ratioBank",
    fits: isPrimary,
    asks: ["kva"],
    edit: ratioBank,
  },
  {
    id: "regulator",
    group: "equipment",
    title: "grow.regulator",
    fits: isPrimary,
    edit: grow("regulator", { label: "grow.regulatorLabel" }),
  },
  {
    id: "load",
    group: "equipment",
    title: "grow.load",
    fits: isAnything,
    edit: hang("load", { kw: 3, kvar: 0.6, customers: 1 }, "grow.customersLabel"),
  },
  {
    id: "generator",
    group: "equipment",
    title: "grow.generator",
    fits: isAnything,
    edit: (document, at, phases) =>
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
    edit: (document, at, phases) =>
      hang("capacitor", { kvar: 300, kvLL: kvOf(document) })(document, at, phases),
  },
  { id: "arrester", group: "equipment", title: "grow.arrester", fits: isPrimary, edit: hang("arrester") },
  { id: "ground", group: "hazard", title: "grow.ground", fits: isAnything, edit: groundOn },
  { id: "fault", group: "hazard", title: "grow.fault", fits: isAnything, edit: faultOn },
  {
    id: "source",
    group: "hazard",
    title: "grow.source",
    fits: ({ phases }) => !/[12]/.test(phases),
    edit: (document, at, phases) =>
      edits.addElement("source", { at }, { phases: phases === "" ? "ABC" : phases, kvLL: kvOf(document) }),
  },
];

function faultOn(document: StillhotDocument, at: string, phases: string): Edit {
  return edits.addElement(
    "fault",
    { at },
    { phases, ...(growingPointOf(document, at).hasNeutral ? {} : { to: "earth" }) },
  );
}

/** What can join two points that are there. */
export const JOINS: readonly { id: string; title: MessageKey; kind: DeviceKind; keys: JsonObject }[] = [
  { id: "span", title: "grow.span", kind: "span", keys: {} },
  { id: "lead", title: "grow.lead", kind: "lead", keys: {} },
  { id: "clamp", title: "grow.clamp", kind: "clamp", keys: {} },
  { id: "cable", title: "grow.cable", kind: "span", keys: { construction: "cable" } },
  { id: "elbow", title: "grow.elbow", kind: "elbow", keys: {} },
  { id: "cutout", title: "grow.cutout", kind: "cutout", keys: {} },
  { id: "disconnect", title: "grow.disconnect", kind: "disconnect", keys: {} },
  { id: "tie", title: "grow.tie", kind: "disconnect", keys: { normallyOpen: true, open: true } },
];

/** Phases on which two points can be joined: those that both have; where one has none yet, the other's. */
export function commonPhases(document: StillhotDocument, a: string, b: string): string {
  const [first, second] = [growingPointOf(document, a).phases, growingPointOf(document, b).phases];
  if (first === "" || second === "") return first || second || "ABC";
  return [...first].filter((it) => second.includes(it)).join("") || first;
}

/** A drawing that begins with a source at a station. */
export const startWithSource: Edit = inTurn(say("grow.stamped"), (step, now) => {
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
