import {
  type CircuitElement,
  lettersAtEnd,
  openingOf,
  openPhasesOf,
  standardSwitchOf,
  type StandardSwitch,
} from "../../../devices";
import { to } from "./rdfWriter";
import { addEquipment, type EndAt, singlePhase, tellWhatIsLost, type Writing, type Written } from "./writing";

type Joining = CircuitElement & {
  readonly from: string;
  readonly to: string;
  readonly phases: string;
  readonly neutral: boolean;
};

/** What joins two points, phase by phase. @returns false where the standard has no class for it */
export function writeSwitch(writing: Writing, written: Written): boolean {
  const { element, id, saved } = written;
  const standard = standardSwitchOf(element);
  if (standard === undefined) return false;
  if (!standard.isItself)
    writing.ledger.note("approximated", "otherClass", id, { className: standard.className });
  tellWhatIsLost(writing, written, [
    ...standard.carries,
    "toPhases",
    "neutral",
    "open",
    "normallyOpen",
    // A gang opens as one where it is open at all; otherwise the class says it.
  ]);
  const { from, to: far, phases, neutral } = element as Joining;
  const letters = `${phases}${neutral ? "N" : ""}`;
  const beyond = `${lettersAtEnd(element, "to").join("")}${neutral ? "N" : ""}`;
  const ends: EndAt[] = [
    { node: from, letters },
    { node: far, letters: beyond },
  ];
  addSwitch(writing, { id, saved }, standard, ends, {
    open: openPhasesOf(element),
    normalOpen: saved["normallyOpen"] === true && openingOf(element) !== undefined,
  });
  for (let n = 1; n <= (standard.meters ?? 0); n++)
    writing.rdf.add("UsagePoint", `element ${id} usage ${n}`, {
      "UsagePoint.Equipments": to(`element ${id}`),
    });
  return true;
}

/** A customer's transfer switch: a switch to each of its two supplies. */
export function writeTransfer(writing: Writing, written: Written): boolean {
  const { element, id } = written;
  if (!("bridged" in element)) return false;
  writing.ledger.note("approximated", "transferAsTwo", id);
  tellWhatIsLost(writing, written, ["neutral", "position", "bridged"]);
  const { from, alt, to: far, phases, neutral, position, bridged } = element;
  const letters = `${phases}${neutral ? "N" : ""}`;
  for (const [supply, stands] of [
    [from, "utility"],
    [alt, "generator"],
  ] as const)
    addSwitch(
      writing,
      { id: `${id}-${stands}`, saved: written.saved },
      { className: "LoadBreakSwitch" },
      [supply, far].map((node): EndAt => ({ node, letters })),
      { open: bridged || position === stands ? "" : phases, normalOpen: false },
    );
  return true;
}

/** Writes a switch with the position of each of its letters. */
export function addSwitch(
  { ...writing }: Writing,
  written: Pick<Written, "id" | "saved">,
  { className, breakingAmps, ratedAmps }: Pick<StandardSwitch, "className" | "breakingAmps" | "ratedAmps">,
  ends: readonly EndAt[],
  { open, normalOpen }: { readonly open: string; readonly normalOpen: boolean },
): void {
  const phases = ends[0]!.letters.replace("N", "");
  const name = addEquipment(writing, className, written, ends, {
    "Switch.open": open !== "" && [...phases].every((it) => open.includes(it)),
    "Switch.normalOpen": normalOpen,
    "ProtectedSwitch.breakingCapacity": breakingAmps,
    "Switch.ratedCurrent": ratedAmps,
  });
  for (const [index, letter] of [...ends[0]!.letters].entries())
    writing.rdf.add("SwitchPhase", `${name} ${letter}`, {
      "SwitchPhase.Switch": to(name),
      "SwitchPhase.phaseSide1": singlePhase(letter),
      "SwitchPhase.phaseSide2": singlePhase(ends[1]!.letters[index]!),
      "SwitchPhase.closed": !open.includes(letter),
    });
}
