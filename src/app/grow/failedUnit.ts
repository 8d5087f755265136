import { type AnyTransformer, type Edit, edits, type JsonObject } from "../../core";

/** The letters of whose units a bank can go on without: grounded wye to delta is then open wye, open delta. */
export const unitsToSpare = ({ connection, phases }: AnyTransformer): string =>
  connection === "Yg-D" ? phases : "";

/** A bank that goes on with two of its three units. */
export const withoutUnit = (id: string, bank: AnyTransformer, letter: string): Edit =>
  edits.setElementKeys(id, {
    connection: "openY-openD",
    phases: bank.phases.replace(letter, ""),
    kva: Math.round((bank.kva * 2000) / 3) / 1000,
  } satisfies JsonObject);
