import { type Form, isObject, type Json } from "../../../core";

/** A form within a form is looked up when it is asked for: a condition holds conditions. */
export const formOf = (form: Form): Form => (form.as === "within" ? formOf(form.form()) : form);

/** What stands at a place before anybody has said anything: required keys, each blank. */
export function blank(asked: Form): Json {
  const form = formOf(asked);
  switch (form.as) {
    case "words":
    case "id":
      return "";
    case "list":
      return [];
    case "map":
    case "thing":
      return {};
    case "phases":
      return form.ofThing ? true : "";
    case "field":
      return blankField(form);
    case "record":
      return Object.fromEntries(
        Object.entries(form.keys)
          .filter(([, { required }]) => required)
          .map(([key, it]) => [key, blank(it.form)]),
      );
    case "within":
      return {};
  }
}

function blankField({ field: { input, fallback } }: Extract<Form, { as: "field" }>): Json {
  if (input.as === "flag") return true;
  if (input.as === "choice") return (fallback as string | undefined) ?? input.choices[0]!;
  if (typeof fallback === "number") return fallback;
  return input.as === "number" ? (input.min ?? 0) : "";
}

const isEmpty = (value: Json | undefined): boolean =>
  value === undefined ||
  value === "" ||
  (Array.isArray(value) && value.length === 0) ||
  (isObject(value) && Object.keys(value).length === 0);

/** A value without the keys that nobody has filled in; what must be there stays, so that it is named where it is missing. */
export function pruned(value: Json, asked: Form): Json {
  const form = formOf(asked);
  if (form.as === "list" && Array.isArray(value))
    return (value as readonly Json[]).map((it) => pruned(it, form.of)).filter((it) => it !== "");
  if (form.as === "map" && isObject(value))
    return Object.fromEntries(Object.entries(value).map(([id, it]) => [id, pruned(it!, form.of)]));
  if (form.as !== "record" || !isObject(value)) return value;
  const kept = Object.entries(value).flatMap(([key, it]): [string, Json][] => {
    const known = form.keys[key];
    if (it === undefined) return [];
    if (known === undefined) return [[key, it]];
    const left = pruned(it, known.form);
    return isEmpty(left) && !known.required && !form.oneOf.includes(key) ? [] : [[key, left]];
  });
  return Object.fromEntries(kept);
}
