import { company } from "./company";
import { devices } from "./devices";
import { document } from "./document";
import { doubts } from "./doubts";
import { drill } from "./drill";
import { drawing } from "./drawing";
import { hazard } from "./hazard";
import { edits } from "./edits";
import { importing } from "./importing";
import { naming } from "./naming";
import { notation } from "./notation";
import { piece } from "./piece";
import { planner } from "./planner";
import { procedure } from "./procedure";
import { scenario } from "./scenario";
import { sheet } from "./sheet";
import { steps } from "./steps";
import { verbs } from "./verbs";

/** The same in French: a file for each English one, which `messages.test.ts` holds complete. */
export const frenchBesideRules = unbroken({
  ...company,
  ...drill,
  ...devices,
  ...document,
  ...doubts,
  ...drawing,
  ...hazard,
  ...naming,
  ...notation,
  ...piece,
  ...planner,
  ...procedure,
  ...scenario,
  ...edits,
  ...importing,
  ...sheet,
  ...steps,
  ...verbs,
});

/** French sets a space before a colon and its like, at which no line may end. */
export function unbroken<Sentences extends Readonly<Record<string, string>>>(
  sentences: Sentences,
): Sentences {
  const spaced = Object.entries(sentences).map(([key, it]) => [
    key,
    it.replaceAll(/ (?=[:;?!»])|(?<=«) /g, "\u00a0"),
  ]);
  return Object.fromEntries(spaced) as Sentences;
}
