// Dates in a text, found so that a page can keep each in one line: a narrow column breaks "2024-10-20" at its hyphens.

const date = /(\d{4}-\d{2}-\d{2})/;

/** The text in pieces; every second one, from the second on, is a date. */
export const splitAtDates = (text: string): string[] => text.split(date);
