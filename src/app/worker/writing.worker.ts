import { canPaintBeside, painted } from "./painted";
import { answerWriting, type WritingMessage } from "./writing";

/** Writes one drawing, paints it where it is to be painted, and answers. */
self.addEventListener("message", ({ data }: MessageEvent<WritingMessage>) => {
  void answered(data)
    .catch((error: unknown) => ({ failed: error instanceof Error ? error.message : String(error) }))
    .then((answer) => self.postMessage(answer));
});

async function answered(message: WritingMessage) {
  const answer = answerWriting(message);
  return "picture" in answer && canPaintBeside() ? { file: await painted(answer) } : answer;
}
