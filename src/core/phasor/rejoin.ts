import { type Circuit, type StepGroup } from "../network";
import { complex, type Complex } from "../terms";
import { invertOhms, multiply, pick, subtractMatrix, times } from "./matrix";
import { stretchElectrical } from "./stretch";

/** A way for current to enter the network: the terms of its volts, the impedances it shares, and what drives it. */
export interface RejoinPort {
  readonly terms: readonly (readonly [node: number, re: number, im: number])[];
  readonly ohms: readonly (readonly Complex[])[];
  /** what drives it, by the group of sources that keep step */
  readonly volts: readonly { readonly group: StepGroup; readonly volts: Complex }[];
}

/**
 * The parted conductors of a stretch as ports of the network in which they are parted. A current i_n along parted
 * conductors drives −Z_rr⁻¹ Z_rn i_n along the whole ones r, and meets Z_nn − Z_nr Z_rr⁻¹ Z_rn itself (Schur complement).
 *
 * @returns letters of the stretch that are parted, and a port for each, its current running from `from` to `to`
 */
export function portsOfRejoin(circuit: Circuit, stretch: number): { parted: number[]; ports: RejoinPort[] } {
  const { part, from, to, alongside } = circuit.stretches[stretch]!;
  const { zOhms } = stretchElectrical(part, [], circuit.frequencyHz);
  const induced = alongside.map((it) => ({
    group: it.element,
    volts: stretchElectrical(part, [it], circuit.frequencyHz).inducedVolts,
  }));
  const all = part.letters.map((_, index) => index);
  const parted = all.filter((index) => part.parted.includes(part.letters[index]!));
  const whole = all.filter((index) => !parted.includes(index));
  const driven =
    whole.length === 0 ? [] : multiply(invertOhms(pick(zOhms, whole)), pick(zOhms, whole, parted));
  const own = pick(zOhms, parted);
  const ohms = whole.length === 0 ? own : subtractMatrix(own, multiply(pick(zOhms, parted, whole), driven));
  const ports = parted.map((letter, column): RejoinPort => {
    const terms: [number, number, number][] = [
      [from[letter]!, -1, 0],
      [to[letter]!, 1, 0],
    ];
    whole.forEach((index, row) => {
      const [re, im] = driven[row]![column]!;
      terms.push([from[index]!, re, im], [to[index]!, -re, -im]);
    });
    const driving = (volts: readonly Complex[]): Complex => {
      const along = whole.map((index) => volts[index]!);
      const carried =
        whole.length === 0 ? complex.zero : times([driven.map((row) => row[column]!)], along)[0]!;
      return complex.subtract(carried, volts[letter]!);
    };
    return { terms, ohms, volts: induced.map((it) => ({ group: it.group, volts: driving(it.volts) })) };
  });
  return { parted, ports };
}
