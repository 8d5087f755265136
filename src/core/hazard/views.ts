import { perObject, settingsOf, type StillhotDocument, type WorkPoint } from "../document";
import { circuitOf } from "../network";
import { type Letter, LETTERS, type PointId } from "../terms";
import { leastMargin } from "./margin";
import { sidesOfThreats } from "./threats";
import type { Threat, Upset, WorkPointReport } from "./types";
import { afterUpsets, upsetsOf } from "./upsets";

/** The worst threat of up to a strength: what the worker would feel most of. */
export const worstThreat = ({ threats }: WorkPointReport, strength: number): Threat | undefined =>
  threats
    .filter((it) => it.strength <= strength)
    .reduce<Threat | undefined>(
      (worst, it) =>
        worst === undefined ||
        it.exposureVolts > worst.exposureVolts ||
        (it.exposureVolts === worst.exposureVolts && it.volts > worst.volts)
          ? it
          : worst,
      undefined,
    );

/** The drawing as it would stand after some upsets, for looking at and assessing; not a thing to save. */
export function documentAfter(document: StillhotDocument, upsets: readonly Upset[]): StillhotDocument {
  const drawn = upsetsOf(document.system, settingsOf(document)).filter((it) =>
    upsets.some(
      ({ kind, element, phase }) => it.kind === kind && it.element === element && it.phase === phase,
    ),
  );
  return { ...document, system: afterUpsets(document.system, drawn) };
}

/**
 * The margin of every point as if it were the work point: the least strength that makes any of its phases live, 0 where
 * it is live now, null where nothing up to strength 3 does. Slow on large drawings: asked for, not kept up to date.
 */
export const marginMap: (document: StillhotDocument) => Readonly<Record<PointId, number | null>> = perObject(
  (document: StillhotDocument) => {
    const settings = settingsOf(document);
    const { system } = document;
    const circuit = circuitOf(system);
    return Object.fromEntries(
      circuit.pointIds.flatMap((at) => {
        const conductors = LETTERS.filter(
          (letter: Letter) => letter !== "N" && circuit.nodeOf.has(`${at}/${letter}`),
        );
        if (conductors.length === 0) return [];
        const workPoint: WorkPoint = { at, conductors: conductors.join("") };
        return [[at, leastMargin(sidesOfThreats({ system, settings, workPoint }))]];
      }),
    );
  },
);
