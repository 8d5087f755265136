import type { Catalogue } from "../../message";
import { app } from "./app";
import { cli } from "./cli";
import { company } from "./company";
import { devices } from "./devices";
import { document } from "./document";
import { drawing } from "./drawing";
import { forms } from "./forms";
import { hazard } from "./hazard";
import { importing } from "./importing";
import { keep } from "./keep";
import { panels } from "./panels";
import { plan } from "./plan";
import { planner } from "./planner";
import { procedure } from "./procedure";
import { scenario } from "./scenario";
import { sheet } from "./sheet";
import { steps } from "./steps";
import { teach } from "./teach";
import { views } from "./views";

/** Every sentence in French: a file for each English one, which `french.test.ts` holds complete. */
export const french: Catalogue = unbroken({
  ...devices,
  ...document,
  ...hazard,
  ...procedure,
  ...planner,
  ...plan,
  ...drawing,
  ...sheet,
  ...teach,
  ...forms,
  ...steps,
  ...scenario,
  ...app,
  ...panels,
  ...cli,
  ...importing,
  ...keep,
  ...views,
  ...company,
});

/** French sets a space before a colon and its like, at which no line may end. */
function unbroken(sentences: Catalogue): Catalogue {
  const spaced = Object.entries(sentences).map(([key, it]) => [
    key,
    it.replaceAll(/ (?=[:;?!»])|(?<=«) /g, "\u00a0"),
  ]);
  return Object.fromEntries(spaced) as Catalogue;
}
