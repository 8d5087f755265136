import { complete, type ElementId, LEAST_WATTS, type StillhotDocument } from "../../core";
import { elementName, pointName, t, watts } from "../words/words";

/** What real power does at a device, in words: through it from one end to the other, taken or given. */
export function powerWords(document: StillhotDocument, id: ElementId, power: number): string {
  if (Math.abs(power) < LEAST_WATTS) return t("power.nothing");
  const element = complete(document.system.elements[id]!) as unknown as Readonly<Record<string, string>>;
  const name = elementName(document, id);
  const of = watts(Math.abs(power));
  const near = pointName(document, element["from"] ?? element["at"]!);
  if (element["to"] === undefined)
    return t(power > 0 ? "power.takes" : "power.gives", { name, power: of, point: near });
  const far = pointName(document, element["to"]);
  const [from, to] = power > 0 ? [near, far] : [far, near];
  return t("power.through", { name, power: of, from, to });
}
