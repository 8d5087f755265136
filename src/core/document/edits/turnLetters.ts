import { deviceOf } from "../../devices";
import { isObject, type Json, type JsonObject } from "../../terms";
import type { SavedElement } from "../types";
import { withKeys } from "./change";
import { type LetterTurn, turnedLetters } from "./letterTurn";

/** The turn by which all of some letters come onto letters that are there; nothing where none does. */
export const turnOnto = (letters: string, there: string): LetterTurn | undefined =>
  ([0, 1, 2] as const).find((by) => [...turnedLetters(letters, by)].every((it) => there.includes(it)));

/** An element as saved with its phases named onward. Legs and neutrals keep their names. */
export function withTurnedLetters(element: SavedElement, by: LetterTurn): SavedElement {
  if (by === 0) return element;
  const { fields } = deviceOf(element.kind);
  const changes = Object.entries(fields).flatMap(([key, { input }]) => {
    const value = element[key];
    return value === undefined ? [] : [[key, turnedValue(key, input.as, value, element, by)] as const];
  });
  return withKeys(element, Object.fromEntries(changes) as JsonObject);
}

function turnedValue(key: string, as: string, value: Json, element: SavedElement, by: LetterTurn): Json {
  if ((as === "letters" || as === "phases") && typeof value === "string") return turnedLetters(value, by);
  if (as === "taps" && isObject(value))
    return Object.fromEntries(Object.entries(value).map(([letter, tap]) => [turnedLetters(letter, by), tap]));
  if (as === "matrix" && Array.isArray(value))
    return turnedMatrix(value, String(element["phases"] ?? ""), by);
  if (as === "equal" && isObject(value))
    return Object.fromEntries(
      Object.entries(value).map(([part, rows]) => [
        part,
        part.startsWith("ohms")
          ? turnedMatrix(rows as readonly Json[], String(element["phases"] ?? ""), by)
          : turnedOrder(rows as readonly Json[], String(element["phases"] ?? ""), by).map(
              (row) => (rows as readonly Json[])[row]!,
            ),
      ]),
    );
  if (key === "toPhases" && typeof value === "string")
    return turnedOrder([...value], String(element["phases"] ?? ""), by)
      .map((at) => turnedLetters(value[at] ?? "", by))
      .join("");
  if (key === "midTap" && typeof value === "string")
    return value.replace(/[abc]/g, (it) => turnedLetters(it.toUpperCase(), by).toLowerCase());
  return value;
}

/** Rows and columns stand in the order of the phases, then the neutral. */
function turnedMatrix(rows: readonly Json[], phases: string, by: LetterTurn): Json {
  const order = turnedOrder(rows, phases, by);
  return order.map((row) => order.map((column) => (rows[row] as readonly Json[])[column]!));
}

function turnedOrder(rows: readonly Json[], phases: string, by: LetterTurn): number[] {
  const order = [...turnedLetters(phases, by)].map((it) =>
    [...phases].findIndex((was) => turnedLetters(was, by) === it),
  );
  for (let rest = order.length; rest < rows.length; rest++) order.push(rest);
  return order;
}
