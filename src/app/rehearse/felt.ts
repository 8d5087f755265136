import { isHarm, isOnCable, type PlayedStep, readingsOf } from "../../core";
import { type DetectorSound, soundDetector } from "./detector";
import { habits } from "./habits.svelte";

/** Whether a step did harm, or a rule has more than a note about it. */
export const isWrong = ({ findings, consequence }: PlayedStep): boolean =>
  isHarm(consequence) || findings.some((it) => it.severity !== "note");

/** What the detector showed at a test; nothing where the step is none, or one that no detector takes part in. */
export function readingOf({ step, state }: PlayedStep): Exclude<DetectorSound, "proven"> | undefined {
  if (step.do !== "test" || isOnCable(step)) return undefined;
  const readings = [...readingsOf(state, step).values()];
  if (readings.some((it) => !it.isWithoutNominalVolts)) return "live";
  return readings.some((it) => !it.isDead) ? "induced" : "dead";
}

/** Tells ear and hand what a step did; the page says the same, so that a device without one of them loses nothing. */
export function feel(played: PlayedStep): void {
  if (habits.sound) {
    const shown = played.step.do === "check-detector" ? "proven" : readingOf(played);
    if (shown !== undefined) soundDetector(shown);
  }
  if (habits.vibration) navigator.vibrate?.(isWrong(played) ? [120, 60, 120] : 60);
}
