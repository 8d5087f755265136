/** Points on the drawing keep to this spacing [drawing units]. */
export const GRID = 20;
