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
