import type { Catalogue } from "../../message";
import { app } from "./app";
import { cli } from "./cli";
import { company } from "./company";
import { devices } from "./devices";
import { document } from "./document";
import { drawing } from "./drawing";
import { forms } from "./forms";
import { hazard } from "./hazard";
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
export const french: Catalogue = {
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
  ...keep,
  ...views,
  ...company,
};
