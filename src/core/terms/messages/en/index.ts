import { cli } from "./cli";
import { company } from "./company";
import { first } from "./first";
import { forms } from "./forms";
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

/** Every sentence that a person reads, in English. Another language or a region's words are another file of this shape. */
export const english = {
  ...first,
  ...panels,
  ...procedure,
  ...planner,
  ...plan,
  ...sheet,
  ...teach,
  ...forms,
  ...steps,
  ...scenario,
  ...cli,
  ...importing,
  ...keep,
  ...views,
  ...company,
} as const;
