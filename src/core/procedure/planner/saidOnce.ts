import { elementOfKind, isSameStructure, nameIn, type System } from "../../document";
import { type StepBy, undoesTests } from "../../steps";
import { say } from "../../terms";
import { namesOf } from "../job/names";
import type { PlannedStep } from "./types";

/**
 * The same order with nothing said or read a second time while nothing has changed: who stands clear of one barrel stands clear
 * of the next that closes on that structure, whose tag and block come off before; and volts that were just read are not read again.
 */
export const saidOnce = (system: System, steps: readonly PlannedStep[]): PlannedStep[] =>
  readOnce(clearOnce(system, steps));

function clearOnce(system: System, steps: readonly PlannedStep[]): PlannedStep[] {
  const kept: PlannedStep[] = [];
  for (let at = 0; at < steps.length;) {
    const row = barrelsFrom(system, steps, at);
    const [first] = row;
    if (first === undefined) kept.push(steps[at++]!);
    else {
      const name = namesOf(row.map(({ close }) => nameIn({ system }, close.element)));
      kept.push(
        ...row.flatMap(({ marks }) => marks),
        { ...first.clear, why: say("why.stand-clear", { name }) },
        ...row.map(({ close }) => close),
      );
      at = row.at(-1)!.next;
    }
  }
  return kept;
}

/** A barrel that closes where people stand clear, what comes off it right before, and the step after. */
interface Barrel {
  readonly marks: readonly PlannedStep[];
  readonly clear: PlannedStep;
  readonly close: PlannedStep & StepBy<"close">;
  readonly next: number;
}

/** The barrels that close one right after the other on one structure, beginning at a step. */
function barrelsFrom(system: System, steps: readonly PlannedStep[], at: number): Barrel[] {
  const row: Barrel[] = [];
  for (;;) {
    const barrel = barrelAt(steps, row.at(-1)?.next ?? at);
    const [was, is] = [row.at(-1) ?? barrel, barrel].map(
      (it) => elementOfKind(system, it?.close.element, "cutout")?.to,
    );
    if (barrel === undefined || was === undefined || is === undefined || !isSameStructure(system, was, is))
      return row;
    row.push(barrel);
  }
}

function barrelAt(steps: readonly PlannedStep[], at: number): Barrel | undefined {
  const from = steps.slice(at);
  const count = from.findIndex(({ do: verb }) => verb !== "untag" && verb !== "unblock");
  const [clear, close] = from.slice(count, count + 2);
  return count >= 0 && clear?.do === "stand-clear" && close?.do === "close"
    ? { marks: from.slice(0, count), clear, close, next: at + count + 2 }
    : undefined;
}

function readOnce(steps: readonly PlannedStep[]): PlannedStep[] {
  const read: StepBy<"test">[] = [];
  return steps.filter((it) => {
    if (undoesTests(it)) read.length = 0;
    if (it.do !== "test" || it.expect !== "live") return true;
    const { at, phases = "" } = it;
    const isKnown =
      phases !== "" &&
      read.some((was) => was.at === at && [...phases].every((letter) => was.phases?.includes(letter)));
    read.push(it);
    return !isKnown;
  });
}
