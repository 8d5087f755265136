import {
  type Assessment,
  codeTexts,
  type ElementId,
  intoSvg,
  linkTo,
  type PaletteName,
  PALETTES,
  sceneOf,
  type StillhotDocument,
  toSvg,
  wayFor,
} from "../../core";
import { speech } from "../words/language.svelte";
import { outlineOf, rowWords } from "../words/outline";
import { t } from "../words/words";
import { type Code, codeOf } from "./codes";
import { intoPng } from "./picture";

/** The picture of a drawing, with its outline in words for whoever does not see it. */
export function svgOf(
  document: StillhotDocument,
  assessment: Assessment | undefined,
  { palette = "sun", lit = [] }: { palette?: PaletteName; lit?: readonly ElementId[] } = {},
): string {
  const title = document.title === "" ? t("drawing.untitled") : t("drawing.title", { title: document.title });
  const description = [
    ...outlineOf(document).map((row) => rowWords(document, assessment ?? {}, row)),
    t("drawing.caution"),
  ].join("\n");
  const scene = sceneOf(document, assessment, { way: wayFor(document), catalogue: speech.catalogue });
  return toSvg(scene, PALETTES[palette], { title, description, lit });
}

/** The picture as an SVG that opens again. */
export const svgFile = (
  document: StillhotDocument,
  assessment: Assessment | undefined,
  lit: readonly ElementId[] = [],
): string => intoSvg(svgOf(document, assessment, { lit }), linkTo(document));

/** Pixels along the longer side of a PNG at most: beyond it browsers give an empty picture. */
const LONGEST_SIDE = 8192;
const SCALE = 2;

/** The picture as a PNG that opens again. */
export async function pngFile(
  document: StillhotDocument,
  assessment: Assessment | undefined,
): Promise<Uint8Array> {
  const url = URL.createObjectURL(new Blob([svgOf(document, assessment)], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const scale = Math.min(SCALE, LONGEST_SIDE / Math.max(image.naturalWidth, image.naturalHeight));
    const canvas = window.document.createElement("canvas");
    canvas.width = Math.round(image.naturalWidth * scale);
    canvas.height = Math.round(image.naturalHeight * scale);
    canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
    if (blob === null) throw new Error(t("share.noPicture"));
    return intoPng(new Uint8Array(await blob.arrayBuffer()), linkTo(document));
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** The codes that open a drawing, one to four; none where it is too large for paper. */
export const codesOf = (
  document: StillhotDocument,
  fingerprint: string,
  address: string,
): Promise<readonly Code[]> => Promise.all(codeTexts(document, fingerprint, address).map(codeOf));
