// Dates as text: "2024-03-04" or "2024-03-04 16:30", without time zone; a case counts seconds from its start date's midnight.

const shape = /^(\d{4})-(\d{2})-(\d{2})(?:[ T]([01]\d|2[0-3]):([0-5]\d))?$/;

export const dateExpected = "a day of the calendar as year-month-day, with the time of day if it is known";
export const dateExample = '"2024-03-04" or "2024-03-04 16:30"';

/** Seconds since 1970 of a date, NaN for text that is none (nor are February 30 and a thirteenth month). */
export function dateSeconds(text: string): number {
  const parts = shape.exec(text.trim());
  if (!parts) return Number.NaN;
  const [year, month, day, hour, minute] = parts.slice(1).map((part) => Number(part ?? 0));
  const seconds = Date.UTC(year!, month! - 1, day, hour, minute) / 1000;
  // What the calendar does not have is counted on into what it has, and reads otherwise than it was written.
  return new Date(seconds * 1000).toISOString().startsWith(parts[0].slice(0, 10)) ? seconds : Number.NaN;
}

/** The same for the end of what lasts until a date: the time of day that it tells, else the last second of that day. */
export function lastSecond(text: string): number {
  return dateSeconds(text) + (shape.exec(text.trim())?.[4] === undefined ? 86_399 : 0);
}

/** Seconds after midnight of a time of day such as "07:30", NaN for text that is none. */
export function clockSeconds(text: string): number {
  const parts = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(text.trim());
  return parts ? Number(parts[1]) * 3600 + Number(parts[2]) * 60 : Number.NaN;
}
