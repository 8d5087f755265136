import { describe, expect, test } from "vitest";
import { draw, TAP } from "../../../tests/support/jobNotation";
import { type ElementId, french, say } from "../terms";
import type { Upset } from "./types";
import { upsetWords } from "./upsetWords";
import { spell } from "../../../tests/support/words";

const drawing = draw(`${TAP}
  d1 disconnect p3-p9 A label=Q7
  e1 elbow p4-p10 A
`);

describe("What could go wrong reads the same wherever it is said", () => {
  test.each<[what: string, upset: Omit<Upset, "strength">, en: string, fr: string]>([
    [
      "a cutout",
      up("close", "c1", "A"),
      "cutout at 2nd pole without a number is closed on A",
      "on ferme coupe-circuit (2e poteau sans numéro) sur A",
    ],
    ["a label", up("close", "d1"), "Q7 is closed", "on ferme Q7"],
    [
      "a clamp",
      up("close", "k1", "A"),
      "tap clamp at 2nd pole without a number is put back on A",
      "on repose pince de dérivation (2e poteau sans numéro) sur A",
    ],
    [
      "an elbow",
      up("close", "e1", "A"),
      "elbow at 3rd pole without a number is put back on A",
      "on rebranche connecteur coudé (3e poteau sans numéro) sur A",
    ],
    [
      "a meter",
      up("close", "m1"),
      "meter from 3rd pole without a number to service without a number is put back",
      "on remet compteur (3e poteau sans numéro – branchement sans numéro) en place",
    ],
    [
      "by itself",
      up("reclose", "d1"),
      "Q7 closes by itself or from afar",
      "Q7 se referme tout seul ou à distance",
    ],
    [
      "a source",
      up("restore", "s1"),
      "source at 1st pole without a number comes back on",
      "source (1er poteau sans numéro) revient",
    ],
    [
      "a set",
      up("start", "ld1"),
      "load at service without a number starts",
      "charge (branchement sans numéro) démarre",
    ],
    [
      "nobody's set",
      up("start-unknown", "ld1"),
      "a generator that nobody drew starts at load at service without a number",
      "une génératrice que personne n'a dessinée démarre à charge (branchement sans numéro)",
    ],
    [
      "a switch of two supplies",
      up("transfer", "d1"),
      "Q7 fails and joins both of its supplies",
      "Q7 tombe en panne et joint ses deux sources",
    ],
    [
      "a break",
      up("rejoin", "sp1", "N"),
      "the broken ends of span from 2nd pole without a number to 3rd pole without a number touch on N",
      "les bouts rompus de portée (2e poteau sans numéro – 3e poteau sans numéro) se touchent sur N",
    ],
    [
      "a line beside",
      up("contact", "sp1"),
      "span from 2nd pole without a number to 3rd pole without a number touches the line",
      "portée (2e poteau sans numéro – 3e poteau sans numéro) touche la ligne",
    ],
  ])("%s", (_, upset, en, fr) => {
    const words = upsetWords(drawing, { ...upset, strength: 1 });
    expect(spell(words)).toBe(en);
    expect(spell(words, french)).toBe(fr);
  });
});

test("whose generator it could be may be told as one name", () => {
  const upset = { ...up("start-unknown", "ld1"), strength: 1 } as const;
  const name = say("row.or", { first: "house 1", rest: "house 3" });
  expect(spell(upsetWords(drawing, upset, name))).toBe(
    "a generator that nobody drew starts at house 1 or house 3",
  );
});

function up(kind: Upset["kind"], element: string, phase?: Upset["phase"]): Omit<Upset, "strength"> {
  return { kind, element: element as ElementId, ...(phase === undefined ? {} : { phase }) };
}
