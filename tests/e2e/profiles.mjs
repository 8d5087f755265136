/**
 * Browser profiles that one test has after the other, each emptied as if it was new. A page of the app's own place stays
 * open in each, so that the process which knows the app's scripts stays too: to start one and have it read them anew
 * was half of what a page cost.
 */
import { setTimeout as rest } from "node:timers/promises";

/** So many wait at most to be taken again, in each browser. */
const MOST_WAITING = 8;
/** Gives up after so many looks whether a profile is empty. */
const LOOKS = 40;
const LOOK_AGAIN_MS = 50;

/** What would still hold for the test that has the profile next. Who wants it makes a profile of its own. */
const CHANGES = [
  "addCookies",
  "addInitScript",
  "exposeBinding",
  "exposeFunction",
  "grantPermissions",
  "route",
  "routeWebSocket",
  "setExtraHTTPHeaders",
  "setGeolocation",
  "setOffline",
];

/** @param {string} url the app's address: what is kept under it is taken away when a profile is given back */
export function makeProfiles(url) {
  /** Those that nobody has, the longest unused first, and of each what it was made for. */
  const waiting = [];
  const keepers = new Map();
  const { origin } = new URL(url);

  async function made(make) {
    const context = await make();
    for (const change of CHANGES)
      context[change] = () =>
        Promise.reject(
          new Error(`\`${change}\` in a profile that goes on to another test: make one by newContext`),
        );
    keepers.set(context, await keeperOf(context));
    return context;
  }

  async function keeperOf(context) {
    const page = await context.newPage();
    // Something of the app's place that runs no script.
    await page.goto(`${url}icon.svg`);
    const session = await context.newCDPSession(page);
    const keeper = { page, session, crashed: false };
    page.on("crash", () => (keeper.crashed = true));
    return keeper;
  }

  async function isEmptied(context) {
    const { page, session, crashed } = keepers.get(context);
    if (crashed || page.isClosed()) return false;
    for (const it of context.pages()) if (it !== page) await it.close();
    await session.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
    for (let look = 0; look < LOOKS; look++) {
      if (await page.evaluate(isEmpty)) return true;
      await rest(LOOK_AGAIN_MS);
    }
    return false;
  }

  return {
    /** A profile that was made for `key`: one that waits, or what `make` makes. */
    async take(key, make) {
      const nth = waiting.findLastIndex((it) => it.key === key);
      return nth === -1 ? made(make) : waiting.splice(nth, 1)[0].context;
    },
    /** Empties the profile for the next who wants such a one, or closes it where that cannot be. */
    async giveBack(key, context) {
      if (!(await isEmptied(context).catch(() => false))) return this.close(context);
      waiting.push({ key, context });
      if (waiting.length > MOST_WAITING) await this.close(waiting.shift().context);
    },
    async close(context) {
      keepers.delete(context);
      await context.close().catch(() => undefined);
    },
    /** The page that is nobody's. */
    isKeeper: (page) => keepers.get(page.context())?.page === page,
  };
}

/** Runs in the keeper's page. */
async function isEmpty() {
  const files = await navigator.storage.getDirectory();
  for await (const _ of files.keys()) return false;
  const [databases, caches_, { held }] = await Promise.all([
    indexedDB.databases(),
    caches.keys(),
    navigator.locks.query(),
  ]);
  return (
    localStorage.length + sessionStorage.length + databases.length + caches_.length + held.length === 0 &&
    document.cookie === ""
  );
}
