/** The letters of every picture and page, on whatever device they are read: ours where it is there, else one as wide. */
export const TYPEFACE = "'Atkinson Hyperlegible Next', 'Liberation Sans', Arial, sans-serif";

/** Width of a text [px], from the widths of narrow, wide and ordinary letters in the app's own font. */
export function widthOf(text: string, size: number): number {
  let ems = 0;
  for (const letter of text)
    ems += /[ ,.:;'·|!()ijlI1ft]/.test(letter)
      ? 0.31
      : /[mwMW]/.test(letter)
        ? 0.84
        : /[A-Z0-9]/.test(letter)
          ? 0.63
          : 0.54;
  return ems * size;
}
