// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { flushSync, mount, unmount } from "svelte";
import { afterEach, beforeAll, expect, test, vi } from "vitest";
import { UnansweredWorker } from "../../../tests/support/unansweredWorker";
import { isUnreadable, type PointId, readDocument, type StructureId } from "../../core";
import { Session } from "../session/session.svelte";
import ActBar from "./ActBar.svelte";
import AtStructure from "./AtStructure.svelte";
import Grow from "./Grow.svelte";
import Outline from "./Outline.svelte";
import { english } from "../words/messages/en";
import { learn } from "../words/catalogue";

beforeAll(() => {
  learn(english);
  vi.stubGlobal("Worker", UnansweredWorker);
  vi.stubGlobal(
    "ResizeObserver",
    class {
      observe() {}
      unobserve() {}
      disconnect() {}
    },
  );
});
const mounted: object[] = [];
afterEach(() => {
  for (const it of mounted.splice(0)) void unmount(it);
});

const read = readDocument(readFileSync("shared/demos/sideline-three-transformers.stillhot.json", "utf8"));
if (isUnreadable(read)) throw new Error("the demo does not read");
const begun = () => new Session(read.document);
const commands = new Proxy({}, { get: () => () => undefined }) as never;
const page = (make: (target: HTMLElement) => object): HTMLElement => {
  const target = document.body.appendChild(document.createElement("div"));
  mounted.push(make(target));
  flushSync();
  return target;
};
const press = (within: HTMLElement, selector: string) => {
  within.querySelector<HTMLElement>(selector)!.click();
  flushSync();
};
const POLE = "s33" as StructureId;

test("a pole is seen from the bar, and its row says so", () => {
  const session = begun();
  const outline = page((target) =>
    mount(Outline, { target, props: { viewing: session, onact: () => undefined } }),
  );
  const bar = page((target) =>
    mount(ActBar, { target, props: { session, commands, onmore: () => undefined } }),
  );
  press(outline, '[data-owner="structure:s33"]');
  press(bar, '[data-action="seen"]');
  const [chosen] = session.selection;
  expect(chosen?.of).toBe("structure");
  const row = outline.querySelector('[aria-selected="true"]')!;
  expect(row.getAttribute("aria-label")).toMatch(/^Pole 33, .*seen$/);
  expect(row.getAttribute("data-owner")).toBe(`structure:${chosen!.id}`);
});

test("at a pole: what is on it in its order, what is within reach, work, and a condition", () => {
  const session = begun();
  session.select({ of: "structure", id: POLE });
  const panel = page((target) =>
    mount(AtStructure, {
      target,
      props: {
        session,
        get structure() {
          return session.structureOf(session.selection[0]!.id)!;
        },
      },
    }),
  );
  const things = [...panel.querySelectorAll("[data-on]")].map((it) => it.textContent);
  expect(things[0]).toMatch(/^Line/);
  expect(things[1]).toMatch(/^T3 cutout, phases C, closed/);
  expect(panel.querySelector('[data-reach="0"]')!.textContent).toMatch(/T3 bushing/);
  expect(panel.querySelector('[data-reach="1"]')!.textContent).toMatch(/T3 secondary.*no contact at all/s);
  press(panel, '[data-work="p14"]');
  expect(Object.keys((session.document.job as never as { workPoints: object }).workPoints)).toHaveLength(2);
  press(panel, "[data-see]");
  expect(panel.querySelector("[data-seen]")!.getAttribute("data-seen")).toBe("true");
});

test("who deletes a pole is told what goes with it, and has the one before it selected", async () => {
  const session = begun();
  session.select({ of: "structure", id: POLE });
  await session.remove();
  expect(session.notice?.message).toMatchObject({ key: "removed.onIt" });
  expect(session.document.system.elements).not.toHaveProperty("t3");
  expect(session.selection).toEqual([{ of: "structure", id: "s32" }]);
});

test("the next pole bears the number that follows, which is typed over in place", () => {
  const session = begun();
  session.select({ of: "structure", id: POLE });
  const grow = page((target) =>
    mount(Grow, { target, props: { session, point: "p7" as PointId, onclose: () => undefined } }),
  );
  press(grow, '[data-part="span"]');
  const bar = page((target) =>
    mount(ActBar, { target, props: { session, commands, onmore: () => undefined } }),
  );
  const input = bar.querySelector<HTMLInputElement>("[data-number]")!;
  expect(input.value).toBe("Pole 34");
  input.value = "Pole 33A";
  input.dispatchEvent(new Event("change", { bubbles: true }));
  flushSync();
  expect(Object.values(session.document.system.structures!).at(-1)).toEqual({ label: "Pole 33A" });
  input.value = "pole 32";
  input.dispatchEvent(new Event("change", { bubbles: true }));
  expect(session.notice?.tone).toBe("refusal");
  expect(input.value).toBe("Pole 33A");
});
