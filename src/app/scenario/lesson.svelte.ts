import { isOver, resumed, type StillhotDocument } from "../../core";
import { readText } from "../share/files";
import { findRunTime, type LessonVersion, toldOf } from "./runTime";
import { study } from "./study.svelte";

let isBegun = false;

/** The scenario that lies in a lesson package beside the page. */
const LESSON_FILE = "lesson.stillhot.json";

/**
 * Begins the lesson of a package, or goes on with it: the scenario is played, and the learning system around the page is
 * told how it goes. Where there is none, it is played all the same.
 */
export async function beginLesson(): Promise<void> {
  if (isBegun) return;
  isBegun = true;
  const version = document.documentElement.dataset["lesson"] as LessonVersion;
  const answer = await fetch(new URL(LESSON_FILE, document.baseURI));
  const opened = readText(await answer.text());
  if (!("document" in opened)) return;
  const system = findRunTime(version);
  const ofLearner = version === "1.2" ? "cmi.core.student_name" : "cmi.learner_name";
  study.learner = system?.get(ofLearner) ?? "";
  const before = takeUp(opened.document, system?.get("cmi.suspend_data") ?? "");
  if (system === undefined) return;
  let ended = false;
  $effect.root(() => {
    $effect(() => {
      const { attempt } = study;
      if (attempt === undefined || ended) return;
      for (const [element, value] of toldOf(version, attempt, before)) system.set(element, value);
      system.commit();
    });
  });
  window.addEventListener("pagehide", () => {
    if (ended) return;
    ended = true;
    system.end();
  });
}

/** @returns seconds that were spent in sessions before this one */
function takeUp(scenario: StillhotDocument, remembered: string): number {
  const attempt = remembered === "" ? undefined : resumed(scenario, remembered);
  if (attempt === undefined || isOver(attempt)) {
    study.offer(scenario);
    return 0;
  }
  const seconds = attempt.log.at(-1)?.at ?? 0;
  study.take({ id: crypto.randomUUID(), attempt, seconds });
  return seconds;
}
