/** Remembers an answer for each object: an edit makes a new object, so nothing goes stale. */
export function perObject<Input extends object, Answer>(
  answer: (input: Input) => Answer,
): (input: Input) => Answer {
  const known = new WeakMap<Input, { readonly it: Answer }>();
  return (input) => {
    const found = known.get(input);
    if (found !== undefined) return found.it;
    const fresh = { it: answer(input) };
    known.set(input, fresh);
    return fresh.it;
  };
}

/** Remembers answers for each object and what else was asked of it; what else is plain data, which is compared as JSON. */
export function perQuestion<Input extends object, Rest extends readonly unknown[], Answer>(
  answer: (input: Input, ...rest: Rest) => Answer,
): (input: Input, ...rest: Rest) => Answer {
  const answers = perObject((_input: Input) => new Map<string, { readonly it: Answer }>());
  return (input, ...rest) => {
    const known = answers(input);
    const key = JSON.stringify(rest);
    const found = known.get(key) ?? { it: answer(input, ...rest) };
    known.set(key, found);
    return found.it;
  };
}
