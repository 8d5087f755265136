import {
  assess,
  intoSvg,
  linkTo,
  type PaletteName,
  PALETTES,
  sceneOf,
  type StillhotDocument,
  toSvg,
  wayFor,
} from "../core";
import { UsageError } from "./command";
import { eachFile } from "./eachFile";
import { writeBeside, writeTo } from "./output";
import { counts, findingJson, findingLines } from "./print";
import { say, speech, spell } from "./words";

/** The drawing as an SVG file, painted as it stands, that carries the drawing and so opens again. */
export const draw = eachFile({
  name: "draw",
  summary: "cli.draw.summary",
  help: "cli.draw.help",
  flags: [
    { name: "--out", short: "-o", value: "OUT" },
    { name: "--palette", value: "NAME" },
  ],
  before({ files, flags }) {
    writeTo(flags, files, ".svg");
    paletteOf(flags.get("--palette"));
  },
  async answer({ file, document, warnings, call }) {
    const svg = intoSvg(svgOf(document, paletteOf(call.flags.get("--palette"))), linkTo(document));
    const out = writeTo(call.flags, call.files, ".svg")?.(file);
    if (out !== undefined) await writeBeside(out, svg);
    const ok = !warnings.some(counts);
    return {
      ok,
      json: { file, ok, findings: warnings.map(findingJson), ...(out === undefined ? { svg } : { out }) },
      lines: [spell(say("cli.wrote", { file, out: out ?? "" }))],
      ...(out === undefined ? { raw: svg } : {}),
      aside: call.json ? [] : warnings.flatMap((it) => findingLines(it, file, document)),
    };
  },
});

function svgOf(document: StillhotDocument, palette: PaletteName): string {
  const title = document.title === "" ? say("page.untitled") : say("page.title", { title: document.title });
  const scene = sceneOf(document, statesOf(document), {
    way: wayFor(document),
    catalogue: speech().catalogue,
  });
  return toSvg(scene, PALETTES[palette], {
    title: spell(title),
    description: spell(say("page.caution")),
  });
}

/** States and volts only: a picture does not need what could happen, which takes longer to find. */
function statesOf({ job: _, ...withoutJob }: StillhotDocument) {
  return assess(withoutJob);
}

function paletteOf(name: string | true | undefined): PaletteName {
  if (name === undefined) return "sun";
  if (typeof name === "string" && Object.hasOwn(PALETTES, name)) return name as PaletteName;
  throw new UsageError(
    spell(say("cli.draw.noPalette", { name: String(name), known: Object.keys(PALETTES).join(", ") })),
  );
}
