// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { AnsweringWorker, workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { draw } from "../../../tests/support/jobNotation";
import { assessWithoutWork, toColumns } from "../../core";
import { StatesBeside } from "./statesBeside.svelte";

workersAnswerByHand();

const tap = (spans: number) =>
  draw(`
    s1 source p1 ABC kvLL=12.47
    ${Array.from({ length: spans }, (_, n) => `sp${n + 1} span p${n + 1}-p${n + 2} ABC`).join("\n    ")}
  `);

test("of a large drawing nothing is known until it was worked out beside the page", () => {
  const document = tap(200);
  const states = new StatesBeside();
  states.ask(document);
  expect(states.of(document)).toBeUndefined();
  const found = assessWithoutWork(document);
  AnsweringWorker.all[0]!.answer({ columns: toColumns(found).columns });
  expect(states.of(document)?.conductors).toEqual(found.conductors);
  expect(states.of({ ...document })).toBeUndefined();
});

test("a small one is worked out at once", () => {
  const states = new StatesBeside();
  const document = tap(3);
  states.ask(document);
  expect(AnsweringWorker.all).toEqual([]);
  expect(states.of(document)?.conductors).toEqual(assessWithoutWork(document).conductors);
});
