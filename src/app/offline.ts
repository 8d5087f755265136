import { registerSW } from "virtual:pwa-register";

interface Answers {
  readonly onReady: () => void;
  /** a newer version waits; it takes over only when this is called */
  readonly onUpdate: (reload: () => void) => void;
}

/** Keeps the app on the device, so that it opens without a network. */
export function goOffline({ onReady, onUpdate }: Answers) {
  if (!("serviceWorker" in navigator)) return;
  if (navigator.serviceWorker.controller !== null) onReady();
  const update = registerSW({
    immediate: true,
    onOfflineReady: onReady,
    onNeedRefresh: () => onUpdate(() => void update(true)),
  });
}
