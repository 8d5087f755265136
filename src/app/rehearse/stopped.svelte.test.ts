// @vitest-environment happy-dom
import { mount, unmount } from "svelte";
import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { beginJob } from "../../core";
import { learn } from "../words/catalogue";
import { english } from "../words/messages/en";
import { t } from "../words/words";
import Stopped from "./Stopped.svelte";

/** What the page says once something was not as expected, where nothing is known of how the job stands. */
function said(failed: string | undefined): string {
  learn(english);
  const document = draw(
    "s1 source p0 ABC kvLL=12.47; d1 disconnect p0-p1 ABC; w1 work p1 ABC".replaceAll("; ", "\n"),
  );
  const run = { step: undefined, left: undefined, own: undefined, state: beginJob(document) };
  const props = { run, assessment: undefined, failed, mark: { seen: "differs" }, ongoon: () => undefined };
  const page = mount(Stopped, { target: globalThis.document.body, props: props as never });
  const words = globalThis.document.querySelector("[data-stopped]")!.textContent;
  void unmount(page);
  return words;
}

test("while it is worked out what is hot, the page says so; where that failed, it says why, and to take all for live", () => {
  expect(said(undefined)).toContain(t("verdict.workingHelp"));
  const failed = said("out of memory");
  expect(failed).toContain(t("verdict.failedWhy", { why: "out of memory" }));
  expect(failed).not.toContain(t("verdict.workingHelp"));
});
