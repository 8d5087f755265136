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

test.each([
  ["nobody has", [], "asking"],
  ["another window has", [{ name: "stillhot drawing one" }], "elsewhere"],
])("a place that is not given in a while, and that %s", async (_who, held, state) => {
  vi.useFakeTimers();
  const request = vi.fn(() => new Promise(() => undefined));
  vi.stubGlobal("navigator", { locks: { request, query: () => Promise.resolve({ held }) } });
  const seat = new Seat(answers);
  seat.sit("one");
  await vi.advanceTimersByTimeAsync(3000);
  expect(seat.state).toBe(state);
  seat.leave();
  vi.useRealTimers();
});
