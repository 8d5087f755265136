import { describe, expect, test } from "vitest";
import { type Form, scenarioForms } from "../../../core";
import { blank, pruned } from "./blank";
import { choiceName, titleOf } from "./choices";
import { isMessageKey } from "../../words/catalogue";

/** Each key that a form asks for, with the kind of record that it stands in, and each choice. */
function asked(form: Form, kind: string, name: string, seen = new Set<Form>()): [string, string, string[]][] {
  if (seen.has(form)) return [];
  seen.add(form);
  switch (form.as) {
    case "within":
      return [[kind, name, []], ...asked(form.form(), "condition", name, seen).slice(1)];
    case "list":
      return [[kind, name, []], ...asked(form.of, singular(name), "each", seen)];
    case "map":
      return [[kind, name, []], ...asked(form.of, singular(name), "each", seen)];
    case "record": {
      const inner = name === "each" ? kind : ["condition"].includes(kind) && seen.size > 1 ? kind : name;
      return [
        [kind, name, []],
        ...(form.oneOf.length === 0 ? [] : [[inner, "oneOf", []] as [string, string, string[]]]),
        ...Object.entries(form.keys)
          .filter(([key]) => key !== "id")
          .flatMap(([key, it]) => asked(it.form, inner, key, seen)),
      ];
    }
    case "field":
      return [[kind, name, form.field.input.as === "choice" ? form.field.input.choices.map(String) : []]];
    default:
      return [[kind, name, []]];
  }
}

const SINGULAR: Readonly<Record<string, string>> = {
  truth: "fact",
  reveals: "reveal",
  injects: "inject",
  criteria: "criterion",
  traps: "trap",
  hints: "hint",
  objectives: "objective",
  answer: "step",
  fall: "step",
};
const singular = (name: string) => SINGULAR[name] ?? name;

/** Keys whose panel has words of its own above them. */
const HEADED = Object.keys(SINGULAR).filter((it) => it !== "answer" && it !== "fall");

describe("the forms of Teach", () => {
  const all = Object.entries(scenarioForms).flatMap(([key, form]) => asked(form, "scenario", key));
  const keys = all.filter(([, name]) => !HEADED.includes(name));

  test("there are many", () => expect(keys.length).toBeGreaterThan(80));

  test.each([...new Set(keys.map(([kind, name]) => `${kind} ${name}`))])("%s has words", (both) => {
    const [kind, name] = both.split(" ") as [string, string];
    expect(titleOf(kind, name)).not.toBe(name);
  });

  test.each([...new Set(keys.flatMap(([, name, choices]) => choices.map((choice) => `${name} ${choice}`)))])(
    "the choice %s has words",
    (both) => {
      const [name, choice] = both.split(" ") as [string, string];
      // Sizes of cables say themselves, and a verb has its own words.
      if (name === "cable") return expect(choiceName(name, choice)).toBe(choice);
      if (name === "do") return expect(choiceName(name, choice)).not.toBe("");
      expect(isMessageKey(`choice.${name}.${choice}`)).toBe(true);
    },
  );

  test("what nobody filled in is not kept, and what must be there is", () => {
    const criteria = scenarioForms["criteria"] as Extract<Form, { as: "list" }>;
    const begun = { ...(blank(criteria.of) as object), id: "c1", why: "", objective: "" };
    expect(pruned(begun, criteria.of)).toEqual({ id: "c1", kind: "must", text: "", when: {} });
  });
});
