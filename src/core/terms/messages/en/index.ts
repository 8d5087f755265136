import { devices } from "./devices";
import { document } from "./document";
import { hazard } from "./hazard";
import { procedure } from "./procedure";
import { planner } from "./planner";
import { plan } from "./plan";
import { drawing } from "./drawing";
import { scenario } from "./scenario";
import { sheet } from "./sheet";
import { teach } from "./teach";
import { steps } from "./steps";
import { app } from "./app";
import { cli } from "./cli";
import { keep } from "./keep";
import { views } from "./views";

/** Every sentence that a person reads, in English. Another language or a region's words are another file of this shape. */
export const english = {
  ...devices,
  ...document,
  ...hazard,
  ...procedure,
  ...planner,
  ...plan,
  ...drawing,
  ...sheet,
  ...teach,
  ...steps,
  ...scenario,
  ...app,
  ...cli,
  ...keep,
  ...views,
} as const;

export type MessageKey = keyof typeof english;
