// The row of a trip: its extremes are kept while it is driven, and where everything stands is written at its end.

import type { Measures } from "./measures.ts";
import type { TripRow } from "./record.ts";
import type { Walk } from "./walk.ts";

/** Keeps the extremes of the trip. */
export function gatherRow(walk: Walk, row: TripRow): void {
  const { state, now, slip } = walk;
  if (now.temperature > row.hottest) row.hottest = now.temperature;
  if (state.gas > row.mostGas) row.mostGas = state.gas;
  const pressure = now.line.linePressure / now.setPoint;
  if (pressure < row.leastPressure) row.leastPressure = pressure;
  const margin = now.holds / Math.max(1, now.drive.turbineTorque);
  if (margin < row.leastMargin) row.leastMargin = margin;
  if (now.drive.lockSlip > row.lockUpSlip) row.lockUpSlip = now.drive.lockSlip;
  const plate = state.plate[slip.clutch]!;
  if (plate > row.hottestPlate) row.hottestPlate = plate;
}

/** Writes where everything stands at the end of the trip. */
export function closeRow(walk: Walk, row: TripRow, measures: Measures): void {
  const { state, now } = walk;
  row.clock = state.clock;
  row.running = state.running;
  row.distance = state.distance;
  row.lost = state.hidden + state.onRoad + state.onGround;
  row.mass = state.mass;
  row.level = measures.level;
  row.trim = state.trim;
  row.leakFlow = now.leakFlow;
  row.slipEnergy = measures.slipInTrip();
  row.worstDamage = measures.worstDamage();
}
