import { kronReduce } from "../../phasor/matrix";
import type { Complex } from "../../terms";
import { type CimModel, named } from "./model";
import type { RdfObject } from "./rdf";

/** Series impedance and shunt susceptance of a line, row by row [Ω/km], [µS/km]. */
export interface LineMatrices {
  readonly zOhmsPerKm: readonly (readonly Complex[])[];
  readonly bMicroSPerKm: readonly (readonly number[])[];
}

const OHMS_PER_KM = 1000;
const MICROSIEMENS_PER_KM = 1e9;

/** A matrix of one own and one mutual value. */
function balanced(size: number, own: Complex, mutual: Complex, ownB: number, mutualB: number): LineMatrices {
  const square = <Value>(diagonal: Value, beside: Value): Value[][] =>
    Array.from({ length: size }, (_, row) =>
      Array.from({ length: size }, (_unused, column) => (row === column ? diagonal : beside)),
    );
  return { zOhmsPerKm: square(own, mutual), bMicroSPerKm: square(ownB, mutualB) };
}

/** Sequence values of a line [Ω, S for one unit of length]. */
interface Sequence {
  readonly r: number;
  readonly x: number;
  readonly b: number;
  readonly r0: number;
  readonly x0: number;
  readonly b0: number;
}

/**
 * Own values are (z0 + 2 z1)/3, mutual ones (z0 − z1)/3, and the same of susceptance.
 * Source: symmetrical components (Fortescue 1918) of a line whose phases are alike.
 */
export function fromSequence(
  size: number,
  { r, x, b, r0, x0, b0 }: Sequence,
  perKm: number,
  perKmB: number,
): LineMatrices {
  const own = (zero: number, one: number, scale: number) => ((zero + 2 * one) / 3) * scale;
  const mutual = (zero: number, one: number, scale: number) => ((zero - one) / 3) * scale;
  return balanced(
    size,
    [own(r0, r, perKm), own(x0, x, perKm)],
    [mutual(r0, r, perKm), mutual(x0, x, perKm)],
    own(b0, b, perKmB),
    mutual(b0, b, perKmB),
  );
}

/** Sequence values that a file gives for the whole line; what it leaves out of the zero sequence is 2 r, 3 x, 0.6 b. */
export function fromTotals(
  model: CimModel,
  line: RdfObject,
  size: number,
  lengthM: number,
): LineMatrices | undefined {
  const [r, x] = [model.number(line, "r"), model.number(line, "x")];
  if (r === undefined && x === undefined) return undefined;
  const b = model.number(line, "bch") ?? 0;
  const [r0, x0, b0] = [model.number(line, "r0"), model.number(line, "x0"), model.number(line, "b0ch")];
  if (size > 1 && (r0 === undefined || x0 === undefined))
    model.ledger.note("assumed", "zeroSequence", line.attributes.get("name") ?? line.id);
  const km = lengthM / 1000;
  return fromSequence(
    size,
    { r: r ?? 0, x: x ?? 0, b, r0: r0 ?? 2 * (r ?? 0), x0: x0 ?? 3 * (x ?? 0), b0: b0 ?? 0.6 * b },
    1 / km,
    1e6 / km,
  );
}

/** Sequence values per metre. */
export function fromPerLengthSequence(model: CimModel, data: RdfObject, size: number): LineMatrices {
  const number = (name: string) => model.number(data, name);
  const [r, x, b] = [number("r") ?? 0, number("x") ?? 0, number("bch") ?? 0];
  const [r0, x0] = [number("r0"), number("x0")];
  if (size > 1 && (r0 === undefined || x0 === undefined))
    model.ledger.note("assumed", "zeroSequence", data.attributes.get("name") ?? data.id);
  return fromSequence(
    size,
    { r, x, b, r0: r0 ?? 2 * r, x0: x0 ?? 3 * x, b0: number("b0ch") ?? 0.6 * b },
    OHMS_PER_KM,
    MICROSIEMENS_PER_KM,
  );
}

/** A matrix per metre, of which the file gives one triangle. Anything missing or twofold is an error. */
export function fromPerLengthPhase(
  model: CimModel,
  line: RdfObject,
  data: RdfObject,
  rows: readonly string[],
): LineMatrices | undefined {
  const size = rows.length;
  const entries = model.pointingTo(data, "PhaseImpedance");
  const known = new Map<string, RdfObject>();
  const problems: string[] = [];
  const clashes: string[] = [];
  for (const entry of entries) {
    const [row, column] = [model.number(entry, "row"), model.number(entry, "column")];
    if (row === undefined || column === undefined) continue;
    const key = `${Math.max(row, column)} ${Math.min(row, column)}`;
    const other = known.get(key);
    if (other !== undefined && !sameEntry(model, other, entry)) clashes.push(`row ${row} column ${column}`);
    known.set(key, other ?? entry);
  }
  const count = model.number(data, "conductorCount") ?? sizeOf(known);
  for (let row = 1; row <= count; row++)
    for (let column = 1; column <= row; column++)
      if (!known.has(`${row} ${column}`)) problems.push(`row ${row} column ${column}`);
  if (count !== size || problems.length > 0 || clashes.length > 0) {
    const gaps = { line: named(line), data: named(data), count, size, phases: rows.join(", ") };
    if (count !== size && problems.length > 0)
      model.ledger.error("importing.error.matrixSizeAndEntries", { ...gaps, missing: problems.join(", ") });
    else if (count !== size) model.ledger.error("importing.error.matrixSize", gaps);
    else if (problems.length > 0)
      model.ledger.error("importing.error.matrixEntries", { ...gaps, missing: problems.join(", ") });
    if (clashes.length > 0)
      model.ledger.error("importing.error.matrixTwice", { ...gaps, twice: clashes.join(", ") });
    return undefined;
  }
  const at = (row: number, column: number) =>
    known.get(`${Math.max(row, column) + 1} ${Math.min(row, column) + 1}`)!;
  const square = <Value>(value: (entry: RdfObject) => Value): Value[][] =>
    rows.map((_, row) => rows.map((_unused, column) => value(at(row, column))));
  return {
    zOhmsPerKm: square((it): Complex => [
      (model.number(it, "r") ?? 0) * OHMS_PER_KM,
      (model.number(it, "x") ?? 0) * OHMS_PER_KM,
    ]),
    bMicroSPerKm: square((it) => (model.number(it, "b") ?? 0) * MICROSIEMENS_PER_KM),
  };
}

const sameEntry = (model: CimModel, one: RdfObject, other: RdfObject): boolean =>
  ["r", "x", "b"].every((it) => (model.number(one, it) ?? 0) === (model.number(other, it) ?? 0));

/** How many rows the entries name. */
const sizeOf = (entries: ReadonlyMap<string, RdfObject>): number =>
  Math.max(0, ...[...entries.keys()].map((it) => Number(it.split(" ")[0])));

/** The rows that are kept, in their order, with all others earthed at both ends and eliminated (Kron 1939). */
export function folded({ zOhmsPerKm, bMicroSPerKm }: LineMatrices, keep: readonly number[]): LineMatrices {
  return {
    zOhmsPerKm: kronReduce(zOhmsPerKm, keep),
    bMicroSPerKm: keep.map((row) => keep.map((column) => bMicroSPerKm[row]![column]!)),
  };
}

/** Rows and columns in another order. */
export function reordered(
  { zOhmsPerKm, bMicroSPerKm }: LineMatrices,
  order: readonly number[],
): LineMatrices {
  const turn = <Value>(matrix: readonly (readonly Value[])[]): Value[][] =>
    order.map((row) => order.map((column) => matrix[row]![column]!));
  return { zOhmsPerKm: turn(zOhmsPerKm), bMicroSPerKm: turn(bMicroSPerKm) };
}
