// By how much two histories of one plan are apart.

/** An event by its name, with the clutch's if it has one, and when it came. */
export interface Dated {
  readonly name: string;
  readonly running: number;
  readonly lost: number;
}

/** An event that both have: apart by a share of its running hours. */
export interface Apart {
  readonly event: Dated;
  readonly other: Dated;
  readonly share: number;
}

export const dated = (
  events: readonly { name: string; clutch?: string; running: number; lost: number }[],
): Dated[] =>
  events.map(({ name, clutch, running, lost }) => ({
    name: clutch === undefined ? name : `${name}, ${clutch}`,
    running,
    lost,
  }));

/** Differences in running hours as shares; events that only one of the two has. */
export function compare(
  from: readonly Dated[],
  to: readonly Dated[],
): { both: Apart[]; missing: Dated[]; more: Dated[] } {
  const both = from.flatMap((event) => {
    const other = to.find(({ name }) => name === event.name);
    if (other === undefined) return [];
    const share = event.running > 0 ? other.running / event.running - 1 : other.running > 1 ? Infinity : 0;
    return [{ event, other, share }];
  });
  const missing = from.filter(({ name }) => to.every((other) => other.name !== name));
  const more = to.filter(({ name }) => from.every((other) => other.name !== name));
  return { both, missing, more };
}

const beforeSlips = [
  "leak opens",
  "hiding place full",
  "first spot on the ground",
  "level below the low mark",
  "topped up",
  "line parts",
  "first gulp of air",
  "first flare",
  "slow engagement, cold",
  "slow engagement, hot",
  "cooler flow below half",
  "line pressure below demand",
];

/** Events that come before an element of a gear slips, and so hang on the fluid alone. */
export const isBeforeSlips = (name: string): boolean => beforeSlips.includes(name);
