import { say } from "../terms";
import { amount, flag } from "./fields";
import { defineDevice, problem, switchEnds } from "./define";
import { breaksRated, openPosition, plainOpening, opensBy } from "./shared";
import { blade, dot, line, metalAt } from "./symbol";

/** What of a switch says how it moves. */
export interface Switch {
  readonly phases: string;
  readonly open: string;
  readonly gang: boolean;
  readonly remote: boolean;
  readonly visibleGap: boolean;
  readonly tagged: boolean;
  readonly blocked: boolean;
}

/** By one handle or several, and from afar where it has a remote control. */
export const switchOpening = plainOpening<Switch>({
  gang: ({ gang }) => gang,
  automatic: ({ remote }) => remote,
  visibleGap: ({ visibleGap }) => visibleGap,
});

/** A gang device is open on all phases or on none. */
export const gangIsWhole = ({ gang, open, phases }: { gang: boolean; open: string; phases: string }) =>
  gang && open !== "" && open !== phases ? [problem("open", say("read.gangPart", { open, phases }))] : [];

/** Isolates with a gap that one can see, but breaks no load unless it is rated to. */
export const disconnect = defineDevice({
  kind: "disconnect",
  prefix: "d",
  ends: ["from", "to"],
  fields: {
    ...switchEnds,
    gang: flag(false),
    loadBreakAmps: amount("A", 0),
    visibleGap: flag(true),
    remote: flag(false),
  },
  check: gangIsWhole,
  ...opensBy(switchOpening),
  breaks: (it, _tool, settings) => breaksRated(it.loadBreakAmps, settings),
  shakes: true,
  drops: "load",
  standsAbreast: true,
  standsInLine: true,
  position: openPosition,
  symbol: ({ open }) => [
    ...metalAt("from", line(-20, 0, -16, 0), line(-16, -7, -16, 7)),
    ...metalAt("to", blade(16, -32, open === "" ? 0 : -40), dot(16, 0, 3.5), line(16, 0, 20, 0)),
  ],
});
