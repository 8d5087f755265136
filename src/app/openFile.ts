import { isRefusal, readAttempt, readLearner, type StillhotDocument } from "../core";
import type { Session } from "./session/session.svelte";
import type { ToldSides } from "./share/toldSides";
import { readFile } from "./share/readFile";
import * as Told from "./share/Told.svelte";
import { say } from "./words/catalogue";
import { later } from "./words/later";
import { told } from "./words/words";

/** What was done to make a drawing of another program's file, and what tells it. */
export interface Brought {
  readonly Told: typeof Told.default;
  readonly name: string;
  readonly sides: ToldSides;
}

/** What opening a file does with the app. */
export interface FileTaker {
  readonly session: Session;
  /** @returns whether it is shown now as a drawing */
  readonly receive: (document: StillhotDocument, fileName?: string) => Promise<boolean>;
  readonly go: (place: string) => void;
  readonly onbad: (problems: readonly string[]) => void;
  readonly onbrought: (it: Brought) => void;
}

/** Opens a file by what it is: a drawing, a scenario, a map or a model, what a learner did, or an attempt. */
export async function open(file: File, taker: FileTaker): Promise<void> {
  const { session, receive, onbad, onbrought } = taker;
  if (await isOfLearning(file, taker)) return;
  const opened = await readFile(file).catch((error: unknown) => ({ problems: [String(error)] }));
  if ("problems" in opened) {
    if (opened.problems.length === 0) return session.say(say("app.openStopped", { name: file.name }));
    onbad(opened.problems);
    session.say(say("app.cannotOpen", { name: file.name }), "refusal");
    return;
  }
  // A drawing made of another program's file does not stand in that file.
  const standsIn = opened.sides === undefined ? file.name : undefined;
  if (!(await receive(opened.document, standsIn))) return;
  session.say(say("app.opened", { name: file.name }));
  if (opened.warnings.length > 0) session.say(Told.warnedOf(opened.warnings), "refusal");
  if (opened.sides !== undefined) onbrought({ Told: Told.default, name: file.name, sides: opened.sides });
}

/** Letters at the start that tell what somebody did from a drawing. */
const PEEK = 200;

/** Takes in what a learner did, or shows an attempt. @returns whether the file is one of these */
async function isOfLearning(file: File, { onbad, go }: FileTaker): Promise<boolean> {
  const [, is] =
    /^\s*\{\s*"format":\s*"stillhot-(learner|attempt)"/.exec(await file.slice(0, PEEK).text()) ?? [];
  if (is === undefined) return false;
  const text = await file.text();
  if (is === "learner") {
    const read = readLearner(text);
    if (isRefusal(read)) onbad([told(read.refused)]);
    else {
      const { takeInTried } = await later(() => import("./keep/learned"));
      await takeInTried(read);
      go("learn");
    }
    return true;
  }
  const attempt = readAttempt(text);
  if (isRefusal(attempt)) onbad([told(attempt.refused)]);
  else {
    const { study } = await later(() => import("./scenario/study.svelte"));
    study.reviewed = [attempt];
    go("debrief");
  }
  return true;
}
