import { isLine } from "../devices";
import { conductorNames, perObject, type Settings, type System } from "../document";
import { type Circuit, circuitOf, rodNodesOf, standingOf } from "../network";
import { solutionOf, worstAt } from "../phasor";
import { type Finding, type Message, say } from "../terms";
import { metallicIslands, type View } from "./view";

/** Equations that could not be solved, or loads that would not settle: said, never silently wrong. */
export function unsolved(view: View): Finding[] {
  const [drawn, off] = view.solutions;
  const findings: Finding[] = [];
  if (drawn.singularAt !== -1 || off.singularAt !== -1)
    findings.push({
      rule: "unsolved",
      severity: "danger",
      where: "system",
      message: say("hazard.unsolved"),
      citation: "common practice, no source",
    });
  if (!drawn.settled) findings.push(loadModel("system", say("hazard.loadsUnsettled")));
  return findings;
}

/** A finding that the loads' own models did not settle. */
export const loadModel = (where: string, message: Message): Finding => ({
  rule: "load-model",
  severity: "warning",
  where,
  message,
  citation: "common practice, no source",
});

/** Neutrals that are tied to earth and stand at a dangerous voltage, loads as drawn. */
export function neutralVolts(system: System, circuit: Circuit, view: View, settings: Settings): Finding[] {
  const hot = circuit.conductorIds.flatMap((_, node) => (isHotNeutral(view, settings, node) ? [node] : []));
  if (hot.length === 0) return [];
  const rods = alongNeutrals(circuit);
  return hot.map((node): Finding => {
    const volts = worstAt(view.solutions[0], node);
    const where = circuit.conductorIds[node]!;
    const common = {
      rule: "neutral-volts",
      where,
      help: say("hazard.neutralVolts.help"),
      citation: "common practice, no source",
    };
    const gaps = { where: conductorNames({ system }, [where]), volts: Math.round(volts) };
    if (rods(node))
      return {
        ...common,
        severity: "danger",
        message: say(Number.isFinite(volts) ? "hazard.neutralVolts" : "hazard.neutralVolts.notKnown", gaps),
      };
    return {
      ...common,
      severity: "warning",
      message: say("hazard.neutralVolts.noRods", {
        ...gaps,
        left: Math.round(worstAt(solutionOf(circuitOf(withUsualRods(system))), node)),
        rods: USUAL_RODS_PER_KM,
      }),
    };
  });
}

/** Whether a neutral stands at the hazard limit or above it, loads as drawn. */
export const isHotNeutral = (view: View, { hazardVolts }: Settings, node: number): boolean =>
  view.state(node) === "neutral" && worstAt(view.solutions[0], node) >= hazardVolts;

/** Rods along a multi-grounded neutral: four a mile. Source: NESC 96C, from memory. */
const USUAL_RODS_PER_KM = 2.5;

/** Whether a rod is drawn anywhere along what is joined to a neutral. */
function alongNeutrals(circuit: Circuit): (node: number) => boolean {
  const islands = metallicIslands(circuit, standingOf(circuit));
  const rodded = new Set(rodNodesOf(circuit).map((node) => islands[node]!));
  return (node) => rodded.has(islands[node]!);
}

/** The drawing with the usual rods along every span that has a neutral and none of its own. */
const withUsualRods = perObject((system: System): System => ({
  ...system,
  elements: Object.fromEntries(
    Object.entries(system.elements).map(([id, saved]) => [
      id,
      isLine(saved) && !saved["rodsPerKm"] ? { ...saved, rodsPerKm: USUAL_RODS_PER_KM } : saved,
    ]),
  ) as System["elements"],
}));
