import { isUnreadable, readValue, type StillhotDocument } from "../../src/core";

/**
 * A double throw on the primary: Pole 12 is fed from the north or from the south, each by a line, and leads on to a mill.
 *
 * @param position what it is thrown to
 * @param first whose feeder stands first in the file
 */
export function doubleThrow(
  position: "utility" | "generator" | "off",
  first: "north" | "south" = "north",
): StillhotDocument {
  const north = {
    s1: { kind: "source", at: "a", phases: "ABC", kvLL: 12.47 },
    sp1: { kind: "span", from: "a", to: "p1", phases: "ABC", lengthM: 500 },
    sp2: { kind: "span", from: "p1", to: "p2", phases: "ABC", lengthM: 60 },
  };
  const south = {
    s2: { kind: "source", at: "b", phases: "ABC", kvLL: 12.47 },
    sp3: { kind: "span", from: "b", to: "p2b", phases: "ABC", lengthM: 700 },
  };
  const found = readValue({
    format: "stillhot",
    formatVersion: 1,
    title: "Double throw",
    system: {
      structures: {
        st1: { label: "North station", kind: "station" },
        st2: { label: "South station", kind: "station" },
        q1: { label: "Pole 11" },
        q2: { label: "Pole 12" },
        q3: { label: "Pole 13" },
      },
      points: {
        a: { on: "st1" },
        b: { on: "st2" },
        p1: { on: "q1" },
        p2: { on: "q2" },
        p2b: { on: "q2" },
        p3: { on: "q2" },
        p4: { on: "q3" },
      },
      elements: {
        ...(first === "north" ? { ...north, ...south } : { ...south, ...north }),
        ts1: {
          kind: "transfer",
          from: "p2",
          alt: "p2b",
          to: "p3",
          phases: "ABC",
          label: "double throw",
          position,
        },
        sp4: { kind: "span", from: "p3", to: "p4", phases: "ABC", lengthM: 80 },
        ld1: { kind: "load", at: "p4", phases: "ABC", kw: 100, customers: 3, label: "Mill" },
      },
    },
    job: { workPoints: { w1: { at: "p4", conductors: "ABC" } } },
  });
  if (isUnreadable(found)) throw new Error("the double throw does not read");
  return found.document;
}
