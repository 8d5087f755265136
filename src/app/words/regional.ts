import { type Catalogue, inWordsOf, type RegionId, REGIONS } from "../../core";
import { english } from "./sentences";

/** Every sentence in the words of a region of English, apart from the rest, as another language is. */
export function englishOf(region: RegionId): Catalogue {
  const known = made.get(region);
  if (known !== undefined) return known;
  const fresh = inWordsOf(REGIONS[region], english);
  made.set(region, fresh);
  return fresh;
}

/** Each is made once: what was drawn with its sentences is drawn with the same ones. */
const made = new Map<RegionId, Catalogue>();
