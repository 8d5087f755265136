import { asHeard, labelIn, type StillhotDocument, structureOf, structuresAround, isPole } from "../../core";
import { type MessageKey } from "../words/catalogue";
import { t } from "../words/words";

/**
 * What the next structure is likely to be called: one on from the last, *Pole 31* after *Pole 30*, or one down where the
 * numbers run down on the way here.
 *
 * @param key catalogue key of its label, where the last one says no number
 */
export function nextNumber(document: StillhotDocument, from: string, key: MessageKey): string {
  const { system } = document;
  const heard = new Set(
    [system.structures ?? {}, system.points, system.elements]
      .flatMap((map) => Object.keys(map))
      .map((id) => asHeard(labelIn(system, id))),
  );
  const here = structureOf(system, from);
  const [, stem, digits, rest] = NUMBERED.exec(here?.label.split(",")[0] ?? "") ?? [];
  if (
    here === undefined ||
    stem === undefined ||
    digits === undefined ||
    key !== "grow.poleLabel" ||
    !isPole(here)
  )
    return firstFree((n) => t(key, { n }), 1, 1, heard);
  const before = structuresAround(system, here).flatMap((it) => {
    const [, its, number] = NUMBERED.exec(it.label.split(",")[0]!) ?? [];
    return its === stem && number !== undefined ? [Number(number)] : [];
  });
  const isDown = before.includes(Number(digits) + 1) && !before.includes(Number(digits) - 1);
  const step = isDown && Number(digits) > 1 ? -1 : 1;
  return firstFree((n) => `${stem}${n}${rest ?? ""}`, Number(digits) + step, step, heard);
}

const NUMBERED = /^(.*?)(\d{1,6})(\D*)$/s;

function firstFree(
  label: (n: number) => string,
  first: number,
  step: number,
  heard: ReadonlySet<string>,
): string {
  for (let n = first; n > 0; n += step) if (!heard.has(asHeard(label(n)))) return label(n);
  return firstFree(label, 1, 1, heard);
}
