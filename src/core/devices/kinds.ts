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
import { sectionalizer } from "./sectionalizer";
import { source } from "./source";
import { span } from "./span";
import { threeWinding } from "./threeWinding";
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
  sectionalizer,
  elbow,
  meter,
  main,
  transfer,
  transformer,
  threeWinding,
  regulator,
  load,
  generator,
  capacitor,
  arrester,
  ground,
  fault,
  nearby,
} as const;

/** The name of a kind, as `kind` of an element has it. */
export type DeviceKind = keyof typeof DEVICES;
/** A complete element of any kind, every default filled in. Narrow it by `kind`. */
export type CircuitElement = { [Kind in DeviceKind]: ElementOf<(typeof DEVICES)[Kind]> }[DeviceKind];

/** An element of one kind, its defaults filled in. */
export type ElementOfKind<Kind extends DeviceKind> = Extract<CircuitElement, { kind: Kind }>;

/** Whether something of a file names a kind that there is. */
export const isDeviceKind = (kind: unknown): kind is DeviceKind =>
  typeof kind === "string" && Object.hasOwn(DEVICES, kind);

/** The device of a kind, as every kind is declared. What is asked of one thing is asked through `faces.ts`. */
export const deviceOf = (kind: DeviceKind): Device => DEVICES[kind];
