import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** Photos of what stands on the poles. They stay on this device: no link, file or code has them. */
interface Album extends DBSchema {
  photos: { key: string; value: Blob };
}

let opened: Promise<IDBPDatabase<Album>> | undefined;

const album = (): Promise<IDBPDatabase<Album>> =>
  (opened ??= openDB<Album>("stillhot-photos", 1, {
    upgrade: (database) => void database.createObjectStore("photos"),
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

/** The longer side of what is kept: enough to read a plate by [px]. */
const LONGEST = 1600;

/** A camera's picture as it is kept: no larger than is of use. @throws where it is no picture that this browser reads */
export async function smaller(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((done, fail) =>
    canvas.toBlob((it) => (it === null ? fail(new Error("no picture")) : done(it)), "image/jpeg", 0.8),
  );
}
