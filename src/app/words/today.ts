import { dayBy } from "../../core";

/** The day that it is where the person is, as a file writes it. */
export const today = (): string => dayBy(new Date());
