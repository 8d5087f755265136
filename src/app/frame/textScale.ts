/** How much larger than usual a person has set the letters of their browser. */
export const textScale = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;
