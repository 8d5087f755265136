import {
  type Assessment,
  type Called,
  calledSo,
  cutAround,
  checksTold,
  jobOf,
  nameIn,
  partTold,
  pieceTold,
  type PointId,
  pieceAround,
  pointName,
  spell as spellIn,
  type StillhotDocument,
  type VerifiedCutting,
} from "../core";
import { type Call, type Flag, UsageError } from "./command";
import { NotDone } from "./eachFile";
import { wrapped } from "./print";
import { say, speech, spell } from "./words";

/** The flags by which a piece is asked for. */
export const AROUND: Flag = { name: "--around", value: "NAME" };

/** How many openings on each way are kept around a place. */
export const OPENINGS: Flag = { name: "--openings", value: "N" };

/** What holds without `--openings`: a device to open beside the work, and the next one should it fail. */
const USUAL_OPENINGS = 2;

/** How many openings are asked for; throws a usage error for anything but a small whole number. */
export function openingsOf({ flags }: Call): number {
  const asked = flags.get("--openings");
  if (asked === undefined) return USUAL_OPENINGS;
  if (typeof asked === "string" && /^\d{1,3}$/.test(asked)) return Number(asked);
  throw new UsageError(spell(say("cli.cut.noOpenings", { openings: String(asked) })));
}

/** The place that is called so; throws where nothing or more than one is. */
export function placeCalled(document: StillhotDocument, asked: string): Called {
  const found = calledSo(document, asked, (name) => spellIn(name, speech().catalogue));
  const [only] = found;
  if (only === undefined) throw new NotDone(spell(say("cli.around.none", { name: asked })));
  if (found.length === 1) return only;
  const told = found.slice(0, MOST_TOLD).map(({ id, points }) => nameAndId(document, id, points));
  throw new NotDone(
    spell(
      say(found.length > MOST_TOLD ? "cli.around.manyMore" : "cli.around.many", {
        name: asked,
        count: found.length,
        names: told.join("; "),
        more: found.length - MOST_TOLD,
      }),
    ),
  );
}

const MOST_TOLD = 20;

function nameAndId(document: StillhotDocument, id: string, points: readonly PointId[]): string {
  const isThing = Object.hasOwn(document.system.elements, id) || Object.hasOwn(document.system.points, id);
  const name = isThing ? nameIn(document, id) : pointName(document, points[0]!);
  return `${spellIn(name, speech().catalogue)} (${id})`;
}

/** The drawing with no other work points than those at a place. */
export const withWorkAt = (document: StillhotDocument, { points }: Called): StillhotDocument => ({
  ...document,
  job: {
    ...document.job,
    workPoints: Object.fromEntries(
      Object.entries(jobOf(document).workPoints).filter(([, { at }]) => points.includes(at)),
    ),
  },
});

/**
 * Of what was found in the whole drawing, what the piece around a place holds. It was asked of the whole: nothing in it
 * rests on the piece being equal.
 */
export function assessedAround(
  document: StillhotDocument,
  { points }: Called,
  openings: number,
  { conductors, elements, workPoints, findings }: Assessment,
): Assessment {
  const { system } = cutAround(document, points, openings).document;
  const isKept = (where: string): boolean => {
    const [id = ""] = where.split("/");
    const isGone =
      (Object.hasOwn(document.system.points, id) && !Object.hasOwn(system.points, id)) ||
      (Object.hasOwn(document.system.elements, id) && !Object.hasOwn(system.elements, id));
    return !isGone;
  };
  const kept = <Row>(rows: Readonly<Record<string, Row>>) =>
    Object.fromEntries(Object.entries(rows).filter(([id]) => isKept(id)));
  return {
    conductors: kept(conductors),
    elements: kept(elements),
    workPoints,
    findings: findings.filter(({ where }) => isKept(where)),
  };
}

/** The piece of a drawing around what is called so. */
export const pieceCalled = (document: StillhotDocument, asked: string, openings: number): VerifiedCutting =>
  pieceAround(document, placeCalled(document, asked).points, openings);

/** What was cut, for scripts. */
export const cutJson = (whole: StillhotDocument, { parts, ...rest }: VerifiedCutting) => ({
  openings: rest.openings,
  parts: parts.map((it) => {
    const { what, why, can } = partTold(whole, it);
    return { ...it, what: spell(what), why: spell(why), can: spell(can) };
  }),
  compared: rest.compared,
  workPointsLeft: rest.workPointsLeft,
  stepsLeft: rest.stepsLeft,
  scenarioLeft: rest.scenarioLeft,
});

/** What was cut and why it cannot matter, or when it can, for a person. */
export function cutLines(whole: StillhotDocument, cutting: VerifiedCutting): string[] {
  const { parts } = cutting;
  if (parts.length === 0) return [spell(pieceTold(cutting))];
  return [
    spell(pieceTold(cutting)),
    ...parts.flatMap((it) => {
      const { what, why, can } = partTold(whole, it);
      return [
        "",
        ...wrapped("  ", spell(what), "    "),
        ...wrapped("    ", spell(why), "    "),
        ...wrapped("    ", spell(can), "    "),
      ];
    }),
    "",
    ...checksTold(whole, cutting).flatMap((it) => wrapped("  ", spell(it), "    ")),
  ];
}
