import { arrester } from "./arrester";
import { capacitor } from "./capacitor";
import { clamp } from "./clamp";
import { cutout } from "./cutout";
import type { Device, ElementOf } from "./define";
import { disconnect } from "./disconnect";
import { elbow } from "./elbow";
import { fault } from "./fault";
import { generator } from "./generator";
import { ground } from "./ground";
import { lead } from "./lead";
import { load } from "./load";
import { main, meter } from "./meter";
import { nearby } from "./nearby";
import { breaker, recloser } from "./recloser";
import { regulator } from "./regulator";
import { source } from "./source";
import { span } from "./span";
import { transfer } from "./transfer";
import { transformer } from "./transformer";

/** Every device kind. A new one is its file and a line here. */
export const DEVICES = {
  source,
  span,
  lead,
  clamp,
  cutout,
  disconnect,
  recloser,
  breaker,
  elbow,
  meter,
  main,
  transfer,
  transformer,
  regulator,
  load,
  generator,
  capacitor,
  arrester,
  ground,
  fault,
  nearby,
} as const;

export type DeviceKind = keyof typeof DEVICES;
/** A complete element of any kind, every default filled in. Narrow it by `kind`. */
export type CircuitElement = { [Kind in DeviceKind]: ElementOf<(typeof DEVICES)[Kind]> }[DeviceKind];
export type ElementOfKind<Kind extends DeviceKind> = Extract<CircuitElement, { kind: Kind }>;

export const isDeviceKind = (kind: unknown): kind is DeviceKind =>
  typeof kind === "string" && Object.hasOwn(DEVICES, kind);

/** The device of a kind, as every kind answers: what holds for all of them is asked through this. */
export type AnyDevice = Omit<
  Device,
  "opening" | "check" | "brings" | "needs" | "parts" | "upsets" | "breaks" | "symbol"
> & {
  [
    Question in "check" | "brings" | "needs" | "parts" | "upsets" | "breaks" | "symbol"
  ]: Device[Question] extends infer Asked ? Asked : never;
} & Pick<Device, "opening">;

export const deviceOf = (kind: DeviceKind): AnyDevice => DEVICES[kind] as unknown as AnyDevice;

/** Phases of a thing that are open in any way. */
export function openPhasesOf(element: CircuitElement): string {
  const opening = deviceOf(element.kind).opening;
  if (opening !== undefined) return opening.openPhases(element as never);
  const { cut, parted, open } = element as { cut?: string; parted?: string; open?: string };
  return cut ?? parted ?? open ?? "";
}

export type { AnyDevice as DeviceAnswers };
export * from "./define";
export type { Complete, Field, FieldContext, FieldProblem, Fields, Fuse, Input, Reading } from "./fields";
export * as field from "./fields";
export * from "./parts";
export * from "./symbol";
export { isSplit, normalAngleDegrees, voltsToNeutral } from "./shared";
export { GROUNDING_CABLES } from "./ground";
export { secondaryLetters } from "./transformer";
export { gangIsWhole } from "./disconnect";
