import { nameOf } from "./model";
import { inOrder } from "./phases";
import type { RdfObject } from "./rdf";
import type { Reading } from "./reading";

/** What one step of a regulator of ours raises [1]. */
const STEP = 0.00625;
const MOST_STEPS = 16;
/** Rounding that is not told [1]. */
const TOLD_FROM = 1e-6;

/** Windings of one phase of a regulator, the source side first. */
interface RegulatorPhase {
  readonly letter: string;
  readonly ends: readonly RdfObject[];
}

/** Step-voltage regulators, one element for all phases between two points. */
export function addRegulator(
  reading: Reading,
  of: RdfObject,
  ends: readonly [string, string],
  phases: readonly RegulatorPhase[],
): void {
  const taps: Record<string, number> = {};
  for (const { letter, ends: windings } of phases) taps[letter] = tapOf(reading, of, windings);
  reading.model.ledger.note("approximated", "idealRegulator", nameOf(of));
  reading.add(of, {
    ends,
    // Fed from its other side it still steps the volts of that end: turned about it would step them the other way.
    isDirected: true,
    keys: {
      kind: "regulator",
      phases: inOrder(phases.map((it) => it.letter)),
      ...reading.withoutNeutral,
      taps,
    },
  });
}

function tapOf({ model }: Reading, of: RdfObject, windings: readonly RdfObject[]): number {
  for (const [index, winding] of windings.entries()) {
    const changer = model
      .pointingTo(winding, "TransformerEnd")
      .find((it) => it.className === "RatioTapChanger");
    if (changer === undefined) continue;
    const state = model.pointingTo(changer, "TapChanger").find((it) => it.className === "SvTapStep");
    const now =
      (state === undefined ? undefined : model.number(state, "position")) ?? model.number(changer, "step");
    if (now === undefined) model.ledger.note("assumed", "tapPosition", nameOf(of));
    const step = now ?? model.number(changer, "normalStep") ?? 0;
    const percent =
      (step - (model.number(changer, "neutralStep") ?? 0)) *
      (model.number(changer, "stepVoltageIncrement") ?? 0);
    const ratio = index === 0 ? 1 / (1 + percent / 100) : 1 + percent / 100;
    const tap = Math.max(-MOST_STEPS, Math.min(MOST_STEPS, Math.round((ratio - 1) / STEP)));
    const lost = Math.abs(ratio - (1 + tap * STEP));
    if (lost > TOLD_FROM)
      model.ledger.note("approximated", "tapRounded", nameOf(of), {
        percent: Math.round(lost * 10000) / 100,
      });
    return tap;
  }
  return 0;
}
