import { momentAfter } from "../../scenario/moments";

const SECONDS_A_DAY = 86_400;

/** The day so many days after another, `2026-03-31`. */
export const dayAfter = (day: string, days: number): string =>
  momentAfter(`${day}T00:00:00Z`, days * SECONDS_A_DAY)?.slice(0, 10) ?? day;

/** Whether a text is a day of the calendar. */
export const isDay = (text: unknown): text is string =>
  typeof text === "string" && /^\d{4}-\d\d-\d\d$/.test(text) && dayAfter(text, 0) === text;
