import { say } from "../terms";
import { amount, choice, fuse, optionalAmount, phases } from "./fields";
import { BY_HANDLE, defineDevice, LOAD_BREAK_TOOL, LOAD_BREAK_TOOL_AMPS, STICKS, switchEnds } from "./define";
import { breaksBare, onPhases, openPosition, plainOpening, removePhases, union, opensBy } from "./shared";
import { barrel, dot, metalAt } from "./symbol";

interface Barrel {
  readonly phases: string;
  readonly open: string;
  readonly blown: string;
  readonly removed: string;
  readonly tagged: boolean;
  readonly blocked: boolean;
}

const opening = plainOpening<Barrel>({
  openPhases: ({ phases: own, open, blown, removed }) => union(own, open, blown, removed),
  blocked: ({ blocked, removed }, phase) => blocked || removed.includes(phase),
  closing: ({ open, blown, removed }, phases) => ({
    open: removePhases(open, phases),
    blown: removePhases(blown, phases),
    removed: removePhases(removed, phases),
  }),
});

/** A fused cutout: the barrel hangs open, its link is blown, or the barrel is out (which also keeps it from closing). */
export const cutout = defineDevice({
  kind: "cutout",
  prefix: "c",
  ends: ["from", "to"],
  fields: {
    ...switchEnds,
    blown: phases(),
    removed: phases(),
    fuse: fuse(),
    continuousAmps: amount("A", 100, { above: 0 }),
    loadBreak: choice(["none", "hooks", "arc-chute"], "hooks"),
    arcChuteAmps: optionalAmount("A"),
  },
  ...opensBy(opening),
  breaks: (it, tool, settings) => {
    if (it.loadBreak === "arc-chute")
      return { amps: it.arcChuteAmps ?? it.continuousAmps, basis: "arc-chute" };
    if (it.loadBreak === "hooks" && tool === LOAD_BREAK_TOOL)
      return { amps: LOAD_BREAK_TOOL_AMPS, basis: "tool" };
    return breaksBare(it, tool, settings);
  },
  carries: ({ continuousAmps }) => continuousAmps,
  handling: { ...BY_HANDLE, tools: [LOAD_BREAK_TOOL, ...STICKS] },
  shakes: true,
  drops: "load",
  standsAbreast: true,
  position: (it) =>
    it.blown !== ""
      ? onPhases("drawing.blown", it, it.blown)
      : it.removed !== ""
        ? onPhases("drawing.removed", it, it.removed)
        : openPosition(it),
  rating: ({ fuse }) =>
    fuse === undefined
      ? undefined
      : fuse === "solid"
        ? say("drawing.solid")
        : say("drawing.fuse", { amps: fuse.amps, type: fuse.type }),
  ratingWidth: 32,
  symbol: (it) => {
    const open = opening.openPhases(it) !== "";
    const isOut = it.removed !== "";
    // The barrel hangs from its lower contact; a barrel that is out leaves two bare contacts.
    const tube = isOut ? [] : barrel(17, -34, open ? 52 : 0, it.blown !== "");
    return [...metalAt("from", dot(-17, 0, 3.5)), ...tube, ...metalAt("to", dot(17, 0, 3.5))];
  },
});
