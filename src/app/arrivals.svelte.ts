import type { StillhotDocument } from "../core";
import type { Autosave } from "./keep/autosave.svelte";
import { drawing, type StoredDrawing } from "./keep/store";
import type Unsaved from "./keep/Unsaved.svelte";
import type { Brought } from "./openFile";
import type { Session } from "./session/session.svelte";
import { say } from "./words/catalogue";
import { later } from "./words/later";
import { t } from "./words/words";
import { readied } from "./worker/readied";

/** How an address with a drawing in it goes on. */
const LINK = /^#(d1|n1|n1p)\./;

/** Whether the address carries a drawing. */
export const isLink = (): boolean => LINK.test(location.hash);

/** What the app does when a drawing arrives. */
interface Around {
  readonly session: Session;
  readonly autosave: Autosave;
  /** the drawing at hand is another one now */
  readonly onshown: () => void;
  readonly go: (place: string) => void;
}

/** Drawings that come into the window, out of a file, a link, the clipboard, another app or the device, and what they replace. */
export class Arrivals {
  readonly #around: Around;
  /** what was done to make a drawing of another program's file */
  brought = $state.raw<Brought | undefined>(undefined);
  /** what could not be opened, and why */
  bad = $state.raw<{ readonly name: string; readonly problems: readonly string[] } | undefined>(undefined);
  /** asks whether a drawing that is kept nowhere may go */
  unsaved = $state.raw<{ readonly default: typeof Unsaved } | undefined>(undefined);
  #answered: (goes: boolean) => void = () => undefined;

  constructor(around: Around) {
    this.#around = around;
  }

  /** Shows a drawing in place of the one at hand, which is not asked about. */
  showNew(next: StillhotDocument, fileName?: string): void {
    const { session, autosave, onshown } = this.#around;
    session.open(next);
    autosave.startAfresh(fileName);
    onshown();
  }

  /** @returns whether it is shown now */
  async replace(next: StillhotDocument, fileName?: string): Promise<boolean> {
    await readied(next);
    await this.#around.autosave.keepVersion("open").catch(() => undefined);
    if (!(await this.#mayGo())) return false;
    this.showNew(next, fileName);
    return true;
  }

  /** What somebody handed over is kept at once: a reload must not take it away. @returns whether it is shown now */
  takeIn = async (next: StillhotDocument, fileName?: string): Promise<boolean> => {
    if (!(await this.replace(next, fileName))) return false;
    await this.#around.autosave.keepAsIs();
    return true;
  };

  /** @returns whether it is shown now as a drawing. A scenario is to be played: it is not looked into. */
  receive = async (next: StillhotDocument, fileName?: string): Promise<boolean> => {
    if (next.scenario === undefined) return this.takeIn(next, fileName);
    await this.offer(next);
    return false;
  };

  /** Shows what may be read of a scenario before it is played; the drawing at hand stays as it is. */
  async offer(scenario: StillhotDocument): Promise<void> {
    const { study } = await later(() => import("./scenario/study.svelte"));
    study.offer(scenario);
    this.#around.onshown();
    this.#around.go("scenario");
  }

  /** Opens a file by what it is; nothing where none was chosen. */
  openFile = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const { open } = await later(() => import("./openFile"));
    await open(file, {
      session: this.#around.session,
      receive: this.receive,
      go: this.#around.go,
      onbad: (problems) => (this.bad = { name: file.name, problems }),
      onbrought: (it) => (this.brought = it),
    });
  };

  /** Goes on with a drawing of this device. */
  async openMine(stored: StoredDrawing): Promise<void> {
    // The page answers meanwhile: what is drawn until then is kept after it, be it in this very drawing.
    await readied(stored.document);
    if (!(await this.#mayGo())) return;
    const fresh = (await drawing(stored.id)) ?? stored;
    this.#around.autosave.resume(fresh.rev === stored.rev ? stored : fresh);
    this.#around.onshown();
  }

  /** What another app of this device sent: the service worker kept it until now. */
  async openShared(): Promise<void> {
    history.replaceState(history.state, "", location.pathname + location.hash);
    const { takeShared } = await later(() => import("./share/received"));
    const name = t("share.theShared");
    const taken = await takeShared(name);
    if (taken === undefined) return;
    if ("problem" in taken) this.bad = { name, problems: [taken.problem] };
    else await this.openFile(taken);
  }

  /** The drawing that the address carries. The address then forgets it: after the first edit it would be another one. */
  async linked(): Promise<StillhotDocument | undefined> {
    const { hash } = location;
    if (!isLink()) return undefined;
    history.replaceState(history.state, "", location.pathname + location.search);
    const { readLink } = await later(() => import("./share/link"));
    const name = t("share.theLink");
    const opened = await readLink(hash.slice(1), name);
    if ("document" in opened) {
      await readied(opened.document);
      return opened.document;
    }
    if (opened.problems.length === 0) this.#around.session.say(say("app.openStopped", { name }));
    else this.bad = { name, problems: opened.problems };
    return undefined;
  }

  /** A link that was put into the address of this very window. */
  async follow(): Promise<void> {
    const linked = await this.linked();
    if (linked !== undefined) await this.receive(linked);
  }

  /** A file, a picture or a link on the clipboard is opened; parts of a drawing are the drawing's own to take in. */
  async paste(event: ClipboardEvent): Promise<void> {
    if (event.target instanceof HTMLElement && event.target.matches("input, textarea, select")) return;
    if (document.querySelector("dialog[open]") !== null) return;
    const file = event.clipboardData?.files[0];
    const text = event.clipboardData?.getData("text/plain").trim() ?? "";
    const isOurs = /^(\S*#)?(d1|n1|n1p)\.[\w.-]+$/.test(text) || /^<(\?xml|svg)/i.test(text);
    if (file === undefined && !isOurs) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    await this.openFile(file ?? new File([text], t("share.thePaste")));
  }

  /** The answer of whoever was asked whether the drawing may go. */
  answer = (goes: boolean): void => this.#answered(goes);

  /** Whether the drawing may give way to another one: asked where the device did not take it. */
  async #mayGo(): Promise<boolean> {
    const { autosave } = this.#around;
    await autosave.now();
    if (!autosave.isUnsaved) return true;
    this.unsaved = await later(() => import("./keep/Unsaved.svelte"));
    return new Promise((done) => {
      this.#answered = (goes) => {
        this.unsaved = undefined;
        done(goes);
      };
    });
  }
}
