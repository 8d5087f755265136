import { expect, test } from "vitest";
import type { WorkPointReport } from "../hazard";
import { standingSentences } from "./sentences";
import { spell } from "../../../tests/support/words";

const standing = (threatsCompleteTo?: number) =>
  standingSentences({
    verdict: "isolated",
    margin: 2,
    threats: [],
    assumptions: 0,
    ...(threatsCompleteTo === undefined ? {} : { threatsCompleteTo }),
  } satisfies WorkPointReport).map((it) => spell(it));

test("how a work point stands says that not all ways were looked for, and nothing of it where they were", () => {
  const said =
    /^Not all ways were looked for: of those that take (.*) things going wrong some may be missing\.$/;
  const found = (completeTo?: number) => standing(completeTo).flatMap((it) => said.exec(it)?.[1] ?? []);
  expect([found(), found(1), found(2)]).toEqual([[], ["two or three"], ["three"]]);
  expect(standing(2)).toHaveLength(standing().length + 1);
});
