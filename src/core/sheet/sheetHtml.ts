import { bestWay, escapeXml, type Note, PALETTES, placeNotes, type Scene, sceneOf, toSvg } from "../drawing";
import { jobOf, type StillhotDocument } from "../document";
import {
  type Catalogue,
  english,
  type Message,
  type MessageGaps,
  type MessageKey,
  say,
  spell,
} from "../terms";
import { ruleName } from "../procedure";
import { atScale } from "./atScale";
import { type BriefedStep, type BriefedWork, type Briefing, briefingOf } from "./briefing";
import { sheetStyle } from "./sheetStyle";
import { marginSentence, notAllSentences } from "./sentences";

/** A printed code as the rows of its modules, with the quiet zone that scanners ask for; true is dark. */
export type CodePicture = readonly (readonly boolean[])[];

export interface SheetOptions {
  /** the words, English where it is left out */
  readonly catalogue?: Catalogue;
  /** what a browser calls their language, so that it is read aloud in it */
  readonly language?: string;
  /** when the drawing was last changed, as a person writes it; a blank to fill in where it is left out */
  readonly drawnAt?: string;
  /** eight letters that name this drawing as it is */
  readonly fingerprint?: string;
  /** codes that open the drawing, in their order */
  readonly codes?: readonly CodePicture[];
  /** letters a third larger, one column of steps, as many pages as it takes */
  readonly largePrint?: boolean;
}

/** Ways to go live that the sheet tells one by one. */
const MOST_WAYS = { usual: 6, long: 4 };
/** From so many steps on the drawing gives way to them. */
const MANY_STEPS = 36;

/** Room for the drawing [px at the drawing's own size of letters]. */
interface Room {
  readonly width: number;
  readonly height: number;
}
const ROOM: Readonly<Record<"usual" | "long", Room>> = {
  usual: { width: 630, height: 270 },
  long: { width: 340, height: 160 },
};
/** Up to this width there is room for the ways to go live beside the drawing [px]. */
const MOST_BESIDE = 340;
const LEAST_SCALE = 0.05;

/**
 * The job-briefing sheet as one page of HTML that needs nothing else: no script, no font, no picture from elsewhere. Made
 * to be printed in black and white on Letter or A4, and ticked with a pencil.
 */
export function sheetHtml(document: StillhotDocument, options: SheetOptions = {}): string {
  const sheet = new Sheet(briefingOf(document), options);
  return sheet.html();
}

class Sheet {
  private readonly catalogue: Catalogue;

  constructor(
    private readonly briefing: Briefing,
    private readonly options: SheetOptions,
  ) {
    this.catalogue = options.catalogue ?? english;
  }

  html(): string {
    const { document } = this.briefing;
    const title = this.word("sheet.document", { title: document.title || this.plain("drawing.untitled") });
    return [
      "<!doctype html>",
      `<html lang="${escapeXml(this.options.language ?? "en")}"><head><meta charset="utf-8"><title>${title}</title>`,
      `<meta name="viewport" content="width=device-width">`,
      `<style>${sheetStyle(this.options.largePrint === true)}</style></head>`,
      `<body class="${this.isLong ? "long" : ""}"><table class="sheet"><thead><tr><td>${this.header()}</td></tr></thead>`,
      `<tbody><tr><td>`,
      this.verdicts(),
      this.pictureAndWays(),
      this.subjects(),
      this.broken(),
      this.steps(),
      this.doubts(),
      this.crew(),
      `</td></tr></tbody></table></body></html>`,
      "",
    ].join("\n");
  }

  private header(): string {
    const { document } = this.briefing;
    const blank = "____________";
    const cell = (key: MessageKey, value: string | undefined) =>
      `<span>${this.word(key)} <b>${value === undefined || value === "" ? blank : escapeXml(value)}</b></span>`;
    return [
      `<header><h1>${escapeXml(document.title) || this.word("drawing.untitled")}</h1><p class="task">${escapeXml(jobOf(document).task)}</p>`,
      `<p class="facts">${cell("sheet.place", undefined)}${cell("sheet.date", undefined)}${cell("sheet.drawnAt", this.options.drawnAt)}`,
      `${cell("sheet.fingerprint", this.options.fingerprint)}<span>${this.word("sheet.page")}</span></p></header>`,
    ].join("");
  }

  private verdicts(): string {
    const { works } = this.briefing;
    if (works.length === 0)
      return `<section class="verdict"><p>${this.word("sheet.noWorkPoint")}</p></section>`;
    return works.map((it) => this.verdict(it)).join("\n");
  }

  private verdict({ id, name, place, conductors, asDrawn, atWork }: BriefedWork): string {
    const where = `${this.say(name)} (${escapeXml(id)}: ${escapeXml([...conductors].join(" "))}, ${this.say(place)})`;
    const line = (when: string, report: typeof asDrawn) =>
      `<p><b>${when}: ${this.word(`say.verdict.${report.verdict}`)}.</b> ${this.standing(report)}</p>`;
    const { verdict } = atWork?.report ?? asDrawn;
    return [
      `<section class="verdict ${verdict}"><h2>${where}</h2>`,
      line(this.word("sheet.now"), asDrawn),
      ...(atWork === undefined ? [] : [line(this.word("sheet.atWork", { n: atWork.n }), atWork.report)]),
      `</section>`,
    ].join("");
  }

  private standing(report: BriefedWork["asDrawn"]): string {
    const margin = report.verdict === "live" ? [] : [marginSentence(report)];
    return [...margin, ...notAllSentences(report), say("sheet.notSeen", { count: report.assumptions })]
      .map((it) => this.say(it))
      .join(" ");
  }

  /** A drawing that leaves room has the ways to go live beside it, a wider one below it. */
  private pictureAndWays(): string {
    const scene = this.scene();
    const { svg, width } = this.fitted(scene, ROOM[this.isLong ? "long" : "usual"]);
    return `<div class="${width <= MOST_BESIDE ? "beside" : ""}">${this.picture(svg)}<div>${this.ways()}</div></div>`;
  }

  private get isLong(): boolean {
    const { steps, restoring } = this.briefing;
    return this.options.largePrint !== true && steps.length + restoring.length > MANY_STEPS;
  }

  private scene(): Scene {
    const { document, assessment, controls } = this.briefing.shown;
    const way = bestWay(document, ROOM[this.isLong ? "long" : "usual"]);
    const scene = sceneOf(document, assessment, { way, catalogue: this.catalogue });
    return framed(scene, new Set(controls), this.isLong);
  }

  private picture(svg: string): string {
    const { n, assessment } = this.briefing.shown;
    const states = new Set(Object.values(assessment.conductors).map(({ state }) => state));
    const legend = (
      ["unknown", "energized", "backfed", "induced", "faulted", "isolated", "grounded"] as const
    )
      .filter((it) => states.has(it))
      .map((it) => this.word(`sheet.legend.${it}`));
    const caption = n === undefined ? this.word("sheet.pictureNow") : this.word("sheet.pictureAtWork", { n });
    return `<figure>${svg}<figcaption>${caption}. ${[...legend, this.word("sheet.legend.marks")].join(" · ")}</figcaption></figure>`;
  }

  /** The drawing as large as its room lets it be; letters and lines have their own size whatever the scale. */
  private fitted(scene: Scene, room: Room): { readonly svg: string; readonly width: number } {
    const controls = new Set<string>(this.briefing.shown.controls);
    const drawn = (scale: number) => {
      const svg = toSvg(withRoom(atScale(scene, scale), controls), PALETTES.paper, {
        title: this.plain("drawing.title", { title: this.briefing.document.title }),
        description: this.plain("drawing.caution"),
        scale,
      });
      const [, width, height] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
      return {
        svg,
        width: Number(width),
        fits: Number(width) <= room.width && Number(height) <= room.height,
      };
    };
    let best = drawn(1);
    let [small, large] = [LEAST_SCALE, 1];
    for (let round = 0; round < 7 && !(round === 0 && best.fits); round++) {
      const scale = round === 0 ? small : (small + large) / 2;
      const tried = drawn(scale);
      if (round === 0 || tried.fits) [best, small] = [tried, scale];
      else large = scale;
    }
    return best;
  }

  private ways(): string {
    const most = MOST_WAYS[this.isLong ? "long" : "usual"];
    return this.briefing.works
      .filter(({ ways }) => ways.length > 0)
      .map(({ name, ways }) => {
        const shown = ways.slice(0, most);
        const rest = ways.slice(most);
        const more =
          rest.length === 0
            ? ""
            : `<p>${this.word("sheet.moreWays", { count: rest.length, strength: Math.min(...rest.map((it) => it.strength)) })}</p>`;
        const several = this.briefing.works.length > 1 ? `: ${this.say(name)}` : "";
        return `<section class="ways"><h2>${this.word("sheet.ways")}${several}</h2><ol>${shown
          .map(
            ({ sentences, control, isOpen }) =>
              `<li${isOpen ? ' class="open"' : ""}>${sentences.map((it) => this.say(it)).join(" ")} <b>${this.word("sheet.control", { control })}</b></li>`,
          )
          .join("")}</ol>${more}</section>`;
      })
      .join("\n");
  }

  private subjects(): string {
    const { hazards, procedures, precautions, controls, equipment, unseen } = this.briefing;
    const subject = (key: MessageKey, told: readonly Message[]) =>
      `<section><h3>${this.word(key)}</h3><ul>${(told.length === 0 ? [say("sheet.nothingDrawn")] : told)
        .map((it) => `<li>${this.say(it)}</li>`)
        .join("")}</ul></section>`;
    return [
      `<section class="subjects"><h2>${this.word("sheet.subjects")}</h2><div class="columns">`,
      subject("sheet.hazards", hazards),
      subject("sheet.procedures", procedures),
      subject("sheet.precautions", precautions),
      subject("sheet.controls", controls),
      subject("sheet.equipment", equipment),
      subject("sheet.unseen", unseen.length === 0 ? [say("sheet.allSeen")] : unseen),
      `</div><p>${this.word("sheet.emergency")}</p></section>`,
    ].join("\n");
  }

  private broken(): string {
    const { broken } = this.briefing;
    if (broken.length === 0) return "";
    return `<section class="broken"><h2>${this.word("sheet.broken")}</h2><ul>${broken
      .map(({ n, finding: { severity, message } }) =>
        n === undefined
          ? this.word("sheet.brokenEnd", { severity, message })
          : this.word("sheet.brokenStep", { severity, n, message }),
      )
      .map((it) => `<li>${it}</li>`)
      .join("")}</ul></section>`;
  }

  private steps(): string {
    const { steps, restoring } = this.briefing;
    const none = steps.length + restoring.length === 0;
    // Of many steps the second hold of a kind is named, and asks what the first one spells out.
    const told = new Set<string>();
    const step = (it: BriefedStep): string => {
      const isTold = this.isLong && it.hold !== undefined && told.has(it.hold);
      if (it.hold !== undefined) told.add(it.hold);
      return this.step(it, isTold);
    };
    return [
      `<section class="steps"><h2>${this.word("sheet.steps")}</h2>`,
      none
        ? `<p>${this.word("sheet.noSteps")}</p>${'<div class="step"></div>'.repeat(this.options.largePrint ? 7 : 12)}`
        : "",
      `<div class="flow">`,
      ...steps.map(step),
      ...(restoring.length === 0 ? [] : [`<h2 class="restoring">${this.word("sheet.restoring")}</h2>`]),
      ...restoring.map(step),
      `</div></section>`,
    ].join("\n");
  }

  private step({ n, act, seen, hold, isPlain }: BriefedStep, isHoldTold: boolean): string {
    const after = this.isLong && isPlain ? "" : ` <i>${this.say(seen)}</i>`;
    const stop =
      hold === undefined
        ? ""
        : `<div class="hold"><b>${this.word(`hold.title.${hold}`)}</b>${isHoldTold ? "" : ` ${this.word(`hold.${hold}`)}`} <span class="signed">${this.word("hold.signed")}</span></div>`;
    return `${stop}<div class="step"><span class="n">${n}</span><span class="box"></span><span class="act">${this.say(act)}${after}</span><span class="time"></span><span class="who"></span></div>`;
  }

  /** Where this job is not judged as others are. */
  private doubts(): string {
    const { limits, rulesOff } = this.briefing;
    const section = (key: MessageKey, items: readonly string[]) =>
      items.length === 0
        ? ""
        : `<section><h2>${this.word(key)}</h2><ul>${items.map((it) => `<li>${it}</li>`).join("")}</ul></section>`;
    return [
      section(
        "sheet.limits",
        limits.map((it) => this.say(it)),
      ),
      section(
        "sheet.rulesOff",
        rulesOff.map(({ id, reason }) => this.word("sheet.ruleOff", { name: ruleName(id), id, reason })),
      ),
    ].join("\n");
  }

  private crew(): string {
    const { codes = [], fingerprint = "" } = this.options;
    const rows = this.isLong ? 3 : 5;
    const cells = `<td></td><td></td><td></td>`;
    return [
      `<section class="crew"><div><h2>${this.word("sheet.crew")}</h2><table><tr><th>${this.word("sheet.name")}</th><th>${this.word("sheet.signature")}</th><th>${this.word("sheet.allClear")}</th></tr>`,
      `<tr>${cells}</tr>`.repeat(rows),
      `</table><p>${this.word("sheet.briefed")}</p><p class="caution">${this.word("drawing.caution")}</p></div>`,
      ...codes.map(
        (code, index) =>
          `<figure class="code">${codeSvg(code)}<figcaption>${this.word("sheet.code", {
            fingerprint,
            part: codes.length === 1 ? "" : say("sheet.codePart", { n: index + 1, count: codes.length }),
          })}</figcaption></figure>`,
      ),
      `</section>`,
    ].join("\n");
  }

  /** Words of the catalogue; whatever fills their gaps is text, never markup. */
  private word(key: MessageKey, gaps?: MessageGaps): string {
    return escapeXml(this.plain(key, gaps));
  }

  private plain(key: MessageKey, gaps?: MessageGaps): string {
    return spell(say(key, gaps), this.catalogue);
  }

  private say(message: Message | string): string {
    return escapeXml(spell(message, this.catalogue));
  }
}

/**
 * What keeps the work isolated: its name, position and tags find room before any other note, in one frame. A small drawing has no other
 * names: they would push it aside.
 */
function framed(scene: Scene, controls: ReadonlySet<string>, isSmall: boolean): Scene {
  const isName = ({ kind }: Note) => kind === "elementLabel" || kind === "pointLabel";
  const pieces = scene.pieces.map((piece) => {
    const isControl = piece.owner.of === "element" && controls.has(piece.owner.id);
    if (!isControl) return isSmall ? { ...piece, notes: piece.notes.filter((it) => !isName(it)) } : piece;
    const name = piece.notes.find(({ kind }) => kind === "elementLabel");
    if (name === undefined) return piece;
    // Name, position and tags in one frame: apart from each other they could be taken for a neighbour's.
    const marks = piece.notes.filter(({ kind }) => kind === "open" || kind === "tag");
    const told = marks.map((it) => it.text);
    const text = [name.text, ...told].join(" · ");
    const lines =
      name.lines === undefined
        ? {}
        : { lines: [...name.lines, ...(told.length === 0 ? [] : [told.join(" · ")])] };
    const others = piece.notes.filter((it) => it !== name && !marks.includes(it));
    return { ...piece, notes: [{ ...name, kind: "open" as const, text, ...lines }, ...others] };
  });
  return { ...scene, pieces };
}

/** Moves framed names that found no room farther out, until they do. */
function withRoom(scene: Scene, controls: ReadonlySet<string>): Scene {
  let roomy = scene;
  for (let round = 0; round < 6; round++) {
    const placed = new Set(placeNotes(roomy, 1).map(({ note }) => note));
    const isMissing = (note: Note) =>
      note.owner.of === "element" && controls.has(note.owner.id) && note.kind === "open" && !placed.has(note);
    if (!roomy.pieces.some(({ notes }) => notes.some(isMissing))) break;
    const pieces = roomy.pieces.map((piece) => ({
      ...piece,
      notes: piece.notes.map((it) => (isMissing(it) ? { ...it, gap: it.gap + 16 } : it)),
    }));
    roomy = { ...roomy, pieces };
  }
  return roomy;
}

/** Millimetres of one module: what a phone reads from paper at arm's length. */
const MODULE = 0.4;

function codeSvg(rows: CodePicture): string {
  let path = "";
  rows.forEach((row, y) => {
    for (let x = row.indexOf(true); x !== -1; x = row.indexOf(true, x)) {
      const end = row.indexOf(false, x);
      const run = (end === -1 ? row.length : end) - x;
      path += `M${x} ${y}h${run}v1h-${run}z`;
      x += run;
    }
  });
  const whole = rows.length;
  const wide = Math.max(20, whole * MODULE);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${whole} ${whole}" style="width:${wide.toFixed(1)}mm" shape-rendering="crispEdges" aria-hidden="true"><path fill="#fff" d="M0 0h${whole}v${whole}H0z"/><path d="${path}"/></svg>`;
}
