import { PARTS_OF_A_SCENE, type StillhotDocument } from "../../core";
import { isAtOnce } from "./atOnce";

/**
 * Works out what the picture of a large drawing is made from, each part in a turn of the page's thread of its own, so that it
 * answers in between. What is worked out is remembered with the drawing.
 */
export async function readied(document: StillhotDocument): Promise<void> {
  if (isAtOnce(document)) return;
  for (const part of PARTS_OF_A_SCENE) {
    await new Promise((done) => setTimeout(done));
    part(document);
  }
  await new Promise((done) => setTimeout(done));
}
