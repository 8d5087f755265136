import { handlingOf } from "../../devices";
import { citationOf } from "../../reference";
import { say } from "./say";
import { gapsOf, phasesMoved } from "../effects/gap";
import { isLiveState } from "../job/live";
import { elementOf, nameOf } from "../job/names";
import { defineRule } from "./rule";

/**
 * A jumper or lead goes on at its dead end first and comes off at its live end first, so that nobody holds a loose end
 * that is live. A clamp's lead is fast at its far end: its jaw is the last to go on and the first to come off. The step of
 * a lead names by `at` the end that is made or cut first; without it the order is taken to be right.
 */
export const jumperOrder = defineRule({
  id: "jumper-order",
  severity: "warning",
  citation: citationOf("connect-deenergized-first"),
  check(step, before, after) {
    const element = elementOf(before.document.system, step.element);
    const off = element && handlingOf(element)?.off;
    if (element === undefined || !("from" in element) || (off !== "lift" && off !== "cut")) return undefined;
    const { opened, closed } = phasesMoved(step, before, after);
    const isOn = closed !== "";
    const apart = gapsOf(isOn ? before : after, step.element, isOn ? closed : opened);
    const fromIsLive = apart.some(({ from, to }) => isLiveState(from.state) && !isLiveState(to.state));
    const toIsLive = apart.some(({ from, to }) => isLiveState(to.state) && !isLiveState(from.state));
    const looseEnd = off === "lift" ? (isOn ? element.to : element.from) : step.at;
    // On: the end made first must be dead. Off: the end freed first must be live.
    const isWrong =
      looseEnd === element.to
        ? isOn
          ? toIsLive
          : fromIsLive
        : looseEnd === element.from && (isOn ? fromIsLive : toIsLive);
    if (!isWrong) return undefined;
    const name = nameOf(before.document, step.element!);
    return {
      where: step.element!,
      citation: citationOf(isOn ? "connect-deenergized-first" : "disconnect-source-first"),
      message: say(isOn ? "rule.jumper-order.on" : "rule.jumper-order.off", { name }),
      help: say(isOn ? "rule.jumper-order.on.help" : "rule.jumper-order.off.help"),
    };
  },
});
