import type { Alongside, Stretch } from "../devices";
import { type ConductorPosition, positionsOf, type Wire, wireOf } from "../reference";
import { complex, type Complex } from "../terms";
import { cableFaradPerKm, cableOhmsPerKm } from "./cable";
import {
  capacitanceFaradPerKm,
  earthReturnOhmsPerKm,
  type LineConductor,
  primitiveOhmsPerKm,
} from "./carson";
import { fillMatrix, invertOhms, pick, times, trueInverse } from "./matrix";
import { MOST_LINES_KNOWN } from "./tolerances";

/** What a whole stretch of line is to the network. */
export interface StretchElectrical {
  /** series admittance, zero rows where a conductor is parted [S], size × size */
  readonly seriesSiemens: readonly (readonly Complex[])[];
  /** series impedance of all conductors, as if none were parted [Ω] */
  readonly zOhms: readonly (readonly Complex[])[];
  /** shunt susceptance at each end: half of the nodal matrix [S] */
  readonly halfShuntSiemens: readonly (readonly number[])[];
  /** current that circuits alongside push into each conductor at each end by capacitance [A] */
  readonly pushedAmps: readonly Complex[];
  /** volts that circuits alongside induce along each conductor, from `from` to `to` [V] */
  readonly inducedVolts: readonly Complex[];
}

const DEFAULT_WIRE = { overhead: "1/0 ACSR", secondary: "1/0 Al", cable: "1/0 Al" } as const;

/** The wire that a code names, else the construction's own. The reader has refused codes that the table does not have. */
const wire = (code: string, construction: Stretch["construction"]): Wire =>
  wireOf(code) ?? wireOf(DEFAULT_WIRE[construction])!;

const isNeutral = (letter: string) => letter === "N";

/** The conductors of a line in its default positions. */
function conductorsOf({ letters, construction, conductor, neutralConductor }: Stretch): LineConductor[] {
  const positions = positionsOf(letters);
  return letters.map((letter, index) => {
    const { ohmsPerKm, gmrM, radiusM } = wire(isNeutral(letter) ? neutralConductor : conductor, construction);
    return { ohmsPerKm, gmrM, radiusM, position: positions[index]! };
  });
}

function tableOhmsPerKm(part: Stretch, frequencyHz: number): readonly (readonly Complex[])[] {
  if (part.construction !== "cable") return primitiveOhmsPerKm(conductorsOf(part), frequencyHz);
  const withNeutral = part.letters.includes("N");
  return cableOhmsPerKm(part.letters.length - (withNeutral ? 1 : 0), withNeutral, frequencyHz);
}

function tableFaradPerKm(part: Stretch): number[][] {
  if (part.construction !== "cable") return capacitanceFaradPerKm(conductorsOf(part));
  const withNeutral = part.letters.includes("N");
  return cableFaradPerKm(part.letters.length - (withNeutral ? 1 : 0), withNeutral);
}

/** What a stretch is with nothing alongside, by its part, which circuits share that are made of the same saved record. */
const alone = new WeakMap<Stretch, { readonly frequencyHz: number; readonly it: StretchElectrical }>();

/** Series and shunt of a stretch by its explicit matrices, else by Carson and the potential coefficients. */
export function stretchElectrical(
  part: Stretch,
  alongside: readonly Alongside[],
  frequencyHz: number,
): StretchElectrical {
  if (alongside.length > 0) return workedOut(part, alongside, frequencyHz);
  const known = alone.get(part);
  if (known?.frequencyHz === frequencyHz) return known.it;
  const it = workedOut(part, alongside, frequencyHz);
  alone.set(part, { frequencyHz, it });
  return it;
}

function workedOut(part: Stretch, alongside: readonly Alongside[], frequencyHz: number): StretchElectrical {
  const { letters, lengthM } = part;
  const km = lengthM / 1000;
  const { ohms, inverse, halfShuntSiemens } = rememberedPerKm(part, frequencyHz);
  const zOhms = scaled(ohms, km);
  const coupled = alongside.map((it) => coupling(part, it, frequencyHz));
  const sum = (of: (it: Coupling) => readonly Complex[]): Complex[] =>
    letters.map((_, index) =>
      coupled.reduce<Complex>((total, it) => complex.add(total, of(it)[index]!), complex.zero),
    );
  return {
    seriesSiemens: inverse === undefined ? inverseOfWhole(part, zOhms) : scaled(inverse, 1 / km),
    zOhms,
    halfShuntSiemens: halfShuntSiemens.map((row) => row.map((it) => it * km)),
    pushedAmps: sum((it) => it.pushedAmpsAtEachEnd),
    inducedVolts: sum((it) => it.inducedVolts),
  };
}

const scaled = (matrix: readonly (readonly Complex[])[], by: number): Complex[][] =>
  matrix.map((row) => row.map((it) => complex.scale(it, by)));

/** What a kilometre of a line is: a feeder has thousands of spans and some tens of kinds of line. */
interface PerKm {
  readonly ohms: readonly (readonly Complex[])[];
  /** of the conductors that are whole, zero rows for the others; absent where the matrix has none */
  readonly inverse: readonly (readonly Complex[])[] | undefined;
  readonly halfShuntSiemens: readonly (readonly number[])[];
}

const known = new Map<string, PerKm>();
function rememberedPerKm(part: Stretch, frequencyHz: number): PerKm {
  const { letters, parted, construction, conductor, neutralConductor, zOhmsPerKm, bMicroSPerKm } = part;
  const key = [letters.join(""), parted.join(""), construction, conductor, neutralConductor, frequencyHz];
  const asKey = `${key.join(" ")} ${String(zOhmsPerKm)} ${String(bMicroSPerKm)}`;
  const found = known.get(asKey);
  if (found !== undefined) return found;
  const fresh = perKmOf(part, frequencyHz);
  if (known.size >= MOST_LINES_KNOWN) known.clear();
  known.set(asKey, fresh);
  return fresh;
}

function perKmOf(part: Stretch, frequencyHz: number): PerKm {
  const ohms = part.zOhmsPerKm ?? tableOhmsPerKm(part, frequencyHz);
  const omega = 2 * Math.PI * frequencyHz;
  const siemensPerKm =
    part.bMicroSPerKm?.map((row) => row.map((it) => it * 1e-6)) ??
    tableFaradPerKm(part).map((row) => row.map((it) => it * omega));
  return {
    ohms,
    inverse: amongWhole(part, ohms, trueInverse),
    halfShuntSiemens: siemensPerKm.map((row) => row.map((it) => it / 2)),
  };
}

/** One that has no inverse is nearly nothing over its whole length, however long it is. */
const inverseOfWhole = (part: Stretch, zOhms: readonly (readonly Complex[])[]): Complex[][] =>
  amongWhole(part, zOhms, invertOhms)!;

/** An inverse among the conductors that are not parted, with zero rows and columns for those that are. */
function amongWhole(
  { letters, parted }: Stretch,
  ohms: readonly (readonly Complex[])[],
  inverseOf: (ohms: Complex[][]) => Complex[][] | undefined,
): Complex[][] | undefined {
  const whole = letters.map((_, index) => index).filter((index) => !parted.includes(letters[index]!));
  const inverse = whole.length === 0 ? [] : inverseOf(pick(ohms, whole));
  if (inverse === undefined) return undefined;
  return fillMatrix(letters.length, letters.length, (row, column) => {
    const [i, j] = [whole.indexOf(row), whole.indexOf(column)];
    return i === -1 || j === -1 ? complex.zero : inverse[i]![j]!;
  });
}

/** Spacing between the phases of a circuit alongside, and their radius [m]: the file format's own figures. */
const ALONGSIDE_SPACING_M = 0.9;
const ALONGSIDE_RADIUS_M = 0.0055;

interface Coupling {
  readonly pushedAmpsAtEachEnd: readonly Complex[];
  readonly inducedVolts: readonly Complex[];
}

/**
 * What a live three-phase circuit beside or above the line does to it: capacitance by potential coefficients of both
 * together (only the block between them: the span's own matrix stays), and Carson's mutual impedance for its current.
 */
function coupling(part: Stretch, circuit: Alongside, frequencyHz: number): Coupling {
  const own = conductorsOf(part);
  const positions = alongsidePositions(part, circuit);
  const live = positions.map((position) => ({ position, radiusM: ALONGSIDE_RADIUS_M }));
  const km = (circuit.lengthM ?? part.lengthM) / 1000;
  const angles = [0, -120, 120];
  const volts = angles.map((degrees) => complex.polar(circuit.volts, degrees));
  const amps = angles.map((degrees) => complex.polar(circuit.amps, degrees));
  const farad = capacitanceFaradPerKm([...own, ...live]);
  const omega = 2 * Math.PI * frequencyHz;
  const between = fillMatrix(own.length, live.length, (row, column) => [
    0,
    -omega * km * farad[row]![own.length + column]!,
  ]);
  const mutual = fillMatrix(own.length, live.length, (row, column) => {
    const [x, y] = own[row]!.position;
    const apart = Math.hypot(x - positions[column]![0], y - positions[column]![1]);
    return complex.scale(earthReturnOhmsPerKm(apart, 0, frequencyHz), km);
  });
  return {
    pushedAmpsAtEachEnd: times(between, volts).map((it) => complex.scale(it, 0.5)),
    inducedVolts: times(mutual, amps),
  };
}

/** In a level plane, A nearest, outward on the side of the span's last phase; beside its outermost phase, or above its highest. */
function alongsidePositions(part: Stretch, { relation, spacingM }: Alongside): ConductorPosition[] {
  const all = positionsOf(part.letters);
  const phases = part.letters.flatMap((letter, index) => (isNeutral(letter) ? [] : [all[index]!]));
  const side = phases.at(-1)![0] < phases[0]![0] ? -1 : 1;
  const outermost = phases.reduce((best, it) => (it[0] * side > best[0] * side ? it : best));
  const highest = phases.reduce((best, it) => (it[1] > best[1] ? it : best));
  const first: ConductorPosition =
    relation === "underbuild"
      ? [highest[0], highest[1] + spacingM]
      : [outermost[0] + side * spacingM, outermost[1]];
  return [0, 1, 2].map((index) => [first[0] + side * index * ALONGSIDE_SPACING_M, first[1]]);
}
