import { lettersOf, say } from "../terms";
import { flag, phases } from "./fields";
import { defineDevice, oneEnd } from "./define";
import { needsItsPhases } from "./shared";
import { filled, line, outline } from "./symbol";

/** Ohms of a failed arrester: the file format's own figure for a dead short through the block. */
const FAILED_OHMS = 0.01;

/** A surge arrester. Failed, it is a fault to the neutral; loose, it can fall on whoever shakes the pole. */
export const arrester = defineDevice({
  kind: "arrester",
  prefix: "a",
  ends: ["at"],
  fields: { ...oneEnd, failed: phases(), loose: flag(false) },
  shorts: ({ failed }) => failed,
  brings: () => [],
  needs: (it) => [
    ...needsItsPhases(it),
    ...(it.failed === "" ? [] : [{ end: "at" as const, letter: "N" as const, key: "failed" }]),
  ],
  parts: ({ failed }) =>
    lettersOf(failed).map((letter) => ({
      part: "branch",
      role: "fault",
      from: `at/${letter}`,
      to: "at/N",
      letter,
      siemens: [1 / FAILED_OHMS, 0],
    })),
  position: ({ failed }) => (failed === "" ? undefined : say("drawing.failed", { phases: failed })),
  hangsToward: 45,
  symbol: () => [
    line(-20, 0, -14, 0),
    outline(-14, -7, 8, -7, 8, 7, -14, 7),
    line(-14, 0, -4, 0),
    filled(-6, -4, 3, 0, -6, 4),
    line(8, 0, 14, 0),
    line(14, -9, 14, 9),
    line(19, -5, 19, 5),
  ],
});
