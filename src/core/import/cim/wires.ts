import {
  capacitanceFaradPerKm,
  earthReturnOhmsPerKm,
  EPSILON_0,
  type LineConductor,
} from "../../phasor/carson";
import { fillMatrix, kronReduce } from "../../phasor/matrix";
import type { ConductorPosition } from "../../reference";
import type { Complex } from "../../terms";
import type { LineMatrices } from "./matrices";
import { type CimModel, named, nameOf } from "./model";
import type { RdfObject } from "./rdf";

/** Copper tape of a shielded cable [Ω·m]; Kersting, Distribution System Modeling and Analysis, section 4.2 (from memory). */
const TAPE_OHM_METRES = 2.3718e-8;
/** What alternating current adds to a resistance that is given for direct current [1]. */
const AC_OVER_DC = 1.02;

/** A wire of a line, and the screen around it where it is a cable. */
interface CimWire {
  readonly letter: string;
  readonly conductor: LineConductor;
  readonly screen?: CableScreen;
}

interface CableScreen {
  readonly gmrM: number;
  readonly ohmsPerKm: number;
  /** from the conductor to its own screen [m] */
  readonly radiusM: number;
  /** from the conductor through the insulation [F/km] */
  readonly faradPerKm: number;
}

/**
 * Matrices of a line from its wires and where they hang: the phases in the rows that are asked for, every neutral wire
 * and screen earthed at both ends and eliminated; with `keepNeutral`, `N` stays as the last row.
 *
 * @returns nothing where wires or places are missing; that is an error by then
 * @see Carson 1926 with 100 Ω·m of earth; Kersting, sections 4.1 and 4.2, for screens; potential coefficients for wires in air
 */
export function fromWires(
  model: CimModel,
  line: RdfObject,
  parts: readonly RdfObject[],
  letters: readonly string[],
  frequencyHz: number,
  { keepNeutral }: { readonly keepNeutral: boolean },
): LineMatrices | undefined {
  const wires = wiresOf(model, line, parts, letters);
  if (wires === undefined) return undefined;
  const screens = wires.filter((it) => it.screen !== undefined);
  const size = wires.length + screens.length;
  const primitive = fillMatrix(size, size, (row, column) =>
    between(wires, screens, row, column, frequencyHz),
  );
  const isKept = ({ letter }: CimWire) => letter !== "N" || keepNeutral;
  const keep = wires.flatMap((it, index) => (isKept(it) ? [index] : []));
  const farad = screens.length > 0 ? screened(wires) : capacitanceFaradPerKm(wires.map((it) => it.conductor));
  const omega = 2 * Math.PI * frequencyHz * 1e6;
  return {
    zOhmsPerKm: kronReduce(primitive, keep),
    bMicroSPerKm: keep.map((row) => keep.map((column) => farad[row]![column]! * omega)),
  };
}

function wiresOf(
  model: CimModel,
  line: RdfObject,
  parts: readonly RdfObject[],
  letters: readonly string[],
): CimWire[] | undefined {
  const spacing = model.target(line, "WireSpacingInfo", "AssetDatasheet");
  const positions = spacing === undefined ? [] : model.pointingTo(spacing, "WireSpacingInfo");
  const wires: CimWire[] = [];
  for (const [index, letter] of letters.entries()) {
    const position = positions.find((it) => model.number(it, "sequenceNumber") === index + 1);
    const info =
      model.target(parts[index] ?? line, "WireInfo", "AssetDatasheet") ?? model.target(line, "WireInfo");
    const at: ConductorPosition | undefined =
      position === undefined
        ? undefined
        : [model.number(position, "xCoord") ?? 0, model.number(position, "yCoord") ?? 0];
    const conductor = info === undefined || at === undefined ? undefined : conductorOf(model, info, at);
    if (conductor === undefined) {
      model.ledger.error("importing.error.wires", { line: named(line), letter });
      return undefined;
    }
    const screen = screenOf(model, info!);
    wires.push({ letter, conductor, ...(screen === undefined ? {} : { screen }) });
  }
  return wires;
}

function conductorOf(
  model: CimModel,
  info: RdfObject,
  position: ConductorPosition,
): LineConductor | undefined {
  const [gmrM, radiusM] = [model.number(info, "gmr"), model.number(info, "radius")];
  const ac = model.number(info, "rAC75");
  const dc = model.number(info, "rDC20");
  if (gmrM === undefined || radiusM === undefined || (ac === undefined && dc === undefined)) return undefined;
  if (ac === undefined) model.ledger.note("assumed", "acResistance", nameOf(info));
  return { gmrM, radiusM, ohmsPerKm: (ac ?? dc! * AC_OVER_DC) * 1000, position };
}

function screenOf(model: CimModel, info: RdfObject): CableScreen | undefined {
  const number = (name: string) => model.number(info, name);
  const over = (name: string) => (number(name) ?? 0) / 2;
  const faradPerKm =
    (2000 * Math.PI * EPSILON_0 * (number("relativePermittivity") ?? 1)) /
    Math.log(over("diameterOverInsulation") / (number("radius") ?? 1));
  if (info.className === "ConcentricNeutralCableInfo") {
    const count = number("neutralStrandCount") ?? 0;
    const strandOhms = number("neutralStrandRDC20") ?? 0;
    const radiusM = over("diameterOverNeutral") - (number("neutralStrandRadius") ?? 0);
    const gmrM = ((number("neutralStrandGmr") ?? 0) * count * radiusM ** (count - 1)) ** (1 / count);
    return { gmrM, radiusM, ohmsPerKm: (strandOhms / count) * 1000, faradPerKm };
  }
  if (info.className !== "TapeShieldCableInfo") return undefined;
  const thickness = number("tapeThickness") ?? 0;
  const diameter = number("diameterOverScreen") ?? 0;
  const lap = Math.sqrt(50 / (100 - (number("tapeLap") ?? 0)));
  const radiusM = (diameter - thickness) / 2;
  return {
    gmrM: radiusM,
    radiusM,
    ohmsPerKm: (TAPE_OHM_METRES / (Math.PI * diameter * thickness * lap)) * 1000,
    faradPerKm,
  };
}

/** One entry of the primitive matrix: wires first, then the screens of those that have one [Ω/km]. */
function between(
  wires: readonly CimWire[],
  screens: readonly CimWire[],
  row: number,
  column: number,
  frequencyHz: number,
): Complex {
  const [a, b] = [row, column].map((it) =>
    it < wires.length ? wires[it]! : screens[it - wires.length]!,
  ) as [CimWire, CimWire];
  const isScreen = [row, column].map((it) => it >= wires.length);
  if (row === column) {
    const own = isScreen[0] ? a.screen! : a.conductor;
    return earthReturnOhmsPerKm(own.gmrM, own.ohmsPerKm, frequencyHz);
  }
  const [[x, y], [u, v]] = [a.conductor.position, b.conductor.position];
  const apartM = a === b ? a.screen!.radiusM : Math.hypot(x - u, y - v);
  return earthReturnOhmsPerKm(apartM, 0, frequencyHz);
}

/** A screened cable has nothing but its own screen to charge; a bare wire in the ground beside it nothing at all. */
const screened = (wires: readonly CimWire[]): number[][] =>
  wires.map((own, row) => wires.map((_, column) => (row === column ? (own.screen?.faradPerKm ?? 0) : 0)));
