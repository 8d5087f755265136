import { expect } from "vitest";

// What only the app says is learned where the app is tested: there it is in two goes (src/app/words/later.ts).
if (/[\\/]src[\\/]app[\\/]/.test(expect.getState().testPath ?? "")) {
  const { learn } = await import("../../src/app/words/catalogue");
  learn((await import("../../src/app/words/sentences")).english);
}
