import { isHarm, type PlayedStep } from "../../core";
import { type DetectorSound, soundDetector } from "./detector";
import { habits } from "./habits.svelte";

/** Whether a step did harm, or a rule has more than a note about it. */
export const isWrong = ({ findings, consequence }: PlayedStep): boolean =>
  isHarm(consequence) || findings.some((it) => it.severity !== "note");

/** What the detector showed at a test. */
export function readingOf({ step, state }: PlayedStep): Exclude<DetectorSound, "proven"> {
  const readings = [...(step.phases ?? "")].flatMap(
    (it) => state.readings.get(`${step.at ?? ""}/${it}` as never) ?? [],
  );
  if (readings.some((it) => !it.isWithoutNominalVolts)) return "live";
  return readings.some((it) => !it.isDead) ? "induced" : "dead";
}

/** Tells ear and hand what a step did; the page says the same, so that a device without one of them loses nothing. */
export function feel(played: PlayedStep): void {
  if (habits.sound) {
    if (played.step.do === "check-detector") soundDetector("proven");
    if (played.step.do === "test") soundDetector(readingOf(played));
  }
  if (habits.vibration) navigator.vibrate?.(isWrong(played) ? [120, 60, 120] : 60);
}
