import { SaxesParser, type SaxesTagNS } from "saxes";
import { say, type Message } from "../../terms";
import type { Ledger } from "../ledger";

/** One object of a model: its class, what it says of itself, and what it points to. */
export interface RdfObject {
  /** without `urn:uuid:`, `#`, a leading `_`, and without case: what references are compared by */
  readonly key: string;
  /** as the file writes it, for messages */
  readonly id: string;
  readonly className: string;
  /** text of each attribute, by the part of its name behind the dot */
  readonly attributes: Map<string, string>;
  /** keys of the objects that it points to, or the last part of an enumeration value */
  readonly references: Map<string, string[]>;
}

const RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
const MODEL = "http://iec.ch/TC57/61970-552/ModelDescription/1#";
const DIFFERENCE = /DifferenceModel$/;

/** A schema's namespace, and whether this program knows its classes. */
const SCHEMAS: readonly { readonly pattern: RegExp; readonly version: number }[] = [
  { pattern: /CIM-schema-cim(\d+)#$/, version: 0 },
  { pattern: /^http:\/\/iec\.ch\/TC57\/CIM100#$/, version: 17 },
  { pattern: /^http:\/\/cim\.ucaiug\.io\/CIM101\//, version: 18 },
];
const OLDEST_VERSION = 15;
const NEWEST_VERSION = 18;

/** Letters of one file, and objects of one model, beyond which nobody draws by hand what follows [1]. */
const MOST_LETTERS = 100e6;
const MOST_OBJECTS = 5e6;

/** Which schema a namespace names, or nothing where it is another's. */
function schemaVersion(uri: string): number | undefined {
  for (const { pattern, version } of SCHEMAS) {
    const match = pattern.exec(uri);
    if (match !== null) return version === 0 ? Number(match[1]) : version;
  }
  return undefined;
}

/** Two ways to write one id are one: `urn:uuid:` and `#` are left away, then one `_`, and case. */
export const rdfKey = (id: string): string =>
  id
    .replace(/^urn:uuid:/i, "")
    .replace(/^#/, "")
    .replace(/^_/, "")
    .toLowerCase();

const shownId = (id: string): string => id.replace(/^urn:uuid:/i, "").replace(/^#/, "");

const behindDot = (name: string): string => name.slice(name.lastIndexOf(".") + 1);

const behindHash = (uri: string): string => uri.slice(uri.lastIndexOf("#") + 1);

/** Everything that the files of one model say, object by object. */
export interface RdfModel {
  readonly objects: ReadonlyMap<string, RdfObject>;
  /** profiles that the headers name */
  readonly profiles: readonly string[];
  /** namespaces of the schema, as found */
  readonly schemas: ReadonlySet<string>;
  /** ids that something points to, as written, by key */
  readonly shown: ReadonlyMap<string, string>;
}

/** A file that is no model that can be read: the first reason. */
export class UnreadableModel extends Error {
  readonly reason: Message;
  constructor(reason: Message) {
    super(reason.key);
    this.reason = reason;
  }
}

/**
 * Reads models in RDF/XML piece by piece, any number of files into one: nothing is ever held but the objects.
 *
 * No document type is accepted and no entity resolved but XML's own five.
 */
export class RdfReader {
  readonly #ledger: Ledger;
  readonly #objects = new Map<string, RdfObject>();
  readonly #profiles: string[] = [];
  readonly #schemas = new Set<string>();
  readonly #shown = new Map<string, string>();
  /** the first namespace of an object that is not of the standard */
  #otherNamespace: string | undefined;
  #letters = 0;
  #parser: SaxesParser<{ xmlns: true }> | undefined;
  #depth = 0;
  #object: RdfObject | undefined;
  #isHeader = false;
  /** attributes that the description at hand has given */
  readonly #own = new Set<string>();
  #attribute: string | undefined;
  #text = "";

  constructor(ledger: Ledger) {
    this.#ledger = ledger;
  }

  /** @throws UnreadableModel where the file can be read no further */
  write(piece: string): void {
    this.#letters += piece.length;
    if (this.#letters > MOST_LETTERS)
      throw new UnreadableModel(say("importing.error.tooLong", { most: MOST_LETTERS / 1e6 }));
    (this.#parser ??= this.#open()).write(piece);
  }

  /** Ends one file. @throws UnreadableModel where it is cut off, or holds no model */
  endFile(): void {
    const parser = this.#parser ?? this.#open();
    parser.close();
    this.#parser = undefined;
    this.#depth = 0;
    this.#letters = 0;
  }

  model(): RdfModel {
    for (const uri of this.#schemas) {
      const version = schemaVersion(uri)!;
      if (version < OLDEST_VERSION)
        throw new UnreadableModel(say("importing.error.oldSchema", { uri, version, oldest: OLDEST_VERSION }));
      if (version > NEWEST_VERSION) this.#ledger.note("warnings", "newSchema", "", { uri });
    }
    if (this.#objects.size === 0)
      throw new UnreadableModel(
        this.#otherNamespace === undefined
          ? say("importing.error.noObjects")
          : say("importing.error.otherSchema", { uri: this.#otherNamespace }),
      );
    return { objects: this.#objects, profiles: this.#profiles, schemas: this.#schemas, shown: this.#shown };
  }

  #open(): SaxesParser<{ xmlns: true }> {
    const parser = new SaxesParser({ xmlns: true });
    parser.on("doctype", () => {
      throw new UnreadableModel(say("importing.error.doctype"));
    });
    parser.on("error", (error) => {
      throw new UnreadableModel(say("importing.error.xml", { why: error.message }));
    });
    parser.on("opentag", (tag) => this.#opened(tag));
    parser.on("text", (text) => {
      if (this.#attribute !== undefined) this.#text += text;
    });
    parser.on("closetag", () => this.#closed());
    return parser;
  }

  #opened(tag: SaxesTagNS): void {
    this.#depth++;
    if (this.#depth === 1) {
      if (tag.uri !== RDF || tag.local !== "RDF")
        throw new UnreadableModel(say("importing.error.notRdf", { found: tag.name }));
    } else if (this.#depth === 2) this.#begin(tag);
    else if (this.#depth === 3 && (this.#object !== undefined || this.#isHeader)) this.#part(tag);
  }

  #begin(tag: SaxesTagNS): void {
    this.#object = undefined;
    this.#isHeader = false;
    this.#own.clear();
    if (DIFFERENCE.test(tag.local)) throw new UnreadableModel(say("importing.error.difference"));
    const isDescription = tag.uri === RDF && tag.local === "Description";
    if (tag.uri === MODEL) {
      this.#isHeader = true;
      return;
    }
    if (!isDescription && schemaVersion(tag.uri) === undefined) {
      this.#ledger.note("leftOut", "namespace", tag.local, { uri: tag.uri });
      this.#otherNamespace ??= tag.uri;
      return;
    }
    const id = this.#attributeOf(tag, "ID") ?? this.#attributeOf(tag, "about");
    if (id === undefined) {
      this.#ledger.error("importing.error.noId", { className: tag.local });
      return;
    }
    if (!isDescription) this.#schemas.add(tag.uri);
    this.#object = this.#objectOf(id, isDescription ? undefined : tag.local);
  }

  #objectOf(id: string, className: string | undefined): RdfObject {
    const key = rdfKey(id);
    const known = this.#objects.get(key);
    if (known === undefined) {
      if (this.#objects.size >= MOST_OBJECTS)
        throw new UnreadableModel(say("importing.error.tooManyObjects", { most: MOST_OBJECTS }));
      const fresh: RdfObject = {
        key,
        id: shownId(id),
        className: className ?? "",
        attributes: new Map(),
        references: new Map(),
      };
      this.#objects.set(key, fresh);
      return fresh;
    }
    if (className === undefined || known.className === className) return known;
    if (known.className !== "") {
      this.#ledger.error("importing.error.twoClasses", {
        id: known.id,
        first: known.className,
        second: className,
      });
      return known;
    }
    const named = { ...known, className };
    this.#objects.set(key, named);
    return named;
  }

  #part(tag: SaxesTagNS): void {
    if (!this.#isHeader && schemaVersion(tag.uri) === undefined) {
      this.#ledger.note("leftOut", "namespace", tag.local, { uri: tag.uri });
      return;
    }
    const name = behindDot(tag.local);
    const resource = this.#attributeOf(tag, "resource");
    if (resource === undefined) {
      this.#attribute = name;
      this.#text = "";
      return;
    }
    if (this.#object === undefined) return;
    const isEnumeration =
      /#[A-Za-z]+\.[^.#]+$/.test(resource) && schemaVersion(`${resource.split("#")[0]!}#`) !== undefined;
    const target = isEnumeration ? behindDot(behindHash(resource)) : rdfKey(resource);
    if (!isEnumeration && !this.#shown.has(target)) this.#shown.set(target, shownId(resource));
    const { references } = this.#object;
    const known = references.get(name);
    if (known === undefined) references.set(name, [target]);
    else if (!known.includes(target)) known.push(target);
  }

  #closed(): void {
    if (this.#depth === 3 && this.#attribute !== undefined) {
      const [name, text] = [this.#attribute, this.#text.trim()];
      this.#attribute = undefined;
      if (this.#isHeader) {
        if (name === "profile") this.#profiles.push(text);
      } else if (this.#object !== undefined) this.#keep(this.#object, name, text);
    }
    this.#depth--;
  }

  /** A value given twice is an error, but for figures that one description gives twice itself: then the first one stands, and it is told. */
  #keep(object: RdfObject, name: string, text: string): void {
    const known = object.attributes.get(name);
    const isAgain = known !== undefined && known !== text;
    const isFigure = [known, text].every(
      (it) => it !== undefined && it !== "" && Number.isFinite(Number(it)),
    );
    if (!isAgain) object.attributes.set(name, text);
    else if (isFigure && this.#own.has(name))
      this.#ledger.note("warnings", "givenTwice", object.id, { name });
    else
      this.#ledger.error("importing.error.twoValues", {
        className: object.className,
        id: object.id,
        name,
        first: known,
        second: text,
      });
    this.#own.add(name);
  }

  #attributeOf(tag: SaxesTagNS, local: string): string | undefined {
    return Object.values(tag.attributes).find((it) => it.uri === RDF && it.local === local)?.value;
  }
}
