import { english as core } from "../../core";
import { english as own } from "./messages/en";

/** All English sentences, apart from what comes first, so that the first picture does not wait for them. */
export const english = { ...core, ...own } as const;
