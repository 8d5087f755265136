import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isObject, type Json } from "../terms";
import { scenarioForms } from "./scenario";
import type { Form } from "./shape";

const folder = new URL("../../../shared/scenarios/", import.meta.url);
const files = readdirSync(folder).filter((it) => it.endsWith(".stillhot.json"));

/** Every place of a value that no form asks for. */
function unasked(value: Json, form: Form, path: string): string[] {
  switch (form.as) {
    case "within":
      return unasked(value, form.form(), path);
    case "list":
      return (value as readonly Json[]).flatMap((it, n) => unasked(it, form.of, `${path}[${n}]`));
    case "map":
      return Object.entries(value as object).flatMap(([id, it]) =>
        unasked(it as Json, form.of, `${path}.${id}`),
      );
    case "record":
      return Object.entries(value as object).flatMap(([key, it]) =>
        form.keys[key] === undefined
          ? [`${path}.${key}`]
          : unasked(it as Json, form.keys[key].form, `${path}.${key}`),
      );
    default:
      return isObject(value) && form.as !== "thing" ? [path] : [];
  }
}

test.each(files)("%s holds nothing that a form does not ask for", (file) => {
  const { scenario } = JSON.parse(readFileSync(new URL(file, folder), "utf8")) as {
    scenario: Record<string, Json>;
  };
  const found = Object.entries(scenario).flatMap(([key, value]) =>
    scenarioForms[key] === undefined ? [key] : unasked(value, scenarioForms[key], key),
  );
  expect(found).toEqual([]);
});

test("a condition is asked for as deep as it goes", () => {
  const traps = scenarioForms["traps"] as Extract<Form, { as: "list" }>;
  const value = [{ id: "t1", label: "x", when: { any: [{ all: [{ not: { moon: true } }] }] } }];
  expect(unasked(value, traps, "traps")).toEqual(["traps[0].when.any[0].all[0].not.moon"]);
});
