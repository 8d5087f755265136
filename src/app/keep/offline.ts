import { underWay } from "./underWay.svelte";

interface InstallAnswers {
  /** everything is on the device: the app now opens without a network */
  readonly onReady: () => void;
  /** a newer version waits; it takes over only when this is called, or at the next start */
  readonly onUpdate: (useNow: () => void) => void;
  /** it was asked to take over, but another window is in the middle of something */
  readonly onHeldBack: () => void;
  /** another window let the newer version take over: save, then this page starts again too */
  readonly beforeReload: () => Promise<void>;
}

/** How often a page that stays open asks whether there is a newer version. */
const ASK_AGAIN_MS = 60 * 60_000;

/** Keeps the app on the device, so that it opens without a network. A newer version never comes in under the hands. */
export async function goOffline({ onReady, onUpdate, onHeldBack, beforeReload }: InstallAnswers) {
  // A lesson package is the learning system's to keep.
  if ("lesson" in document.documentElement.dataset) return;
  if (!("serviceWorker" in navigator) || import.meta.env.DEV) return;
  const { serviceWorker } = navigator;
  const registration = await serviceWorker
    .register(new URL("sw.js", document.baseURI), { scope: "./" })
    // Without a network the one that is there goes on; a browser that forbids it goes on without.
    .catch(() => serviceWorker.getRegistration())
    .catch(() => undefined);
  if (registration === undefined) return;
  if (registration.active !== null) onReady();

  let wasControlled = serviceWorker.controller !== null;
  serviceWorker.addEventListener("controllerchange", () => {
    // The first one to take hold of a page replaces nothing.
    if (!wasControlled) wasControlled = true;
    else
      void underWay
        .over()
        .then(beforeReload)
        .finally(() => location.reload());
  });

  const windows = otherWindows();
  const offer = (worker: ServiceWorker) =>
    onUpdate(() => {
      void windows.areAtWork().then((areAtWork) => {
        if (areAtWork) onHeldBack();
        else worker.postMessage({ type: "SKIP_WAITING" });
      });
    });
  const watch = (worker: ServiceWorker | null) =>
    worker?.addEventListener("statechange", () => {
      // Installed beside an active one it waits; installed alone it is the first, and all is on the device.
      if (worker.state === "installed" && registration.active !== null) offer(worker);
      if (worker.state === "activated") onReady();
    });
  if (registration.waiting !== null) offer(registration.waiting);
  watch(registration.installing);
  registration.addEventListener("updatefound", () => watch(registration.installing));
  setInterval(() => void registration.update().catch(() => undefined), ASK_AGAIN_MS);
}

/** What another window has to answer, before it counts as one that does not mind. */
const ANSWER_MS = 400;

/**
 * The newer version takes every window along, since the files of the older one go with it: so all of them are asked. A
 * browser without channels has each window for itself, and there the page that is at work starts again when it is left.
 */
function otherWindows(): { areAtWork(): Promise<boolean> } {
  if (!("BroadcastChannel" in globalThis)) return { areAtWork: () => Promise.resolve(false) };
  const channel = new BroadcastChannel("stillhot update");
  channel.addEventListener("message", ({ data }) => {
    if (data === "at work?" && underWay.is) channel.postMessage("at work");
  });
  return {
    areAtWork: () =>
      new Promise((done) => {
        const end = (areAtWork: boolean) => {
          channel.removeEventListener("message", hear);
          clearTimeout(timer);
          done(areAtWork);
        };
        const hear = ({ data }: MessageEvent) => data === "at work" && end(true);
        const timer = setTimeout(() => end(false), ANSWER_MS);
        channel.addEventListener("message", hear);
        channel.postMessage("at work?");
      }),
  };
}

interface InstallPrompt extends Event {
  prompt(): Promise<unknown>;
}

let asked: InstallPrompt | undefined;
/** Only some browsers let a page offer its own installing; they say so once, early. */
export function listenForInstall() {
  window.addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    asked = event as InstallPrompt;
  });
}

/** Whether the browser would install the app. */
export const canInstall = (): boolean => asked !== undefined;

/** Lets the browser ask whether to install the app; it may be asked once. */
export async function install(): Promise<void> {
  await asked?.prompt();
  asked = undefined;
}

/** Opened from the home screen or as an app of its own. */
export const isInstalled = (): boolean => matchMedia("(display-mode: standalone)").matches;
