import { paintSvg } from "./paintSvg";
import { pixelsPerUnit, withLink } from "./png";
import type { PictureToPaint } from "./writing";

/** Whether there is anything to paint on beside the page. */
export const canPaintBeside = (): boolean => typeof OffscreenCanvas !== "undefined";

/** A picture as a PNG that opens again, painted beside the page. */
export async function painted({ picture, link }: PictureToPaint): Promise<Blob> {
  let canvas: OffscreenCanvas | undefined;
  paintSvg(await picture.text(), ({ left, top, width, height }) => {
    const scale = pixelsPerUnit(width, height);
    canvas = new OffscreenCanvas(Math.round(width * scale), Math.round(height * scale));
    const context = canvas.getContext("2d")!;
    context.scale(canvas.width / width, canvas.height / height);
    context.translate(-left, -top);
    return context;
  });
  return withLink(await canvas!.convertToBlob({ type: "image/png" }), link);
}
