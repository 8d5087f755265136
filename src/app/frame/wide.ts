import { MediaQuery } from "svelte/reactivity";

/** Whether lists and forms have room beside the drawing: a phone has none, whichever way it is held. The styles ask the same. */
export const wide = new MediaQuery("(min-width: 900px) and (min-height: 501px)");
