import { dayBy } from "../core";

/** The day that it is where the command runs, as a file writes it. */
export const today = (): string => dayBy(new Date());
