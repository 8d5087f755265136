// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import { beginJob, jobOf, play, stepBy, type WorkPointId } from "../../core";
import { learn } from "../words/catalogue";
import { english } from "../words/sentences";
import { readingOf } from "./felt";
import { challengesBefore } from "./holds";

learn(english);
const [, document] = demoDrawings()[0]!;
const { at } = Object.values(jobOf(document).workPoints)[0]!;
const proven = play(beginJob(document), { do: "check-detector" }).state;

test("a test that names no phases sounds what the highest of all that are there showed", () => {
  const every = play(proven, stepBy("test", { at }));
  expect([...every.state.readings.values()].some((it) => !it.isWithoutNominalVolts)).toBe(true);
  expect(readingOf(every)).toBe("live");
});

test.each(["spike", "tracer"])(
  "no detector sounds where a cable is proven with a %s: a live one stands without volts behind it",
  (tool) => {
    expect(readingOf(play(proven, stepBy("test", { at, with: tool })))).toBeUndefined();
  },
);

test("what goes on without phases named is tested nowhere until all that are there were", () => {
  const step = stepBy("ground", { at });
  const said = challengesBefore(beginJob(document), undefined, step)?.challenges.map((it) => it.says);
  expect(said?.some((it) => /not tested/i.test(it))).toBe(true);
});

test("where it is not known how the job stands, nobody is told what is hot, nor that nothing is", () => {
  const [id] = Object.keys(jobOf(document).workPoints);
  const hold = challengesBefore(beginJob(document), undefined, stepBy("work", { at: id as WorkPointId }));
  const says = (name: string) => hold?.challenges.find((it) => it.id.endsWith(` ${name}`))?.says;
  expect([says("live"), says("near")]).toEqual([english["challenge.look"], english["challenge.look"]]);
});
