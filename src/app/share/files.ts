import { isUnreadable, type Message, readDocument, type StillhotDocument, writeDocument } from "../../core";
import { later } from "../words/later";
import { t, told } from "../words/words";
import { say } from "../words/catalogue";
import type { ToldSides } from "./model";

/** What came of reading a text that may be a drawing. */
export type Opened =
  | {
      readonly document: StillhotDocument;
      readonly warnings: readonly Message[];
      /** what was done to make a drawing of another program's file */
      readonly sides?: ToldSides;
    }
  /** none where the person stopped it */
  | { readonly problems: readonly string[] };

const LARGEST_BYTES = 20_000_000;

/** A drawing of more is read off the main thread, which would stand still over it. */
const LARGE_BYTES = 300_000;

/** Letters at the start that tell a map or a model from a drawing. */
const PEEK = 4000;

/** Reads a file that was chosen: a drawing, a map or a model, a link, or a photograph of a printed code. */
export async function readFile(file: File): Promise<Opened> {
  const start = await file.slice(0, PEEK).text();
  const isLargeDrawing = file.size > LARGE_BYTES && file.size <= LARGEST_BYTES && /^\s*\{/.test(start);
  if (isLargeDrawing || /"FeatureCollection"|:RDF[\s>]/.test(start)) {
    const { isMap, isModel, readLarge } = await later(() => import("./model"));
    if (isLargeDrawing || isMap(start) || isModel(start)) return readLarge(file, start, file.name);
  }
  if (file.size > LARGEST_BYTES) return { problems: [tooLarge(file.size)] };
  const { readBytes } = await later(() => import("./link"));
  const opened = readBytes(new Uint8Array(await file.arrayBuffer()));
  if ("document" in opened || !/^image\/(?!svg)/.test(file.type)) return opened;
  // It may be a photograph of a printed code.
  const { readPhotograph } = await later(() => import("./scanned"));
  return (await readPhotograph(file)) ?? opened;
}

/** What is said of a file that is larger than any drawing. */
export const tooLarge = (bytes: number): string =>
  t("share.tooLarge", { megabytes: Math.round(bytes / 1e6), most: LARGEST_BYTES / 1e6 });

/** Reads the text of a drawing's file, or says what is wrong in it. */
export const readText = (text: string): Opened => openedOf(readDocument(text));

/** A drawing that was read, or what is wrong in it, in words. */
export function openedOf(read: ReturnType<typeof readDocument>): Opened {
  if (isUnreadable(read))
    return {
      problems: read.problems.map(({ path, message }) =>
        path === "" ? told(message) : `${path}: ${told(message)}`,
      ),
    };
  return { document: read.document, warnings: read.warnings.map((it) => it.message) };
}

/** Asks for a file. Nothing where the person thought better of it. */
export function askForFile(): Promise<File | undefined> {
  return new Promise((done) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept =
      ".json,.geojson,.xml,.rdf,.svg,.png,.txt,application/json,application/xml,image/svg+xml,image/png,text/plain";
    input.addEventListener("change", () => done(input.files?.[0]));
    input.addEventListener("cancel", () => done(undefined));
    input.click();
  });
}

interface SavePicker {
  showSaveFilePicker?(options: {
    suggestedName: string;
    types: { description: string; accept: Record<string, string[]> }[];
  }): Promise<{
    name: string;
    createWritable(): Promise<WritableStream & { write(text: string): Promise<void> }>;
  }>;
}

/**
 * Saves the drawing as a file: by the browser's own picker where it has one, else as a download.
 *
 * @returns the name of the file, or nothing where the person thought better of it
 */
export async function saveFile(document: StillhotDocument): Promise<string | undefined> {
  const name = fileNameOf(document);
  const text = writeDocument(document);
  const picker = (window as unknown as SavePicker).showSaveFilePicker;
  if (picker === undefined || navigator.webdriver) return download(name, text);
  try {
    const handle = await picker.call(window, {
      suggestedName: name,
      types: [{ description: "Stillhot", accept: { "application/json": [".json"] } }],
    });
    const stream = await handle.createWritable();
    await stream.write(text);
    await stream.close();
    return handle.name;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return undefined;
    return download(name, text);
  }
}

/** Hands a file to whoever uses the app; returns its name. */
export function download(name: string, content: BlobPart, type = "application/json"): string {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return name;
}

/** A file name that every system takes, from the title. */
export function fileNameOf({ title }: StillhotDocument, extension = "stillhot.json"): string {
  const stem = title
    .normalize("NFKD")
    .replace(/[^\w -]+/g, "")
    .trim()
    .replace(/\s+/g, "-")
    .toLowerCase()
    .slice(0, 60);
  return `${stem || "drawing"}.${extension}`;
}

/** What an unreadable file is answered with. */
export const cannotOpen = (name: string): Message => say("app.cannotOpen", { name });
