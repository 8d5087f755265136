import { configureGlobal } from "fast-check";
import { expect } from "vitest";

// One seed, so that a run says the same on every machine; any other seed must hold too.
configureGlobal({ seed: 1 });

// What only the app says is learned where the app is tested: there it is in two goes (src/app/words/later.ts).
if (/[\\/]src[\\/]app[\\/]/.test(expect.getState().testPath ?? "")) {
  const { learn } = await import("../../src/app/words/catalogue");
  learn((await import("../../src/app/words/sentences")).english);
}
