/** Reads what codes a picture holds, by the browser where it can, else by our own reader. Nothing leaves the device. */
export interface CodeReader {
  /** @param patiently for a picture that will not come again, as the next frame of a camera does */
  read(source: HTMLVideoElement | ImageBitmap, patiently: boolean): Promise<string[]>;
}

interface Detector {
  detect(source: CanvasImageSource): Promise<{ rawValue: string }[]>;
}

interface DetectorMaker {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
}

/** What reads codes: the browser's own detector where it has one, and the library's for whatever that does not find. */
export async function codeReader(): Promise<CodeReader> {
  const { default: decode } = await import("qr/decode.js");
  const { BarcodeDetector: Maker } = globalThis as unknown as { BarcodeDetector?: DetectorMaker };
  const formats = await Maker?.getSupportedFormats().catch((): string[] => []);
  let detector = formats?.includes("qr_code") ? new Maker!({ formats: ["qr_code"] }) : undefined;

  const canvas = document.createElement("canvas");
  const context = canvas.getContext("2d", { willReadFrequently: true })!;

  /** A source no larger than so many pixels along its longer side. */
  function pixels(source: HTMLVideoElement | ImageBitmap, longest: number): ImageData {
    const [width, height] =
      source instanceof HTMLVideoElement
        ? [source.videoWidth, source.videoHeight]
        : [source.width, source.height];
    const scale = Math.min(1, longest / Math.max(width, height));
    canvas.width = Math.max(1, Math.round(width * scale));
    canvas.height = Math.max(1, Math.round(height * scale));
    context.fillStyle = "#ffffff";
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(source, 0, 0, canvas.width, canvas.height);
    return context.getImageData(0, 0, canvas.width, canvas.height);
  }

  function decoded(source: HTMLVideoElement | ImageBitmap, longest: number, milliseconds: number): string[] {
    try {
      return [decode(pixels(source, longest), { timeLimit: milliseconds })];
    } catch {
      return []; // No code in this picture, or none that can be read.
    }
  }

  return {
    async read(source, patiently) {
      if (detector !== undefined)
        try {
          const found = await detector.detect(source);
          if (found.length > 0) return found.map(({ rawValue }) => rawValue);
        } catch {
          detector = undefined; // It says that it is there, but has no service behind it.
        }
      if (!patiently) return decoded(source, FRAME.longest, FRAME.milliseconds);
      for (const longest of PICTURE.longest) {
        const found = decoded(source, longest, PICTURE.milliseconds);
        if (found.length > 0) return found;
      }
      return [];
    },
  };
}

const FRAME = { longest: 1280, milliseconds: 80 };
/** A code that is large in its picture is found in a smaller copy, where noise has gone. */
const PICTURE = { longest: [2400, 1200, 600], milliseconds: 1500 };

/** More than a camera's picture has [bytes]. */
const LARGEST_BYTES = 30_000_000;

/** A picture file as pixels; nothing where it is no picture. A vector picture is somebody else's program, and not drawn. */
export async function pictureOf(file: File): Promise<ImageBitmap | undefined> {
  if (file.size > LARGEST_BYTES || /svg/i.test(file.type)) return undefined;
  return createImageBitmap(file).catch(() => undefined);
}
