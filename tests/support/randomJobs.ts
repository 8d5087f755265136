import type { StillhotDocument } from "../../src/core/document";
import { draw } from "./jobNotation";
import { type Draw, drawFrom } from "./randomSystems";

/**
 * Random jobs on lines as crews have them, each with its work to do: a main line with a recloser, a regulator under a
 * bypass and a switch in its middle, taps with customers and their machines, banks of every connection, secondaries in
 * parallel, capacitors, a tie to another station, and something broken, blown or worn. Seeded, so that one can be run again.
 */
export function randomJob(seed: number): StillhotDocument {
  return draw(new Line(drawFrom(seed)).text());
}

const THREE_PHASE_BANKS = [
  "Yg-Yg kva=75 primaryKv=12.47 secondaryV=480",
  "Y-D kva=75 primaryKv=12.47 secondaryV=480",
  "D-Yg kva=75 primaryKv=12.47 secondaryV=480",
  "D-D kva=75 primaryKv=12.47 secondaryV=480",
] as const;

class Line {
  private readonly lines: string[] = [];
  private readonly spots: { at: string; phases: string; does?: string }[] = [];
  private count = 0;

  constructor(private readonly draw: Draw) {}

  text(): string {
    const { draw: it } = this;
    let here = this.span(this.station("s1"), "ABC", 1500);
    if (it.chance(0.4)) here = this.opener("recloser", here, "ABC", "visibleGap=true");
    if (it.chance(0.3)) here = this.regulator(here);
    const poles = it.between(2, 4);
    for (let pole = 1; pole <= poles; pole++) {
      this.hang(here);
      if (it.chance(0.3)) here = this.opener("disconnect", here, "ABC", "gang=true loadBreakAmps=400");
      here = this.span(here, "ABC", 120);
    }
    this.hang(here);
    if (it.chance(0.5)) this.tie(here);
    return [...this.lines, ...this.work()].join("\n");
  }

  private hang(at: string): void {
    const { draw: it } = this;
    for (let n = it.between(0, 2); n > 0; n--)
      it.oneOf([
        () => this.tap(at),
        () => this.tap(at),
        () => this.bank(at),
        () => this.openDelta(at),
        () => this.capacitor(at),
        () => this.parallel(at),
      ])();
  }

  /** A sideline of one phase: now and then behind a clamp, with its customers, perhaps with a blown link and what blew it. */
  private tap(at: string): void {
    const { draw: it } = this;
    const phase = it.oneOf(["A", "B", "C"]);
    const from = it.chance(0.3) ? this.worn("clamp", this.id("k"), at, phase) : at;
    const isBlown = it.chance(0.4);
    let here = this.worn(
      "cutout",
      this.id("c"),
      from,
      phase,
      `fuse=K${it.oneOf([15, 25])}${isBlown ? ` blown=${phase}` : ""}`,
    );
    const spans = it.between(1, 3);
    const broken = isBlown && it.chance(0.7) ? it.between(1, spans) : 0;
    for (let n = 1; n <= spans; n++) {
      here = n === broken ? this.brokenSpan(here, phase) : this.span(here, phase, 80);
      if (it.chance(0.7)) this.house(here, phase);
    }
  }

  /** A span that has parted, or with a fault at its end: the work, most of the time. */
  private brokenSpan(at: string, phase: string): string {
    const [span, to] = [this.id("sp"), this.point()];
    const hasParted = this.draw.chance(0.5);
    this.add(`${span} span ${at}-${to} ${phase} lengthM=80${hasParted ? ` parted=${phase}` : ""}`);
    const does = hasParted ? span : this.id("f");
    if (!hasParted) this.add(`${does} fault ${to} ${phase} to=neutral`);
    this.spots.push(...Array.from({ length: 10 }, () => ({ at: to, phases: phase, does })));
    return to;
  }

  private house(at: string, phase: string): void {
    const { draw: it } = this;
    const bushings = this.transformer(at, phase);
    const service = this.point("kind=service");
    const [meter, load] = [this.id("m"), this.id("ld")];
    this.add(`${meter} meter ${bushings}-${service} 12 count=${it.between(1, 3)}`);
    this.add(
      `${load} load ${service} 12 connection=delta kw=${it.between(1, 8)} customers=${it.between(1, 3)}`,
    );
    if (it.chance(0.3))
      this.add(
        `${this.id("g")} generator ${service} 12 kva=7 volts=240${it.chance(0.3) ? " interface=inverter" : ""}`,
      );
  }

  private transformer(at: string, phase: string): string {
    const [top, bushings] = [this.point(), this.point()];
    this.add(`${this.id("x")} cutout ${at}-${top} ${phase} fuse=K5`);
    const id = this.id("t");
    this.add(
      `${id} transformer ${top}-${bushings} ${phase} connection=single kva=25 primaryKv=7.2 secondaryV=240`,
    );
    this.spots.push({ at: top, phases: phase, does: id });
    return bushings;
  }

  /** Two transformers on one secondary. */
  private parallel(at: string): void {
    const phase = this.draw.oneOf(["A", "B", "C"]);
    const [one, other] = [this.transformer(at, phase), this.transformer(at, phase)];
    this.add(`${this.id("sp")} span ${one}-${other} 12 construction=secondary lengthM=40`);
    const service = this.point("kind=service");
    this.add(`${this.id("m")} meter ${other}-${service} 12 count=4`);
    this.add(`${this.id("ld")} load ${service} 12 connection=delta kw=12 customers=4`);
  }

  private bank(at: string): void {
    const { draw: it } = this;
    const [top, low, service] = [this.point(), this.point(), this.point("kind=service")];
    const blown = it.chance(0.15) ? " blown=B" : "";
    this.add(`${this.id("c")} cutout ${at}-${top} ABC fuse=K10${blown}`);
    const bank = it.oneOf(THREE_PHASE_BANKS);
    const id = this.id("t");
    this.add(`${id} transformer ${top}-${low} ABC connection=${bank}`);
    const neutral = bank.startsWith("Yg-Yg") || bank.startsWith("D-Yg") ? "" : " neutral=false";
    this.add(`${this.id("mb")} main ${low}-${service} ABC${neutral}`);
    this.add(`${this.id("ld")} load ${service} ABC connection=delta kw=40 customers=1`);
    if (it.chance(0.25)) this.add(`${this.id("g")} generator ${service} ABC kva=60 volts=480`);
    this.spots.push({ at: top, phases: "ABC", does: id });
  }

  private openDelta(at: string): void {
    const [top, low, service] = [this.point(), this.point(), this.point("kind=service")];
    this.add(`${this.id("c")} cutout ${at}-${top} AB fuse=K10`);
    this.add(
      `${this.id("t")} transformer ${top}-${low} AB connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240 midTap=ab`,
    );
    this.add(`${this.id("mb")} main ${low}-${service} ABC`);
    this.add(`${this.id("ld")} load ${service} ABC connection=delta kw=15 customers=1`);
    this.spots.push({ at: top, phases: "AB" });
  }

  private capacitor(at: string): void {
    const top = this.point();
    this.add(`${this.id("c")} cutout ${at}-${top} ABC fuse=K15 loadBreak=hooks`);
    this.add(`${this.id("cap")} capacitor ${top} ABC kvar=150 kvLL=12.47 connection=wye`);
  }

  private regulator(at: string): string {
    const [inside, out, beyond] = [this.point(), this.point(), this.point()];
    const id = this.id("r");
    this.add(`${this.id("d")} disconnect ${at}-${inside} ABC`);
    this.add(`${id} regulator ${inside}-${out} ABC`);
    this.add(`${this.id("d")} disconnect ${out}-${beyond} ABC`);
    this.add(`${this.id("by")} disconnect ${at}-${beyond} ABC open=ABC normallyOpen=true`);
    this.spots.push({ at: inside, phases: "ABC", does: id });
    return beyond;
  }

  private tie(at: string): void {
    const far = this.opener(
      "disconnect",
      at,
      "ABC",
      "gang=true open=ABC normallyOpen=true loadBreakAmps=400",
    );
    const [span, station] = [this.id("sp"), this.station("s2")];
    this.add(`${span} span ${far}-${station} ABC lengthM=2500`);
    this.spots.push({ at: far, phases: "ABC" });
  }

  /** A source behind a switch that is no part of any job; where the line begins. */
  private station(id: string): string {
    const [bus, out] = [this.point("kind=station"), this.point()];
    this.add(`${id} source ${bus} ABC kvLL=12.47`);
    this.add(`${this.id("d")} disconnect ${bus}-${out} ABC gang=true loadBreakAmps=600`);
    return out;
  }

  /** The work: something broken is mended, something worn replaced, or hands come to a conductor. */
  private work(): string[] {
    const { draw: it } = this;
    const spot = it.oneOf(this.spots);
    return [`w1 work ${spot.at} ${spot.phases}${spot.does === undefined ? "" : ` does=${spot.does}`}`];
  }

  private span(from: string, phases: string, lengthM: number): string {
    const [id, to] = [this.id("sp"), this.point()];
    this.add(`${id} span ${from}-${to} ${phases} lengthM=${lengthM}`);
    this.spots.push({ at: to, phases });
    return to;
  }

  private worn(kind: string, id: string, at: string, phases: string, keys = ""): string {
    const beyond = this.point();
    this.add(`${id} ${kind} ${at}-${beyond} ${phases} ${keys}`);
    this.spots.push({ at: beyond, phases, does: id });
    return beyond;
  }

  private opener(kind: string, at: string, phases: string, keys: string): string {
    return this.worn(kind, this.id("d"), at, phases, keys);
  }

  private point(keys = ""): string {
    const id = this.id("p");
    if (keys !== "") this.add(`${id} point ${keys}`);
    return id;
  }

  private id(prefix: string): string {
    return `${prefix}${++this.count}`;
  }

  private add(line: string): void {
    this.lines.push(line);
  }
}
