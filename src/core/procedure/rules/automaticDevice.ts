import { citationOf } from "../../reference";
import { say } from "./say";
import { isSoleCrew } from "../job/isolation";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";
import { seen } from "../job/seen";
import { isRelying } from "../../steps";
import { closesByItself } from "../../hazard";

/** What can close by itself or from afar is blocked before anything rests on its being open; a tag does not hold it. */
export const automaticDevice = defineRule({
  id: "automatic-device",
  severity: "danger",
  citation: citationOf("m3-iii-auto"),
  check(step, _before, after) {
    if (!isRelying(step) || isSoleCrew(after)) return undefined;
    const closing = new Set<string>();
    for (const { threats } of Object.values(seen(after).workPoints))
      for (const { upsets } of threats)
        for (const it of upsets) if (closesByItself(it)) closing.add(it.element);
    return [...closing].sort().map((id) => ({
      where: id,
      message: say("rule.automatic-device", { name: nameOf(after.document, id) }),
      help: say("rule.automatic-device.help", { name: nameOf(after.document, id) }),
    }));
  },
});
