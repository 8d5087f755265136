import {
  asDrawn,
  fingerprintBytes,
  fingerprintLetters,
  fingerprintOf,
  type StillhotDocument,
} from "../../core";

/** Eight letters that are the same wherever this very drawing is shown, to be compared by voice. */
export async function fingerprint(document: StillhotDocument): Promise<string> {
  // Off the main thread where the browser has it; a page that is not served securely has not.
  if (globalThis.crypto?.subtle === undefined) return fingerprintLetters(fingerprintOf(document));
  const bytes = new TextEncoder().encode(fingerprintBytes(asDrawn(document)));
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return fingerprintLetters(Array.from(hash, (it) => it.toString(16).padStart(2, "0")).join(""));
}
