import { mount, unmount } from "svelte";
import { later } from "../words/later";
import { type ReadingAnswer, type ReadingQuestion, readElsewhere } from "../worker/reading";

/** Who waits longer than this is told how far it is, and can stop it [ms]. */
const PATIENCE_MS = 1000;

/** Reads a file elsewhere. A person who waits sees how far it is. @returns nothing where they stopped it */
export async function readWithPatience(
  question: ReadingQuestion,
  name: string,
): Promise<ReadingAnswer | undefined> {
  const props = $state({ name, share: 0, onstop: () => reading.stop() });
  const reading = readElsewhere(question, ({ share }) => (props.share = share));
  let sheet: Record<string, unknown> | undefined;
  let isOver = false;
  async function show() {
    const { default: Waiting } = await later(() => import("./Waiting.svelte"));
    if (!isOver) sheet = mount(Waiting, { target: document.body, props });
  }
  const patience = setTimeout(() => void show(), PATIENCE_MS);
  try {
    return await reading.answer;
  } finally {
    isOver = true;
    clearTimeout(patience);
    if (sheet !== undefined) void unmount(sheet);
  }
}
