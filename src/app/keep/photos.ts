import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** Photos of what stands on the poles, and what lies under drawings. They stay on this device: no link, file or code has them. */
interface Album extends DBSchema {
  photos: { key: string; value: Blob };
  underlays: { key: string; value: StoredUnderlay };
}

/** A picture under a drawing as it is kept: where it lies is judged whenever it is read. */
export interface StoredUnderlay {
  readonly picture: Blob;
  readonly lie: unknown;
  readonly isHidden: boolean;
}

let opened: Promise<IDBPDatabase<Album>> | undefined;

const album = (): Promise<IDBPDatabase<Album>> =>
  (opened ??= openDB<Album>("stillhot-photos", 2, {
    upgrade(database, from) {
      if (from < 1) database.createObjectStore("photos");
      if (from < 2) database.createObjectStore("underlays");
    },
    /** A newer program in another window needs the album: this one lets go. */
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      opened = undefined;
    },
    terminated() {
      opened = undefined;
    },
  }).catch((error: unknown) => {
    opened = undefined;
    throw error;
  }));

/** A thing is one of its drawing: other drawings have the same ids. */
const keyOf = (drawing: string, thing: string): string => `${drawing} ${thing}`;

/** The photograph of a thing of a drawing, where there is one. */
export const photoOf = async (drawing: string, thing: string): Promise<Blob | undefined> =>
  (await album()).get("photos", keyOf(drawing, thing));

/** Keeps a photograph of a thing in place of the one that was there. */
export const keepPhoto = async (drawing: string, thing: string, photo: Blob): Promise<void> =>
  void (await (await album()).put("photos", photo, keyOf(drawing, thing)));

/** Takes the photograph of a thing away. */
export const dropPhoto = async (drawing: string, thing: string): Promise<void> =>
  (await album()).delete("photos", keyOf(drawing, thing));

/** The picture that lies under a drawing, where there is one. */
export const underlayOf = async (drawing: string): Promise<StoredUnderlay | undefined> =>
  (await album()).get("underlays", drawing);

/** Keeps what lies under a drawing in place of what lay there. */
export const keepUnderlay = async (drawing: string, underlay: StoredUnderlay): Promise<void> =>
  void (await (await album()).put("underlays", underlay, drawing));

/** Takes the picture under a drawing away. */
export const dropUnderlay = async (drawing: string): Promise<void> =>
  (await album()).delete("underlays", drawing);

/** Takes away all pictures of a drawing that is no more. */
export async function dropPicturesOf(drawing: string): Promise<void> {
  const transaction = (await album()).transaction(["photos", "underlays"], "readwrite");
  const ofIt = IDBKeyRange.bound(`${drawing} `, `${drawing} \uffff`);
  await Promise.all([
    transaction.objectStore("photos").delete(ofIt),
    transaction.objectStore("underlays").delete(drawing),
    transaction.done,
  ]);
}

/** The longer side of what is kept: enough to read a plate by [px]. */
const LONGEST = 1600;

/** A camera's picture as it is kept: no larger than is of use. @throws where it is no picture that this browser reads */
export async function smaller(file: Blob, longest = LONGEST): Promise<Blob> {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const context = canvas.getContext("2d");
  if (context !== null) {
    // What shows nothing is paper: a map without a ground of its own would else come out black.
    context.fillStyle = "#ffffff";
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  }
  picture.close();
  return new Promise((done, fail) =>
    canvas.toBlob((it) => (it === null ? fail(new Error("no picture")) : done(it)), "image/jpeg", 0.8),
  );
}
