import type { CircuitElement } from "./kinds";

/** What the open standard for models of feeders (IEC 61970-301, IEC 61968-11) calls a thing that joins two points. */
export interface StandardSwitch {
  readonly className:
    | "Breaker"
    | "Recloser"
    | "LoadBreakSwitch"
    | "Disconnector"
    | "Sectionaliser"
    | "Switch"
    | "Fuse"
    | "Jumper";
  /** keys of ours that the class or its attributes say */
  readonly carries: readonly string[];
  readonly breakingAmps?: number | undefined;
  readonly ratedAmps?: number | undefined;
  /** meters that stand on the service here */
  readonly meters?: number;
  /** whether the standard has a class for just this */
  readonly isItself: boolean;
}

/** The class of the standard for what joins two points by itself, or nothing where there is none. */
export function standardSwitchOf(element: CircuitElement): StandardSwitch | undefined {
  switch (element.kind) {
    case "breaker":
    case "recloser":
      return {
        className: element.kind === "breaker" ? "Breaker" : "Recloser",
        carries: ["gang", "interruptingAmps"],
        breakingAmps: element.interruptingAmps,
        isItself: true,
      };
    case "sectionalizer":
      return { className: "Sectionaliser", carries: [], isItself: true };
    case "disconnect":
      if (element.gang && element.loadBreakAmps > 0)
        return {
          className: "LoadBreakSwitch",
          carries: ["gang", "loadBreakAmps"],
          breakingAmps: element.loadBreakAmps,
          isItself: true,
        };
      return {
        className: element.visibleGap ? "Disconnector" : "Switch",
        carries: ["visibleGap"],
        isItself: true,
      };
    case "cutout":
      return {
        className: "Fuse",
        carries: [
          "blown",
          "removed",
          ...(typeof element.fuse === "object" && element.fuse.type === "T" ? [] : ["fuse"]),
        ],
        ratedAmps: typeof element.fuse === "object" ? element.fuse.amps : undefined,
        isItself: true,
      };
    case "lead":
      return { className: "Jumper", carries: ["cut"], isItself: true };
    case "clamp":
      return { className: "Jumper", carries: [], isItself: false };
    case "meter":
      return { className: "Switch", carries: ["count"], meters: element.count, isItself: true };
    case "main":
      return { className: "LoadBreakSwitch", carries: ["gang"], isItself: false };
    case "elbow":
      return { className: "Switch", carries: [], isItself: false };
    default:
      return undefined;
  }
}
