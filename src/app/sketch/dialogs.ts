/** What Sketch asks over the drawing, fetched with the first of them. */
export { default as Grow } from "./Grow.svelte";
export { default as Join } from "./Join.svelte";
export { default as More } from "./More.svelte";
export { default as piece } from "./MakePiece.svelte";
export { default as stamp } from "./KeepStamp.svelte";
