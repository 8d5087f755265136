/** A file in which so many cutouts hang on one pole, with the points below them: all closed but where `others` says. */
export function manyOnOnePole(cutouts: number, others: Readonly<Record<string, object>> = {}) {
  const points: Record<string, object> = { a: { on: "st" }, p0: { on: "q" }, z: { on: "r" } };
  const elements: Record<string, object> = {
    s1: { kind: "source", at: "a", phases: "ABC", kvLL: 12.47 },
    sp: { kind: "span", from: "a", to: "p0", phases: "ABC", lengthM: 100 },
    on: { kind: "span", from: "p0", to: "z", phases: "ABC", lengthM: 100 },
  };
  for (let n = 1; n <= cutouts; n++) {
    points[`p${n}`] = { on: "q" };
    elements[`c${n}`] = { kind: "cutout", from: "p0", to: `p${n}`, phases: "A", ...others[`c${n}`] };
  }
  const structures = {
    st: { label: "Station", kind: "station" },
    q: { label: "Pole 1" },
    r: { label: "Pole 2" },
  };
  return { structures, points, elements };
}
