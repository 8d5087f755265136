import { droppedBy, isLoad, isOwners, isTransformer, lowSidesOf } from "../../devices";
import { amended, complete, hasNeutral, perObject, type StillhotDocument, type System } from "../../document";
import { type ConductorId, conductorId, type ElementId, lettersOf, type PointId } from "../../terms";
import { legsOf, phaseConductors } from "../job/hands";
import { joinedTo } from "../job/joined";
import { elementsOf } from "../job/names";
import { madeSound } from "./ending";

import { type Opening, openingsOf } from "./openings";
import { alsoForced, wish, type Wishes } from "./wishes";

/**
 * Wishes with all that hangs on a bank which the work changes off it, where one switch or one customer's main does that; the
 * same object where there is none. It opens first and closes last: volts and rotation are read with nothing on the bank, and
 * a machine that starts by itself stays behind it. The bank's low side, on which hands are too, is held all the same. Where
 * several customers hang on a bank for themselves it takes more operations than it is worth: their volts are read as soon as
 * there are some.
 */
export const withCustomersOff = (document: StillhotDocument, wishes: Wishes): Wishes =>
  banksBehindOne(document).reduce((sum, { key, lowSide }) => {
    const off = wish(alsoForced(sum, [key]), "first", key);
    return lowSide === undefined || off.groundsAt.includes(lowSide)
      ? off
      : { ...off, groundsAt: [...off.groundsAt, lowSide] };
  }, wishes);

interface BankBehindOne {
  /** key of the opening */
  readonly key: string;
  readonly lowSide: PointId | undefined;
}

const banksBehindOne = perObject((document: StillhotDocument): readonly BankBehindOne[] => {
  const { system } = document;
  const { all } = openingsOf(document);
  return [...madeSound(document)].flatMap((id): BankBehindOne[] => {
    const bank = Object.hasOwn(system.elements, id) ? complete(system.elements[id]!) : undefined;
    if (bank === undefined || !isTransformer(bank)) return [];
    const [side, ...others] = lowSidesOf(bank);
    if (side === undefined || others.length > 0) return [];
    const legs = legsOf(side);
    if (!isLoaded(system, id, legs)) return [];
    const [nearest] = all
      .filter((it) => it.element !== id && (isOwners(it) || droppedBy(it) === "load"))
      .flatMap((it) => {
        const left = amended(system, [{ remove: [it.element] }]);
        return isAtLowSide(system, it, legs) && !isLoaded(left, id, legs)
          ? [{ key: it.key, kept: joinedTo(left, legs).size }]
          : [];
      })
      .sort((a, b) => a.kept - b.kept);
    if (nearest === undefined) return [];
    const at = side.at as PointId;
    return [{ key: nearest.key, lowSide: hasNeutral(system, at) ? at : undefined }];
  });
});

/** Whether an opening takes all of its phases off what these legs feed. */
function isAtLowSide(system: System, { element, phases }: Opening, legs: readonly ConductorId[]): boolean {
  const { from, phases: own = "" } = complete(system.elements[element]!) as {
    from?: string;
    phases?: string;
  };
  if (from === undefined || phases !== own) return false;
  const fed = joinedTo(system, legs);
  return lettersOf(own).some((letter) => fed.has(conductorId(from, letter)));
}

/** Whether a load or another bank hangs on some legs as a drawing stands. */
function isLoaded(system: System, bank: ElementId, legs: readonly ConductorId[]): boolean {
  const fed = joinedTo(system, legs);
  return elementsOf(system).some(
    ([id, it]) =>
      id !== bank && (isLoad(it) || isTransformer(it)) && phaseConductors(it).some((own) => fed.has(own)),
  );
}
