// Lengths of time in milliseconds, as all times inside the program are.

export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;
/** 24 hours; a day of the calendar may be an hour shorter or longer (`maths/calendar.ts`). */
export const DAY_MS = 24 * HOUR_MS;
