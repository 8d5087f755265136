import { expect, test, vi } from "vitest";
import { draw } from "../../tests/support/jobNotation";
import type { StillhotDocument } from "../core";
import { Arrivals } from "./arrivals.svelte";
import type { StoredDrawing } from "./keep/store";

const shelf = vi.hoisted(() => new Map<string, unknown>());
vi.mock("./keep/store", () => ({ drawing: (id: string) => Promise.resolve(shelf.get(id)) }));

const line = (spans: number) =>
  draw(`
    s1 source p0 ABC kvLL=12.47
    ${Array.from({ length: spans }, (_, n) => `sp${n} span p${n}-p${n + 1} ABC`).join("\n    ")}
  `);
const stored = (id: string, rev: number, document: StillhotDocument) =>
  ({ id, rev, document }) as unknown as StoredDrawing;

/** A window that shows one drawing and keeps it on the shelf when told to. */
function around(shown: StoredDrawing) {
  const at = { shown, document: shown.document };
  const autosave = {
    isUnsaved: false,
    now() {
      if (at.document !== at.shown.document) at.shown = stored(at.shown.id, at.shown.rev + 1, at.document);
      shelf.set(at.shown.id, at.shown);
      return Promise.resolve();
    },
    resume(next: StoredDrawing) {
      at.shown = next;
      at.document = next.document;
    },
  };
  const arrivals = new Arrivals({
    autosave,
    session: {},
    onshown: () => undefined,
    go: () => undefined,
  } as unknown as ConstructorParameters<typeof Arrivals>[0]);
  return { at, arrivals };
}

/** Draws something in the first turn that the page has. */
const drawnMeanwhile = (at: { document: StillhotDocument }, document: StillhotDocument) =>
  setTimeout(() => (at.document = document));

test("what is drawn while another drawing of this device is made ready is kept", async () => {
  const { at, arrivals } = around(stored("mine", 1, line(2)));
  const large = stored("large", 1, line(300));
  shelf.set("large", large);
  const edited = line(3);
  drawnMeanwhile(at, edited);
  await arrivals.openMine(large);
  expect(at.document).toBe(large.document);
  expect((shelf.get("mine") as StoredDrawing).document).toBe(edited);
});

test("what is drawn in a drawing while it is opened once more stays", async () => {
  const large = stored("large", 1, line(300));
  shelf.set("large", large);
  const { at, arrivals } = around(large);
  const edited = line(301);
  drawnMeanwhile(at, edited);
  await arrivals.openMine(large);
  expect(at.document).toBe(edited);
});
