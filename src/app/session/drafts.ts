const OF = "stillhot-draft-";

/** Words that are being typed and stand in no drawing yet: a reload of this window, a change of tab or a closed sheet leaves them. */
export function keepDraft(of: string, words: string): void {
  try {
    if (words === "") sessionStorage.removeItem(OF + of);
    else sessionStorage.setItem(OF + of, words);
  } catch {
    // A browser that keeps nothing keeps them as long as they are shown.
  }
}

/** What was kept of them; nothing where there is none. */
export function draftOf(of: string): string {
  try {
    return sessionStorage.getItem(OF + of) ?? "";
  } catch {
    return "";
  }
}
