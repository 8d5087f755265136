import { type ComponentProps, mount, unmount } from "svelte";
import { later } from "../words/later";
import type { Elsewhere } from "../worker/elsewhere";
import type { Failed } from "../worker/questions";
import type { ReadingAnswer, ReadingQuestion } from "../worker/reading";
import { readElsewhere } from "../worker/readElsewhere";
import type { WritingQuestion, WrittenForms } from "../worker/writing";
import { writeElsewhere } from "../worker/writeElsewhere";
import type WaitingSheet from "./Waiting.svelte";

/** Who waits longer than this is told how far it is, and can stop it [ms]. */
const PATIENCE_MS = 1000;

/** Reads a file elsewhere. A person who waits sees how far it is. @returns nothing where they stopped it */
export function readWithPatience(
  question: ReadingQuestion,
  name: string,
): Promise<ReadingAnswer | undefined> {
  const props = $state({ of: "opened" as const, name, share: 0, onstop: () => reading.stop() });
  const reading = readElsewhere(question, ({ share }) => (props.share = share));
  return withPatience(reading.answer, props);
}

/** Writes a drawing elsewhere. A person who waits sees that it is under way, and can stop it. */
export function writeWithPatience<As extends keyof WrittenForms>(
  question: WritingQuestion<As>,
  name: string,
): Elsewhere<WrittenForms[As] | Failed> {
  const writing = writeElsewhere(question);
  const props = { of: "saved" as const, name, onstop: () => writing.stop() };
  return { answer: withPatience(writing.answer, props), stop: () => writing.stop() };
}

async function withPatience<Answer>(
  answer: Promise<Answer>,
  props: ComponentProps<typeof WaitingSheet>,
): Promise<Answer> {
  let sheet: Record<string, unknown> | undefined;
  let isOver = false;
  async function show() {
    const { default: Waiting } = await later(() => import("./Waiting.svelte"));
    if (!isOver) sheet = mount(Waiting, { target: document.body, props });
  }
  const patience = setTimeout(() => void show(), PATIENCE_MS);
  try {
    return await answer;
  } finally {
    isOver = true;
    clearTimeout(patience);
    if (sheet !== undefined) void unmount(sheet);
  }
}
