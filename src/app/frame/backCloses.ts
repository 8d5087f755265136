/**
 * A phone's Back closes what lies over the page before it leaves the page: while anything lies there, the entry of the
 * browser's history that is shown is ours. It stays when all is closed, for what opens next, and is passed over when
 * Back is pressed with nothing open. Nothing is taken back on closing: going back takes a moment, and whoever reloads or
 * follows a link in that moment would be brought back instead.
 */
const OURS = "sheet";
const open: (() => void)[] = [];

const isOurs = () => history.state === OURS;

/** where the history stood last: at an entry of ours, and of which address; a reload may have begun there */
let stoodAt = isOurs() ? location.href : undefined;

/**
 * Where the system's Back is a request to close, as Escape is, the browser closes the top dialog by itself and no entry
 * is needed: Back with nothing open then leaves at the first press, even where nothing was visited before.
 */
const isAskedToClose =
  /Android/.test(navigator.userAgent) &&
  "CloseWatcher" in window &&
  "requestClose" in HTMLDialogElement.prototype;

addEventListener("popstate", moved);

/**
 * Calls `close` when Back is pressed and nothing lies over the caller.
 *
 * @returns what to call when it is closed, whoever closed it
 */
export function backCloses(close: () => void): () => void {
  open.push(close);
  standInTheWay();
  return () => void open.splice(open.indexOf(close), 1);
}

function standInTheWay() {
  if (isAskedToClose || open.length === 0) return;
  if (!isOurs()) history.pushState(OURS, "");
  stoodAt = location.href;
}

function moved() {
  const wentBack = stoodAt === location.href && !isOurs();
  stoodAt = isOurs() ? location.href : undefined;
  if (!wentBack) return;
  const top = open.at(-1);
  // The entry below ours shows the same: who pressed Back there wants to leave it.
  if (top === undefined) return history.back();
  top();
  // What does not let itself be closed, lies below, or opened meanwhile is still there.
  setTimeout(standInTheWay);
}
