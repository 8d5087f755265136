import { jobOf } from "../../document";
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

/** Whether a thing is another's to operate, not the crew's. */
export const isAnothers = (state: JobState, id: string | undefined): boolean =>
  anotherOwnerOf(state, id) !== undefined;
