// A made-up history in the shape of a real one: sixty trips that lose fluid, the last of them burnt.

import { newRow, type CloseUp, type Look, type TripRow } from "../../src/history/record.ts";
import type { EventName, HistoryEvent } from "../../src/history/watch.ts";

export const trips: readonly TripRow[] = Array.from({ length: 60 }, (_, i): TripRow => {
  const gone = i / 59;
  return {
    ...newRow(),
    clock: 43200 * (i + 1),
    running: 2400 * (i + 1),
    distance: 2e4 * (i + 1) + 500 * Math.sin(i),
    lost: 3.4 * gone,
    mass: 8.5 - 3.4 * gone,
    level: i % 7 === 3 ? Number.NaN : 0.055 - 0.04 * gone,
    hottest: 368 + 20 * gone,
    mostGas: gone < 0.7 ? 0.01 : (gone - 0.7) * 3,
    leastPressure: gone < 0.8 ? 1 : 1 - 4 * (gone - 0.8),
    leastMargin: gone < 0.9 ? 1.8 : 0.2,
    trim: 1e5 * gone,
    leakFlow: 2e-8,
    slipEnergy: gone < 0.9 ? 0 : 4e5,
    lockUpSlip: 3,
    hottestPlate: gone < 0.9 ? 395 : 640,
    worstDamage: gone < 0.95 ? 0.01 : 2.5,
  };
});

const happened: readonly (readonly [EventName, number, string?])[] = [
  ["leak opens", 0],
  ["first spot on the ground", 3],
  ["level below the low mark", 9.5],
  ["first gulp of air", 28],
  ["first flare", 36],
  ["line pressure below demand", 36.1],
  ["cooler flow below half", 38],
  ["first sustained slip", 39.2],
  ["damage 0.1", 39.5, "front brake"],
  ["damage 0.5", 39.5, "front brake"],
  ["damage 1", 39.5, "front brake"],
  ["vehicle falls behind", 39.6],
  ["no drive", 40],
];

export const events: readonly HistoryEvent[] = happened.map(([name, hours, clutch]) => ({
  name,
  ...(clutch === undefined ? {} : { clutch }),
  clock: hours * 3600 * 18,
  running: hours * 3600,
  distance: hours * 3e4,
  lost: hours / 12,
  mass: 8.5 - hours / 12,
  temperature: 360,
  leakFlow: 2e-8,
  condition: "as told",
}));

/** Two minutes around a moment with a stand of an hour before it. */
export function closeUpAt(moment: number): CloseUp {
  const looks = Array.from({ length: 400 }, (_, i): Look => {
    const t = (i - 200) * 0.2;
    const slips = t > 0 && t < 3;
    return {
      clock: moment + t - (t < -35 ? 3600 : 0),
      speed: Math.max(0, t),
      scheduled: Math.max(0, t * 1.02),
      engine: 200,
      submergence: 0.004 * Math.cos(t),
      gas: slips ? 0.8 : 0.02,
      setPoint: 5e5,
      linePressure: slips ? 1e5 : 5e5,
      trim: 0,
      demand: 120,
      holds: slips ? 60 : 400,
      slip: slips ? 150 : 0,
      slipHeat: slips ? 9000 : 0,
      temperature: 360,
      plate: 400,
    };
  });
  return { about: "first sustained slip", looks };
}
