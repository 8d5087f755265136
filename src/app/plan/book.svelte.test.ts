// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { AnsweringWorker, workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { draw } from "../../../tests/support/jobNotation";
import type { WorkerQuestion } from "../worker/questions";
import { Book } from "./book.svelte";

workersAnswerByHand();

test("of a large job it is asked what can be done before how it stands, which takes a search", () => {
  const document = draw(`
    s1 source p0 ABC kvLL=12.47
    ${Array.from({ length: 200 }, (_, n) => `sp${n + 1} span p${n}-p${n + 1} ABC`).join("\n    ")}
    w1 work p3 ABC
  `);
  const book = new Book({ document, opened: {} } as never);
  book.keepUp(undefined);
  const asked = AnsweringWorker.all.flatMap((it) =>
    (it.asked as WorkerQuestion[]).map(({ what }) => what.of),
  );
  expect(asked).toContain("acts");
  expect(asked).not.toContain("seen");
});
