/** Small drawings with what goes wrong in them: seeded, so that a failure can be run again. */
import { chance } from "../simulator/randomSystem";
import { outputInTurn, swapInTurn } from "../support/randomSystems";
import { conductorsOf, type Plain, phasesOf, POLES, type Record_, tiedNeutrals } from "./plain";

type Saved = Record<string, unknown>;

export function nastyDocument(seed: number, parts: number) {
  const { whole, oneOf, happens, some, round } = chance(seed * 7919 + 17);
  const points: Record<string, Saved> = {};
  const elements: Record<string, Saved & { kind: string }> = {};
  interface Spot {
    readonly id: string;
    readonly phases: string;
    readonly neutral: boolean;
    readonly volts: number;
    readonly low: boolean;
  }
  const spots: Spot[] = [];
  const sometimes = (share: number, keys: Saved): Saved => (happens(share) ? keys : {});
  const someOf = (letters: string): string => some(letters, 0.6) || oneOf([...letters]);
  const add = (kind: string, keys: Saved) => {
    elements[`${kind.slice(0, 2)}${Object.keys(elements).length + 1}`] = { kind, ...keys };
  };
  const spot = (it: Omit<Spot, "id">): Spot => {
    const id = `p${spots.length + 1}`;
    points[id] = it.neutral && happens(0.3) ? { earthOhms: oneOf([1, 25, 100, 1000]) } : {};
    const made = { ...it, id };
    spots.push(made);
    return made;
  };
  const marks = (): Saved => ({
    ...sometimes(0.35, { tagged: true }),
    ...sometimes(0.25, { blocked: true }),
  });
  const strong = happens(0.4);
  const supply = (at: string, phases = "ABC") =>
    add("source", {
      at,
      phases,
      kvLL: 12.47,
      ...(strong
        ? { z1Ohms: [0.02, oneOf([0.1, 0.25, 0.45])], z0Ohms: [0.03, oneOf([0.1, 0.4])] }
        : { z1Ohms: [0.3, 2], z0Ohms: [0.6, 4] }),
      ...sometimes(0.15, { on: false }),
      ...sometimes(0.15, { earthed: false }),
      ...sometimes(0.15, { inStep: false }),
      ...sometimes(0.3, { angleDeg: whole(-10, 10) }),
    });
  const head = spot({ phases: "ABC", neutral: true, volts: 12470, low: false });
  supply(head.id);

  const generator = (at: Spot) =>
    add("generator", {
      at: at.id,
      phases: at.low && at.phases === "12" ? (happens(0.8) ? "12" : oneOf(["1", "2"])) : someOf(at.phases),
      kva: oneOf([5, 20, 100]),
      volts: at.volts,
      ...sometimes(0.4, { on: true }),
      ...sometimes(0.3, { interface: "inverter" }),
      ...sometimes(0.2, { xPercent: whole(5, 40) }),
    });

  // A part that nobody drew a feed for.
  if (happens(0.2))
    spot({ phases: oneOf(["ABC", "A", "AB"]), neutral: happens(0.7), volts: 12470, low: false });

  for (let k = 0; k < parts; k++) {
    const from = oneOf(spots);
    const pick = oneOf(
      from.low
        ? ["join", "join", "load", "load", "generator", "transfer", "span", "capacitor"]
        : ["span", "span", "join", "join", "bank", "bank", "lead", "regulator", "capacitor", "tie", "load"],
    );
    const phases = happens(0.5) ? from.phases : someOf(from.phases);
    const neutral = from.neutral ? happens(0.85) : happens(0.1);
    const ends = (to: Spot): Saved => ({
      from: from.id,
      to: to.id,
      phases,
      ...(neutral ? {} : { neutral: false }),
    });
    const next = () => spot({ ...from, phases, neutral });
    switch (pick) {
      case "span": {
        add("span", {
          ...ends(next()),
          lengthM: from.low ? round(5, 60) : round(30, 4000),
          ...(from.low ? { construction: "secondary" } : sometimes(0.2, { construction: "cable" })),
          ...sometimes(0.25, {
            parted: some(neutral ? `${phases}N` : phases, 0.4),
          }),
          ...(from.low ? {} : sometimes(0.3, { conductor: "2 6/1 ACSR", neutralConductor: "4/0 ACSR" })),
          ...sometimes(0.2, { rodsPerKm: oneOf([1, 2.5]), ...sometimes(0.5, { rodOhms: 50 }) }),
        });
        break;
      }
      case "lead":
        add("lead", {
          ...ends(next()),
          ...sometimes(0.5, { cut: some(neutral ? `${phases}N` : phases, 0.5) }),
        });
        break;
      case "regulator":
        add("regulator", {
          ...ends(next()),
          taps: Object.fromEntries([...phases].map((it) => [it, whole(-16, 16)])),
          ...sometimes(0.4, { open: someOf(phases) }),
          ...sometimes(0.2, { bypassed: true }),
          ...marks(),
        });
        break;
      case "tie": {
        const far = spot({ ...from, phases: from.phases, neutral: true });
        supply(far.id, from.phases);
        add("disconnect", {
          from: far.id,
          to: from.id,
          phases: from.phases,
          ...(from.neutral ? {} : { neutral: false }),
          open: true,
          ...sometimes(0.5, { gang: true }),
          ...sometimes(0.3, { remote: true }),
          ...marks(),
        });
        break;
      }
      case "join": {
        const kind = oneOf(
          from.low
            ? ["meter", "main"]
            : ["clamp", "cutout", "cutout", "disconnect", "recloser", "breaker", "elbow"],
        );
        const to = next();
        const gang = ["recloser", "breaker"].includes(kind)
          ? happens(0.7)
          : kind === "disconnect" && happens(0.4);
        const open =
          gang || from.low
            ? sometimes(0.5, { open: true })
            : sometimes(0.6, { open: happens(0.4) ? phases : some(phases, 0.5) });
        add(kind, {
          ...ends(to),
          ...open,
          ...(["recloser", "breaker"].includes(kind)
            ? { ...(gang ? {} : { gang: false }), ...sometimes(0.3, { reclosing: false }) }
            : gang
              ? { gang: true }
              : {}),
          ...(["disconnect", "recloser", "breaker"].includes(kind) ? sometimes(0.25, { remote: true }) : {}),
          ...(kind === "cutout"
            ? {
                ...sometimes(0.2, { blown: someOf(phases) }),
                ...sometimes(0.25, { removed: someOf(phases) }),
              }
            : {}),
          ...marks(),
        });
        break;
      }
      case "transfer": {
        const alt = spot({ ...from, phases, neutral });
        add("transfer", {
          ...ends(next()),
          alt: alt.id,
          position: oneOf(["utility", "generator", "off"]),
          ...sometimes(0.2, { bridged: true }),
        });
        if (happens(0.7)) generator(alt);
        break;
      }
      case "generator":
        generator(from);
        break;
      case "capacitor":
        add("capacitor", {
          at: from.id,
          phases,
          kvar: from.low ? 3 : oneOf([50, 150]),
          kvLL: from.volts / 1000,
          ...(phases.length > 1 && happens(0.4) ? { connection: "delta" } : {}),
          ...sometimes(0.4, { open: someOf(phases) }),
        });
        break;
      case "load":
        add("load", {
          at: from.id,
          phases,
          kw: from.low ? round(0.2, 8) : round(1, 80),
          kvar: from.low ? round(0, 3) : round(0, 30),
          ...(phases.length > 1 && happens(0.4) ? { connection: "delta" } : {}),
          ...(happens(0.25) ? { model: oneOf(["I", "PQ"]) } : {}),
          ...sometimes(0.15, { ratedKv: (from.volts / 1000) * oneOf([0.95, 1.05]) }),
          ...sometimes(0.4, { customers: 1 }),
        });
        break;
      case "bank":
        bank(from);
        break;
    }
  }

  function bank(from: Spot): void {
    const three = from.phases === "ABC";
    const pairsOf = ["AB", "BC", "AC"].filter((it) =>
      [...it].every((letter) => from.phases.includes(letter)),
    );
    const usable = [
      ...(from.neutral ? ["single", "single"] : []),
      ...(pairsOf.length > 0 ? ["across"] : []),
      ...(pairsOf.length > 0 && from.neutral ? ["openY-openD"] : []),
      ...(three ? ["Y-D", "D-Yg", "D-D"] : []),
      ...(three && from.neutral ? ["Yg-Yg", "Yg-D"] : []),
    ];
    if (usable.length === 0) return;
    const connection = oneOf(usable);
    const apart = {
      ...sometimes(0.2, { neutral: false }),
      ...sometimes(0.2, { rPercent: 1.2, xPercent: 2.5, excitingPercent: oneOf([0, 1]) }),
    };
    if (connection === "single" || connection === "across") {
      const phases = connection === "single" ? oneOf([...from.phases]) : oneOf(pairsOf);
      const split = happens(0.65);
      const secondaryV = split ? 240 : oneOf([120, 277, 7200]);
      const to = spot({
        phases: split ? "12" : phases[0]!,
        neutral: true,
        volts: split ? 240 : secondaryV * Math.sqrt(3),
        low: secondaryV < 1000,
      });
      add("transformer", {
        from: from.id,
        to: to.id,
        phases,
        connection: "single",
        kva: oneOf([10, 25, 50]),
        primaryKv: connection === "single" ? 7.2 : 12.47,
        secondaryV,
        ...(split ? {} : { secondary: "two-wire" }),
        ...apart,
      });
      return;
    }
    const delta = connection.endsWith("D");
    const phases = connection === "openY-openD" ? oneOf(pairsOf) : "ABC";
    const secondaryV = happens(0.15) ? 24940 : oneOf(delta ? [240, 480] : [208, 480]);
    const up = secondaryV > 12470;
    const taps =
      connection !== "openY-openD"
        ? ["ab", "bc", "ca"]
        : up
          ? { AB: ["ca", "ab"], AC: ["ca", "bc"], BC: ["ab", "bc"] }[phases]!
          : { AB: ["ab", "bc"], AC: ["ab", "ca"], BC: ["bc", "ca"] }[phases]!;
    const midTap = delta && happens(0.4) ? { midTap: oneOf(taps) } : {};
    const to = spot({
      phases: "ABC",
      neutral: !delta || "midTap" in midTap,
      volts: secondaryV,
      low: secondaryV < 1000,
    });
    add("transformer", {
      from: from.id,
      to: to.id,
      phases,
      connection,
      kva: oneOf([45, 75, 150]),
      primaryKv: 12.47,
      secondaryV,
      ...midTap,
      ...apart,
    });
  }

  // Loads of constant current or power have several solutions where a neutral floats or where they ring with a capacitor:
  // impedances there.
  const earthed = tiedNeutrals({ frequencyHz: 60, points, elements } as Plain);
  const rings = Object.values(elements).some(({ kind }) => kind === "capacitor");
  for (const [id, e] of Object.entries(elements))
    if (
      e.kind === "load" &&
      (rings ||
        (e["connection"] !== "delta" &&
          !(earthed.has(`${e["at"] as string}/N`) && spots.some((it) => it.id === e["at"] && it.neutral))))
    )
      elements[id] = { ...e, model: "Z" };
    else if (e.kind === "span" || e.kind === "lead" || POLES.includes(e.kind as never))
      elements[id] = { ...e, ...swapInTurn(id.length + Number(id.slice(2)), e["phases"] as string) };
    else if (e.kind === "generator" && !rings && earthed.has(`${e["at"] as string}/N`))
      elements[id] = { ...e, ...outputInTurn(id.length + Object.keys(elements).length, e["kva"] as number) };

  // ——— what hangs on conductors that are there: shorts, grounds, another circuit
  const known = new Set(conductorsOf({ frequencyHz: 60, points, elements } as Plain));
  const lettersAt = (id: string) => [..."ABC12"].filter((it) => known.has(`${id}/${it}`)).join("");
  const hasNeutral = (id: string) => known.has(`${id}/N`);
  for (let k = whole(0, 3); k > 0; k--) {
    const { id } = oneOf(spots);
    const letters = lettersAt(id);
    if (letters === "") continue;
    add("ground", {
      at: id,
      phases: happens(0.7) ? letters : someOf(letters),
      to: hasNeutral(id) ? oneOf(["neutral", "neutral", "earth", "both"]) : "earth",
      ...sometimes(0.7, {
        cable: oneOf(["2", "2", "1/0", "2/0", "3/0", "4/0", "250", "350", "250 kcmil", "4", "6", "8"]),
      }),
      ...sometimes(0.2, { ohms: 0.005 }),
      ...sometimes(0.3, { earthOhms: oneOf([5, 100]) }),
      ...sometimes(0.2, { poleBond: false }),
    });
  }
  if (happens(0.3)) {
    const { id } = oneOf(spots);
    const letters = lettersAt(id);
    if (letters !== "" && happens(0.7)) {
      const phases = someOf(letters);
      add("fault", {
        at: id,
        phases,
        to: oneOf([
          "earth",
          ...(hasNeutral(id) ? ["neutral"] : []),
          ...(phases.length > 1 ? ["phases", "phases"] : []),
        ]),
        ohms: oneOf([0.01, 1, 40]),
      });
    } else if (letters !== "" && hasNeutral(id))
      add("arrester", { at: id, phases: letters, failed: someOf(letters) });
  }
  for (const [id, e] of Object.entries(elements)) {
    if (e.kind !== "span" || e["construction"] === "secondary" || !happens(0.2)) continue;
    add("nearby", {
      span: id,
      relation: oneOf(["crossing", "underbuild", "parallel"]),
      kvLL: oneOf([12.47, 69]),
      spacingM: round(1, 8),
      lengthM: round(40, 2000),
      ...sometimes(0.6, { amps: round(10, 600) }),
      ...sometimes(0.15, { on: false }),
    });
  }

  // ——— a job
  const workPoints: Record<string, { at: string; conductors: string }> = {};
  for (let k = whole(1, 3); k > 0; k--) {
    const grounds = Object.values(elements).filter((e) => e.kind === "ground");
    const id = grounds.length > 0 && happens(0.5) ? (oneOf(grounds)["at"] as string) : oneOf(spots).id;
    const letters = `${lettersAt(id)}${hasNeutral(id) && happens(0.25) ? "N" : ""}`;
    if (letters === "") continue;
    workPoints[`w${k}`] = { at: id, conductors: happens(0.4) ? letters : someOf(letters) };
  }
  const steps: Saved[] = [];
  const done = () => sometimes(0.85, { done: true });
  const places = Object.values(workPoints);
  if (happens(0.9)) steps.push({ do: "check-detector", ...done() });
  for (const it of places)
    if (happens(0.85))
      steps.push({
        do: "test",
        at: it.at,
        phases: happens(0.8) ? lettersAt(it.at) || "N" : someOf(lettersAt(it.at) || "N"),
        ...done(),
      });
  const switches = Object.entries(elements).filter(([, e]) => e.kind === "cutout" || e.kind === "disconnect");
  if (happens(0.2) && switches.length > 0) {
    const [id, e] = oneOf(switches);
    steps.splice(whole(0, steps.length), 0, {
      do: oneOf(["open", "close"]),
      element: id,
      phases: phasesOf(e as Record_).join(""),
      ...done(),
    });
  }
  if (happens(0.3) && places.length > 0) steps.push({ do: "barricade", at: oneOf(places).at, ...done() });

  const settings: Saved = {
    ...sometimes(0.15, { hazardVolts: oneOf([25, 100]) }),
    ...sometimes(0.15, { exposureLimitVolts: oneOf([15, 100]) }),
    ...sometimes(0.2, { clearingSeconds: oneOf([0.1, 0.25, 1, 2]) }),
    ...sometimes(0.15, { assumeGenerators: false }),
    ...sometimes(0.1, { assumedGeneratorKva: 25 }),
    ...sometimes(0.1, { inducedLimitVolts: 1 }),
  };
  return {
    format: "stillhot" as const,
    formatVersion: 1 as const,
    title: `nasty ${seed}`,
    system: { frequencyHz: happens(0.85) ? 60 : 50, points, elements },
    job: { task: "", workPoints, tools: [], permit: "none", steps },
    settings,
  };
}
