import { t } from "./words";

/** A number as it stands in a field: every figure of it, with the point or comma of the language. */
export const typed = (value: number): string => String(value).replace(".", t("number.point"));

/** The number that a person typed, with a point or a comma; nothing where it is none. */
export function numberFrom(text: string): number | undefined {
  const digits = text.replaceAll(/\s/g, "").replace(",", ".");
  const number = Number(digits);
  return digits === "" || !Number.isFinite(number) ? undefined : number;
}
