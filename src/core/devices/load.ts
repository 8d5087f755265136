import { type Complex, lettersOf, type Phase, say } from "../terms";
import { amount, choice, flag, internal, optionalAmount } from "./fields";
import { defineDevice, oneEnd, problem } from "./define";
import { machineEmf } from "./generator";
import type { Branch, Node } from "./parts";
import { deltaPairs, needsItsPhases, offBy, voltsToNeutral } from "./shared";
import { house, works } from "./symbol";

/** Between which nodes a wye or a delta hangs, and at which of the line-to-line volts. */
export function legsOf(
  { phases, connection }: { phases: string; connection: "wye" | "delta" },
  lineToLineVolts: number,
): { from: Phase; to: Phase | "N"; volts: number }[] {
  return connection === "delta"
    ? deltaPairs(phases).map(([from, to]) => ({ from, to, volts: lineToLineVolts }))
    : lettersOf(phases).map((from) => ({ from, to: "N", volts: voltsToNeutral(phases, lineToLineVolts) }));
}

/** A delta hangs between phases, so it needs two of them at least. */
export const deltaHasPairs = ({ connection, phases }: { connection: "wye" | "delta"; phases: string }) =>
  connection === "delta" && phases.length < 2 ? [problem("connection", say("read.deltaOnePhase"))] : [];

/** The largest of the usual standby machines of a house, which starts by itself [kVA]; common practice, no source. */
const STANDBY_KVA = 26;

/** A load and the customers behind it, any of whom may own a generator that nobody drew. */
export const load = defineDevice({
  kind: "load",
  role: "load",
  prefix: "ld",
  ends: ["at"],
  fields: {
    ...oneEnd,
    kw: amount("kW", 0, { min: -1e6, max: 1e6 }),
    kvar: amount("kvar", 0, { min: -1e6, max: 1e6 }),
    connection: choice(["wye", "delta"], "wye"),
    model: choice(["Z", "I", "PQ"], "Z"),
    /** line to line (leg to leg on a split secondary), the volts at which `kw` and `kvar` hold; nominal where left out */
    ratedKv: optionalAmount("kV", { above: 0, max: 1000 }),
    customers: amount("", 0, { min: 0, max: 100000, whole: true }),
    critical: flag(false),
    /** kVA of a generator that nobody drew and that has started; never written to a file */
    unknownKva: internal(amount("kVA", 0)),
  },
  check: deltaHasPairs,
  customers: ({ customers }) => customers,
  couldFeed: ({ customers }, assumed) => assumed && customers > 0,
  brings: ({ connection }) => (connection === "wye" ? [["at", "N"]] : []),
  needs: needsItsPhases,
  parts: (it, place) => {
    const nominalVolts = place.nominalVolts("at");
    const legs = legsOf(it, it.ratedKv === undefined ? nominalVolts : 1000 * it.ratedKv);
    const va: Complex = [(it.kw * 1000) / legs.length, (it.kvar * 1000) / legs.length];
    return [
      ...legs.map(({ from, to, volts }): Branch => ({
        part: "branch",
        role: "load",
        from: `at/${from}` as Node,
        to: `at/${to}` as Node,
        letter: from,
        siemens: volts === 0 ? [0, 0] : [va[0] / (volts * volts), -va[1] / (volts * volts)],
        demand: { va, volts, model: it.model },
      })),
      // What nobody knows the volts of has no machine that could be told of.
      ...(it.customers > 0 && nominalVolts > 0
        ? [
            machineEmf(
              {
                phases: it.phases,
                kva: it.unknownKva || 1,
                volts: nominalVolts,
                xPercent: 20,
                on: it.unknownKva > 0,
              },
              place,
            ),
          ]
        : []),
    ];
  },
  upsets: (it, settings) =>
    it.customers > 0 && settings.assumeGenerators
      ? [{ kind: "start-unknown", strength: 1, change: { unknownKva: settings.assumedGeneratorKva } }]
      : [],
  doubts: ({ phases, customers }, { nominalVolts }) => {
    const volts = nominalVolts("at");
    return customers === 0 || volts === 0
      ? []
      : [
          {
            doubt: "machine",
            beside: [{ kind: "generator", at: "$at", phases, kva: STANDBY_KVA, volts, on: true }],
          },
        ];
  },
  // What is drawn is a guess from the customers or the season; common practice, no source.
  numbers: ({ kw, kvar }) => offBy({ kw, kvar }, 0.5, 1.5),
  rating: ({ customers }) =>
    customers === 0
      ? undefined
      : say(customers === 1 ? "drawing.customer" : "drawing.customers", { count: customers }),
  symbolReach: 17,
  hangsToward: 0,
  ratingWidth: 94,
  symbol: ({ phases }) => [...(/^[12]+$/.test(phases) ? house() : works())],
});
