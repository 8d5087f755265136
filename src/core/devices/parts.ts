import type { Complex, Letter } from "../terms";

/** The end of an element that stands at a point. */
export type End = "from" | "to" | "alt" | "at";

/** Where a part touches the circuit: a conductor of one of the element's ends, a node inside the element, or earth. */
export type Node = `${End}/${Letter}` | `inner/${string}` | "earth";

/**
 * An ideal connection that is closed or open: a blade, a clamp, a neutral joined through.
 * With `ratio` it is an ideal step: `to` stands at `ratio` times the volts of `from`, both against `common`.
 */
export interface Join {
  readonly part: "join";
  readonly from: Node;
  readonly to: Node;
  readonly letter: Letter;
  readonly closed: boolean;
  readonly ratio?: number;
  readonly common?: Node;
}

/** A length of line or cable: coupled conductors with impedance and capacitance, from `from` to `to`. */
export interface Stretch {
  readonly part: "stretch";
  readonly letters: readonly Letter[];
  /** what they go on as at `to`, where that is another */
  readonly lettersBeyond?: readonly Letter[];
  readonly parted: readonly Letter[];
  readonly lengthM: number;
  readonly construction: "overhead" | "cable" | "secondary";
  readonly conductor: string;
  readonly neutralConductor: string;
  readonly zOhmsPerKm?: readonly (readonly Complex[])[] | undefined;
  readonly bMicroSPerKm?: readonly (readonly number[])[] | undefined;
  /** conductance to earth of the rods along the neutral, at each end: half of them all [S] */
  readonly rodSiemens: number;
}

/** One winding: rated volts, and its own share of the leakage in ohms on those volts. */
export interface Winding {
  readonly plus: Node;
  readonly minus: Node;
  readonly volts: number;
  readonly ohms: Complex;
}

/** One single-phase transformer: every winding on one core. */
export interface Unit {
  readonly part: "unit";
  readonly letter: Letter;
  readonly primary: readonly Winding[];
  /** of all sides beyond the primary, side by side */
  readonly secondary: readonly Winding[];
  /** nominal volts, line to line (leg to leg on a split secondary), of what each side stands on */
  readonly lineToLineVolts: { readonly primary: number; readonly lows: readonly number[] };
  /** exciting volt-amperes at rated volts, inductive */
  readonly excitingVa: number;
  /** losses of the core at rated volts [W] */
  readonly coreWatts: number;
}

/**
 * What a branch between two nodes is; loads, capacitors and what a star point stands on couple conductors, grounds and faults
 * join them, and what a machine at a set output feeds in joins nothing.
 */
export type BranchRole = "load" | "capacitor" | "star" | "output" | "ground" | "fault";

/** An impedance between two nodes; for a load and a set output, the power it draws at its rated volts. */
export interface Branch {
  readonly part: "branch";
  readonly role: BranchRole;
  readonly from: Node;
  readonly to: Node;
  /** the conductor whose current into the element this branch carries */
  readonly letter: Letter;
  /** admittance at rated volts */
  readonly siemens: Complex;
  readonly demand?: { readonly va: Complex; readonly volts: number; readonly model: "Z" | "I" | "PQ" };
}

/** Who drives it: the utility, a customer's or a crew's machine, or another circuit that touches. */
export type EmfRole = "utility" | "generator" | "contact";

/** Volts behind impedance: a source, a generator, or a live circuit that touches. `star` is where the legs meet. */
export interface Emf {
  readonly part: "emf";
  readonly role: EmfRole;
  readonly on: boolean;
  readonly legs: readonly { readonly node: Node; readonly letter: Letter; readonly volts: Complex }[];
  readonly star: Node;
  /** whether it shares its angle with the utility's system: always, where closed metal or a transformer joins a phase of both, or never */
  readonly inStep: "system" | "when-joined" | "never";
  readonly ohms: readonly (readonly Complex[])[];
  /** a machine at a set output: it follows whatever holds the volts, and without that does this; its branches of role `output` are what it feeds in */
  readonly withoutGrid?: "stops" | "carries-on";
  /** the same with every load off, where loads stand behind it */
  readonly unloaded?: { readonly volts: readonly Complex[]; readonly ohms: Emf["ohms"] };
}

/** A live circuit along the element's span, which couples into it without touching. */
export interface Alongside {
  readonly part: "alongside";
  readonly relation: "underbuild" | "parallel";
  readonly volts: number;
  readonly amps: number;
  readonly spacingM: number;
  /** over which it runs beside the span; the whole span where the file does not say */
  readonly lengthM: number | undefined;
}

/** What a device is to the circuit: each device gives a list of these. */
export type Part = Join | Stretch | Unit | Branch | Emf | Alongside;

/** What a device may know of where it stands. It never sees the drawing. */
export interface DevicePlace {
  readonly frequencyHz: number;
  hasNeutral(end: End): boolean;
  /** line to line; leg to leg on a split secondary [V] */
  nominalVolts(end: End): number;
  /** which conductors of the span at a `nearby` are parted, and its letters; empty elsewhere */
  readonly span?: {
    readonly letters: readonly Letter[];
    /** what they are at its far end */
    readonly lettersBeyond: readonly Letter[];
    readonly parted: readonly Letter[];
  };
}
