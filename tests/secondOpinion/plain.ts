/**
 * A drawing as plain records, read from the file format's page alone: who brings which conductor, what is open, which
 * conductors an element joins, the upsets and what each changes. Written against `docs/format.md`'s contract, slow and
 * simple on purpose; nothing here comes from the program.
 */
export type Record_ = { readonly kind: string; readonly [key: string]: unknown };

export interface Plain {
  readonly frequencyHz: number;
  readonly points: Readonly<Record<string, { readonly earthOhms?: number }>>;
  readonly elements: Readonly<Record<string, Record_>>;
}

export const ROOT3 = Math.sqrt(3);
export const POLES = [
  "clamp",
  "cutout",
  "disconnect",
  "recloser",
  "breaker",
  "sectionalizer",
  "elbow",
  "meter",
  "main",
];
export const TWO_ENDED = ["span", "lead", "transfer", "regulator", ...POLES];

export const text = (e: Record_, key: string, fallback = ""): string => (e[key] as string) ?? fallback;
export const num = (e: Record_, key: string, fallback = 0): number => (e[key] as number) ?? fallback;
export const yes = (e: Record_, key: string, fallback = false): boolean => (e[key] as boolean) ?? fallback;
export const phasesOf = (e: Record_): string[] => [...text(e, "phases")];
export const named = (e: Record_, key: string): string[] =>
  e[key] === true ? phasesOf(e) : typeof e[key] === "string" ? [...(e[key] as string)] : [];
export const at = (point: string, letter: string): string => `${point}/${letter}`;

export const twoLetters = (list: readonly string[]): [string, string][] => {
  const [a, b, c] = list;
  if (a !== undefined && b !== undefined && c !== undefined)
    return [
      [a, b],
      [b, c],
      [c, a],
    ];
  return a !== undefined && b !== undefined ? [[a, b]] : [];
};

/** Terminals of a bank's units: letters of the high and of the low side; `*` is a star of its own. */
export interface Unit {
  readonly high: readonly [string, string];
  readonly highVolts: number;
  readonly lows: readonly Low[];
}

interface Low {
  readonly end: "to" | "alt";
  readonly low: readonly [string, string];
  /** the winding's centre is brought out as `N` */
  readonly centre: boolean;
  readonly lowVolts: number;
}

export const isBank = ({ kind }: Record_): boolean => kind === "transformer" || kind === "threeWinding";

/** The ends of a bank beyond its primary. */
export const lowEnds = (t: Record_): ("to" | "alt")[] => (t.kind === "threeWinding" ? ["to", "alt"] : ["to"]);

const NEXT: Record<string, string> = { A: "B", B: "C", C: "A" };
const LAST: Record<string, string> = { A: "C", B: "A", C: "B" };

/** A winding of each unit on each of three sides: a delta lags its wye by 30° stepping down, and leads it stepping up. */
function unitsOfThree(t: Record_): Unit[] {
  const connection = text(t, "connection");
  const kv = 1000 * num(t, "primaryKv");
  const volts = [num(t, "secondaryV"), num(t, "thirdV")];
  if (connection === "single") {
    const [a, b] = phasesOf(t);
    const lows = (["to", "alt"] as const).map((end, k): Low => {
      const split = k === 0 ? text(t, "secondary", "split") === "split" : text(t, "third") === "split";
      return { end, low: split ? ["1", "2"] : [a!, "N"], centre: split, lowVolts: volts[k]! };
    });
    return [{ high: [a!, b ?? "N"], highVolts: kv, lows }];
  }
  const sides = connection.split("-");
  const ohms = ["primaryStarOhms", "secondaryStarOhms", "thirdStarOhms"];
  const point = (k: number) => (sides[k] === "Y" || t[ohms[k]!] !== undefined ? "*" : "N");
  const firstWye = [1, 2].find((k) => sides[k] !== "D");
  return ["A", "B", "C"].map((letter) => {
    const behindWye = firstWye !== undefined && volts[firstWye - 1]! <= kv ? LAST : NEXT;
    const high: [string, string] = [letter, sides[0] === "D" ? behindWye[letter]! : point(0)];
    const lows = [1, 2].map((k): Low => {
      const delta = (): [string, string] =>
        sides[0] === "D" ? high : [letter, (volts[k - 1]! > kv ? LAST : NEXT)[letter]!];
      const isDelta = sides[k] === "D";
      return {
        end: k === 1 ? "to" : "alt",
        low: isDelta ? delta() : [letter, point(k)],
        centre: false,
        lowVolts: isDelta ? volts[k - 1]! : volts[k - 1]! / ROOT3,
      };
    });
    return { high, highVolts: sides[0] === "D" ? kv : kv / ROOT3, lows };
  });
}

export function unitsOf(t: Record_): Unit[] {
  if (t.kind === "threeWinding") return unitsOfThree(t);
  const connection = text(t, "connection");
  const kv = 1000 * num(t, "primaryKv");
  const lv = num(t, "secondaryV");
  if (connection === "single") {
    const [a, b] = phasesOf(t);
    const split = text(t, "secondary", "split") === "split";
    return [
      {
        high: [a!, b ?? "N"],
        highVolts: kv,
        lows: [{ end: "to", low: split ? ["1", "2"] : [a!, "N"], centre: split, lowVolts: lv }],
      },
    ];
  }
  const up = lv > kv;
  const table: Record<string, string> = {
    "Yg-Yg": "A N a n|B N b n|C N c n",
    "D-Yg": up ? "A B a n|B C b n|C A c n" : "A C a n|B A b n|C B c n",
    "Y-D": up ? "A * a c|B * b a|C * c b" : "A * a b|B * b c|C * c a",
    "Yg-D": up ? "A N a c|B N b a|C N c b" : "A N a b|B N b c|C N c a",
    "openY-openD": up ? "A N a c|B N b a|C N c b" : "A N a b|B N b c|C N c a",
    "D-D": "A B a b|B C b c|C A c a",
    "Yg-Y": "A N a *|B N b *|C N c *",
    "Y-Y": "A * a *|B * b *|C * c *",
  };
  const behind = (letter: string, ohms: string) => (letter === "N" && t[ohms] !== undefined ? "*" : letter);
  const tap = text(t, "midTap").toUpperCase();
  return table[connection]!.split("|")
    .map((row) => row.split(" "))
    .filter(([a]) => connection !== "openY-openD" || phasesOf(t).includes(a!))
    .map(([a, b, c, d]) => {
      const low: [string, string] = [c!.toUpperCase(), behind(d!.toUpperCase(), "secondaryStarOhms")];
      const wyeLow = low[1] === "N" || low[1] === "*";
      return {
        high: [a!, behind(b!, "primaryStarOhms")] as const,
        highVolts: b === "N" || b === "*" ? kv / ROOT3 : kv,
        lows: [
          {
            end: "to" as const,
            low,
            centre: tap !== "" && !wyeLow && tap.includes(low[0]) && tap.includes(low[1]),
            lowVolts: wyeLow ? lv / ROOT3 : lv,
          },
        ],
      };
    });
}

/** The star points of a bank that have a node of their own, and the neutral and the ohms that they stand on, if any. */
export const starsOf = (
  id: string,
  t: Record_,
): { star: string; point?: string; ohms?: readonly [number, number] }[] =>
  (
    [
      ["primaryStarOhms", "from", "from star"],
      ["secondaryStarOhms", "to", "to star"],
      ["thirdStarOhms", "alt", "alt star"],
    ] as const
  ).map(([key, end, name]) => ({
    star: `${id} ${name}`,
    ...(t[key] === undefined ? {} : { point: text(t, end), ohms: t[key] as [number, number] }),
  }));

/** What a phase of a span or a lead is at its far end. */
export const beyond = (e: Record_, letter: string): string =>
  text(e, "toPhases")[phasesOf(e).indexOf(letter)] ?? letter;

/** All conductors of a drawing. */
export function conductorsOf({ points, elements }: Plain): string[] {
  const all = new Set<string>();
  const bring = (point: string, letters: readonly string[]) => {
    if (point in points) for (const it of letters) if (it !== "*") all.add(at(point, it));
  };
  for (const e of Object.values(elements)) {
    const own = phasesOf(e);
    if (TWO_ENDED.includes(e.kind))
      for (const end of ["from", "alt", "to"])
        if (e[end] !== undefined) {
          const letters = end === "to" ? own.map((it) => beyond(e, it)) : own;
          bring(text(e, end), e["neutral"] === false ? letters : [...letters, "N"]);
        }
    if (isBank(e)) {
      bring(text(e, "from"), own);
      for (const unit of unitsOf(e)) {
        bring(text(e, "from"), unit.high);
        for (const { end, low, centre } of unit.lows)
          bring(text(e, end), centre || low[1] === "*" ? [low[0], low[1], ...(centre ? ["N"] : [])] : low);
      }
      if (text(e, "connection") !== "single")
        for (const end of lowEnds(e)) bring(text(e, end), ["A", "B", "C"]);
      for (const { point } of starsOf("", e)) if (point !== undefined) bring(point, ["N"]);
    }
    if (e.kind === "source") bring(text(e, "at"), [...own, "N"]);
    // One that nobody drew brings nothing: it hangs on what is there.
    if (e.kind === "generator" && !yes(e, "unknown") && (own.length !== 2 || own.includes("1")))
      bring(text(e, "at"), ["N"]);
    if ((e.kind === "load" || e.kind === "capacitor") && text(e, "connection", "wye") === "wye")
      bring(text(e, "at"), ["N"]);
  }
  return [...all].sort();
}

/** Phases on which an element is open, its neutral among them where that is parted or cut. */
export function openOf(e: Record_): string[] {
  if (e.kind === "regulator" && yes(e, "bypassed")) return [];
  const keys =
    e.kind === "cutout"
      ? ["open", "blown", "removed"]
      : e.kind === "span"
        ? ["parted"]
        : e.kind === "lead"
          ? ["cut"]
          : ["open"];
  return [...new Set(keys.flatMap((key) => named(e, key)))];
}

/** Same-conductor joins that stand: [one, other, element]. Through these a conductor is one conductor. */
export function joinsOf(plain: Plain, conductors: ReadonlySet<string>): [string, string, string][] {
  const out: [string, string, string][] = [];
  for (const [id, e] of Object.entries(plain.elements)) {
    const [from, to] = [text(e, "from"), text(e, "to")];
    const neutral = e["neutral"] !== false ? ["N"] : [];
    if (isBank(e)) {
      for (const end of lowEnds(e))
        if (neutral.length > 0 && conductors.has(at(from, "N")) && conductors.has(at(text(e, end), "N")))
          out.push([at(from, "N"), at(text(e, end), "N"), id]);
    } else if (e.kind === "transfer") {
      const alt = text(e, "alt");
      const position = text(e, "position", "utility");
      const both = yes(e, "bridged");
      for (const it of phasesOf(e)) {
        if (both || position === "utility") out.push([at(from, it), at(to, it), id]);
        if (both || position === "generator") out.push([at(alt, it), at(to, it), id]);
      }
      for (const it of neutral) out.push([at(from, it), at(to, it), id], [at(alt, it), at(to, it), id]);
    } else if (TWO_ENDED.includes(e.kind)) {
      const open = openOf(e);
      for (const it of [...phasesOf(e), ...neutral])
        if (!open.includes(it)) out.push([at(from, it), at(to, beyond(e, it)), id]);
    }
  }
  return out;
}

/** Groups of a relation, as a map from member to a name of its group. */
export function groupsOf(members: readonly string[], pairs: readonly (readonly string[])[]) {
  const group = new Map(members.map((it) => [it, it]));
  for (const [a, b] of pairs) {
    const [keep, lose] = [group.get(a!), group.get(b!)];
    if (keep === undefined || lose === undefined || keep === lose) continue;
    for (const [member, name] of group) if (name === lose) group.set(member, keep);
  }
  return group;
}

/** Neutrals that are tied to earth. */
export function tiedNeutrals(plain: Plain): Set<string> {
  const conductors = conductorsOf(plain);
  const group = groupsOf(conductors, joinsOf(plain, new Set(conductors)));
  const tied = new Set<string>();
  for (const e of Object.values(plain.elements))
    if (e.kind === "source" && e["earthed"] !== false) tied.add(group.get(at(text(e, "at"), "N"))!);
  for (const e of Object.values(plain.elements))
    if (e.kind === "span" && e["neutral"] !== false && num(e, "rodsPerKm") > 0)
      for (const end of ["from", "to"]) tied.add(group.get(at(text(e, end), "N"))!);
  for (const [point, { earthOhms }] of Object.entries(plain.points))
    if (earthOhms !== undefined && group.has(at(point, "N"))) tied.add(group.get(at(point, "N"))!);
  return new Set(conductors.filter((it) => it.endsWith("/N") && tied.has(group.get(it)!)));
}

/** Line to line (leg to leg) volts at each point: from the sources outward, whatever is open; else from ratings. */
export function nominalOf({ elements, points }: Plain): Map<string, number> {
  const nominal = new Map<string, number>();
  const spread = () => {
    for (let again = true; again;) {
      again = false;
      const give = (from: string, to: string, volts: number | undefined) => {
        if (!nominal.has(from) || nominal.has(to) || volts === undefined) return;
        nominal.set(to, volts);
        again = true;
      };
      for (const e of Object.values(elements)) {
        const ends = ["from", "alt", "to"].filter((it) => e[it] !== undefined).map((it) => text(e, it));
        if (isBank(e)) {
          for (const a of ["from", ...lowEnds(e)])
            for (const b of ["from", ...lowEnds(e)])
              if (a !== b)
                give(text(e, a), text(e, b), b === "from" ? highNominal(e) : lowNominal(e, b as "to"));
        } else if (TWO_ENDED.includes(e.kind))
          for (const a of ends) for (const b of ends) give(a, b, nominal.get(a));
      }
    }
  };
  for (const e of Object.values(elements))
    if (e.kind === "source" && !nominal.has(text(e, "at"))) nominal.set(text(e, "at"), 1000 * num(e, "kvLL"));
  spread();
  for (const e of Object.values(elements)) {
    if (!isBank(e) || nominal.has(text(e, "from"))) continue;
    nominal.set(text(e, "from"), highNominal(e));
    for (const end of lowEnds(e))
      if (!nominal.has(text(e, end))) nominal.set(text(e, end), lowNominal(e, end));
    spread();
  }
  for (const e of Object.values(elements)) {
    if (e.kind !== "generator" || nominal.has(text(e, "at"))) continue;
    nominal.set(text(e, "at"), num(e, "volts"));
    spread();
  }
  for (const point of Object.keys(points)) if (!nominal.has(point)) nominal.set(point, 0);
  return nominal;
}
const lowNominal = (t: Record_, end: "to" | "alt"): number => {
  const wires = end === "to" ? text(t, "secondary", "split") : text(t, "third", "two-wire");
  return (
    num(t, end === "to" ? "secondaryV" : "thirdV") *
    (text(t, "connection") === "single" && wires === "two-wire" ? ROOT3 : 1)
  );
};
const highNominal = (t: Record_): number =>
  1000 * num(t, "primaryKv") * (text(t, "connection") === "single" && phasesOf(t).length === 1 ? ROOT3 : 1);

// ——— upsets

export interface PlainUpset {
  readonly kind: string;
  readonly element: string;
  readonly phase?: string;
  readonly strength: number;
}

export interface Limits {
  readonly hazardVolts: number;
  readonly exposureLimitVolts: number;
  readonly assumeGenerators: boolean;
  readonly assumedGeneratorKva: number;
  readonly bodyOhms: number;
  readonly clearingSeconds: number;
  readonly inducedLimitVolts: number;
}

export const limitsOf = (settings: Partial<Limits> = {}): Limits => ({
  hazardVolts: 50,
  exposureLimitVolts: 50,
  assumeGenerators: true,
  assumedGeneratorKva: 7.5,
  bodyOhms: 1000,
  clearingSeconds: 0.5,
  inducedLimitVolts: 3,
  ...settings,
});

export function upsetsIn(plain: Plain, limits: Limits): PlainUpset[] {
  const out: PlainUpset[] = [];
  for (const [id, e] of Object.entries(plain.elements)) {
    if (POLES.includes(e.kind) || e.kind === "regulator") {
      const open = openOf(e);
      const gang =
        e.kind === "meter" ||
        e.kind === "main" ||
        (e.kind === "disconnect" && yes(e, "gang")) ||
        (["recloser", "breaker", "sectionalizer"].includes(e.kind) && yes(e, "gang", true));
      const automatic =
        (["recloser", "breaker"].includes(e.kind) && (yes(e, "reclosing", true) || yes(e, "remote"))) ||
        (["disconnect", "sectionalizer"].includes(e.kind) && yes(e, "remote"));
      const upset = (phase?: string): PlainUpset => {
        const removed = e.kind === "cutout" && phase !== undefined && named(e, "removed").includes(phase);
        const blocked = yes(e, "blocked") || removed;
        const base = { element: id, ...(phase === undefined ? {} : { phase }) };
        if (automatic && !blocked) return { kind: "reclose", ...base, strength: 1 };
        return { kind: "close", ...base, strength: yes(e, "tagged") ? (blocked ? 3 : 2) : 1 };
      };
      if (gang && open.length > 0) out.push(upset());
      if (!gang) out.push(...open.map(upset));
    }
    if (e.kind === "source" && !yes(e, "on", true)) out.push({ kind: "restore", element: id, strength: 1 });
    const stops = isSet(e) && text(e, "withoutGrid", "stops") === "stops";
    if (e.kind === "generator" && (!yes(e, "on") || stops))
      out.push({ kind: "start", element: id, strength: 1 });
    if (e.kind === "load" && limits.assumeGenerators && num(e, "customers") >= 1)
      out.push({ kind: "start-unknown", element: id, strength: 1 });
    if (e.kind === "transfer" && !yes(e, "bridged")) out.push({ kind: "transfer", element: id, strength: 1 });
    if (e.kind === "span" || e.kind === "lead")
      for (const phase of openOf(e))
        out.push({ kind: "rejoin", element: id, phase, strength: e.kind === "lead" ? 2 : 1 });
    if (e.kind === "nearby" && yes(e, "on", true)) out.push({ kind: "contact", element: id, strength: 1 });
  }
  return out;
}

/** The drawing after some upsets. A contact is an element of its own. */
export function after(plain: Plain, upsets: readonly PlainUpset[], limits: Limits): Plain {
  const elements: Record<string, Record_> = { ...plain.elements };
  const change = (id: string, keys: Record<string, unknown>) => {
    elements[id] = { ...elements[id]!, ...keys };
  };
  const without = (id: string, key: string, phase: string | undefined) =>
    phase === undefined
      ? ""
      : named(elements[id]!, key)
          .filter((it) => it !== phase)
          .join("");
  for (const { kind, element: id, phase } of upsets) {
    const e = elements[id]!;
    switch (kind) {
      case "close":
      case "reclose":
        change(id, { open: without(id, "open", phase) });
        if (e.kind === "cutout")
          change(id, { blown: without(id, "blown", phase), removed: without(id, "removed", phase) });
        break;
      case "rejoin":
        if (e.kind === "span") change(id, { parted: without(id, "parted", phase) });
        else change(id, { cut: without(id, "cut", phase) });
        break;
      case "start":
        change(id, { on: true, withoutGrid: "carries-on" });
        break;
      case "restore":
        change(id, { on: true });
        break;
      case "transfer":
        change(id, { bridged: true });
        break;
      case "start-unknown":
        if (nominalOf(plain).get(text(e, "at"))! === 0) break;
        elements[`unknown ${id}`] = {
          kind: "generator",
          at: e["at"],
          phases: e["phases"],
          kva: limits.assumedGeneratorKva,
          volts: nominalOf(plain).get(text(e, "at"))!,
          xPercent: 20,
          on: true,
          unknown: true,
        };
        break;
      case "contact":
        elements[`contact ${id}`] = { kind: "contact", span: e["span"], kvLL: e["kvLL"] };
        break;
    }
  }
  return { ...plain, elements };
}

/** A drawing without some kinds of element. */
export const without = (plain: Plain, gone: (e: Record_, id: string) => boolean): Plain => ({
  ...plain,
  elements: Object.fromEntries(Object.entries(plain.elements).filter(([id, e]) => !gone(e, id))),
});

/** Of each phase conductor, and star of a bank, the name of what closed elements, unparted spans and transformers join it to. */
function phaseGroups(plain: Plain): Map<string, string> {
  const conductors = conductorsOf(plain);
  const phases = conductors.filter((it) => !it.endsWith("/N"));
  const pairs: (readonly string[])[] = joinsOf(plain, new Set(conductors)).filter(([a]) => !a.endsWith("/N"));
  for (const [id, e] of Object.entries(plain.elements)) {
    if (!isBank(e)) continue;
    for (const { high, lows } of unitsOf(e)) {
      const own = [{ end: "from", low: high }, ...lows]
        .flatMap(({ end, low }) => low.map((it) => (it === "*" ? `${id} ${end} star` : at(text(e, end), it))))
        .filter((it) => !it.endsWith("/N"));
      for (const it of own) pairs.push([own[0]!, it]);
    }
  }
  const stars = Object.keys(plain.elements).flatMap((id) =>
    ["from", "to", "alt"].map((end) => `${id} ${end} star`),
  );
  return groupsOf([...phases, ...stars], pairs);
}

const isSet = (e: Record_): boolean => e.kind === "generator" && e["outputKw"] !== undefined;

/**
 * How each supply that is on runs: on volts of its own, or, set to an output, along with volts that others hold on every
 * phase of it. Where nobody does, one that stops is not here.
 */
export function runsOf(plain: Plain): Map<string, "holding" | "following"> {
  const out = new Map<string, "holding" | "following">();
  const on = Object.entries(plain.elements).filter(([, e]) =>
    e.kind === "source" ? yes(e, "on", true) : e.kind === "generator" && yes(e, "on"),
  );
  if (!on.some(([, e]) => isSet(e))) return new Map(on.map(([id]) => [id, "holding"]));
  const group = phaseGroups(plain);
  const places = (e: Record_) => phasesOf(e).map((it) => group.get(at(text(e, "at"), it)));
  const held = new Set(on.filter(([, e]) => !isSet(e)).flatMap(([, e]) => places(e)));
  const isHeld = (e: Record_) => places(e).every((it) => held.has(it));
  const carriesOn = (e: Record_) => text(e, "withoutGrid") === "carries-on";
  const alone = on.filter(([, e]) => isSet(e) && carriesOn(e) && !isHeld(e));
  for (const [id, e] of on) if (!isSet(e) || (carriesOn(e) && !isHeld(e))) out.set(id, "holding");
  for (const [id, e] of on) if (isSet(e) && carriesOn(e) && isHeld(e)) out.set(id, "following");
  for (const [, e] of alone) for (const it of places(e)) held.add(it);
  for (const [id, e] of on) if (isSet(e) && !carriesOn(e) && isHeld(e)) out.set(id, "following");
  return out;
}

/** Groups of what drives a drawing, each of elements that keep step; a contact goes by its own circuit's name. */
export function driversIn(plain: Plain): string[][] {
  const group = phaseGroups(plain);
  const runs = runsOf(plain);
  const places = (e: Record_) => phasesOf(e).map((it) => group.get(at(text(e, "at"), it)));
  const on = Object.entries(plain.elements).filter(([id]) => runs.has(id));
  const system = on.filter(([, e]) => e.kind === "source" && yes(e, "inStep", true));
  const fed = new Set(system.flatMap(([, e]) => places(e)));
  const machines = on.filter(([, e]) => e.kind === "generator");
  const inStep = machines.filter(([, e]) => places(e).some((it) => fed.has(it)));
  const utility = [...system, ...inStep].map(([id]) => id);
  const alone = on.filter(([id]) => !utility.includes(id)).map(([id]) => [id]);
  const beside = Object.entries(plain.elements)
    .filter(([, e]) => e.kind === "nearby" && yes(e, "on", true))
    .map(([id]) => [id, `contact ${id}`]);
  return [...(utility.length === 0 ? [] : [utility]), ...alone, ...beside];
}
