import { afterEach, describe, expect, test, vi } from "vitest";
import { AnsweringWorker, workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import {
  assess,
  codeTexts,
  exportMap,
  exportModel,
  fingerprintLetters,
  fingerprintOf,
  intoSvg,
  linkTo,
  type StillhotDocument,
} from "../../core";
import { inEnglish } from "../words/catalogue";
import { french } from "../words/french";
import { speech } from "../words/language.svelte";
import { svgOf } from "./drawnSvg";
import type { Failed } from "./questions";
import {
  answerWriting,
  messageOf,
  type PictureToPaint,
  type WritingQuestion,
  type WrittenForms,
  written,
} from "./writing";
import { writeElsewhere } from "./writeElsewhere";

const demos = demoDrawings();

afterEach(() => void ([speech.words, speech.catalogue] = ["en", inEnglish]));

/** As a worker gets a question and gives its answer: a copy each way, and a side that speaks English by itself. */
function elsewhere<As extends keyof WrittenForms>(question: WritingQuestion<As>): WrittenForms[As] {
  const message = structuredClone(messageOf(question));
  [speech.words, speech.catalogue] = ["en", inEnglish];
  const answer = answerWriting(message) as WrittenForms[As] | Failed;
  if ("failed" in answer) throw new Error(answer.failed);
  return answer;
}

describe.each(demos.slice(0, 2))("%s", (_, document) => {
  test.each([
    ["English", "en", inEnglish],
    ["French", "fr", french],
  ] as const)("is the same job-briefing sheet elsewhere, in %s", (_language, words, catalogue) => {
    [speech.words, speech.catalogue] = [words, catalogue];
    const question = { as: "sheet", document, largePrint: true, drawnAt: "today" } as const;
    const here = written(question);
    expect(here).toHaveProperty("html");
    expect(elsewhere(question)).toEqual(here);
  });
});

describe.each(demos)("%s is written elsewhere as it is here", (_, document) => {
  test.each([
    ["map", exportMap],
    ["model", exportModel],
  ] as const)("as a %s, with what is not in it", async (as, write) => {
    const { file, leftOut, approximated } = elsewhere({ as, document });
    const { text, ...notInIt } = write(document);
    expect(await file.text()).toBe(text);
    expect({ leftOut, approximated }).toEqual(notInIt);
  });

  test.each([
    ["English", inEnglish],
    ["French", french],
  ])("as pictures with what is known of it, in %s", async (_language, catalogue) => {
    speech.catalogue = catalogue;
    const told = assess(document);
    const lit = Object.values(told.workPoints).flatMap((it) => it.threats[0]?.path ?? []);
    const [plain, withLit] = [svgOf(document, told), svgOf(document, told, { lit })];
    const { file } = elsewhere({ as: "svg", document, told, lit });
    expect(await file.text()).toBe(intoSvg(withLit, linkTo(document)));
    speech.catalogue = catalogue;
    const { picture, link } = elsewhere({ as: "png", document, told, lit }) as PictureToPaint;
    expect(await picture.text()).toBe(plain);
    expect(link).toBe(linkTo(document));
  });

  test("as a picture of which nothing is known yet, and as a link with its codes", async () => {
    const { file } = elsewhere({ as: "svg", document });
    expect(await file.text()).toBe(intoSvg(svgOf(document, undefined), linkTo(document)));
    const letters = fingerprintLetters(fingerprintOf(document));
    const address = "https://example.org/";
    expect(elsewhere({ as: "link", document, address })).toEqual({
      link: linkTo(document),
      letters,
      codes: codeTexts(document, letters, address),
    });
  });
});

describe("a large drawing", () => {
  workersAnswerByHand();

  const small = demos[0]![1];
  const many = Object.fromEntries(
    Array.from({ length: 200 }, (_, n) => [`l${n}`, { kind: "load", at: "p", phases: "A", kw: 1 }]),
  );
  const large = { ...small, system: { ...small.system, elements: many } } as never as StillhotDocument;

  test("is asked of a worker, which ends with its answer; a small one is not", async () => {
    const { answer } = writeElsewhere({ as: "map", document: large });
    const [worker] = AnsweringWorker.all;
    await vi.waitFor(() => expect(worker!.asked).toHaveLength(1));
    worker!.answer({ leftOut: [] });
    expect(await answer).toEqual({ leftOut: [] });
    expect(worker!.isEnded).toBe(true);
    const here = await writeElsewhere({ as: "map", document: small }).answer;
    expect(here).toHaveProperty("file");
    expect(AnsweringWorker.all).toHaveLength(1);
  });

  test("gives nothing once it is stopped, and says why a worker broke", async () => {
    const stopped = writeElsewhere({ as: "map", document: large });
    stopped.stop();
    expect(await stopped.answer).toBeUndefined();
    expect(AnsweringWorker.all[0]!.isEnded).toBe(true);
    const broken = writeElsewhere({ as: "map", document: large });
    AnsweringWorker.all[1]!.fail("out of memory");
    expect(await broken.answer).toEqual({ failed: "out of memory" });
  });
});
