// A reading of the bay as it is read there: no finer than its gauge, stick, jug or thermometer.

import { axis, type ShownKind, type UnitSystem } from "../units/show.ts";

/** Decimals to which a gauge, a stick, a jug or a thermometer of the bay is read, in each system's unit. */
const decimals: Partial<Record<ShownKind, Readonly<Record<UnitSystem, number>>>> = {
  pressure: { US: 0, SI: 0 },
  length: { US: 2, SI: 1 },
  volume: { US: 2, SI: 2 },
  flow: { US: 1, SI: 1 },
  temperature: { US: 0, SI: 0 },
};

/** "63 psi": no finer than the bay reads. */
export function asRead(value: number, kind: ShownKind, system: UnitSystem): string {
  const { factor, offset, unit } = axis(kind, system);
  const text = (value * factor + offset).toFixed(decimals[kind]?.[system] ?? 2);
  return `${Number(text) === 0 ? "0" : text} ${unit}`;
}

/** "63 psi (437 kPa)": the chosen unit first. */
export const asReadInBoth = (value: number, kind: ShownKind, system: UnitSystem): string =>
  `${asRead(value, kind, system)} (${asRead(value, kind, system === "US" ? "SI" : "US")})`;
