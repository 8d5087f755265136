import { expect, test } from "vitest";
import {
  fingerprintBytes,
  isUnreadable,
  naturalOrder,
  readDocument,
  type StillhotDocument,
  writeDocument,
} from ".";
import { spellProblem } from "../../../tests/support/words";

const read = (text: string): StillhotDocument => {
  const file = readDocument(text);
  if (isUnreadable(file)) throw new Error(file.problems.map(spellProblem).join("\n"));
  return file.document;
};

const file = {
  zebra: { b: 1, a: [1, { d: 1, c: 2 }] },
  system: {
    elements: {
      c10: {
        to: "p2",
        from: "p1",
        phases: "A",
        kind: "cutout",
        height: 3,
        fuse: { amps: 25, type: "K" },
        open: "",
      },
      c9: { kind: "lead", phases: "A", from: "p1", to: "p2", [`long`]: "x".repeat(190) },
    },
    points: { p10: { y: 0, x: 1 }, p2: {}, p1: {} },
  },
  job: { steps: [{ phases: "A", element: "c9", do: "cut" }], workPoints: {} },
  title: "Two poles \ud83d\ude00",
  formatVersion: 1,
  format: "stillhot",
};

test("keys have their order, ids count naturally, a record is a line, and what is given stays", () => {
  expect(writeDocument(read(JSON.stringify(file)))).toBe(`{
  "format": "stillhot",
  "formatVersion": 1,
  "title": "Two poles 😀",
  "system": {
    "frequencyHz": 60,
    "points": {
      "p1": {},
      "p2": {},
      "p10": { "x": 1, "y": 0 }
    },
    "elements": {
      "c9": {
        "kind": "lead",
        "phases": "A",
        "from": "p1",
        "to": "p2",
        "long": "${"x".repeat(190)}"
      },
      "c10": { "kind": "cutout", "phases": "A", "from": "p1", "to": "p2", "open": "", "fuse": { "type": "K", "amps": 25 }, "height": 3 }
    }
  },
  "job": {
    "workPoints": {},
    "steps": [
      { "do": "cut", "element": "c9", "phases": "A" }
    ]
  },
  "zebra": { "a": [1, { "c": 2, "d": 1 }], "b": 1 }
}
`);
});

test("reading what was written gives the same document, and writing that the same bytes", () => {
  const document = read(JSON.stringify(file));
  const text = writeDocument(document);
  expect(read(text)).toEqual(document);
  expect(writeDocument(read(text))).toBe(text);
});

test("the canonical text does not depend on the order of keys or on spaces", () => {
  const document = read(JSON.stringify(file));
  expect(fingerprintBytes(document)).toBe(fingerprintBytes(read(writeDocument(document))));
});

/** The example of RFC 8785, section 3.2.3, keys sorted by UTF-16 units, and numbers of its section 3.2.2.3. */
test("canonical JSON is that of RFC 8785", () => {
  const canonical = (value: unknown) => fingerprintBytes(value as StillhotDocument);
  expect(
    canonical({
      "\u20ac": "Euro Sign",
      "\r": "Carriage Return",
      "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face",
      "\u0080": "Control",
      "\u00f6": "Latin Small Letter O With Diaeresis",
    }),
  ).toBe(
    '{"\\r":"Carriage Return","1":"One","\u0080":"Control","ö":"Latin Small Letter O With Diaeresis",' +
      '"€":"Euro Sign","😀":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
  );
  expect(canonical([Number("333333333.33333329"), 1e30, 4.5, 2e-3, 0.000000000000000000000000001, -0])).toBe(
    "[333333333.3333333,1e+30,4.5,0.002,1e-27,0]",
  );
});

test.each([
  ["p2", "p10", -1],
  ["p10", "p2", 1],
  ["p", "p1", -1],
  ["p1", "p01", 1],
  ["p1a", "p1b", -1],
  ["10", "9", 1],
  ["a", "a", 0],
])("%s against %s", (a, b, sign) => {
  expect(Math.sign(naturalOrder(a, b))).toBe(sign);
});
