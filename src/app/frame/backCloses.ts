/**
 * A phone's Back closes what lies over the page before it leaves the page: while anything lies there, one entry of
 * the browser's history is ours.
 */
const OURS = "sheet";
const open: (() => void)[] = [];
let listens = false;

/**
 * Calls `close` when Back is pressed and nothing lies over the caller.
 *
 * @returns what to call when it is closed, whoever closed it
 */
export function backCloses(close: () => void): () => void {
  if (!listens) addEventListener("popstate", wentBack);
  listens = true;
  open.push(close);
  standInTheWay();
  return () => {
    open.splice(open.indexOf(close), 1);
    // One sheet often gives way to another, or leads to another place: then there is nothing to take back.
    setTimeout(() => {
      if (open.length === 0 && isOurs()) history.back();
    });
  };
}

const isOurs = () => history.state === OURS;

function standInTheWay() {
  if (!isOurs()) history.pushState(OURS, "");
}

function wentBack() {
  const top = open.at(-1);
  // An entry that was left behind when a sheet led to another place is passed over.
  if (top === undefined) return isOurs() ? history.back() : undefined;
  if (isOurs()) return;
  top();
  // What does not let itself be closed, or lies below, is still there.
  setTimeout(() => {
    if (open.length > 0) standInTheWay();
  });
}
