/**
 * A phone's Back closes what lies over the page before it leaves the page: while anything lies there, one entry of
 * the browser's history is ours.
 */
const OURS = "sheet";
const open: (() => void)[] = [];
let listens = false;
/** the entry is being taken back by us, not by whoever pressed Back */
let isTakingBack = false;
/** a page that is about to be loaded anew would be kept from it by going back */
let isLeaving = false;

/** One sheet often gives way to another one, which may have to be fetched, or leads to another place [ms]. */
const SETTLED_MS = 300;

/**
 * Calls `close` when Back is pressed and nothing lies over the caller.
 *
 * @returns what to call when it is closed, whoever closed it
 */
export function backCloses(close: () => void): () => void {
  if (!listens) {
    addEventListener("popstate", wentBack);
    addEventListener("beforeunload", () => (isLeaving = true));
    addEventListener("pageshow", () => (isLeaving = false));
  }
  listens = true;
  open.push(close);
  standInTheWay();
  return () => {
    open.splice(open.indexOf(close), 1);
    setTimeout(() => {
      if (open.length > 0 || !isOurs() || isTakingBack || isLeaving) return;
      isTakingBack = true;
      history.back();
    }, SETTLED_MS);
  };
}

const isOurs = () => history.state === OURS;

function standInTheWay() {
  if (!isOurs() && !isTakingBack && open.length > 0) history.pushState(OURS, "");
}

function wentBack() {
  const wasPressed = !isTakingBack;
  isTakingBack = false;
  const top = open.at(-1);
  // An entry that was left behind when a sheet led to another place is passed over.
  if (top === undefined) return isOurs() ? history.back() : undefined;
  if (wasPressed && !isOurs()) top();
  // What does not let itself be closed, lies below, or opened meanwhile is still there.
  setTimeout(standInTheWay);
}
