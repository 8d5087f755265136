// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { arriveIn, keepsFocus } from "./focus";

const find = (what: string): HTMLElement => document.querySelector<HTMLElement>(what)!;
const changesAreSeen = () => new Promise((done) => setTimeout(done, 0));

describe("Where the keyboard goes when what had it goes away", () => {
  let end: () => void;
  beforeEach(() => (end = keepsFocus()));
  afterEach(() => end());

  const LOSSES: readonly [string, string, () => void, string][] = [
    [
      "the button that stands there now",
      `<div role="toolbar"><button>Tag</button><button id="held">Open</button><button>More</button></div>`,
      () => (find("#held").outerHTML = `<button id="next">Close</button>`),
      "#next",
    ],
    [
      "the last of a row, when the last one goes",
      `<ul><li><button id="next">one</button></li><li><button id="held">two</button></li></ul>`,
      () => find("li:last-child").remove(),
      "#next",
    ],
    [
      "what a person goes on with, when all around goes",
      `<main><h2>Job</h2><div><button id="held">Begin</button></div></main>`,
      () => (find("main").innerHTML = `<h2>Step</h2><button>Skip</button><button data-next>Do it</button>`),
      "[data-next]",
    ],
    [
      "the heading, where nothing says what is next",
      `<main><div><button id="held">Begin</button></div></main>`,
      () => (find("main").innerHTML = `<h2>Step</h2><button>Do it</button>`),
      "h2",
    ],
    [
      "the region that scrolls, where it stood in one",
      `<main><h2>Plan</h2><div tabindex="0" id="next"><p><button id="held">Propose</button></p></div></main>`,
      () => find("#held").remove(),
      "#next",
    ],
    [
      "what is next, when what has it can be pressed no longer",
      `<main><button data-next>Arm</button><button id="held">Confirm</button></main>`,
      () => ((find("#held") as HTMLButtonElement).disabled = true),
      "[data-next]",
    ],
  ];
  test.each(LOSSES)("%s", async (_, page, change, next) => {
    document.body.innerHTML = page;
    find("#held").focus();
    change();
    await changesAreSeen();
    expect(document.activeElement).toBe(find(next));
  });

  test("what lies under a dialog has it again when the dialog goes", async () => {
    document.body.innerHTML = `<main><button id="opener">Menu</button></main>`;
    find("#opener").focus();
    document.body.insertAdjacentHTML("beforeend", `<dialog open><button id="inside">Share</button></dialog>`);
    find("#inside").focus();
    find("dialog").remove();
    await changesAreSeen();
    expect(document.activeElement).toBe(find("#opener"));
  });

  test("nothing is taken from whoever has something else", async () => {
    document.body.innerHTML = `<main><h2>Job</h2><button id="one">one</button><input id="other" /></main>`;
    find("#one").focus();
    find("#other").focus();
    find("#one").remove();
    await changesAreSeen();
    expect(document.activeElement).toBe(find("#other"));
  });
});

test.each([
  [`<main><h2>Job</h2><button data-next>Begin</button></main>`, "[data-next]"],
  [`<nav><h2>Outline</h2></nav><main><h2>Debrief</h2></main>`, "main h2"],
  [`<main><p>Nothing</p></main>`, "main"],
])("a place that is gone to has the keyboard: %s", (page, where) => {
  document.body.innerHTML = page;
  arriveIn(document);
  expect(document.activeElement).toBe(find(where));
});
