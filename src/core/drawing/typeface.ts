/** The letters of every picture and page, on whatever device they are read: ours where it is there, else one as wide. */
export const TYPEFACE = "'Atkinson Hyperlegible Next', 'Liberation Sans', Arial, sans-serif";
