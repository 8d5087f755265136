import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { inWords, type Wording } from "../../src/app/keep/wording";
import {
  canBeSolved,
  isUnreadable,
  planned,
  readDocument,
  scoreOf,
  type StillhotDocument,
  trapsOf,
  variantOf,
  writeDocument,
} from "../../src/core";
import { spell } from "../support/words";
import { listed } from "./library";
import { sampled } from "../support/long";

const read = (path: string) => readFileSync(path, "utf8");

function frenchOf(id: string): StillhotDocument {
  const wording = JSON.parse(read(`shared/scenarios/fr/${id}.json`)) as Wording;
  const found = readDocument(inWords(read(`shared/scenarios/${id}.stillhot.json`), wording));
  if (isUnreadable(found)) throw new Error("it does not read");
  return found.document;
}

const labelsOf = ({ system }: StillhotDocument): string[] =>
  Object.values((system.structures ?? {}) as Record<string, { label: string }>).map(({ label }) => label);

test.each(listed.map(({ id }) => id))(
  "G8 a variant of %s in French has other numbers and another station throughout",
  (id) => {
    const french = frenchOf(id);
    for (const number of [1, 2, 3]) {
      const variant = variantOf(french, number);
      const again = readDocument(writeDocument(variant));
      expect(isUnreadable(again) ? again.problems : again.warnings).toEqual([]);
      const own = new Set(labelsOf(french).filter((it) => /^(?:Poteau|Socle|Poste)/.test(it)));
      expect(labelsOf(variant).filter((it) => own.has(it))).toEqual([]);
      // Which file it was made of stays said.
      const { variant: _made, ...told } = variant.scenario as { variant: unknown };
      const said = JSON.stringify({ ...variant, scenario: told });
      for (const it of own) {
        const digits = /^(?:Poteau|Socle) (\d+)/.exec(it)?.[1];
        if (digits !== undefined)
          expect(said).not.toMatch(new RegExp(`(?:poteau|socle)[sx]? (?:\\d+ (?:et|à) )?${digits}\\b`, "iu"));
      }
    }
  },
);

/** The words of a scenario are its radio's and its answer's too: what is repeated back is compared letter by letter. */
test.each(sampled(listed, 2).map(({ id }) => id))(
  "G8 a variant of %s in French is played to full marks, and its traps close",
  (id) => {
    const variant = variantOf(frenchOf(id), 4);
    const { why, attempt } = canBeSolved(variant, planned);
    expect(why.map((it) => spell(it))).toEqual([]);
    const { earned, of, passed } = scoreOf(attempt);
    expect([earned, passed]).toEqual([of, true]);
    const open = trapsOf(variant, planned).filter(({ canBeFallenInto }) => !canBeFallenInto);
    expect(open.map(({ trap }) => trap.id)).toEqual([]);
  },
);
