import { edits, isRefusal } from "../../core";
import { type StoredStamp, shelves } from "../keep/shelves";

/** An arrangement of this person's own. What was kept may be anything: one that cannot be read has no stamp. */
export interface OwnStamp {
  readonly id: string;
  readonly savedAt: number;
  readonly stamp: edits.Stamp | undefined;
}

/** Every own arrangement on this device, the oldest first. */
export async function ownStamps(): Promise<OwnStamp[]> {
  const stored = await (await shelves()).getAll("stamps");
  return stored.map(read).sort((one, other) => one.savedAt - other.savedAt);
}

/** Keeps a stamp under an id of its own. */
export async function keepStamp(stamp: edits.Stamp): Promise<void> {
  const kept = { id: crypto.randomUUID(), savedAt: Date.now(), ...edits.writeStamp(stamp) };
  await (await shelves()).put("stamps", kept);
}

/** Gives an arrangement of one's own another name. */
export async function renameStamp({ id, savedAt, stamp }: OwnStamp, name: string): Promise<void> {
  if (stamp === undefined) return;
  const kept = { id, savedAt, ...edits.writeStamp({ ...stamp, name }) };
  await (await shelves()).put("stamps", kept);
}

/** Takes an arrangement of one's own away. */
export const dropStamp = async (id: string): Promise<void> => (await shelves()).delete("stamps", id);

function read({ id, savedAt, join, text }: StoredStamp): OwnStamp {
  const stamp = edits.readStamp({ join, text });
  return { id, savedAt: Number(savedAt) || 0, stamp: isRefusal(stamp) ? undefined : stamp };
}
