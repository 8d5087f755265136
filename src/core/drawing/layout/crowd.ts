import type { Exit, OnPlate, Rooms } from "./inside";
import type { TreeBranch } from "./tree";

/** Room for the one mark of a crowd and what is counted under it, beside the conductors of its line [px]. */
const ROOM = { width: 200, height: 64, line: 30 };

/** All that is on a plate which has more on it than anybody could make out, in the one place of its mark. */
export function crowdOn(on: readonly TreeBranch[], entry: TreeBranch, { way, text }: Rooms): OnPlate {
  const at = { u: 0, v: 0 };
  const branches = [entry, ...on.filter((it) => it !== entry)];
  const [along, aside] = way === "across" ? [ROOM.width / 2, ROOM.height] : [ROOM.height, ROOM.width / 2];
  return {
    stands: new Map(branches.map(({ id }) => [id, { ...at, axis: "u" }])),
    legs: [],
    exits: branches.flatMap(({ id, plate, onward }): Exit[] =>
      onward.filter((it) => it.plate !== plate).map((child) => ({ ...at, from: id, child })),
    ),
    left: -along * text,
    right: along * text,
    top: 0,
    bottom: (ROOM.line + aside) * text,
  };
}
