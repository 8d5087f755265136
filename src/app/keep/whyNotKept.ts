import type { Message } from "../../core";
import { say } from "../words/catalogue";

/** Whether the device has no room left. */
export const isFull = (error: unknown): boolean =>
  error instanceof DOMException && (error.name === "QuotaExceededError" || error.code === 22);

/** Whether the device does not answer at all. */
export const isSilence = (error: unknown): boolean =>
  error instanceof DOMException && error.name === "TimeoutError";

/** Why something was not kept on this device, and what can be done about it. */
export function whyNotKept(error: unknown): Message {
  if (isFull(error)) return say("keep.full");
  if (isSilence(error)) return say("keep.silent");
  if (error instanceof DOMException) {
    if (/^(InvalidState|Security|NotAllowed)Error$/.test(error.name)) return say("keep.noStorage");
    if (error.name === "VersionError") return say("keep.newerKept");
    return say("keep.notTaken");
  }
  if (typeof indexedDB === "undefined") return say("keep.noStorage");
  return say("keep.otherFailure", { why: error instanceof Error ? error.message : String(error) });
}
