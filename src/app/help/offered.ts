const KEY = "stillhot-tour";

/** Whether this device was ever offered the tour. */
export function isNewHere(): boolean {
  try {
    return localStorage.getItem(KEY) === null;
  } catch {
    return false;
  }
}

/** Notes that the lesson was offered on this device. */
export function wasOffered() {
  try {
    localStorage.setItem(KEY, "offered");
  } catch {
    // Then it is offered once more, which does no harm.
  }
}
