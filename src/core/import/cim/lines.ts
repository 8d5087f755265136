import { type SavedElement } from "../../document";
import type { JsonObject } from "../../terms";
import { RETURN_OHMS_PER_KM, withReturn } from "../neutral";
import {
  fromPerLengthPhase,
  fromPerLengthSequence,
  folded,
  fromTotals,
  type LineMatrices,
  reordered,
} from "./matrices";
import { named, nameOf } from "./model";
import { inOrder, letterRows } from "./phases";
import type { RdfObject } from "./rdf";
import { fromWires } from "./wires";
import type { Reading } from "./reading";

/** Shorter than this a line is a joint [m]. */
const LEAST_METRES = 1e-3;

/** Lines: spans with the matrices that the file gives, or leads where there is no length or no impedance. */
export function readLines(reading: Reading): void {
  const { model } = reading;
  for (const line of model.all("ACLineSegment")) {
    const ends = reading.topology.endsOf(line, 2);
    if (ends === undefined || reading.isOut(line)) continue;
    const parts = model
      .pointingTo(line, "ACLineSegment")
      .filter((it) => it.className === "ACLineSegmentPhase");
    const rows = letterRows(model, parts);
    const letters = rows.length === 0 ? ["A", "B", "C"] : rows;
    const phases = inOrder(letters.filter((it) => it !== "N"));
    const lengthM = model.metres(line, "length") ?? 0;
    if (lengthM < 0) {
      model.ledger.error("importing.error.negativeLength", { object: named(line), metres: lengthM });
      continue;
    }
    const matrices = lengthM < LEAST_METRES ? undefined : matricesOf(reading, line, parts, letters, lengthM);
    if (matrices === "error") continue;
    const isLead = lengthM < LEAST_METRES || (matrices !== undefined && hasNoImpedance(matrices));
    if (isLead) model.ledger.note("approximated", "lineAsLead", nameOf(line));
    const keys: SavedElement = isLead
      ? { kind: "lead", phases, ...reading.neutralOf(letters) }
      : {
          kind: "span",
          phases,
          lengthM,
          ...construction(reading, line, phases),
          ...electrical(reading, letters, matrices, line),
        };
    reading.add(line, { keys, ends });
  }
}

const hasNoImpedance = ({ zOhmsPerKm }: LineMatrices): boolean =>
  zOhmsPerKm.every((row) => row.every(([r, x]) => r === 0 && x === 0));

function matricesOf(
  reading: Reading,
  line: RdfObject,
  parts: readonly RdfObject[],
  letters: readonly string[],
  lengthM: number,
): LineMatrices | "error" | undefined {
  const { model } = reading;
  const data = model.target(line, "PerLengthImpedance");
  const known = model.targetKey(line, "PerLengthImpedance");
  if (known !== undefined && data === undefined) {
    model.ledger.error("importing.error.missing", {
      object: reading.named(line),
      what: "PerLengthImpedance",
      id: model.shownId(known),
    });
    return "error";
  }
  if (data?.className === "PerLengthPhaseImpedance")
    return fromPerLengthPhase(model, line, data, letters) ?? "error";
  const phaseCount = letters.filter((it) => it !== "N").length;
  if (data !== undefined) return fromPerLengthSequence(model, data, phaseCount);
  if (model.target(line, "WireSpacingInfo", "AssetDatasheet") !== undefined) {
    const sorted = [...parts].sort(
      (a, b) => (model.number(a, "sequenceNumber") ?? 0) - (model.number(b, "sequenceNumber") ?? 0),
    );
    const keepNeutral = reading.way === "wires";
    return fromWires(model, line, sorted, letters, reading.frequencyHz, { keepNeutral }) ?? "error";
  }
  return fromTotals(model, line, phaseCount, lengthM);
}

/** Explicit matrices in the format's order, with what the way of the neutral asks for; none where the table must do. */
function electrical(
  reading: Reading,
  letters: readonly string[],
  matrices: LineMatrices | undefined,
  line: RdfObject,
): JsonObject {
  const without = reading.neutralOf(letters);
  if (matrices === undefined) {
    reading.model.ledger.note("assumed", "lineFromTable", nameOf(line));
    return without;
  }
  const rows = matrices.zOhmsPerKm.length === letters.length ? letters : letters.filter((it) => it !== "N");
  const phases = inOrder(rows.filter((it) => it !== "N"));
  // A neutral that the file gives a row of its own is a conductor; only where every neutral is perfect earth is it folded in.
  const keepsNeutral = rows.includes("N") && reading.way !== "earth";
  const order = [...phases, ...(keepsNeutral ? ["N"] : [])].map((it) => rows.indexOf(it));
  const { zOhmsPerKm, bMicroSPerKm } =
    rows.includes("N") && !keepsNeutral ? folded(matrices, order) : reordered(matrices, order);
  if (keepsNeutral || reading.way === "earth" || reading.way === "given")
    return { ...without, zOhmsPerKm, bMicroSPerKm };
  reading.model.ledger.note("approximated", "foldedNeutral", nameOf(line));
  return {
    zOhmsPerKm: withReturn(zOhmsPerKm, RETURN_OHMS_PER_KM, [0, 0]),
    bMicroSPerKm: withReturn(bMicroSPerKm, 0, 0),
  };
}

function construction({ model }: Reading, line: RdfObject, phases: string): JsonObject {
  if (/[12]/.test(phases)) return { construction: "secondary" };
  const spacing = model.target(line, "WireSpacingInfo", "AssetDatasheet");
  const isCable = spacing !== undefined && model.flag(spacing, "isCable") === true;
  return isCable ? { construction: "cable" } : {};
}
