import { atScale, bestLie, escapeXml, PALETTES, type Scene, sceneOf, toSvg, TYPEFACE } from "../../drawing";
import { conductorsOf, type StillhotDocument } from "../../document";
import { type StateColumn, STATES } from "../../hazard";

import {
  type Catalogue,
  conductorId,
  type ElementId,
  type Message,
  type MessageGaps,
  type MessageKey,
  type PointId,
  say,
  spell,
} from "../../terms";
import { largestThatFits, type Room } from "./fitting";
import type { DrillOption, DrillQuestion } from "./question";

/** The words of a worksheet, and whether it is the questions or the key. */
export interface WorksheetOptions {
  readonly catalogue: Catalogue;
  readonly language?: string;
  /** the answers on a page of their own, in place of the questions */
  readonly isKey?: boolean;
  /** how the sheet is made again, for who marks it */
  readonly made: string;
}

/** Room for a drawing [px]: two questions a page. */
const ROOM = { width: 660, height: 300 };

/** A sheet of questions, or its key, as one page of HTML that needs nothing else; made to be printed in black and white. */
export function worksheetHtml(questions: readonly DrillQuestion[], options: WorksheetOptions): string {
  const { catalogue, language = "en", isKey = false, made } = options;
  const spelled = (it: string | Message): string =>
    escapeXml(spell(typeof it === "string" ? say("name.plain", { name: it }) : it, catalogue));
  const word = (key: MessageKey, gaps?: MessageGaps) => spelled(say(key, gaps));
  const title = word(isKey ? "drill.key" : "drill.worksheet");
  const sections = questions.map((it, index) =>
    isKey ? keyOf(it, index + 1, spelled) : questionOf(it, index + 1, spelled, catalogue),
  );
  return [
    "<!doctype html>",
    `<html lang="${escapeXml(language)}"><head><meta charset="utf-8"><title>${title}: ${escapeXml(made)}</title>`,
    `<meta name="viewport" content="width=device-width"><style>${SHEET_STYLE}</style></head><body>`,
    `<header><h1>${title}</h1><p>${escapeXml(made)}</p>`,
    isKey ? "" : `<p>${word("drill.name")} ____________________ ${word("drill.date")} ______________</p>`,
    "</header>",
    ...sections,
    `<p class="caution">${word("page.caution")}</p></body></html>`,
    "",
  ].join("\n");
}

type Spelling = (it: string | Message) => string;

function questionOf(question: DrillQuestion, n: number, spelled: Spelling, catalogue: Catalogue): string {
  const { options, answering, ask } = question;
  return [
    `<section><h2>${n}. ${spelled(ask)} <small>${spelled(say(`drill.how.${answering}`))}</small></h2>`,
    `<figure>${pictureOf(question, catalogue)}</figure>`,
    `<ol class="${options.length > 6 ? "many" : ""}">`,
    ...options.map(
      (it, index) => `<li><span class="box"></span><b>${letterOf(index)}</b> ${spelled(it.text)}</li>`,
    ),
    `</ol></section>`,
  ].join("\n");
}

function keyOf({ ask, options, answer, why }: DrillQuestion, n: number, spelled: Spelling): string {
  return [
    `<section><h2>${n}. ${spelled(ask)}</h2>`,
    `<p><b>${answer.map((index) => `${letterOf(index)} (${spelled(options[index]!.text)})`).join(", ")}</b></p>`,
    `<ul>${why.map((it) => `<li>${spelled(it)}</li>`).join("")}</ul></section>`,
  ].join("\n");
}

/** What an option is called: a, b, c … */
export const letterOf = (index: number): string => String.fromCharCode(97 + index);

/** The drawing without any state, with a letter where each option stands. */
function pictureOf({ document, options, about, ask }: DrillQuestion, catalogue: Catalogue): string {
  const letters = options.map((it, index) => [it, letterOf(index)] as const);
  const marks = about === undefined ? letters : [...letters, [{ text: "", at: about }, "?"] as const];
  return plainPicture(document, ROOM, ask, catalogue, (scene) =>
    marks.map(([it, letter]) => markAt(scene, it, letter)).join(""),
  );
}

/** A drawing in black on white, as large as its room lets it be, that says nothing of what is live. */
export function plainPicture(
  document: StillhotDocument,
  room: Room,
  description: Message,
  catalogue: Catalogue,
  marksOn: (scene: Scene) => string = () => "",
): string {
  const scene = sceneOf(document, undefined, {
    ...bestLie(document, room),
    catalogue,
    states: statesLeftOut(document),
  });
  return largestThatFits(room, (scale) => {
    const small = atScale(scene, scale);
    const svg = toSvg(small, PALETTES.paper, {
      title: spell(say("page.title", { title: document.title }), catalogue),
      description: spell(description, catalogue),
      scale,
    });
    return svg.replace("</svg>", `${marksOn(small)}</svg>`);
  });
}

/** Every conductor drawn as plainly as a neutral: its state is what is asked. */
function statesLeftOut({ system }: StillhotDocument): StateColumn {
  const ids = [...conductorsOf(system)].flatMap(([point, letters]) =>
    letters.map((letter) => conductorId(point as PointId, letter)),
  );
  return { ids, states: new Uint8Array(ids.length).fill(STATES.indexOf("neutral")) };
}

const MARK = 9;

function markAt(scene: Scene, { at }: DrillOption, letter: string): string {
  const piece =
    at === undefined ? undefined : (scene.points.get(at as PointId) ?? scene.elements.get(at as ElementId));
  if (piece === undefined) return "";
  const [x, y] = [(piece.box.left + piece.box.right) / 2, (piece.box.top + piece.box.bottom) / 2].map(
    Math.round,
  );
  return [
    `<circle cx="${x}" cy="${y}" r="${MARK}" fill="#fff" stroke="#000" stroke-width="2"/>`,
    `<text x="${x}" y="${y! + 4}" text-anchor="middle" font-size="13" font-weight="bold">${letter}</text>`,
  ].join("");
}

/** How a sheet of practice looks on paper. */
export const SHEET_STYLE = `
@page { margin: 12mm }
* { box-sizing: border-box }
body { margin: 0 auto; max-width: 186mm; color: #000; background: #fff; font: 11pt/1.25 ${TYPEFACE} }
header { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: baseline; gap: 0 6mm; border-bottom: 0.7mm solid #000 }
h1 { font-size: 1.35em; margin: 0 } h2 { font-size: 1.05em; margin: 4mm 0 1mm } h2 small { font-weight: normal } header p { margin: 0 }
section { break-inside: avoid } figure { margin: 0; text-align: center } figure svg { max-width: 100%; height: auto }
ol, ul { list-style: none; margin: 1mm 0; padding: 0 } ul { list-style: disc; padding-left: 5mm } li { margin: 0.8mm 0; break-inside: avoid }
ol:not(.many) { columns: 2; column-gap: 6mm } ol.many { font-size: 10pt; columns: 2; column-gap: 6mm }
.box { display: inline-block; width: 4mm; height: 4mm; border: 0.5mm solid #000; margin-right: 2mm; vertical-align: -0.6mm }
.caution { font-weight: bold }
@media screen { body { padding: 4mm } } @media screen and (max-width: 150mm) { ol:not(.many), ol.many { columns: 1 } }
`.replaceAll("\n", "");
