import { parseJson } from "../document/parse";
import type { StillhotDocument } from "../document";
import { isObject, type Message, say } from "../terms";
import { assemble } from "./assemble";
import { convert } from "./cim/convert";
import { RdfReader, UnreadableModel } from "./cim/rdf";
import { convertMap } from "./geojson/convert";
import { Ledger, type LedgerEntry } from "./ledger";
import type { NeutralWay } from "./neutral";

/** What whoever imports says, where the file does not. */
export interface ImportOptions {
  readonly neutral?: NeutralWay;
  /** where the file does not say [Hz] */
  readonly hertz?: 50 | 60;
  /** volts and watts, or kilovolts and megawatts, where the file does not say */
  readonly units?: "plain" | "kilo";
}

/** A drawing made of another file, and everything that was done on the importer's own account. */
export interface Imported {
  readonly document: StillhotDocument;
  readonly counts: ImportCounts;
  readonly assumed: readonly LedgerEntry[];
  readonly leftOut: readonly LedgerEntry[];
  readonly approximated: readonly LedgerEntry[];
  readonly warnings: readonly LedgerEntry[];
}

/** How much was read and drawn. */
export interface ImportCounts {
  readonly points: number;
  readonly elements: Readonly<Record<string, number>>;
  /** objects of the model by class */
  readonly classes: Readonly<Record<string, number>>;
}

/** A file that cannot be brought in, and every reason that fits on a page. */
export interface ImportRefused {
  readonly errors: readonly Message[];
}

/** One model being read, in one file or several, piece by piece. */
export class ModelImport {
  readonly #ledger = new Ledger();
  readonly #reader = new RdfReader(this.#ledger);
  #broken: Message | undefined;

  /** Takes the next piece of a file's text. @returns false where reading on is of no use */
  write(piece: string): boolean {
    return this.#guarded(() => this.#reader.write(piece));
  }

  /** Ends one file of the model. */
  endFile(): boolean {
    return this.#guarded(() => this.#reader.endFile());
  }

  finish({ neutral, hertz, units }: ImportOptions = {}): Imported | ImportRefused {
    if (this.#broken !== undefined) return { errors: [this.#broken] };
    try {
      const { draft, frequencyHz, way, title, classCounts } = convert(this.#reader.model(), this.#ledger, {
        way: neutral,
        frequencyHz: hertz,
        units,
      });
      const document = assemble(draft, { title, frequencyHz, way: way === "given" ? "as-given" : way });
      return document === undefined ? refused(this.#ledger) : imported(document, this.#ledger, classCounts);
    } catch (error) {
      if (!(error instanceof UnreadableModel)) throw error;
      return { errors: [error.reason] };
    }
  }

  #guarded(reading: () => void): boolean {
    if (this.#broken !== undefined) return false;
    try {
      reading();
      return true;
    } catch (error) {
      if (!(error instanceof UnreadableModel)) throw error;
      this.#broken = error.reason;
      return false;
    }
  }
}

/** Makes a drawing of a map: one FeatureCollection of RFC 7946. */
export function importMap(text: string, { hertz }: ImportOptions = {}): Imported | ImportRefused {
  const ledger = new Ledger();
  const parsed = parseJson(text);
  if (!("value" in parsed)) return { errors: [parsed.message] };
  if (!isObject(parsed.value) || parsed.value["type"] !== "FeatureCollection")
    return { errors: [say("importing.error.notMap")] };
  const { draft, title, frequencyHz } = convertMap(parsed.value, ledger, hertz);
  const document =
    ledger.errors.length > 0 ? undefined : assemble(draft, { title, frequencyHz, way: "as-given" });
  return document === undefined ? refused(ledger) : imported(document, ledger, {});
}

/** Whether nothing could be drawn of a file. */
export const isImportRefused = (it: Imported | ImportRefused): it is ImportRefused => "errors" in it;

const refused = ({ errors, moreErrors }: Ledger): ImportRefused => ({
  errors: moreErrors === 0 ? errors : [...errors, say("importing.error.more", { count: moreErrors })],
});

/** What was imported, with what the ledger has to tell of it. */
export function imported(
  document: StillhotDocument,
  ledger: Ledger,
  classes: Readonly<Record<string, number>>,
): Imported {
  const elements: Record<string, number> = {};
  for (const { kind } of Object.values(document.system.elements)) elements[kind] = (elements[kind] ?? 0) + 1;
  return {
    document,
    counts: { points: Object.keys(document.system.points).length, elements, classes },
    assumed: ledger.entries("assumed"),
    leftOut: ledger.entries("leftOut"),
    approximated: ledger.entries("approximated"),
    warnings: ledger.entries("warnings"),
  };
}
