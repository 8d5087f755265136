import {
  atScale,
  bestLie,
  type Lie,
  type Box,
  boxAt,
  escapeXml,
  type Note,
  NOTE_SIZES,
  overlaps,
  overviewOf,
  PALETTES,
  placeNotes,
  type Plate,
  type PlatePiece,
  type Scene,
  sceneOf,
  symbolLengthAt,
  toSvg,
  unionOf,
  isLabel,
  linesAlone,
  tellsStanding,
} from "../drawing";
import { jobOf, type StillhotDocument } from "../document";
import { type Catalogue, type Message, type MessageGaps, type MessageKey, say, spell } from "../terms";
import { ruleName } from "../procedure";
import type { CodePicture } from "./code";
import { type BriefedStep, type BriefedWork, type Briefing, briefingOf } from "./briefing";
import { asWritten, recordOf, type TimeOf, timesOfSteps } from "./record";
import { sheetStyle } from "./sheetStyle";
import { marginSentence, notAllSentences } from "./sentences";

/** The words of a sheet, and what stands on it beside what the drawing says. */
export interface SheetOptions {
  /** the words */
  readonly catalogue: Catalogue;
  /** what a browser calls their language, so that it is read aloud in it */
  readonly language?: string;
  /** when the drawing was last changed, as a person writes it; a blank to fill in where it is left out */
  readonly drawnAt?: string;
  /** how the moments of what was done are written; as in the file, in universal time, where it is left out */
  readonly timeOf?: TimeOf;
  /** eight letters that name this drawing as it is */
  readonly fingerprint?: string;
  /** codes that open the drawing, in their order */
  readonly codes?: readonly CodePicture[];
  /** letters a third larger, one column of steps, as many pages as it takes */
  readonly largePrint?: boolean;
}

/** A drawing as it fits into its room. */
interface Fitted {
  readonly svg: string;
  readonly width: number;
  readonly scale: number;
  /** length of a symbol [px] */
  readonly symbol: number;
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
  usual: { width: 624, height: 380 },
  long: { width: 624, height: 150 },
};
/** Up to this width there is room for the ways to go live beside the drawing [px]. */
const MOST_BESIDE = 340;
/** A symbol that takes five millimetres on paper, and one that is large enough there [px]. */
const LEAST_SYMBOL = 19;
const LARGE_SYMBOL = 26;
/** A drawing that is larger is shown from afar, so high, and about the work place at this scale. */
const FROM_AFAR_HEIGHT = 110;
const ENLARGED = 0.5;
/** Letters of ten points on paper [px]. */
const LETTERS = { label: 12, small: 12 };
/** Room for such letters in a type that is wider than ours, as a part of the room that a drawing keeps for its letters. */
const IN_ANY_TYPE = (1.15 * LETTERS.label) / NOTE_SIZES.label;
/** Labels need room of their own, which is known once they have their places. */
const FITTING_ROUNDS = 6;

/**
 * The job-briefing sheet as one page of HTML that needs nothing else: no script, no font, no picture from elsewhere. Made
 * to be printed in black and white on Letter or A4, and ticked with a pencil.
 */
export function sheetHtml(document: StillhotDocument, options: SheetOptions): string {
  const sheet = new Sheet(briefingOf(document), options);
  return sheet.html();
}

class Sheet {
  private readonly catalogue: Catalogue;
  private readonly timeOf: TimeOf;
  /** when each step was done, by its number */
  private readonly times: ReadonlyMap<number, string>;

  constructor(
    private readonly briefing: Briefing,
    private readonly options: SheetOptions,
  ) {
    this.catalogue = options.catalogue;
    this.timeOf = options.timeOf ?? asWritten;
    this.times = timesOfSteps(briefing.document, this.timeOf);
  }

  html(): string {
    const { document } = this.briefing;
    const title = this.word("sheet.document", { title: document.title || this.plain("page.untitled") });
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
      this.record(),
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
      `<header><h1>${escapeXml(document.title) || this.word("page.untitled")}</h1><p class="task">${escapeXml(jobOf(document).task)}</p>`,
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

  private verdict({ where, asDrawn, atWork }: BriefedWork): string {
    const line = (when: string, report: typeof asDrawn) =>
      `<p><b>${when}: ${this.word(`say.verdict.${report.verdict}`)}.</b> ${this.standing(report)}</p>`;
    const { verdict } = atWork?.report ?? asDrawn;
    return [
      `<section class="verdict ${verdict}"><h2>${this.say(where)}</h2>`,
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
    const room = ROOM[this.isLong ? "long" : "usual"];
    const whole = this.whole(room);
    const svg = whole?.svg ?? this.fromAfarAndNear(room);
    const isBeside = whole !== undefined && whole.width <= MOST_BESIDE;
    return `<div class="${isBeside ? "beside" : ""}">${this.picture(svg)}<div>${this.ways()}</div></div>`;
  }

  private get isLong(): boolean {
    const { steps, restoring } = this.briefing;
    return this.options.largePrint !== true && steps.length + restoring.length > MANY_STEPS;
  }

  /** All of the drawing, with room for its letters at the scale at which it fits; nothing where it could not be read so. */
  private whole(room: Room): Fitted | undefined {
    const { document } = this.briefing.shown;
    const first = bestLie(document, room, () => 1.2 * IN_ANY_TYPE, LARGE_SYMBOL);
    const scene = this.scene(first);
    // With its letters it has less room than without: of a whole feeder none needs to be placed to know.
    if (symbolLengthAt(scene, scaleFor(scene.bounds, room.width, room.height)) < LEAST_SYMBOL)
      return undefined;
    let best = this.fitted(scene, room);
    for (
      let { text } = first, round = 0;
      round < FITTING_ROUNDS && text * best.scale < IN_ANY_TYPE;
      round++
    ) {
      text = (text + IN_ANY_TYPE / best.scale) / 2;
      const roomier = this.fitted(this.scene({ ...first, text }), room);
      if (roomier.symbol < LEAST_SYMBOL) break;
      best = roomier;
    }
    return best.symbol < LEAST_SYMBOL ? undefined : best;
  }

  private scene(lie: Lie): Scene {
    const { document, assessment, controls } = this.briefing.shown;
    const scene = sceneOf(document, assessment, { ...lie, catalogue: this.catalogue });
    return framed(scene, new Set(controls));
  }

  /**
   * All of a large drawing with a mark a structure, and under it the work places as large as they must be to be read; many
   * steps leave no room for these.
   */
  private fromAfarAndNear(room: Room): string {
    const scene = this.scene({ way: "across", text: IN_ANY_TYPE / ENLARGED });
    // No part of it is shown near: all of the room is its own.
    if (scene.plates.length === 0)
      return this.fitted(linesAlone(scene, scaleFor(scene.bounds, room.width, room.height)), room).svg;
    const overview = overviewOf(scene);
    const afarScale = scaleFor(overview.bounds, room.width - 180, FROM_AFAR_HEIGHT - 60);
    const { svg: afar } = this.fitted(overview, room, afarScale);
    const nearby = { width: room.width - 30, height: room.height - FROM_AFAR_HEIGHT };
    if (this.isLong) return afar;
    const near = nearWork(scene, { width: nearby.width / ENLARGED, height: nearby.height / ENLARGED });
    if (near === undefined) return afar;
    const scale = Math.min(ENLARGED, scaleFor(near.part, nearby.width, nearby.height));
    return `${afar}${this.fitted(near.scene, room, scale, near.part).svg}`;
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
  private fitted(
    scene: Scene,
    room: Room,
    from = scaleFor(scene.bounds, room.width, room.height),
    part?: Box,
  ): Fitted {
    let scale = from;
    for (let round = 0; ; round++) {
      const svg = this.drawn(scene, scale, part);
      const [, width = 1, height = 1] = (/viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(
        Number,
      );
      if (round === FITTING_ROUNDS || (width <= room.width && height <= room.height))
        return { svg, width, scale, symbol: symbolLengthAt(scene, scale) };
      scale *= 0.99 * Math.min(room.width / width, room.height / height);
    }
  }

  private drawn(scene: Scene, scale: number, part?: Box): string {
    const controls = new Set<string>(this.briefing.shown.controls);
    return toSvg(withRoom(atScale(scene, scale), controls), PALETTES.paper, {
      title: this.plain("page.title", { title: this.briefing.document.title }),
      description: this.plain("page.caution"),
      scale,
      sizes: LETTERS,
      ...(part === undefined ? {} : { part: boxAt(part, scale) }),
    });
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
      this.headings(),
      `<div class="flow">`,
      ...steps.map(step),
      ...(restoring.length === 0 ? [] : [`<h2 class="restoring">${this.word("sheet.restoring")}</h2>`]),
      ...restoring.map(step),
      `</div></section>`,
    ].join("\n");
  }

  /** What is written in each column of the steps, over both columns of the page. */
  private headings(): string {
    const [number, act, time, who] = (["number", "act", "time", "who"] as const).map((it) =>
      this.word(`sheet.column.${it}`),
    );
    const row = (hidden: string) =>
      `<div class="step"${hidden}><span class="n">${number}</span><span></span><span>${act}</span><span>${time}</span><span>${who}</span></div>`;
    return `<div class="heads">${row("")}${this.options.largePrint ? "" : row(' aria-hidden="true"')}</div>`;
  }

  private step({ n, act, seen, hold, isPlain, visit }: BriefedStep, isHoldTold: boolean): string {
    const after = this.isLong && isPlain ? "" : ` <i>${this.say(seen)}</i>`;
    const stop =
      hold === undefined
        ? ""
        : `<div class="hold"><b>${this.word(`hold.title.${hold}`)}</b>${isHoldTold ? "" : ` ${this.word(`hold.${hold}`)}`} <span class="signed">${this.word("hold.signed")}</span></div>`;
    const going =
      visit === undefined ? "" : `<h3 class="visit"><span class="box"></span>${this.say(visit)}</h3>`;
    return `${going}${stop}<div class="step"><span class="n">${n}</span><span class="box">${this.times.has(n) ? "×" : ""}</span><span class="act">${this.say(act)}${after}</span><span class="time">${escapeXml(this.times.get(n) ?? "")}</span><span class="who"></span></div>`;
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

  private record(): string {
    const lines = recordOf(this.briefing.document, this.timeOf);
    if (lines.length === 0) return "";
    return `<section class="record"><h2>${this.word("sheet.record")}</h2><ol>${lines
      .map((it) => `<li>${this.say(it)}</li>`)
      .join("")}</ol></section>`;
  }

  private crew(): string {
    const { codes = [], fingerprint = "" } = this.options;
    const rows = this.isLong ? 3 : 5;
    const cells = `<td></td><td></td><td></td>`;
    return [
      `<section class="crew"><div><h2>${this.word("sheet.crew")}</h2><table><tr><th>${this.word("sheet.name")}</th><th>${this.word("sheet.signature")}</th><th>${this.word("sheet.allClear")}</th></tr>`,
      `<tr>${cells}</tr>`.repeat(rows),
      `</table><p>${this.word("sheet.briefed")}</p><p class="caution">${this.word("page.caution")}</p></div>`,
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
 * What keeps the work isolated: its name, position and tags find room before any other note, in one frame.
 */
function framed(scene: Scene, controls: ReadonlySet<string>): Scene {
  const pieces = scene.pieces.map((piece) => {
    const isControl = piece.owner.of === "element" && controls.has(piece.owner.id);
    if (!isControl) return piece;
    const name = piece.notes.find(isLabel);
    if (name === undefined) return piece;
    // Name, position and tags in one frame: apart from each other they could be taken for a neighbour's.
    const marks = piece.notes.filter(tellsStanding);
    const told = marks.map((it) => it.text);
    const text = [name.text, ...told].join(" · ");
    const lines =
      name.lines === undefined
        ? {}
        : { lines: [...name.lines, ...(told.length === 0 ? [] : [told.join(" · ")])] };
    const others = piece.notes.filter((it) => it !== name && !marks.includes(it));
    const { shorter: _, ...whole } = name;
    return { ...piece, notes: [{ ...whole, kind: "open" as const, text, ...lines }, ...others] };
  });
  return { ...scene, pieces };
}

/** The plates at which work is done and as many about them as there is room for [units], and what runs on from these. */
function nearWork(scene: Scene, room: Room): { scene: Scene; part: Box } | undefined {
  const worked = [...scene.works.values()].map(({ spine }) => spine);
  const isAt = ({ plate: { box } }: PlatePiece) => worked.some(([x, y]) => isWithin(x!, y!, box));
  const first = scene.plates.filter(isAt).map((it) => it.plate.box);
  const middle = unionOf(first);
  if (middle === undefined) return undefined;
  const away = ({ box }: Plate) =>
    Math.max(0, box.left - middle.right, middle.left - box.right) +
    Math.max(0, box.top - middle.bottom, middle.top - box.bottom);
  const others = scene.plates.filter((it) => !isAt(it)).map((it) => it.plate);
  let shown = middle;
  for (const { box } of others.sort((a, b) => away(a) - away(b))) {
    const wider: Box = unionOf([shown, box])!;
    if (wider.right - wider.left <= room.width && wider.bottom - wider.top <= room.height) shown = wider;
  }
  const pieces = scene.pieces.flatMap((piece) => {
    if (!overlaps(piece.box, shown)) return [];
    const { spine } = piece;
    const isInside = isWithin(spine[0]!, spine[1]!, shown) && isWithin(spine.at(-2)!, spine.at(-1)!, shown);
    return [isInside ? piece : { ...piece, notes: [] }];
  });
  return { scene: { ...scene, pieces }, part: shown };
}

/** At which scale a box fits into so much room, and never larger than its own size. */
function scaleFor(box: Box | undefined, width: number, height: number): number {
  if (box === undefined) return 1;
  const { left, right, top, bottom } = box;
  return Math.min(1, width / Math.max(1, right - left), height / Math.max(1, bottom - top));
}

const isWithin = (x: number, y: number, { left, right, top, bottom }: Box): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** Moves framed names that found no room farther out, until they do. */
function withRoom(scene: Scene, controls: ReadonlySet<string>): Scene {
  let roomy = scene;
  for (let round = 0; round < 6; round++) {
    const placed = new Set(placeNotes(roomy, 1, LETTERS).map(({ note }) => note));
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
const QUIET = 4;

function codeSvg({ size, dark }: CodePicture): string {
  let path = "";
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) {
      if (!dark(x, y)) continue;
      let run = 1;
      while (x + run < size && dark(x + run, y)) run++;
      path += `M${x + QUIET} ${y + QUIET}h${run}v1h-${run}z`;
      x += run;
    }
  const whole = size + 2 * QUIET;
  const wide = Math.max(20, whole * MODULE);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${whole} ${whole}" style="width:${wide.toFixed(1)}mm" shape-rendering="crispEdges" aria-hidden="true"><path fill="#fff" d="M0 0h${whole}v${whole}H0z"/><path d="${path}"/></svg>`;
}
