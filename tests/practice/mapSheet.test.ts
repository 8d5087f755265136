import { expect, test } from "vitest";
import { english, factsOf, jobOf, mapSheetHtml, scenarioOf } from "../../src/core";
import { french } from "../../src/core/words";
import { listed, scenarioFile } from "../scenarios/library";

test.each(listed.map(({ id }) => id))(
  "the map of %s is printed with its task and without any answer",
  (id) => {
    const scenario = scenarioFile(id);
    for (const [catalogue, language] of [
      [english, "en"],
      [french, "fr"],
    ] as const) {
      const html = mapSheetHtml(scenario, { catalogue, language });
      const said = html.replaceAll("&#39;", "'").replaceAll("&quot;", '"').replaceAll("&amp;", "&");
      expect(said).toContain(jobOf(scenario).task);
      // No state stands on it: no badge of one, no volts, and nothing in its title or its description.
      expect(html).not.toMatch(/>(?:E|BF|IND|FLT|ISO|GND)</);
      expect(html).not.toMatch(/\d[\d ,]* V</);
      const hidden = [...factsOf(scenario).values()].flatMap((it) => [
        it.label,
        ...("text" in it && it.text !== undefined ? [it.text] : []),
      ]);
      const others = [...(scenarioOf(scenario).hints ?? []), ...(scenarioOf(scenario).traps ?? [])].flatMap(
        (it) =>
          Object.entries(it).flatMap(([key, value]) =>
            typeof value === "string" && key !== "id" ? [value] : [],
          ),
      );
      for (const it of [...hidden, ...others].filter((it) => it.length > 25)) expect(said).not.toContain(it);
      expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    }
  },
);
