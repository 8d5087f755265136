import { answerReading, type ReadingQuestion } from "./reading";

/** Reads one file, tells how far it is, and answers. */
self.addEventListener("message", ({ data }: MessageEvent<ReadingQuestion>) => {
  void answerReading(data, (progress) => self.postMessage(progress)).then((answer) =>
    self.postMessage(answer),
  );
});
