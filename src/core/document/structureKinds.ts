import type { StructureRecord } from "./types";

/** What is asked of a place by what stands there: a structure, or a point that stands by itself. */
interface OfKind {
  readonly kind: string;
}

/** Whether it is a pole. */
export const isPole = ({ kind }: OfKind): boolean => kind === "pole";
/** Whether it is a station, with a bus. */
export const isStation = ({ kind }: OfKind): boolean => kind === "station";
/** Whether it is a house, or whatever else has a service. */
export const isHouse = ({ kind }: OfKind): boolean => kind === "service";
/** Whether it is reached from the ground: a pad, or a vault below it. */
export const isPadLike = ({ kind }: OfKind): boolean => kind === "pad" || kind === "vault";

/** The key of a kind as a file has it: a pole is what stands where nothing is said. */
export const kindKey = <Kind extends StructureRecord["kind"]>(kind: Kind): { readonly kind?: Kind } =>
  kind === "pole" ? {} : { kind };
