/** What a picture under the drawing needs: fetched once the first picture stands. */
export { Underlay } from "./underlay.svelte";
export { default as UnderlayPanel } from "./UnderlayPanel.svelte";
export { default as UnderlayPicture } from "./UnderlayPicture.svelte";
