import { company } from "./company";
import { doubts } from "./doubts";
import { drill } from "./drill";
import { first } from "./first";
import { edits } from "./edits";
import { hazard } from "./hazard";
import { importing } from "./importing";
import { notation } from "./notation";
import { piece } from "./piece";
import { planner } from "./planner";
import { procedure } from "./procedure";
import { scenario } from "./scenario";
import { sheet } from "./sheet";
import { steps } from "./steps";
import { verbs } from "./verbs";

/**
 * What the core says in English, but for the rules, whose sentences stand beside them. Another language is another file of
 * this shape; the app and the command line have sentences of their own beside it.
 */
export const englishBesideRules = {
  ...first,
  ...edits,
  ...importing,
  ...company,
  ...doubts,
  ...hazard,
  ...drill,
  ...notation,
  ...piece,
  ...planner,
  ...procedure,
  ...scenario,
  ...sheet,
  ...steps,
  ...verbs,
} as const;
