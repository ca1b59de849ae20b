// Money as a file tells it: whole numbers of its own currency.

export const money = (value: number): string => Math.round(value).toLocaleString("en-US");
