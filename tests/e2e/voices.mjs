/** A browser whose voice notes in `window.said`, as language and words, what it is to say. */
export async function withVoices(ctx, opening) {
  const context = await ctx.newContext(opening);
  await context.addInitScript(() => {
    window.said = [];
    Object.defineProperty(window, "speechSynthesis", {
      value: { cancel: () => undefined, speak: (it) => window.said.push([it.lang, it.text]) },
    });
    window.SpeechSynthesisUtterance = class {
      constructor(text) {
        this.text = text;
      }
    };
  });
  return context;
}
