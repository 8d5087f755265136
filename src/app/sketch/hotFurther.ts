/** What the hot list shows only where it is pressed: fetched then. */
export { default as LookFirst } from "./LookFirst.svelte";
export { default as Unseen } from "./Unseen.svelte";
export { default as Way } from "./Way.svelte";
