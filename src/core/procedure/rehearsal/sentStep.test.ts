import { expect, test } from "vitest";
import { demoDrawings } from "../../../../tests/support/demoDrawings";
import { jobOf } from "../../document";
import { beginJob } from "../job/state";
import { play } from "./play";
import { receivedStep, sentStep } from "./sentStep";

const withJobs = demoDrawings().filter(([, document]) => jobOf(document).steps.length > 0);

test.each(withJobs)("each step of %s is what was played, once it was sent and received", (_, document) => {
  let here = beginJob(document);
  let there = beginJob(structuredClone(document));
  for (const step of jobOf(document).steps) {
    const played = play(there, step);
    const received = receivedStep(here, structuredClone(sentStep(there, played)));
    expect(received).toEqual(play(here, step));
    there = played.state;
    here = received.state;
  }
});
