import { MOST_VARIANT, type StillhotDocument, variantNumber, variantOf, writeDocument } from "../core";
import { type Call, type Command, UsageError } from "./command";
import { isRefused, readInput } from "./input";
import { wholeNumber } from "./numbers";
import { write, writeTo } from "./output";
import { asText, jsonLine, refusedLines } from "./print";
import { say, spell } from "./words";

/** Variants of a scenario by number or by name: one file for a class, another scenario for each of it. */
export const variant: Command = {
  name: "variant",
  summary: "cli.variant.summary",
  help: "cli.variant.help",
  flags: [
    { name: "--number", value: "N" },
    { name: "--name", value: "WHO" },
    { name: "--count", value: "N" },
    { name: "--out", short: "-o", value: "OUT" },
  ],
  takesFiles: true,
  async run({ files, flags, json }, io) {
    const [file] = files;
    if (file === undefined || files.length > 1) throw new UsageError(spell(say("cli.variant.oneFile")));
    const numbers = numbersOf(flags);
    const input = await readInput(file, io);
    if (isRefused(input)) {
      io.err(asText(refusedLines(input)));
      return 2;
    }
    if (input.document.scenario === undefined) {
      io.err(asText([spell(say("cli.variant.noScenario", { file }))]));
      return 2;
    }
    const stem = file === "-" ? "scenario" : file.replace(/(\.stillhot)?\.json$/i, "");
    const named = numbers.map((number) => ({ number, name: `${stem}-${number}` }));
    const placeOf = writeTo(
      flags,
      named.map(({ name }) => name),
      ".stillhot.json",
    );
    if (placeOf === undefined && numbers.length > 1)
      throw new UsageError(spell(say("cli.variant.needsFolder")));
    for (const { number, name } of named)
      await give({ document: variantOf(input.document, number), number, out: placeOf?.(name) });
    return 0;

    async function give({ document, number, out }: Made) {
      if (out !== undefined) await write(out, writeDocument(document));
      const { title } = document;
      if (json)
        io.out(jsonLine({ number, title, ...(out === undefined ? { scenario: document } : { out }) }));
      else if (out === undefined) io.out(writeDocument(document));
      else io.out(asText([spell(say("cli.wrote", { file: `${number}: ${title}`, out }))]));
    }
  },
};

interface Made {
  readonly document: StillhotDocument;
  readonly number: number;
  readonly out: string | undefined;
}

function numbersOf(flags: Call["flags"]): readonly number[] {
  const name = flags.get("--name");
  if (typeof name === "string") {
    if (flags.has("--number") || flags.has("--count")) throw new UsageError(spell(say("cli.variant.either")));
    const number = variantNumber(name);
    if (number === 0) throw new UsageError(spell(say("cli.variant.noName", { name })));
    return [number];
  }
  const first = wholeNumber(flags, "--number", { from: 1, to: MOST_VARIANT, otherwise: 1 });
  const count = wholeNumber(flags, "--count", { from: 1, to: 100, otherwise: 1 });
  if (first + count - 1 > MOST_VARIANT)
    throw new UsageError(spell(say("cli.variant.tooHigh", { most: MOST_VARIANT })));
  return Array.from({ length: count }, (_, index) => first + index);
}
