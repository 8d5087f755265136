import { say, type StillhotDocument } from "../../core";
import type { Session } from "../session/session.svelte";
import { ConflictError, keep, lastDrawing, type StoredDrawing } from "./store";

const AFTER_MS = 400;

export type SaveState = "untouched" | "saving" | "saved" | "failed";

/** Keeps the drawing on this device, shortly after each edit and at once when the page is put away. */
export class Autosave {
  state = $state<SaveState>("untouched");
  reason = $state("");
  /** name of the file that holds this very document, if one does */
  fileName = $state<string | undefined>(undefined);
  #id = newId();
  #rev = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #kept: StillhotDocument;
  #busy: Promise<void> | undefined;
  readonly #session: Session;

  constructor(session: Session) {
    this.#session = session;
    this.#kept = session.document;
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") void this.now();
    });
    window.addEventListener("pagehide", () => void this.now());
  }

  /** Called with every new document. */
  touched(document: StillhotDocument) {
    if (document === this.#kept) return;
    this.state = "saving";
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.now(), AFTER_MS);
  }

  /** Another drawing is shown, with nothing of it kept yet. */
  startAfresh(fileName?: string) {
    this.#id = newId();
    this.#rev = 0;
    this.#kept = this.#session.document;
    this.fileName = fileName;
    this.state = "untouched";
  }

  async now(): Promise<void> {
    clearTimeout(this.#timer);
    while (this.#busy !== undefined) await this.#busy;
    if (this.#session.document === this.#kept) return;
    this.#busy = this.#write();
    await this.#busy;
    this.#busy = undefined;
  }

  async #write() {
    const { document, history } = this.#session;
    const record = {
      id: this.#id,
      title: document.title,
      savedAt: Date.now(),
      document,
      history,
    };
    try {
      this.#rev = await keep(record, this.#rev);
    } catch (error) {
      if (!(error instanceof ConflictError)) return this.#fail(error);
      // Another window wrote this drawing: both are kept, this one under a name of its own.
      this.#id = newId();
      try {
        this.#rev = await keep({ ...record, id: this.#id }, 0);
        this.#session.say(say("app.keptBoth"));
      } catch (second) {
        return this.#fail(second);
      }
    }
    this.#kept = document;
    if (this.#session.document === document) this.state = "saved";
    if (this.#rev === 1) void navigator.storage?.persist?.();
  }

  #fail(error: unknown) {
    this.state = "failed";
    this.reason = error instanceof Error ? error.message : String(error);
  }

  /** The drawing that was worked on last is shown again, with its history. */
  async recover(): Promise<boolean> {
    const stored = await lastDrawing().catch(() => undefined);
    if (stored === undefined) return false;
    this.resume(stored);
    return true;
  }

  resume(stored: StoredDrawing) {
    this.#session.open(stored.document, stored.history);
    this.#id = stored.id;
    this.#rev = stored.rev;
    this.#kept = stored.document;
    this.fileName = undefined;
    this.state = "saved";
  }
}

const newId = (): string => crypto.randomUUID();
