import { isLine, type Stretch } from "../../../devices";
import { stretchElectrical } from "../../../phasor";
import type { Complex } from "../../../terms";
import { to } from "./rdfWriter";
import {
  addEquipment,
  addNode,
  type EndAt,
  singlePhase,
  tellWhatIsLost,
  type Writing,
  type Written,
} from "./writing";

const METRES_A_KM = 1000;

/** A span, by its impedances for each metre; one with a parted conductor in two halves with a cut between. */
export function writeLine(writing: Writing, written: Written): void {
  const { element, id } = written;
  if (!isLine(element)) return;
  tellWhatIsLost(writing, written, [
    "lengthM",
    "neutral",
    "parted",
    "toPhases",
    "zOhmsPerKm",
    "bMicroSPerKm",
    "rodsPerKm",
    "rodOhms",
    ...(element.construction === "secondary" && /[12]/.test(element.phases) ? ["construction"] : []),
  ]);
  const letters = `${element.phases}${element.neutral ? "N" : ""}`;
  const data = writeMatrices(writing, written, letters);
  const at = (node: string): EndAt => ({ node, letters });
  const end = element.toPhases === "" ? element.to : addNode(writing, `${id}-swap`);
  if (element.toPhases !== "") {
    writing.ledger.note("approximated", "swapAtTheEnd", id);
    const beyond = { node: element.to, letters: `${element.toPhases}${element.neutral ? "N" : ""}` };
    writeJumper(writing, `${id}-swap`, [at(end), beyond], "");
  }
  if (element.parted === "")
    return writeSegment(writing, written, [at(element.from), at(end)], data, element.lengthM);
  writing.ledger.note("approximated", "partedInTheMiddle", id);
  const [near, far] = [addNode(writing, `${id}-near`), addNode(writing, `${id}-far`)];
  writeSegment(writing, written, [at(element.from), at(near)], data, element.lengthM / 2);
  writeSegment(writing, { ...written, id: `${id}-rest` }, [at(far), at(end)], data, element.lengthM / 2);
  writeJumper(writing, `${id}-cut`, [at(near), at(far)], element.parted);
}

/** A connection of no length, cut on some of its letters. */
export function writeJumper(writing: Writing, id: string, ends: readonly EndAt[], cut: string): void {
  const name = addEquipment(writing, "Jumper", { id, saved: {} }, ends, { "Switch.open": false });
  for (const [index, letter] of [...ends[0]!.letters].entries())
    writing.rdf.add("SwitchPhase", `${name} ${letter}`, {
      "SwitchPhase.Switch": to(name),
      "SwitchPhase.phaseSide1": singlePhase(letter),
      "SwitchPhase.phaseSide2": singlePhase(ends[1]!.letters[index]!),
      "SwitchPhase.closed": !cut.includes(letter),
    });
}

function writeSegment(
  writing: Writing,
  written: Written,
  ends: readonly EndAt[],
  data: string,
  lengthM: number,
): void {
  const name = addEquipment(writing, "ACLineSegment", written, ends, {
    "Conductor.length": lengthM,
    "ACLineSegment.PerLengthImpedance": to(data),
  });
  for (const [index, letter] of [...ends[0]!.letters].entries())
    writing.rdf.add("ACLineSegmentPhase", `${name} ${letter}`, {
      "ACLineSegmentPhase.ACLineSegment": to(name),
      "ACLineSegmentPhase.phase": singlePhase(letter),
      "ACLineSegmentPhase.sequenceNumber": index + 1,
    });
}

/** The matrices of a line, once for all lines that are alike. @returns the name of the object that holds them */
function writeMatrices(writing: Writing, { id }: Written, letters: string): string {
  const part = stretchOf(writing, id);
  const known = matricesOf(writing, part);
  const size = letters.length;
  const key = `line ${JSON.stringify([letters, known])}`;
  if (writing.lineData.has(key)) return writing.lineData.get(key)!;
  const name = `line data ${writing.lineData.size + 1}`;
  writing.lineData.set(key, name);
  writing.rdf.add("PerLengthPhaseImpedance", name, {
    "IdentifiedObject.name": name,
    "PerLengthPhaseImpedance.conductorCount": size,
  });
  for (let row = 0; row < size; row++)
    for (let column = 0; column <= row; column++)
      writing.rdf.add("PhaseImpedanceData", `${name} ${row} ${column}`, {
        "PhaseImpedanceData.PhaseImpedance": to(name),
        "PhaseImpedanceData.row": row + 1,
        "PhaseImpedanceData.column": column + 1,
        "PhaseImpedanceData.r": known.ohmsPerM[row]![column]![0],
        "PhaseImpedanceData.x": known.ohmsPerM[row]![column]![1],
        "PhaseImpedanceData.b": known.siemensPerM[row]![column]!,
      });
  return name;
}

const stretchOf = ({ stretches }: Writing, id: string): Stretch => stretches.get(id)!;

interface Matrices {
  readonly ohmsPerM: readonly (readonly Complex[])[];
  readonly siemensPerM: readonly (readonly number[])[];
}

/** What a metre of a line is, as if nothing were parted. */
function matricesOf({ system }: Writing, part: Stretch): Matrices {
  const { zOhms, halfShuntSiemens } = stretchElectrical(
    { ...part, parted: [], lengthM: METRES_A_KM },
    [],
    system.frequencyHz,
  );
  return {
    ohmsPerM: zOhms.map((row) => row.map(([r, x]): Complex => [r / METRES_A_KM, x / METRES_A_KM])),
    siemensPerM: halfShuntSiemens.map((row) => row.map((it) => (2 * it) / METRES_A_KM)),
  };
}

/** A driven ground of a neutral. */
export function writeRod(writing: Writing, id: string, node: string, ohms: number): void {
  addEquipment(writing, "GroundingImpedance", { id, saved: {} }, [{ node, letters: "N" }], {
    "EarthFaultCompensator.r": ohms,
    "GroundingImpedance.x": 0,
  });
}

/** The rods along a line's neutral, half of them at each end. */
export function writeRods(writing: Writing, { id, element }: Written): void {
  if (!isLine(element)) return;
  const { rodSiemens } = stretchOf(writing, id);
  if (rodSiemens === 0) return;
  writing.ledger.note("approximated", "rodsAtEnds", id);
  writeRod(writing, `${id}-rods-1`, element.from, 1 / rodSiemens);
  writeRod(writing, `${id}-rods-2`, element.to, 1 / rodSiemens);
}
