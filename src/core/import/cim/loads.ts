import { nameOf } from "./model";
import { inOrder, letterOf } from "./phases";
import type { RdfObject } from "./rdf";
import type { Reading } from "./reading";

/** Part of a load: which phases, how joined, how much. */
interface LoadPhases {
  readonly phases: string;
  readonly connection: "wye" | "delta";
  readonly watts: number;
  readonly vars: number;
}

/** From one phase to the next, as the standard reads a delta-connected single phase. */
const NEXT: Readonly<Record<string, string>> = { A: "AB", B: "BC", C: "AC", "1": "12", "2": "12" };

/** Customers' loads, one piece for each phase and kind of response. */
export function readLoads(reading: Reading): void {
  const { model } = reading;
  for (const object of model.all("EnergyConsumer", "ConformLoad", "NonConformLoad", "StationSupply")) {
    const ends = reading.topology.endsOf(object, 1);
    if (ends === undefined || reading.isOut(object)) continue;
    const pieces = piecesOf(reading, object);
    const shares = sharesOf(reading, object);
    const drafts = pieces.flatMap((piece) => shares.map((share) => ({ piece, ...share })));
    const largest = drafts.reduce((best, it) => (powerOf(it) > powerOf(best) ? it : best), drafts[0]!);
    const customers = customersOf(reading, object);
    for (const draft of drafts) {
      const { piece, model: response, pShare, qShare } = draft;
      const ratedKv = ratedKvOf(reading, object, piece.phases);
      reading.add(object, {
        ends,
        piece: pieceName(drafts.length, pieces.length, shares.length, piece, response),
        keys: {
          kind: "load",
          phases: piece.phases,
          kw: (piece.watts * pShare) / 1000,
          kvar: (piece.vars * qShare) / 1000,
          ...(piece.connection === "wye" ? {} : { connection: "delta" }),
          ...(response === "Z" ? {} : { model: response }),
          ...(ratedKv === undefined ? {} : { ratedKv }),
          customers: draft === largest ? customers : 0,
        },
      });
    }
  }
}

const powerOf = ({ piece, pShare }: { piece: LoadPhases; pShare: number }) => Math.abs(piece.watts * pShare);

function pieceName(
  all: number,
  pieces: number,
  shares: number,
  { phases }: LoadPhases,
  response: string,
): string {
  if (all === 1) return "";
  return [...(pieces > 1 ? [phases] : []), ...(shares > 1 ? [response] : [])].join("-");
}

function piecesOf(reading: Reading, object: RdfObject): LoadPhases[] {
  const { model } = reading;
  const parts = model
    .pointingTo(object, "EnergyConsumer")
    .filter((it) => it.className === "EnergyConsumerPhase");
  const joined = model.choice(object, "phaseConnection");
  if (joined === undefined) model.ledger.note("assumed", "wye", nameOf(object));
  const connection = joined === "D" ? "delta" : "wye";
  const [watts, vars] = [
    model.watts(object, "p") ?? model.watts(object, "pfixed") ?? 0,
    model.watts(object, "q") ?? model.watts(object, "qfixed") ?? 0,
  ];
  if (parts.length === 0) {
    const around = reading.lettersAround(object);
    const phases = around === "" ? "ABC" : around;
    if (phases !== "ABC") model.ledger.note("assumed", "phasesOfNeighbours", nameOf(object));
    return [
      { phases, connection: connection === "delta" && phases.length < 2 ? "wye" : connection, watts, vars },
    ];
  }
  const share = 1 / parts.length;
  const single = parts.flatMap((it) => {
    const letter = letterOf(model.choice(it, "phase"));
    return letter === undefined || letter === "N"
      ? []
      : [
          {
            letter,
            watts: model.watts(it, "p") ?? watts * share,
            vars: model.watts(it, "q") ?? vars * share,
          },
        ];
  });
  if (connection === "delta")
    return added(single.map(({ letter, ...it }) => ({ phases: NEXT[letter]!, connection, ...it })));
  const legs = single.filter(({ letter }) => letter === "1" || letter === "2");
  const areEqualLegs =
    legs.length === 2 && legs[0]!.watts === legs[1]!.watts && legs[0]!.vars === legs[1]!.vars;
  if (areEqualLegs && single.length === 2)
    return [{ phases: "12", connection, watts: legs[0]!.watts * 2, vars: legs[0]!.vars * 2 }];
  return single.map(({ letter, ...it }) => ({ phases: letter, connection, ...it }));
}

/** Pieces between the same phases are one. */
function added(pieces: readonly LoadPhases[]): LoadPhases[] {
  const sums = new Map<string, LoadPhases>();
  for (const piece of pieces) {
    const known = sums.get(piece.phases);
    sums.set(
      piece.phases,
      known === undefined
        ? piece
        : { ...known, watts: known.watts + piece.watts, vars: known.vars + piece.vars },
    );
  }
  return [...sums.values()];
}

interface Share {
  readonly model: "Z" | "I" | "PQ";
  readonly pShare: number;
  readonly qShare: number;
}

const BY_EXPONENT: Readonly<Record<number, Share["model"]>> = { 0: "PQ", 1: "I", 2: "Z" };

/** How a load answers to other volts, as shares of the three models. */
function sharesOf({ model }: Reading, object: RdfObject): Share[] {
  const response = model.target(object, "LoadResponse");
  const constantPower: Share[] = [{ model: "PQ", pShare: 1, qShare: 1 }];
  if (response === undefined) {
    model.ledger.note("assumed", "constantPower", nameOf(object));
    return constantPower;
  }
  const number = (name: string) => model.number(response, name) ?? 0;
  if (model.flag(response, "exponentModel") === true) {
    const exponent = number("pVoltageExponent");
    const known = BY_EXPONENT[exponent];
    if (known === undefined || number("qVoltageExponent") !== exponent)
      model.ledger.note("approximated", "exponent", nameOf(object));
    return [{ model: known ?? (exponent < 0.5 ? "PQ" : exponent < 1.5 ? "I" : "Z"), pShare: 1, qShare: 1 }];
  }
  const share = (kind: Share["model"], name: string): Share => ({
    model: kind,
    pShare: number(`pConstant${name}`) / 100,
    qShare: number(`qConstant${name}`) / 100,
  });
  const shares = [share("Z", "Impedance"), share("I", "Current"), share("PQ", "Power")].filter(
    (it) => it.pShare !== 0 || it.qShare !== 0,
  );
  return shares.length === 0 ? constantPower : shares;
}

function customersOf({ model }: Reading, object: RdfObject): number {
  const count = model.number(object, "customerCount");
  if (count !== undefined && (count >= 1 || model.isDrawing)) return Math.round(count);
  const points = model.pointingTo(object, "Equipments").filter((it) => it.className === "UsagePoint").length;
  if (points === 0) model.ledger.note("assumed", "customers", nameOf(object));
  return Math.max(1, points);
}

/** Base volts of a split secondary are √3 times a leg's in files that know no split: 208 V stand for 120 V legs. */
const LEG_AS_STAR = { least: 200, most: 216 };

/** Line-to-line volts (leg to leg on a split secondary) at which a load draws what the file says [kV]. */
function ratedKvOf({ model }: Reading, object: RdfObject, phases: string): number | undefined {
  const volts = model.baseVolts(object);
  if (volts === undefined) return undefined;
  if (!/[12]/.test(phases)) return volts / 1000;
  if (volts >= LEG_AS_STAR.least && volts <= LEG_AS_STAR.most) return ((volts / Math.sqrt(3)) * 2) / 1000;
  return (volts < LEG_AS_STAR.least ? volts * 2 : volts) / 1000;
}

/** Capacitor banks, one for each phase where the file tells them apart. */
export function readCapacitors(reading: Reading): void {
  const { model } = reading;
  for (const object of model.all("LinearShuntCompensator")) {
    const ends = reading.topology.endsOf(object, 1);
    if (ends === undefined || reading.isOut(object)) continue;
    if (model.pointingTo(object, "RegulatingCondEq").length > 0)
      model.ledger.note("warnings", "switchedCapacitor", nameOf(object));
    const volts = model.volts(object, "nomU") ?? model.baseVolts(object);
    const base = model.baseVolts(object);
    if (volts === undefined) {
      model.ledger.error("importing.error.capacitorVolts", { object: reading.named(object) });
      continue;
    }
    const parts = model
      .pointingTo(object, "ShuntCompensator")
      .filter((it) => it.className === "LinearShuntCompensatorPhase");
    const isDelta = model.choice(object, "phaseConnection") === "D";
    // One phase may be rated to the neutral: then nomU lies near base volts over √3.
    const isToNeutral = base !== undefined && Math.abs(volts * Math.sqrt(3) - base) < 0.1 * base;
    const kvLL = (isToNeutral ? volts * Math.sqrt(3) : volts) / 1000;
    const banks =
      parts.length === 0
        ? [{ phases: reading.lettersAround(object) || "ABC", from: object, share: 1 }]
        : parts.flatMap((it) => {
            const letter = letterOf(model.choice(it, "phase"));
            if (letter === undefined) return [];
            return isDelta
              ? [{ phases: NEXT[letter]!, from: it, share: 1 }]
              : [{ phases: letter, from: it, share: isToNeutral ? 1 : /[12]/.test(letter) ? 1 / 4 : 1 / 3 }];
          });
    for (const { phases, from, share } of banks) {
      const sections = model.number(from, "sections") ?? model.number(object, "sections");
      const built = Math.max(1, sections ?? model.number(from, "normalSections") ?? 1);
      const b = model.number(from, "bPerSection") ?? model.number(object, "bPerSection") ?? 0;
      reading.add(object, {
        ends,
        piece: banks.length > 1 ? phases : "",
        keys: {
          kind: "capacitor",
          phases,
          kvar: withoutNoise((b * built * volts * volts * share) / 1000),
          kvLL,
          ...(isDelta ? { connection: "delta" } : {}),
          ...(sections === 0 ? { open: phases } : {}),
        },
      });
    }
  }
}

/** A rating that was told as siemens comes back as the number on the plate. */
const withoutNoise = (kvar: number): number => Number(kvar.toPrecision(7));

/**
 * Machines of any sort. One to which the file gives an output runs and feeds that in, positive into the grid, and is taken to
 * stop without the grid, which is told: no file says in which sense it gives an output, nor what a machine does alone. That it
 * carries on is what one thing that goes wrong brings about, as that one which is off starts. Without an output it is off.
 */
export function readMachines(reading: Reading): void {
  const { model } = reading;
  for (const object of model.all("PowerElectronicsConnection", "SynchronousMachine", "AsynchronousMachine")) {
    const ends = reading.topology.endsOf(object, 1);
    if (ends === undefined || reading.isOut(object)) continue;
    const letters = model
      .pointingTo(object, "PowerElectronicsConnection", "SynchronousMachine", "AsynchronousMachine")
      .flatMap((it) => letterOf(model.choice(it, "phase")) ?? []);
    const phases = letters.length === 0 ? "ABC" : inOrder(letters.filter((it) => it !== "N"));
    const ratedU = model.volts(object, "ratedU") ?? model.baseVolts(object);
    const ratedVa = model.watts(object, "ratedS");
    if (ratedU === undefined || ratedVa === undefined) {
      model.ledger.error("importing.error.machine", { object: reading.named(object) });
      continue;
    }
    const [watts, vars] = [model.watts(object, "p") ?? 0, model.watts(object, "q") ?? 0];
    const isSet = watts !== 0 || vars !== 0;
    if (!model.isDrawing)
      model.ledger.note(
        "assumed",
        isSet ? "machineRunning" : "machineOff",
        isSet ? `${nameOf(object)} (${Math.round(watts / 100) / 10} kW)` : nameOf(object),
      );
    reading.add(object, {
      ends,
      keys: {
        kind: "generator",
        phases,
        kva: ratedVa / 1000,
        volts: /[12]/.test(phases) ? legToLeg(ratedU) : ratedU,
        ...(object.className === "PowerElectronicsConnection" ? { interface: "inverter" } : {}),
        ...(isSet ? { on: true, outputKw: watts / 1000 } : {}),
        ...(vars === 0 ? {} : { outputKvar: vars / 1000 }),
      },
    });
  }
}

/** What stands between the legs, whether the file gives a leg's volts, the star's or theirs. */
const legToLeg = (volts: number): number =>
  volts >= LEG_AS_STAR.least && volts <= LEG_AS_STAR.most
    ? Math.round((volts / Math.sqrt(3)) * 2)
    : volts < LEG_AS_STAR.least
      ? volts * 2
      : volts;
