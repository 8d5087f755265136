import { edits, type StillhotDocument } from "../../core";
import { drawingHere, rememberHere } from "./here";
import { bringIn, isOnShelf, type LeftOver, putAway } from "./putAway";
import { readKept } from "./readKept";
import { Seat } from "./seat.svelte";
import { followTyping, takeTyped } from "../session/typed";
import { keepVersion, type VersionReason } from "./versions";
import { isFull, isSilence, whyNotKept } from "./whyNotKept";
import type { Session } from "../session/session.svelte";
import { fetched } from "../words/later";
import { clockTime, t, told } from "../words/words";
import { allDrawings, ConflictError, drawing, keep, lastDrawing, type StoredDrawing } from "./store";
import { say } from "../words/catalogue";
import { readied } from "../worker/readied";

/** Counted from the first edit that is not kept yet, so that a hand that never rests is kept up with. */
const AFTER_MS = 300;
/** A device that had no room may have some again. */
const AGAIN_MS = 10_000;
/** Work that exists on this device alone, for so long, is worth a file. */
const OFFER_FILE_MS = 10 * 60_000;

const trash = () => fetched(() => import("./trash"));

/** How the drawing stands with what is kept of it on the device. */
export type SaveState = "untouched" | "saving" | "saved" | "failed";

/** A drawing as it is written down, with the number of the edit that made it so. */
type KeptEdit = Omit<StoredDrawing, "rev"> & { readonly edit: number };

/** Keeps the drawing on this device, shortly after each edit and at once when the page is put away. */
export class Autosave {
  state = $state<SaveState>("untouched");
  reason = $state("");
  /** name of the file that holds this drawing, if one does */
  fileName = $state<string | undefined>(undefined);
  /** when it was written to that file */
  fileAt = $state(0);
  /** whether the device promised not to clear its storage by itself; nothing until it was asked */
  persists = $state<boolean | undefined>(undefined);
  /** whether the drawing that was here last could not be read: another one is shown, and it stays as it is */
  leftUnread = false;
  /** whether the device did not answer when it was asked for that drawing */
  isUnanswered = false;
  #id = $state(newId());
  #rev = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #kept: StillhotDocument | undefined;
  #busy: Promise<void> | undefined;
  #unfiledSince = 0;
  /** the number of what was put away for a page that goes; nothing where the shelf has it */
  #putAwayEdit: number | undefined;
  readonly #page = newId();
  /** what was written down last, and its number: of two documents of this page the later one has the higher */
  #edit: { readonly document: StillhotDocument | undefined; readonly number: number } = {
    document: undefined,
    number: 0,
  };
  /** the drawing as it was last written to a file */
  #filed = $state.raw<StillhotDocument | undefined>(undefined);
  /** what was kept last before something large: it is not kept twice */
  #lastBefore: StillhotDocument | undefined;
  readonly #broughtIn: Promise<LeftOver[]>;
  readonly seat: Seat;
  readonly #session: Session;

  constructor(session: Session) {
    followTyping();
    this.#session = session;
    this.#kept = session.document;
    session.keepBefore = (why) => void this.#keepBefore(why).catch((error: unknown) => this.#unkept(error));
    session.keepNow = () => void this.now();
    session.keptAs = () => this.#id;
    session.keepAsIs = async () => {
      if (this.#rev === 0 && !this.isReadOnly) await this.keepAsIs();
    };
    this.seat = new Seat({
      onTurn: () => void this.#takeTurn(),
      onAsked: () => this.now(),
      onWritten: (rev) => {
        if (rev > this.#rev) void this.#readAgain();
      },
    });
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") return;
      takeTyped();
      void this.now();
    });
    window.addEventListener("pagehide", () => {
      takeTyped();
      this.#putAway();
      void this.now();
    });
    window.addEventListener("beforeunload", (event) => {
      if (this.isUnsaved) event.preventDefault();
    });
    this.#broughtIn = broughtIn();
    void trash()
      .then(({ sweep }) => sweep())
      .catch(() => undefined);
  }

  /** Which drawing of this device it is. */
  get id(): string {
    return this.#id;
  }

  get isReadOnly(): boolean {
    return this.seat.state === "elsewhere";
  }

  /** Whether work stands here that the device did not take: leaving it would be the end of it. */
  get isUnsaved(): boolean {
    return this.state === "failed" && this.#session.document !== this.#kept && !this.isFiled;
  }

  /** Called with every new document. */
  touched(document: StillhotDocument) {
    if (document === this.#kept || this.isReadOnly) return;
    if (this.state !== "failed") this.state = "saving";
    this.#timer ??= setTimeout(() => void this.now(), AFTER_MS);
  }

  /** Another drawing is shown, with nothing of it kept yet. */
  startAfresh(fileName?: string) {
    this.#id = newId();
    this.#rev = 0;
    this.#kept = this.#session.document;
    this.#unfiledSince = 0;
    this.fileName = fileName;
    this.fileAt = Date.now();
    this.state = "untouched";
    this.#sit();
  }

  /** It was written to a file. */
  filed(name: string) {
    this.fileName = name;
    this.fileAt = Date.now();
    this.#unfiledSince = 0;
    this.#filed = this.#session.document;
  }

  /** Whether a file holds the drawing just as it is. */
  get isFiled(): boolean {
    return this.#filed === this.#session.document;
  }

  async now(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    while (this.#busy !== undefined) await this.#busy;
    if (this.#session.document === this.#kept || this.isReadOnly) return;
    this.#busy = this.#write().finally(() => (this.#busy = undefined));
    await this.#busy;
  }

  /** Keeps the drawing as an earlier version, under a name or before something large is done to it. */
  async keepVersion(why: VersionReason, name?: string): Promise<void> {
    await this.now();
    const { document } = this.#session;
    if (why !== "named" && this.#rev === 0) return; // nothing of it is this person's work yet
    await keepVersion({ id: this.#id, document }, why, name);
  }

  /** The drawing as it is at this call, whatever happens to it next. Where nothing of it is this person's work yet, nothing. */
  async #keepBefore(why: VersionReason): Promise<void> {
    const { document } = this.#session;
    const isTheirs = this.#rev > 0 || document !== this.#kept;
    if (!isTheirs || this.isReadOnly || document === this.#lastBefore) return;
    this.#lastBefore = document;
    await this.now();
    await keepVersion({ id: this.#id, document }, why);
  }

  /** What the shelf does not have yet is written down at once: a page that goes away does not wait for the shelf. */
  #putAway() {
    if (this.#session.document === this.#kept || this.isReadOnly) return;
    const record = this.#record(this.#id);
    putAway({ ...record, rev: this.#rev });
    this.#putAwayEdit = record.edit;
    rememberHere(this.#id);
  }

  #record(id: string): KeptEdit {
    const { document, history } = this.#session;
    const { title } = document;
    // Counted here and not where an edit is told of: a page that goes away takes words, and is told of them no more.
    if (document !== this.#edit.document) this.#edit = { document, number: this.#edit.number + 1 };
    const edit = this.#edit.number;
    return { id, title, savedAt: Date.now(), document, history, page: this.#page, edit };
  }

  #unkept(error: unknown) {
    this.#session.say(say("keep.versionNotKept", { why: whyNotKept(error) }), "refusal");
  }

  /** Keeps a drawing that nobody has changed yet, such as one that was handed over. */
  async keepAsIs(): Promise<void> {
    this.#kept = undefined; // a page that goes away meanwhile still puts it down
    while (this.#busy !== undefined) await this.#busy;
    this.#busy = this.#write().finally(() => (this.#busy = undefined));
    await this.#busy;
  }

  async #write() {
    const record = this.#record(this.#id);
    const isFirst = this.#rev === 0;
    try {
      this.#rev = await keepOrMakeRoom(record, this.#rev);
    } catch (error) {
      if (!(error instanceof ConflictError)) return this.#fail(error);
      return this.#keepBoth();
    }
    this.#done(record);
    if (isFirst) void this.#askToPersist();
  }

  /** Another window wrote this drawing: both are kept, this one as a copy that says so. */
  async #keepBoth() {
    const session = this.#session;
    session.run(edits.setTitle(copyOf(session.document.title)));
    this.#id = newId();
    const record = this.#record(this.#id);
    try {
      this.#rev = await keepOrMakeRoom(record, 0);
    } catch (error) {
      return this.#fail(error);
    }
    this.#sit();
    this.#done(record);
    session.say(say("app.keptBoth"));
  }

  #done({ document, edit }: KeptEdit) {
    this.#kept = document;
    this.#unfiledSince ||= Date.now();
    if (this.#session.document === document) this.state = "saved";
    this.reason = "";
    // What a page that goes away put down meanwhile may be newer than what the shelf has just taken.
    if (this.#putAwayEdit !== undefined && this.#putAwayEdit <= edit) {
      isOnShelf(this.#id);
      this.#putAwayEdit = undefined;
    }
    rememberHere(this.#id);
    this.seat.wrote(this.#rev);
    if (Date.now() - this.#unfiledSince < OFFER_FILE_MS) return;
    this.#unfiledSince = Date.now();
    this.#session.say(say("keep.offerFile"));
  }

  /** The shelf does not take it: it is put down wherever there is room, and tried again. */
  #fail(error: unknown) {
    this.state = "failed";
    this.reason = told(whyNotKept(error));
    this.#putAway();
    this.#timer ??= setTimeout(() => void this.now(), AGAIN_MS);
  }

  async #askToPersist() {
    const storage = navigator.storage;
    if (storage?.persist === undefined) return;
    this.persists = await storage.persist().catch(() => false);
  }

  /** The drawing that was worked on last in this window, else on this device, is shown again with its history. */
  async recover(): Promise<boolean> {
    const [leftOver] = await this.#broughtIn;
    if (leftOver !== undefined) {
      this.#takeUp(leftOver);
      return true;
    }
    try {
      const here = drawingHere();
      const own = here === undefined ? undefined : await drawing(here);
      const newest = own !== undefined && own.deletedAt === undefined ? own : await lastDrawing();
      if (newest === undefined) return false;
      const stored = readKept(newest) ?? (await newestReadable());
      this.leftUnread = stored?.id !== newest.id;
      if (stored === undefined) return false;
      await readied(stored.document);
      this.resume(stored);
      void navigator.storage?.persisted?.().then((it) => (this.persists = it));
      return true;
    } catch (error) {
      // A device that keeps nothing is told of at the first edit, with the same reason.
      this.#fail(error);
      this.isUnanswered = isSilence(error);
      return false;
    }
  }

  resume(stored: StoredDrawing) {
    this.#show(stored);
    this.fileName = undefined;
    this.#unfiledSince = 0;
    rememberHere(stored.id);
    this.#sit();
  }

  /** Work that the shelf does not take is shown again, and still said to be unsaved. */
  #takeUp({ left, error }: LeftOver) {
    const before = this.#session.document;
    this.resume(left);
    this.#kept = before;
    this.#fail(error);
  }

  #show({ id, rev, document, history }: StoredDrawing) {
    this.#session.open(document, history);
    this.#id = id;
    this.#rev = rev;
    this.#kept = document;
    this.state = "saved";
  }

  /** The other window has gone: what it put away on leaving counts as well. */
  async #takeTurn() {
    await broughtIn();
    await this.#readAgain();
    this.#session.say(say("keep.yourTurn"));
  }

  /** Shows what another window wrote. */
  async #readAgain() {
    const found = await drawing(this.#id).catch(() => undefined);
    const stored = found === undefined ? undefined : readKept(found);
    if (stored !== undefined && stored.rev !== this.#rev) this.#show(stored);
  }

  #sit() {
    this.seat.sit(this.#id);
  }
}

async function newestReadable(): Promise<StoredDrawing | undefined> {
  for (const stored of await allDrawings()) {
    const read = readKept(stored);
    if (read !== undefined) return read;
  }
  return undefined;
}

/** A device that keeps nothing is told of at the first edit; here it has nothing to bring. */
const broughtIn = (): Promise<LeftOver[]> => bringIn(newId, copyOf).catch(() => []);

const copyOf = (title: string): string =>
  t("keep.copyOf", { title: title || t("app.untitled"), time: clockTime(Date.now()) });

const newId = (): string => crypto.randomUUID();

/** A full device gives up what the clock kept, and the trash, before it gives up the drawing. */
async function keepOrMakeRoom(record: KeptEdit, rev: number): Promise<number> {
  try {
    return await keep(record, rev);
  } catch (error) {
    if (!isFull(error)) throw error;
    const { makeRoom } = await trash().catch(() => Promise.reject(error));
    await makeRoom();
    return keep(record, rev);
  }
}
