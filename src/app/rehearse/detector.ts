/** What a detector gives to ear: nothing on a dead line, a slow tone where a neighbour induces, a fast one on a live one. */
export type DetectorSound = "live" | "induced" | "dead" | "proven";

const BEEPS: Readonly<
  Record<DetectorSound, { readonly count: number; readonly hertz: number; readonly gap: number }>
> = {
  live: { count: 8, hertz: 2400, gap: 0.12 },
  induced: { count: 3, hertz: 1200, gap: 0.4 },
  proven: { count: 2, hertz: 2400, gap: 0.25 },
  dead: { count: 0, hertz: 0, gap: 0 },
};

let audio: AudioContext | undefined;

/** Sounds the detector. A device without sound shows the same in words and by the lamp. */
export function soundDetector(kind: DetectorSound) {
  const { count, hertz, gap } = BEEPS[kind];
  if (count === 0 || typeof AudioContext === "undefined") return;
  try {
    audio ??= new AudioContext();
    void audio.resume();
    for (let n = 0; n < count; n++) {
      const at = audio.currentTime + n * gap;
      const tone = audio.createOscillator();
      const volume = audio.createGain();
      tone.type = "square";
      tone.frequency.value = hertz;
      volume.gain.setValueAtTime(0.12, at);
      volume.gain.setValueAtTime(0, at + gap / 2);
      tone.connect(volume).connect(audio.destination);
      tone.start(at);
      tone.stop(at + gap / 2);
    }
  } catch {
    // No sound device: the lamp and the words say it.
  }
}
