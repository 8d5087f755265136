import { pixelsPerUnit, withLink } from "../worker/png";
import type { WrittenForms } from "../worker/writing";
import { t } from "../words/words";

/** A picture of a drawing as a PNG that opens again: as it was painted, or else painted here, by the browser. */
export async function pngFile(png: WrittenForms["png"]): Promise<Blob> {
  if ("file" in png) return png.file;
  const { picture, link } = png;
  const url = URL.createObjectURL(picture);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const scale = pixelsPerUnit(image.naturalWidth, image.naturalHeight);
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(image.naturalWidth * scale);
    canvas.height = Math.round(image.naturalHeight * scale);
    canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
    if (blob === null) throw new Error(t("share.noPicture"));
    return await withLink(blob, link);
  } finally {
    URL.revokeObjectURL(url);
  }
}
