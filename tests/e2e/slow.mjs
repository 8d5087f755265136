/**
 * A slow device, for `SLOW=1 npm run e2e`: whatever comes a moment later than the press that asked for it comes a long
 * moment later. A test that reads before it is there fails here every time, not once in a hundred runs.
 */

/** What is fetched, a part of the app or a demo [ms]. */
const FETCHED_MS = 250;

/**
 * @param {import("playwright-core").BrowserContext} context
 * @param {{ offline: boolean }} opening where the app puts all of itself away at once, fetching is not slow too
 */
export async function slowDown(context, { offline }) {
  if (!offline)
    await context.route(/\/(assets|demos|scenarios)\//, async (route) => {
      await new Promise((done) => setTimeout(done, FETCHED_MS));
      // The page may be gone by now.
      await route.continue().catch(() => undefined);
    });
  await context.addInitScript(makeSlow);
}

/** Runs in the page, before anything of it. */
function makeSlow() {
  const ANSWER_MS = 600;
  const LOOK_MS = 13;
  const BACK_MS = 500;
  const IDLE_MS = 4000;

  const ask = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (...given) {
    setTimeout(() => ask.apply(this, given), ANSWER_MS);
  };
  // By this clock nothing is quick enough to be answered at once.
  const now = performance.now.bind(performance);
  let looks = 0;
  performance.now = () => now() + LOOK_MS * looks++;
  const back = history.back.bind(history);
  history.back = () => void setTimeout(back, BACK_MS);
  // What is fetched ahead when the hands rest is not there yet when it is asked for.
  window.requestIdleCallback = (act) => setTimeout(act, IDLE_MS);
  const colours = new CSSStyleSheet();
  colours.replaceSync("button { transition: background-color 700ms !important; }");
  document.adoptedStyleSheets.push(colours);
}
