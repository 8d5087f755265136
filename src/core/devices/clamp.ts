import { defineDevice, switchEnds } from "./define";
import { openPosition, plainOpening, opensBy } from "./shared";
import { arc, line, metalAt } from "./symbol";

const opening = plainOpening();

/** A hot-line tap clamp on its stirrup. It carries load and breaks none. */
export const clamp = defineDevice({
  kind: "clamp",
  prefix: "k",
  ends: ["from", "to"],
  fields: { ...switchEnds },
  ...opensBy(opening),
  // A clamp has no rating (29 CFR 1910.269(l)(12)): charging and exciting current only.
  breaks: (_it, _tool, settings) => ({ amps: settings.clampBreakAmps, basis: "clamp" }),
  carries: (_it, { tapClampMaxAmps }) => tapClampMaxAmps,
  handling: {
    off: "lift",
    on: "attach",
    moves: "phases",
    tools: ["clamp-stick", "hot-stick"],
    trouble: 1,
    comesAway: true,
  },
  shakes: true,
  drops: "nothing",
  standsAbreast: true,
  position: (it) => openPosition(it, "drawing.lifted"),
  symbol: ({ open }) =>
    open === ""
      ? metalAt("to", line(-20, 0, 20, 0), arc(2, 0, 11, 75, 285))
      : [
          ...metalAt("from", line(-20, 0, -14, 0), line(-14, -6, -14, 6)),
          ...metalAt("to", arc(4, -15, 10, 75, 285), line(4, -15, 12, -15, 18, 0, 20, 0)),
        ],
});
