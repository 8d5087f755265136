import { type DrillQuestion, letterOf, type Owner } from "../../core";
import { told } from "../words/words";

/** What an option says: a name of the drawing, or a sentence. */
export const optionWords = ({ text }: DrillQuestion["options"][number]): string =>
  typeof text === "string" ? text : told(text);

/** Some options in a row, each with its letter. */
export const optionsInARow = ({ options }: DrillQuestion, some: readonly number[]): string =>
  some.map((it) => `${letterOf(it)} ${optionWords(options[it]!)}`).join("; ");

/** What shows the reason on the drawing, once the question is answered. */
export const litOf = (question: DrillQuestion | undefined, isAnswered: boolean): readonly Owner[] =>
  question === undefined || !isAnswered ? [] : question.lit.map((id): Owner => ({ of: "element", id }));
