import {
  type Assessment,
  type ElementId,
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

/** The picture of a drawing, with its outline in words for whoever does not see it. */
export function svgOf(
  document: StillhotDocument,
  assessment: Assessment | undefined,
  { palette = "sun", lit = [] }: { palette?: PaletteName; lit?: readonly ElementId[] } = {},
): string {
  const title = document.title === "" ? t("page.untitled") : t("page.title", { title: document.title });
  const description = [
    ...outlineOf(document).map((row) => rowWords(document, assessment ?? {}, row)),
    t("page.caution"),
  ].join("\n");
  const scene = sceneOf(document, assessment, { way: wayFor(document), catalogue: speech.catalogue });
  return toSvg(scene, PALETTES[palette], { title, description, lit });
}
