import { type Owner, pieceFor } from "../../core";
import type { BoardView } from "./view";

/** Whether what lies over the drawing looks the same in both. */
export function isSameOver(was: BoardView, is: BoardView): boolean {
  const spineOf = (owner: Owner, { scene }: BoardView) => {
    const piece = pieceFor(scene, owner);
    return owner.of === "structure" ? JSON.stringify(piece?.box) : piece?.spine.join();
  };
  const stands = (owner: Owner) => spineOf(owner, was) === spineOf(owner, is);
  const [before, after] = [outlined(was), outlined(is)];
  return (
    was.palette === is.palette &&
    was.overlay === is.overlay &&
    before.length === after.length &&
    before.every((it, index) => it?.id === after[index]?.id && it?.of === after[index]?.of) &&
    after.every((it) => it === undefined || stands(it))
  );
}

/** What has a line around it. */
const outlined = ({ selection, focus, joiningFrom }: BoardView): readonly (Owner | undefined)[] => [
  focus,
  joiningFrom,
  ...selection,
];
