import {
  complete,
  deviceOf,
  type ElementId,
  type JsonObject,
  type Owner,
  type StillhotDocument,
  structuresOf,
  isPole,
} from "../../core";
import { nextNumber } from "../grow/number";
import type { MessageKey } from "../words/catalogue";

/** Something that can be otherwise than the drawing has it: in truth from the beginning, or from some moment on. */
export interface Otherwise {
  readonly id: string;
  readonly title: MessageKey;
  readonly keys: JsonObject;
}

/** What can be otherwise about an element by one press. */
export function otherwise({ system }: StillhotDocument, id: ElementId): Otherwise[] {
  const saved = system.elements[id];
  if (saved === undefined) return [];
  const element = complete(saved) as { kind: string; phases?: string } & Record<string, unknown>;
  const { fields } = deviceOf(saved.kind);
  const has = (key: string) => Object.hasOwn(fields, key);
  const list: Otherwise[] = [];
  for (const key of ["open", "cut", "parted"] as const) {
    if (!has(key)) continue;
    const isOpen = element[key] !== "";
    list.push({
      id: isOpen ? "closed" : "open",
      title: isOpen ? "teach.closed" : key === "open" ? "teach.open" : "teach.parted",
      keys: { [key]: isOpen ? "" : (element.phases ?? "") },
    });
  }
  if (typeof element["on"] === "boolean")
    list.push({
      id: "on",
      title: element["on"] === true ? "teach.off" : "teach.on",
      keys: { on: element["on"] !== true },
    });
  if (has("loose") && element["loose"] !== true)
    list.push({ id: "loose", title: "teach.loose", keys: { loose: true } });
  if (has("failed") && element["failed"] === "")
    list.push({ id: "failed", title: "teach.failed", keys: { failed: element.phases ?? "" } });
  if (has("tagged") && element["tagged"] !== true)
    list.push({ id: "tagged", title: "teach.tagged", keys: { tagged: true } });
  return list;
}

/** A label that a pole or a device could bear in truth: the next number that nothing on the map has. */
export function otherNumber(document: StillhotDocument, { of, id }: Owner): string {
  if (of === "element") return otherLabel(document, id);
  const structure = of === "structure" ? structuresOf(document.system).get(id) : undefined;
  return structure !== undefined && isPole(structure) ? nextNumber(document, id, "grow.poleLabel") : "";
}

/** The label of an element with its first number counted on, until no other element has it; empty where it has no number. */
function otherLabel({ system }: StillhotDocument, id: ElementId): string {
  const labelOf = (it: JsonObject | undefined): string => (typeof it?.label === "string" ? it.label : "");
  const label = labelOf(system.elements[id]);
  if (!/\d/.test(label)) return "";
  const taken = new Set(Object.values(system.elements).map(labelOf));
  const countedOn = (it: string) => it.replace(/\d+/, (digits) => String(Number(digits) + 1));
  let other = countedOn(label);
  while (taken.has(other)) other = countedOn(other);
  return other;
}

/** Whether hands operate it, so that it can be stuck. */
export const canStick = ({ system }: StillhotDocument, id: ElementId): boolean => {
  const saved = system.elements[id];
  return saved !== undefined && Object.hasOwn(deviceOf(saved.kind).fields, "open");
};

/** An id that none of a list has. */
export function freeId(prefix: string, taken: readonly string[]): string {
  for (let n = 1; ; n++) if (!taken.includes(`${prefix}${n}`)) return `${prefix}${n}`;
}
