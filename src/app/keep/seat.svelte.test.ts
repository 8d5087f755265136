// @vitest-environment happy-dom
import { expect, test, vi } from "vitest";
import { Seat } from "./seat.svelte";

const answers = { onTurn: () => undefined, onAsked: () => Promise.resolve(), onWritten: () => undefined };

test("a browser that refuses locks is asked once, and the place is this window's", async () => {
  const request = vi.fn(() => Promise.reject(new DOMException("refused", "SecurityError")));
  vi.stubGlobal("navigator", { locks: { request } });
  const seat = new Seat(answers);
  seat.sit("one");
  await new Promise((done) => setTimeout(done, 20));
  expect(request).toHaveBeenCalledTimes(1);
  expect(seat.state).toBe("mine");
});
