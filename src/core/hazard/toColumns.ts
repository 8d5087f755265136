import { type ConductorId, type ElementId, LETTERS } from "../terms";
import type { AssessmentColumns, RowIds } from "./columns";
import { STATES } from "./stateColumn";
import type { Assessment } from "./types";

/** Columns of an assessment, and the ids of their rows. */
export function toColumns(
  { conductors, elements, workPoints, findings }: Assessment,
  before?: RowIds,
): { readonly columns: AssessmentColumns; readonly ids: RowIds } {
  const ids = sameAs(before, {
    conductors: Object.keys(conductors) as ConductorId[],
    elements: Object.keys(elements) as ElementId[],
  });
  const reports = ids.conductors.map((id) => conductors[id]!);
  const sets = new Map<string, number>();
  const sources: (readonly ElementId[])[] = [];
  const reachedBy = Uint32Array.from(reports, ({ sources: own }) => {
    const key = own.join(" ");
    let at = sets.get(key);
    if (at === undefined) sets.set(key, (at = sources.push(own) - 1));
    return at;
  });
  const flows = ids.elements.map((id) => elements[id]!);
  const given = flows.map(({ amps }) => LETTERS.filter((it) => amps[it] !== undefined));
  const columns: AssessmentColumns = {
    ...(ids.conductors === before?.conductors ? {} : { conductorIds: ids.conductors.join(" ") }),
    ...(ids.elements === before?.elements ? {} : { elementIds: ids.elements.join(" ") }),
    states: Uint8Array.from(reports, ({ state }) => STATES.indexOf(state)),
    volts: Float64Array.from(reports, (it) => it.volts),
    voltsWorst: Float64Array.from(reports, (it) => it.voltsWorst ?? NaN),
    voltsLoadsOff: Float64Array.from(reports, (it) => it.voltsLoadsOff),
    angleDeg: Float64Array.from(reports, (it) => it.angleDeg),
    reachedBy,
    sources,
    letters: Uint8Array.from(given, (letters) =>
      letters.reduce((bits, it) => bits | (1 << LETTERS.indexOf(it)), 0),
    ),
    amps: Float64Array.from(flows.flatMap(({ amps }, k) => given[k]!.map((it) => amps[it]!))),
    ampAngleDeg: Float64Array.from(flows.flatMap(({ angleDeg }, k) => given[k]!.map((it) => angleDeg[it]!))),
    workPoints,
    findings,
  };
  return { columns, ids };
}

/** The lists of before where they say the same, so that they need not be sent, and are known again by identity. */
function sameAs(before: RowIds | undefined, now: RowIds): RowIds {
  const same = <Id>(was: readonly Id[] | undefined, is: readonly Id[]) =>
    was !== undefined && was.length === is.length && was.every((id, row) => id === is[row]) ? was : is;
  return {
    conductors: same(before?.conductors, now.conductors),
    elements: same(before?.elements, now.elements),
  };
}

/** Memory that columns stand in, which can be handed over without a copy. */
export const buffersOf = (columns: AssessmentColumns): ArrayBuffer[] =>
  [
    columns.states,
    columns.volts,
    columns.voltsWorst,
    columns.voltsLoadsOff,
    columns.angleDeg,
    columns.reachedBy,
    columns.letters,
    columns.amps,
    columns.ampAngleDeg,
  ].map((it) => it.buffer as ArrayBuffer);
