import { isOwners, isTransformer, lowSidesOf } from "../../devices";
import { complete, hasNeutral, perObject, type StillhotDocument } from "../../document";
import { conductorId, lettersOf, type PointId } from "../../terms";
import { legsOf } from "../job/hands";
import { joinedTo } from "../job/joined";
import { madeSound } from "./ending";

import { openingsOf } from "./openings";
import { alsoForced, wish, type Wishes } from "./wishes";

/** Phases by which what turns on a bank knows its way round. */
const ROTATING = 3;

/**
 * Wishes with the main off of a customer who alone hangs on a three-phase bank that the work changes; the same object where
 * there is none. It opens first and closes last: volts and rotation are read with nothing on the bank, and a machine of his
 * that starts by itself stays behind it. The bank's low side, on which hands are too, is held all the same.
 */
export const withCustomersOff = (document: StillhotDocument, wishes: Wishes): Wishes =>
  banksOfOneCustomer(document).reduce((sum, { main, lowSide }) => {
    const off = wish(alsoForced(sum, [main]), "first", main);
    return lowSide === undefined || off.groundsAt.includes(lowSide)
      ? off
      : { ...off, groundsAt: [...off.groundsAt, lowSide] };
  }, wishes);

interface BankOfOne {
  /** key of the opening */
  readonly main: string;
  readonly lowSide: PointId | undefined;
}

const banksOfOneCustomer = perObject((document: StillhotDocument): readonly BankOfOne[] => {
  const { system } = document;
  const { all } = openingsOf(document);
  return [...madeSound(document)].flatMap((id): BankOfOne[] => {
    const bank = Object.hasOwn(system.elements, id) ? complete(system.elements[id]!) : undefined;
    if (bank === undefined || !isTransformer(bank)) return [];
    const [side, ...others] = lowSidesOf(bank);
    if (side === undefined || others.length > 0 || side.letters.length !== ROTATING) return [];
    const fed = joinedTo(system, legsOf(side));
    const mains = all.filter((opening) => {
      if (!isOwners(opening)) return false;
      const { from, phases } = complete(system.elements[opening.element]!) as {
        from: string;
        phases: string;
      };
      return lettersOf(phases).some((letter) => fed.has(conductorId(from, letter)));
    });
    const [main, ...more] = mains;
    if (main === undefined || more.length > 0) return [];
    const at = side.at as PointId;
    return [{ main: main.key, lowSide: hasNeutral(system, at) ? at : undefined }];
  });
});
