/** What the program says of a document beside what this second implementation says, difference by difference. */
import { type Assessment, assess, isUnreadable, readDocument } from "../../src/core";
import {
  exposureIn,
  hotNeutrals,
  isConnected,
  isGround,
  look,
  nameOf,
  outcomesOf,
  type PlainWorkPoint,
  statesOf,
  verdictIn,
  worstDrawn,
} from "./hazard";
import { type Limits, limitsOf, nominalOf, type Plain, upsetsIn } from "./plain";

export interface Compared {
  readonly differences: readonly string[];
  readonly skipped?: string;
  readonly threats: number;
  readonly sets: number;
  readonly states: readonly string[];
  readonly verdicts: readonly string[];
}

interface Given {
  readonly system: Plain;
  readonly job: {
    readonly workPoints: Readonly<Record<string, PlainWorkPoint>>;
    readonly steps: readonly { readonly do: string; readonly done?: boolean }[];
  };
  readonly settings?: Partial<Limits>;
}

/** A part in a thousand, a thousandth, or for a neutral that floats between thousands of volts a part in a million of those. */
const apart = (a: number, b: number, least = 1e-3): boolean =>
  !(Math.abs(a - b) <= Math.max(least, 1e-3 * Math.max(Math.abs(a), Math.abs(b))));
const FLOATING = 0.01;
/** Threats of a work point whose current through a body is compared. */
const MOST_BODIES = 2;
const nothing = { threats: 0, sets: 0, states: [], verdicts: [] };

export function compare(document: unknown, mostSets = 400): Compared {
  const given = document as Given;
  const read = readDocument(JSON.stringify(document));
  if (isUnreadable(read))
    return { ...nothing, differences: [], skipped: JSON.stringify(read.problems).slice(0, 300) };
  const plain = given.system;
  const limits = limitsOf(given.settings);
  const count = upsetsIn(plain, limits).length;
  if ((count * (count - 1) * (count - 2)) / 6 > mostSets)
    return { ...nothing, differences: [], skipped: "too many sets" };

  const theirs: Assessment = assess(read.document);
  const differences: string[] = [];
  const differ = (what: string, program: unknown, second: unknown) =>
    differences.push(`${what}: program ${String(program)}, second ${String(second)}`);

  const nominal = nominalOf(plain);
  const outcomes = outcomesOf(plain, limits);
  const now = outcomes.find(({ strength }) => strength === 0)!;
  const drawn = Object.values(plain.elements).some(isGround) ? look(plain, nominal) : now.lifted;
  const states = statesOf(drawn, now.bare, limits);

  const conductors = theirs.conductors as Assessment["conductors"] & Record<string, never>;
  const names = [...states.keys()].sort().join(" ");
  if (Object.keys(conductors).sort().join(" ") !== names)
    differ("conductors", Object.keys(conductors).sort().join(" "), names);
  for (const [name, state] of states) {
    const report = (theirs.conductors as Record<string, Assessment["conductors"][never]>)[name];
    if (report === undefined) continue;
    if (report.state !== state) differ(`state of ${name}`, report.state, state);
    const volts = Math.hypot(...drawn.drawn.volts.get(name)!);
    const told = worstDrawn(drawn, name);
    if (apart(report.voltsWorst ?? report.volts, told > 1.01 * volts ? told : volts, FLOATING))
      differ(`worst volts of ${name}`, report.voltsWorst, told);
    const off = Math.hypot(...drawn.off.volts.get(name)!);
    if (apart(report.volts, volts, FLOATING)) differ(`volts of ${name}`, report.volts, volts);
    if (apart(report.voltsLoadsOff, off, FLOATING))
      differ(`volts, loads off, of ${name}`, report.voltsLoadsOff, off);
    const sources = [...drawn.reached.any.get(name)!].sort().join(" ");
    if (state !== "neutral" && [...report.sources].sort().join(" ") !== sources)
      differ(`sources of ${name}`, [...report.sources].sort().join(" "), sources);
  }
  for (const [id, report] of Object.entries(theirs.elements))
    for (const [letter, amps] of Object.entries(report.amps)) {
      const own = drawn.drawn.amps.get(id)?.get(letter);
      if (own === undefined || Number.isNaN(own[0])) continue;
      if (apart(amps!, Math.hypot(...own))) differ(`amps of ${id} ${letter}`, amps, Math.hypot(...own));
    }

  const findingsOf = (rule: string) => theirs.findings.filter((it) => it.rule === rule);
  const hot = hotNeutrals(drawn, limits).join(" ");
  const theirHot = findingsOf("neutral-volts")
    .map(({ where, severity }) => `${where} ${severity}`)
    .sort()
    .join(" ");
  if (hot !== theirHot) differ("neutral-volts", theirHot, hot);

  let threats = 0;
  const verdicts: string[] = [];
  for (const [id, spot] of Object.entries(given.job.workPoints)) {
    const mine = verdictIn(plain, outcomes, limits, spot, given.job.steps);
    const report = (theirs.workPoints as Record<string, Assessment["workPoints"][never]>)[id]!;
    if (report.verdict !== mine.verdict) differ(`verdict of ${id}`, report.verdict, mine.verdict);
    if (report.margin !== mine.margin) differ(`margin of ${id}`, report.margin, mine.margin);
    verdicts.push(mine.verdict);
    threats += mine.threats.length;
    const byName = new Map(report.threats.map((it) => [nameOf(it as never), it]));
    if (byName.size !== report.threats.length)
      differ(`${id} threats twice`, report.threats.length, byName.size);
    report.threats.forEach((it, i) => {
      if (i > 0 && it.strength < report.threats[i - 1]!.strength)
        differ(`${id} order`, it.strength, "sorted");
    });
    let bodies = 0;
    for (const mineOne of mine.threats) {
      const other = byName.get(nameOf(mineOne));
      const name = `${id} threat ${nameOf(mineOne)}`;
      if (other === undefined) {
        differ(name, "missing", `${mineOne.volts} V, exposure ${mineOne.exposureVolts}`);
        continue;
      }
      byName.delete(nameOf(mineOne));
      if (other.strength !== mineOne.strength) differ(`${name} strength`, other.strength, mineOne.strength);
      for (const key of ["volts", "exposureVolts", "exposureToEarthVolts", "groundAmps"] as const)
        if (apart(other[key], mineOne[key], FLOATING)) differ(`${name} ${key}`, other[key], mineOne[key]);
      if (other.source === null ? mineOne.reaching.size > 0 : !mineOne.reaching.has(other.source))
        differ(`${name} source`, other.source, [...mineOne.reaching].join(" "));
      if (
        other.source !== null &&
        (other.path[0] !== other.source || !isConnected(plain, other.path, spot.at))
      )
        differ(`${name} path`, other.path.join(" "), `from ${other.source} to ${spot.at}`);
      if (other.source === null && other.path.length > 0) differ(`${name} path`, other.path.join(" "), "[]");
      // A body in circuit takes a solution of its own for each group of sources: asked of a few.
      if (bodies++ >= MOST_BODIES) continue;
      const body = mineOne.bodyMilliamps();
      if (apart(other.bodyMilliamps, body, FLOATING))
        differ(`${name} bodyMilliamps`, other.bodyMilliamps, body);
    }
    for (const [name, it] of byName)
      differ(`${id} threat ${name}`, `${it.volts} V, exposure ${it.exposureVolts}`, "missing");
    for (const rule of ["feed-not-drawn", "induced-exposure", "equipotential", "step-touch"]) {
      const said = findingsOf(rule)
        .filter(({ where }) => where === id)
        .map((it) => `${rule} ${it.severity}`)
        .filter((it, i, all) => all.indexOf(it) === i)
        .join();
      const own = mine.findings.filter((it) => it.startsWith(rule)).join();
      if (said !== own) differ(`${id} ${rule}`, said, own);
    }
  }
  void exposureIn;
  return { differences, threats, sets: outcomes.length, states: [...states.values()], verdicts };
}
