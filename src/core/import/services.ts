import { handlingOf, isCustomers, isLoad } from "../devices";
import type { DrawingDraft, DraftElement } from "./draft";

const isLeg = ({ keys }: DraftElement) => /[12]/.test(String(keys["phases"] ?? ""));

/**
 * A meter ahead of what hangs on a split secondary, one at each place: models seldom have them, and a crew pulls them.
 * What the customer has stands behind it.
 */
export function addMeters(draft: DrawingDraft): void {
  const metered = new Set(
    draft.elements.filter(({ keys }) => handlingOf(keys)?.off === "pull").flatMap((it) => it.ends),
  );
  for (const [at, elements] of draft.byPoint()) {
    const behind = elements.filter((it) => it.ends.length === 1 && isLeg(it) && isCustomers(it.keys));
    const loads = behind.filter(({ keys }) => isLoad(keys));
    if (loads.length === 0 || metered.has(at)) continue;
    const point = draft.points.get(at)!;
    const beyond = `${at} behind the meter`;
    const idOf = (name: string) => ({
      name: point.idOf.name === "" ? "" : `${point.idOf.name}-${name}`,
      own: `${point.idOf.own} ${name}`,
    });
    point.kind = "service";
    draft.points.set(beyond, {
      key: beyond,
      label: "",
      idOf: idOf("load"),
      kind: "service",
      evidence: "assumed",
      ...(point.place === undefined ? {} : { place: point.place }),
    });
    draft.retain((it) => !behind.includes(it));
    draft.add({
      idOf: idOf("meter"),
      label: "",
      shown: "",
      keys: { kind: "meter", phases: "12", count: Math.max(1, customersOf(loads)), evidence: "assumed" },
      ends: [at, beyond],
    });
    for (const element of behind) draft.add({ ...element, ends: [beyond] });
    draft.ledger.note("assumed", "meter", point.label);
  }
}

const customersOf = (loads: readonly DraftElement[]): number =>
  loads.reduce((sum, { keys }) => sum + Number(keys["customers"] ?? 0), 0);
