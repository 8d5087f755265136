import { untrack } from "svelte";
import { type Edit, type JsonObject, type Message, moveStructures, poleAt, type Spot } from "../../core";
import type { Camera, Size } from "../canvas/camera";
import { dropUnderlay, keepUnderlay, smaller, type StoredUnderlay, underlayOf } from "../keep/photos";
import { makeRoom } from "../keep/trash";
import { isFull } from "../keep/whyNotKept";
import type { Session } from "../session/session.svelte";
import { say } from "../words/catalogue";
import { lieInView, movedLie, readLie, stretchedLie, type UnderlayLie } from "./underlayLie";

/** The longer side of what is kept: enough to read the numbers on a map by [px]. */
const LONGEST = 2600;
/** No camera of a phone makes a larger file; a browser that tried to open one could lose what is on the screen. */
const MOST_BYTES = 40_000_000;
/** Hands that move it rest so long before it is kept where it lies. */
const KEEP_AFTER_MS = 250;

/**
 * A picture under the drawing, to trace: kept on this device beside the drawing. It is no part of the document, so that
 * nothing which leaves the device can have it.
 */
export class Underlay {
  /** whether hands move the picture, not the drawing */
  isHeld = $state(false);
  /** where it lies; nothing where there is none */
  lie = $state.raw<UnderlayLie | undefined>(undefined);
  isHidden = $state(false);
  /** the picture as the page shows it */
  url = $state.raw<string | undefined>(undefined);
  problem = $state.raw<Message | undefined>(undefined);
  isBusy = $state(false);
  /** what was taken away, until something else is done */
  gone = $state.raw<StoredUnderlay | undefined>(undefined);
  #timer: ReturnType<typeof setTimeout> | undefined;
  #picture: Blob | undefined;
  #drawing: string | undefined;
  readonly #session: Session;

  constructor(session: Session) {
    this.#session = session;
  }

  /** whether there is one and it is to be seen */
  isShown = $derived.by(() => this.lie !== undefined && !this.isHidden);

  /** whether the program still decides where a pole stands: what was traced would then not stay on the picture */
  isLaidByProgram = $derived.by(() => {
    const { document, scene } = this.#session;
    const structures: Readonly<Record<string, JsonObject>> = document.system.structures ?? {};
    return scene.plates.some(({ plate }) => structures[plate.id]?.["x"] === undefined);
  });

  /** Shows what lies under this drawing. */
  async follow(drawing: string): Promise<void> {
    if (drawing === this.#drawing) return;
    // Whoever asks is to ask again for another drawing, not for what is found of this one.
    untrack(() => this.#leave());
    this.#drawing = drawing;
    const kept = await underlayOf(drawing).catch(() => undefined);
    if (drawing === this.#drawing && kept !== undefined) this.#show(kept);
  }

  /** Keeps what was just moved, before another drawing is shown. */
  #leave() {
    if (this.#timer !== undefined) void this.#keep();
    this.isHeld = false;
    this.problem = undefined;
    this.gone = undefined;
    this.#show(undefined);
  }

  /** Puts a picture under the drawing. What lay there stays until the other one is kept. */
  async put(file: File, camera: Camera, size: Size): Promise<void> {
    if (file.size > MOST_BYTES) {
      this.problem = say("underlay.tooLarge", {
        megabytes: Math.round(file.size / 1e6),
        most: MOST_BYTES / 1e6,
      });
      return;
    }
    this.isBusy = true;
    this.problem = await this.#taken(file, camera, size);
    this.isBusy = false;
  }

  async #taken(file: File, camera: Camera, size: Size): Promise<Message | undefined> {
    const drawing = this.#session.keptAs();
    let picture: Blob;
    let measured: Size;
    try {
      picture = await smaller(file, LONGEST);
      measured = await sizeOf(picture);
    } catch {
      return say("underlay.noPicture", { name: file.name });
    }
    // Meanwhile another drawing may have been opened: the picture is none of that one.
    if (drawing !== this.#session.keptAs()) return undefined;
    return this.#put({ picture, lie: lieInView(camera, size, measured), isHidden: false });
  }

  async #put(underlay: StoredUnderlay): Promise<Message | undefined> {
    try {
      await this.#session.keepAsIs();
      this.#drawing = this.#session.keptAs();
      await keptOrMadeRoom(this.#drawing, underlay);
    } catch (error) {
      return notKept(error);
    }
    this.gone = undefined;
    this.#show(underlay);
    return undefined;
  }

  move(by: Spot) {
    if (this.lie === undefined) return;
    this.lie = movedLie(this.lie, by);
    this.#keepSoon();
  }

  stretch(factor: number, turn: number, about?: Spot) {
    if (this.lie === undefined) return;
    this.lie = stretchedLie(this.lie, factor, turn, about);
    this.#keepSoon();
  }

  /** Brings it whole to where somebody looks. */
  async bring(camera: Camera, size: Size) {
    if (this.#picture === undefined) return;
    this.lie = lieInView(camera, size, await sizeOf(this.#picture));
    this.#keepSoon();
  }

  hide(isHidden: boolean) {
    this.isHidden = isHidden;
    this.#keepSoon();
  }

  #keepSoon() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#keep(), KEEP_AFTER_MS);
  }

  async #keep() {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#picture === undefined || this.#drawing === undefined) return;
    const { lie, isHidden } = this;
    this.problem = await keptOrMadeRoom(this.#drawing, { picture: this.#picture, lie, isHidden }).then(
      () => undefined,
      notKept,
    );
  }

  async takeAway() {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const { lie, isHidden } = this;
    const gone = this.#picture === undefined ? undefined : { picture: this.#picture, lie, isHidden };
    if (this.#drawing !== undefined) await dropUnderlay(this.#drawing).catch(() => undefined);
    this.#show(undefined);
    this.gone = gone;
  }

  async putBack() {
    if (this.gone !== undefined) this.problem = await this.#put(this.gone);
  }

  /** The edit after which every pole stays where it stands. */
  get staying(): Edit {
    const { document, scene } = this.#session;
    return moveStructures(document, scene, [], { x: 0, y: 0 });
  }

  /** The edit that adds a pole at the very spot that was tapped. */
  poleAt(spot: Spot): Edit {
    return poleAt(spot, this.#session.scene);
  }

  #show(kept: StoredUnderlay | undefined) {
    if (this.url !== undefined) URL.revokeObjectURL(this.url);
    const lie = kept === undefined ? undefined : readLie(kept.lie);
    this.#picture = lie === undefined ? undefined : kept?.picture;
    this.url = this.#picture === undefined ? undefined : URL.createObjectURL(this.#picture);
    this.lie = this.url === undefined ? undefined : lie;
    this.isHidden = kept?.isHidden === true;
  }
}

/** A full device gives up what the clock kept of drawings, and the trash, before it refuses a picture. */
async function keptOrMadeRoom(drawing: string, underlay: StoredUnderlay): Promise<void> {
  try {
    await keepUnderlay(drawing, underlay);
  } catch (error) {
    if (!isFull(error)) throw error;
    await makeRoom();
    await keepUnderlay(drawing, underlay);
  }
}

/** Why a picture was not kept. */
const notKept = (error: unknown): Message => say(isFull(error) ? "underlay.full" : "underlay.notTaken");

async function sizeOf(picture: Blob): Promise<Size> {
  const bitmap = await createImageBitmap(picture);
  const { width, height } = bitmap;
  bitmap.close();
  return { width, height };
}
