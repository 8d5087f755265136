import { createReadStream, statSync } from "node:fs";
import {
  type Changes,
  type Imported,
  importMap,
  type ImportOptions,
  isImportRefused,
  type ImportRefused,
  type Message,
  ModelImport,
  NEUTRAL_WAYS,
  type NeutralWay,
  readableImport,
  type StillhotDocument,
  type VerifiedCutting,
  whatChanged,
  writeDocument,
} from "../core";
import { AROUND, cutJson, cutLines, OPENINGS, openingsOf, pieceCalled } from "./around";
import { type Call, type Command, UsageError } from "./command";
import { NotDone } from "./eachFile";
import type { ExitCode, Io } from "./io";
import { isRefused, readInput, reasonOf } from "./input";
import { entryJson, ledgerLines } from "./ledger";
import { write, writeTo } from "./output";
import { asText, jsonLine, printable, refusedLines, wrapped } from "./print";
import { say, spell } from "./words";

const ENDING = ".stillhot.json";

/** Makes a drawing of a utility's model: all files on the line are one model. */
export const importFiles: Command = {
  name: "import",
  summary: "cli.import.summary",
  help: "cli.import.help",
  flags: [
    { name: "--out", short: "-o", value: "OUT" },
    { name: "--neutral", value: "WAY" },
    { name: "--hertz", value: "HERTZ" },
    { name: "--units", value: "UNITS" },
    { name: "--places", value: "WAY" },
    { name: "--since", value: "OLD" },
    AROUND,
    OPENINGS,
  ],
  takesFiles: true,
  async run(call, io) {
    const [file] = call.files as [string];
    const out = writeTo(call.flags, [file], ENDING)?.(file);
    const openings = openingsOf(call);
    const around = call.flags.get("--around") as string | undefined;
    const options = { ...neutralOf(call), ...hertzOf(call), ...unitsOf(call) };
    const isLaidOut = placesOf(call) === "tidy";
    const since = call.flags.get("--since") as string | undefined;
    const older = since === undefined ? undefined : await readInput(since, io);
    if (older !== undefined && isRefused(older)) {
      io.err(asText(refusedLines(older)));
      return 2;
    }
    const read = await readAll(call.files, options, io);
    // A piece is laid out by itself.
    const outcome = isImportRefused(read) || !isLaidOut || around !== undefined ? read : readableImport(read);
    if (around !== undefined && !isImportRefused(outcome))
      io.line?.(spell(say("cli.progress.cut", { file })));
    if (isImportRefused(outcome)) {
      io.line?.("");
      return refuse(outcome, file, call, io);
    }
    const piece = around === undefined ? undefined : pieceOr(outcome.document, around, openings);
    io.line?.("");
    if (piece !== undefined && "errors" in piece) return refuse(piece, file, call, io);
    const drawing = piece?.document ?? outcome.document;
    const text = writeDocument(drawing);
    if (out !== undefined) await write(out, text);
    const cut = piece === undefined ? {} : { cut: cutJson(outcome.document, piece) };
    const changes = older === undefined ? undefined : whatChanged(older.document, outcome.document);
    if (call.json)
      io.out(jsonLine({ ...importJson(file, outcome), ...cut, ...(changes && { changes }), drawing }));
    else if (out === undefined) io.out(printable(text));
    if (call.json) return 0;
    const cutTold = piece === undefined ? [] : ["", ...cutLines(outcome.document, piece)];
    const changesTold = changes === undefined ? [] : changeLines(since!, changes);
    io.err(asText([...importLines(file, outcome), ...changesTold, ...cutTold, ...wroteLines(file, out)]));
    return 0;
  },
};

/** The piece around what is called so, or why there is none. */
function pieceOr(
  document: StillhotDocument,
  around: string,
  openings: number,
): VerifiedCutting | ImportRefused {
  try {
    return pieceCalled(document, around, openings);
  } catch (error) {
    if (!(error instanceof NotDone)) throw error;
    return { errors: [say("cli.notDone", { why: error.message })] };
  }
}

function neutralOf({ flags }: Call): { readonly neutral?: NeutralWay } {
  const way = flags.get("--neutral");
  if (way === undefined) return {};
  const known = NEUTRAL_WAYS.find((it) => it === way);
  if (known !== undefined) return { neutral: known };
  throw new UsageError(spell(say("cli.import.noWay", { way: String(way), known: NEUTRAL_WAYS.join(", ") })));
}

function hertzOf({ flags }: Call): { readonly hertz?: 50 | 60 } {
  const hertz = flags.get("--hertz");
  if (hertz === undefined) return {};
  if (hertz === "50") return { hertz: 50 };
  if (hertz === "60") return { hertz: 60 };
  throw new UsageError(spell(say("cli.import.noHertz", { hertz: String(hertz) })));
}

function unitsOf({ flags }: Call): { readonly units?: "plain" | "kilo" } {
  const units = flags.get("--units");
  if (units === undefined) return {};
  if (units === "plain" || units === "kilo") return { units };
  throw new UsageError(spell(say("cli.import.noUnits", { units: String(units) })));
}

function placesOf({ flags }: Call): "tidy" | "map" {
  const way = flags.get("--places") ?? "tidy";
  if (way === "tidy" || way === "map") return way;
  throw new UsageError(spell(say("cli.import.noPlaces", { way: String(way) })));
}

/** All files of a model, or one map, whichever the first letter that is no space tells. */
async function readAll(
  files: readonly string[],
  options: ImportOptions,
  io: Io,
): Promise<Imported | ImportRefused> {
  const model = new ModelImport();
  for (const file of files) {
    let map: string | undefined;
    let isBegun = false;
    const take = (piece: string): boolean => {
      if (!isBegun && piece.trim() !== "") {
        isBegun = true;
        if (/^\s*\ufeff?\s*\{/.test(piece)) map = "";
      }
      if (map === undefined) return model.write(piece);
      map += piece;
      return map.length <= MOST_MAP_LETTERS;
    };
    const problem = await readPieces(file, take, io);
    if (problem !== undefined) return { errors: [problem] };
    if (map !== undefined)
      return files.length > 1 ? { errors: [say("cli.import.oneMap")] } : importMap(map, options);
    model.endFile();
  }
  return model.finish(options);
}

/** A map is read whole: its reader refuses more than this itself. */
const MOST_MAP_LETTERS = 20_000_001;

/** Hands a file's text on piece by piece. @returns why it cannot be read, if so */
async function readPieces(
  file: string,
  take: (piece: string) => boolean,
  io: Io,
): Promise<Message | undefined> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  const size = file === "-" ? 0 : (statSync(file, { throwIfNoEntry: false })?.size ?? 0);
  let bytes = 0;
  try {
    for await (const piece of file === "-" ? io.stdin : createReadStream(file)) {
      bytes += piece.length;
      if (size > 0)
        io.line?.(spell(say("cli.progress.read", { file, percent: Math.floor((100 * bytes) / size) })));
      const text = typeof piece === "string" ? piece : decoder.decode(piece, { stream: true });
      if (!take(text)) return undefined;
    }
    take(decoder.decode());
    io.line?.(spell(say("cli.progress.make", { file })));
  } catch (error) {
    return error instanceof TypeError ? say("importing.error.notUtf8") : say(...reasonOf(error));
  }
  return undefined;
}
function refuse({ errors }: ImportRefused, file: string, { json }: Call, io: Io): ExitCode {
  const problems = errors.map((message) => ({ path: "", message }));
  io.err(
    json
      ? jsonLine({ file, ok: false, errors: errors.map((it) => spell(it)) })
      : asText(refusedLines({ file, problems })),
  );
  return 2;
}

const importJson = (
  file: string,
  { document, counts, assumed, leftOut, approximated, warnings }: Imported,
) => ({
  file,
  ok: true,
  counts,
  assumed: assumed.map(entryJson),
  leftOut: leftOut.map(entryJson),
  approximated: approximated.map(entryJson),
  warnings: warnings.map(entryJson),
  drawing: document,
});

/** Ids that a line names; a newer file may have changed in thousands of things. */
const MOST_IDS = 20;

/** What a newer file has otherwise than the drawing of the older one. */
function changeLines(since: string, { added, gone, changed }: Changes): string[] {
  if (added.length + gone.length + changed.length === 0)
    return ["", spell(say("cli.import.sinceNothing", { since }))];
  const row = (key: "added" | "gone" | "changed", ids: readonly string[]): string[] =>
    ids.length === 0
      ? []
      : wrapped(
          "  ",
          spell(
            say(`cli.import.since.${key}`, {
              count: ids.length,
              ids: ids.slice(0, MOST_IDS).join(", ") + (ids.length > MOST_IDS ? ", …" : ""),
            }),
          ),
          "    ",
        );
  return [
    "",
    spell(say("cli.import.since", { since })),
    ...row("added", added),
    ...row("gone", gone),
    ...row(
      "changed",
      changed.map(({ id, keys }) => `${id} (${keys.join(", ")})`),
    ),
  ];
}

const SIDES = ["assumed", "leftOut", "approximated", "warnings"] as const;

const wroteLines = (file: string, out: string | undefined): string[] =>
  out === undefined ? [] : ["", spell(say("cli.wrote", { file, out }))];

function importLines(file: string, done: Imported): string[] {
  const { points, elements } = done.counts;
  const count = Object.values(elements).reduce((sum, it) => sum + it, 0);
  return [
    spell(say("cli.import.done", { file, points, elements: count })),
    ...SIDES.flatMap((side) => ledgerLines(side, done[side])),
  ];
}
