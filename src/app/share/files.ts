import { isUnreadable, type Message, readDocument, type StillhotDocument, writeDocument } from "../../core";
import { told } from "../words/words";
import type { ToldSides } from "./toldSides";

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
