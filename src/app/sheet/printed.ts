const KEY = "stillhot-printed";
/** Older ones are forgotten: paper of that age is not in anybody's hand. */
const MOST = 50;

/** What was printed last of a drawing. */
export interface Printed {
  readonly fingerprint: string;
  readonly at: number;
}

function all(): Readonly<Record<string, Printed>> {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return typeof found === "object" && found !== null ? (found as Record<string, Printed>) : {};
  } catch {
    return {};
  }
}

/** Which state of a drawing was printed last, and when; nothing where none was. */
export const printed = (drawing: string): Printed | undefined =>
  Object.hasOwn(all(), drawing) ? all()[drawing] : undefined;

/** Keeps on this device that a drawing went onto paper as it is now, so that stale paper is noticed. */
export function rememberPrinted(drawing: string, fingerprint: string): void {
  const others = Object.entries(all())
    .filter(([id]) => id !== drawing)
    .sort(([, a], [, b]) => b.at - a.at)
    .slice(0, MOST - 1);
  try {
    localStorage.setItem(
      KEY,
      JSON.stringify(Object.fromEntries([[drawing, { fingerprint, at: Date.now() }], ...others])),
    );
  } catch {
    // A device that keeps nothing cannot warn about paper either; the fingerprint on it still can be compared.
  }
}
