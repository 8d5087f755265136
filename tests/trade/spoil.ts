/** A job's steps and drawing with one mistake in them. Every edit must find what it changes. */
export function spoiled(
  drawing: string,
  order: string,
  edits: string,
): { readonly drawing: string; readonly steps: string } {
  let steps = linesOf(order);
  let more = "";
  for (const edit of edits.split(" | ").map((it) => it.trim())) {
    if (edit.startsWith("+ ")) more += `\n${edit.slice(2)}`;
    else if (edit.startsWith("- ")) steps = replaced(steps, [edit.slice(2)], []);
    else {
      const [was, is] = edit.split(" => ");
      steps = replaced(steps, linesOf(was!), linesOf(is!));
    }
  }
  return { drawing: `${drawing}${more}`, steps: steps.join("\n") };
}

export const linesOf = (steps: string): string[] =>
  steps
    .split(/[;\n]/)
    .map((it) => it.trim())
    .filter((it) => it !== "");

function replaced(steps: readonly string[], was: readonly string[], is: readonly string[]): string[] {
  const at = steps.findIndex((_, i) => was.every((line, k) => steps[i + k] === line));
  if (at === -1) throw new Error(`No step reads "${was.join("; ")}"`);
  return [...steps.slice(0, at), ...is, ...steps.slice(at + was.length)];
}
