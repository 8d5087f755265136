import { describe, expect, test } from "vitest";
import { draw, TAP } from "../../../tests/support/jobNotation";
import { type ElementId, say } from "../terms";
import type { Upset } from "./types";
import { upsetWords } from "./upsetWords";
import { french, spell } from "../../../tests/support/words";

const drawing = draw(`${TAP}
  d1 disconnect p3-p9 A label=Q7
  e1 elbow p4-p10 A
`);

describe("What could go wrong reads the same wherever it is said", () => {
  test.each<[what: string, upset: Omit<Upset, "strength">, en: string, fr: string]>([
    [
      "a cutout",
      up("close", "c1", "A"),
      "cutout at pole with disconnect is closed on A",
      "on ferme coupe-circuit (poteau avec sectionneur) sur A",
    ],
    ["a label", up("close", "d1"), "Q7 is closed", "on ferme Q7"],
    [
      "a clamp",
      up("close", "k1", "A"),
      "tap clamp at pole with disconnect is put back on A",
      "on repose pince de dérivation (poteau avec sectionneur) sur A",
    ],
    [
      "an elbow",
      up("close", "e1", "A"),
      "elbow at pole with elbow is put back on A",
      "on rebranche connecteur coudé (poteau avec connecteur coudé) sur A",
    ],
    [
      "a meter",
      up("close", "m1"),
      "meter from pole with elbow to service without a number is put back",
      "on remet compteur (poteau avec connecteur coudé – branchement sans numéro) en place",
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
      "source at pole with source comes back on",
      "source (poteau avec source) revient",
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
      "the broken ends of span from pole with disconnect to pole with elbow touch on N",
      "les bouts rompus de portée (poteau avec sectionneur – poteau avec connecteur coudé) se touchent sur N",
    ],
    [
      "a line beside",
      up("contact", "sp1"),
      "span from pole with disconnect to pole with elbow touches the line",
      "portée (poteau avec sectionneur – poteau avec connecteur coudé) touche la ligne",
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
