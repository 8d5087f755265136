import type { WrittenForms } from "../worker/writing";
import { t } from "../words/words";
import { intoPng } from "./picture";

/** Pixels along the longer side of a PNG at most: beyond it browsers give an empty picture. */
const LONGEST_SIDE = 8192;
const SCALE = 2;

/** A picture of a drawing as a PNG that opens again: the browser paints pictures on the page's own thread alone. */
export async function pngFile({ picture, link }: WrittenForms["png"]): Promise<Uint8Array> {
  const url = URL.createObjectURL(picture);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const scale = Math.min(SCALE, LONGEST_SIDE / Math.max(image.naturalWidth, image.naturalHeight));
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(image.naturalWidth * scale);
    canvas.height = Math.round(image.naturalHeight * scale);
    canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
    if (blob === null) throw new Error(t("share.noPicture"));
    return intoPng(new Uint8Array(await blob.arrayBuffer()), link);
  } finally {
    URL.revokeObjectURL(url);
  }
}
