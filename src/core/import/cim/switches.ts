import { type SavedElement } from "../../document";
import { linkRatings } from "../../reference";
import type { JsonObject } from "../../terms";
import { nameOf } from "./model";
import { inOrder, letterOf } from "./phases";
import type { RdfObject } from "./rdf";
import type { Reading } from "./reading";

interface SwitchClass {
  /** the keys of ours that the class says by itself */
  readonly keys: (rated: Rated) => SavedElement;
  /** under which of its keys an open phase stands */
  readonly opens: "open" | "cut";
  readonly isGang: boolean;
}

interface Rated {
  readonly breakingAmps: number | undefined;
  readonly ratedAmps: number | undefined;
}

const interrupting = ({ breakingAmps }: Rated): JsonObject =>
  breakingAmps === undefined || breakingAmps === 0 ? {} : { interruptingAmps: breakingAmps };

/** The standard's classes of switches and what they are on a pole. */
const CLASSES: Readonly<Record<string, SwitchClass>> = {
  Breaker: {
    keys: (it) => ({ kind: "breaker", remote: true, ...interrupting(it) }),
    opens: "open",
    isGang: true,
  },
  Recloser: {
    keys: (it) => ({ kind: "recloser", remote: true, ...interrupting(it) }),
    opens: "open",
    isGang: true,
  },
  LoadBreakSwitch: {
    keys: ({ breakingAmps, ratedAmps }) => ({
      kind: "disconnect",
      gang: true,
      visibleGap: false,
      loadBreakAmps: breakingAmps ?? ratedAmps ?? 0,
    }),
    opens: "open",
    isGang: true,
  },
  Disconnector: { keys: () => ({ kind: "disconnect" }), opens: "open", isGang: false },
  Sectionaliser: { keys: () => ({ kind: "disconnect", visibleGap: false }), opens: "open", isGang: false },
  Switch: { keys: () => ({ kind: "disconnect", visibleGap: false }), opens: "open", isGang: false },
  Fuse: { keys: ({ ratedAmps }) => ({ kind: "cutout", ...fuse(ratedAmps) }), opens: "open", isGang: false },
  Jumper: { keys: () => ({ kind: "lead" }), opens: "cut", isGang: false },
  Cut: { keys: () => ({ kind: "lead" }), opens: "cut", isGang: false },
};

const isLinkSize = (amps: number | undefined): amps is number =>
  amps !== undefined && linkRatings("K").includes(amps);

const fuse = (ratedAmps: number | undefined): JsonObject =>
  isLinkSize(ratedAmps) ? { fuse: { type: "K", amps: ratedAmps } } : { fuse: "solid" };

/** Switches of every class, phase by phase as they stand now. */
export function readSwitches(reading: Reading): void {
  const { model } = reading;
  for (const [className, how] of Object.entries(CLASSES))
    for (const object of model.all(className)) {
      const ends = reading.topology.endsOf(object, 2);
      if (ends === undefined || reading.isOut(object)) continue;
      const sides = sidesOf(reading, object);
      if (sides === undefined) continue;
      const rated = {
        breakingAmps: model.number(object, "breakingCapacity"),
        ratedAmps: model.number(object, "ratedCurrent"),
      };
      const keys = how.keys(rated);
      if (className === "Fuse")
        model.ledger.note(
          isLinkSize(rated.ratedAmps) ? "assumed" : "approximated",
          isLinkSize(rated.ratedAmps) ? "linkType" : "linkSize",
          nameOf(object),
        );
      if (className === "Breaker" || className === "Recloser")
        model.ledger.note("assumed", "remote", nameOf(object));
      reading.add(object, {
        ends,
        keys: {
          ...(className === "Switch" && metersAt(reading, object) > 0
            ? { kind: "meter", count: metersAt(reading, object) }
            : keys),
          ...reading.neutralOf(sides.map((it) => it.letter)),
          ...positions(reading, object, sides, how),
          ...swapOf(sides),
        },
      });
    }
}

/** Meters at a switch: what joins a service to the line is then the meter itself, which can be pulled. */
const metersAt = ({ model }: Reading, object: RdfObject): number =>
  model.pointingTo(object, "Equipments").filter((it) => it.className === "UsagePoint").length;

interface SwitchSide {
  readonly letter: string;
  /** what it is at the second end */
  readonly beyond: string;
  readonly isOpen: boolean;
}

/** The letters that phases go on as, where one of them is another at the second end. */
function swapOf(
  sides: readonly SwitchSide[],
): { readonly phases: string; readonly toPhases: string } | undefined {
  if (sides.every(({ letter, beyond }) => letter === beyond)) return undefined;
  const phases = inOrder(sides.map((it) => it.letter).filter((it) => it !== "N"));
  return {
    phases,
    toPhases: [...phases].map((letter) => sides.find((it) => it.letter === letter)!.beyond).join(""),
  };
}

/** Which phases a switch has, what each is at its second end, and whether each is open; nothing where two meet there. */
function sidesOf(reading: Reading, object: RdfObject): SwitchSide[] | undefined {
  const { model } = reading;
  const parts = model.pointingTo(object, "Switch").filter((it) => it.className === "SwitchPhase");
  const isOpen = model.flag(object, "open");
  const normalOpen = model.flag(object, "normalOpen");
  if (isOpen === undefined && !parts.some((it) => model.flag(it, "closed") !== undefined))
    model.ledger.note("assumed", "position", nameOf(object));
  const whole = isOpen ?? normalOpen ?? false;
  if (parts.length === 0)
    return [
      ...lettersOfEnds(reading, object).map((letter) => ({ letter, beyond: letter, isOpen: whole })),
      { letter: "N", beyond: "N", isOpen: false },
    ];
  const sides: SwitchSide[] = [];
  for (const part of parts) {
    const [first, second] = ["phaseSide1", "phaseSide2"].map((it) => letterOf(model.choice(part, it)));
    const letter = first ?? second;
    if (letter === undefined) continue;
    const beyond = second ?? letter;
    if ((beyond === "N") !== (letter === "N") || sides.some((it) => it.beyond === beyond)) {
      model.ledger.note("leftOut", "swappedPhases", nameOf(object), { first: letter, second: beyond });
      return undefined;
    }
    const closed = model.flag(part, "closed");
    sides.push({ letter, beyond, isOpen: closed === undefined ? whole : !closed });
  }
  return sides;
}

/** Without phases of its own a switch has all three, or as many as the equipment at its ends. */
function lettersOfEnds(reading: Reading, object: RdfObject): string[] {
  const letters = reading.lettersAround(object);
  if (letters === "" || letters === "ABC") return ["A", "B", "C"];
  reading.model.ledger.note("assumed", "phasesOfNeighbours", nameOf(object));
  return [...letters];
}

function positions(
  reading: Reading,
  object: RdfObject,
  sides: readonly SwitchSide[],
  { opens, isGang }: SwitchClass,
): JsonObject {
  const { model } = reading;
  const isPhase = ({ letter }: SwitchSide) => letter !== "N";
  const phases = inOrder(sides.filter(isPhase).map((it) => it.letter));
  const open = inOrder(
    sides.filter((it) => it.isOpen && (isPhase(it) || opens === "cut")).map((it) => it.letter),
  );
  const normallyOpen = model.flag(object, "normalOpen") === true;
  if (normallyOpen !== (open !== "") && model.flag(object, "normalOpen") !== undefined)
    model.ledger.note("warnings", "notNormal", nameOf(object));
  const isPart = open !== "" && open !== phases;
  if (isPart && isGang) model.ledger.note("approximated", "gangInPart", nameOf(object));
  return {
    phases,
    ...(isGang && isPart ? { gang: false } : isGang ? { gang: true } : {}),
    ...(open === "" ? {} : { [opens]: open }),
    ...(normallyOpen && opens === "open" ? { normallyOpen } : {}),
  };
}

/** Ground switches that are closed: fixed grounds, not the crew's. */
export function readGroundSwitches(reading: Reading): void {
  const { model, draft } = reading;
  for (const object of model.all("GroundDisconnector")) {
    const [terminal] = reading.topology.terminalsOf(object);
    const end = terminal === undefined ? undefined : reading.topology.pointOfTerminal(terminal, object, 1);
    if (end === undefined || reading.isOut(object)) continue;
    const isOpen = model.flag(object, "open") ?? model.flag(object, "normalOpen") ?? false;
    if (isOpen) {
      draft.ledger.note("leftOut", "openGroundSwitch", nameOf(object));
      continue;
    }
    draft.ledger.note("assumed", "groundSwitch", nameOf(object));
    const letters = reading.lettersAround(object);
    reading.add(object, {
      ends: [end],
      keys: {
        kind: "ground",
        phases: letters === "" ? "ABC" : letters,
        to: "earth",
        earthOhms: 1,
        evidence: "assumed",
      },
    });
  }
}
