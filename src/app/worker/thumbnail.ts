import {
  atScale,
  overviewOf,
  type PaletteName,
  PALETTES,
  sceneOf,
  type StillhotDocument,
  toSvg,
} from "../../core";
import { speech } from "../words/language.svelte";
import { assess } from "./solve";

/** Size of a small picture [px]. */
const ROOM = { width: 300, height: 130 };
/** Marks and their numbers reach so far beyond the line [px]. */
const BESIDE = { width: 110, height: 60 };
/** Of more elements than these the states are not worked out for a small picture. */
const MANY = 300;

/** A small picture of a drawing: its structures as marks with their states. An image, so that nothing in it can act. */
export function thumbnailOf(document: StillhotDocument, palette: PaletteName): string {
  const { job: _, ...asDrawn } = document;
  const isSmall = Object.keys(document.system.elements).length <= MANY;
  const states = isSmall ? assess(asDrawn) : undefined;
  const scene = overviewOf(sceneOf(asDrawn, states, { catalogue: speech.catalogue }));
  const { left, right, top, bottom } = scene.bounds ?? { left: 0, right: 1, top: 0, bottom: 1 };
  const scale = Math.min(
    0.5,
    (ROOM.width - BESIDE.width) / (right - left),
    (ROOM.height - BESIDE.height) / (bottom - top),
  );
  const svg = toSvg(atScale(scene, scale), PALETTES[palette], { title: "", description: "", scale });
  return `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
}
