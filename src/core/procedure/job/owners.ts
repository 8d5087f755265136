import { jobOf, type StillhotDocument } from "../../document";
import { elementOf } from "./names";
import type { JobState } from "./state";

/** Whose tag hangs on a thing, or whose set it is, where that is not the crew of the job; nothing where it is. */
export function anotherOwnerOf({ document }: JobState, id: string | undefined): string | undefined {
  const { tagged, taggedBy, by } = (elementOf(document.system, id) ?? {}) as {
    tagged?: boolean;
    taggedBy?: string;
    by?: string;
  };
  const owner = (tagged === true ? taggedBy : undefined) || by;
  return owner === undefined || owner === "" || owner === jobOf(document).crew ? undefined : owner;
}

/** Who holds the permit of a job as found, where that is not its crew; nothing where it is, or where nobody does. */
export function anotherPermitHolder(document: StillhotDocument): string | undefined {
  const { permit, permitHolder, crew } = jobOf(document);
  return permit !== "held" || permitHolder === "" || permitHolder === crew ? undefined : permitHolder;
}

/** Whether anything on the drawing is of one owner still: a tag or a ground set. */
export const isStillThere = (state: JobState, owner: string): boolean =>
  Object.keys(state.document.system.elements).some((id) => anotherOwnerOf(state, id) === owner);

/** Whether a thing is another's to operate, not the crew's. */
export const isAnothers = (state: JobState, id: string | undefined): boolean =>
  anotherOwnerOf(state, id) !== undefined;
