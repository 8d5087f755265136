import type { StepVerb } from "../../core";
import { firstOf, t } from "../words/words";

/** Why a step is taken that no rule asks for by itself. */
export const whyOf = (verb: StepVerb): string => firstOf(`lesson.why.${verb}`) ?? t("lesson.why");
