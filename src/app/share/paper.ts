import { flushSync, mount, unmount } from "svelte";
import type { Assessment, StillhotDocument } from "../../core";
import Legend from "../canvas/Legend.svelte";
import { dayAndTime, t } from "../words/words";
import { svgOf } from "../worker/drawnSvg";

let legend: Record<string, unknown> | undefined;

/**
 * Puts the drawing onto the page that is printed, in black on white, with what it is and how far it can be trusted. It is
 * made while the browser asks for it, so that the browser's own Print gives the same.
 */
export function ontoPaper(
  document: StillhotDocument,
  assessment: Assessment | undefined,
  letters: string,
  verdict: string,
) {
  const page = window.document;
  if (legend !== undefined) void unmount(legend);
  page.getElementById("paper")?.remove();
  const paper = page.createElement("section");
  paper.id = "paper";
  const say = (tag: string, words: string) => {
    const element = page.createElement(tag);
    element.textContent = words;
    paper.append(element);
  };
  say("h1", document.title === "" ? t("page.untitled") : document.title);
  say("p", t("share.printed", { when: dayAndTime(Date.now()), letters }));
  if (verdict !== "") say("p", verdict);
  // Our own markup, every label in it escaped: parsed as a picture, so that a script in it would not run either.
  const picture = new DOMParser().parseFromString(
    svgOf(document, assessment, { palette: "paper" }),
    "image/svg+xml",
  );
  paper.append(page.adoptNode(picture.documentElement));
  const key = page.createElement("div");
  key.className = "key";
  paper.append(key);
  legend = mount(Legend, { target: key, props: { colours: "paper" } });
  flushSync();
  say("p", t("verdict.caution"));
  page.body.append(paper);
}
