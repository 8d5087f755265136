import { amount } from "./fields";
import { BY_HANDLE, defineDevice, switchEnds } from "./define";
import { breaksRated, openPosition, plainOpening, opensBy } from "./shared";
import { arc, filled, line, type Mark, metalAt } from "./symbol";

const opening = plainOpening();

/** A separable load-break connector; open means parked on its stand-off. */
export const elbow = defineDevice({
  kind: "elbow",
  prefix: "e",
  ends: ["from", "to"],
  fields: { ...switchEnds, loadBreakAmps: amount("A", 200) },
  ...opensBy(opening),
  // A dead-break elbow breaks nothing at all.
  breaks: (it, _tool, settings) =>
    it.loadBreakAmps > 0 ? breaksRated(it.loadBreakAmps, settings) : { amps: 0, basis: "unrated" },
  handling: { ...BY_HANDLE, tools: ["clamp-stick", "hot-stick"] },
  drops: "load",
  deadFront: true,
  standsAbreast: true,
  standsInLine: true,
  endsCable: true,
  position: (it) => openPosition(it, "drawing.parked"),
  symbol: ({ open }) =>
    open === ""
      ? [...metalAt("from", line(-20, 0, -12, 0), filled(-12, -4, 5, -4, 5, 4, -12, 4)), ...socket()]
      : [
          ...metalAt("from", line(-20, 0, -14, 0, -14, 6), filled(-18, 6, -10, 6, -10, 20, -18, 20)),
          line(-22, 21, -6, 21),
          ...socket(),
        ],
});

/** What the plug stands in, or is pulled from. */
const socket = (): Mark[] => metalAt("to", arc(4, 0, 10, -90, 90), line(14, 0, 20, 0));
