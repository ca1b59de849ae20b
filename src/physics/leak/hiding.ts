// What a shield, a frame rail or a foam pad keeps back before the first spot falls on the ground.
import { impossible } from "../../errors.ts";

/** Volume that it holds [m³], and the share of what it holds that the wind carries off each second of driving [1/s]. */
export interface HidingPlace {
  readonly capacity: number;
  readonly carryOff: number;
}

/** Where the oil of a step went [m³]: `held` stands at the end of the step, the other two left during it. */
export interface HidingStep {
  held: number;
  carriedOff: number;
  overflow: number;
}

function refuse(place: HidingPlace, held: number, inflow: number): void {
  if (!(place.capacity >= 0 && place.capacity < Infinity))
    impossible("capacity", place.capacity, "0 m³ or more");
  if (!(place.carryOff >= 0 && place.carryOff < Infinity))
    impossible("carryOff", place.carryOff, "0 1/s or more");
  if (!(held >= 0 && held < Infinity)) impossible("held", held, "0 m³ or more");
  if (!(inflow >= 0 && inflow < Infinity)) impossible("inflow", inflow, "0 m³/s or more");
}

/** Seconds until a place that holds so much [m³] runs over at an inflow [m³/s]; undefined when it never does. */
export function runsOverAfter(
  place: HidingPlace,
  held: number,
  inflow: number,
  moving: boolean,
): number | undefined {
  refuse(place, held, inflow);
  const k = moving ? place.carryOff : 0;
  const surplus = inflow - k * place.capacity; // what comes in beyond what the wind takes from a full place
  if (held >= place.capacity) return surplus > 0 || held > place.capacity ? 0 : undefined;
  if (!(surplus > 0)) return undefined;
  const room = place.capacity - held;
  return k === 0 ? room / inflow : Math.log1p((k * room) / surplus) / k;
}

/**
 * One step of seconds at constant inflow [m³/s], written into `out`: dV/dt = Q − kV while there is room, then the
 * rest runs over. Exact for any length of step; held, carried off and overflow each come from their own integral.
 */
export function hidingStep(
  out: HidingStep,
  place: HidingPlace,
  held: number,
  inflow: number,
  moving: boolean,
  seconds: number,
): void {
  if (!(seconds >= 0 && seconds < Infinity)) impossible("seconds", seconds, "0 s or more");
  refuse(place, held, inflow);
  const k = moving ? place.carryOff : 0;
  const spilled = Math.max(0, held - place.capacity); // what no longer fits runs over at once
  const start = held - spilled;
  // Where even without wind there is room for all that comes, nothing runs over.
  const room = start + inflow * seconds < place.capacity;
  const full = room ? undefined : runsOverAfter(place, start, inflow, moving);
  const filling = full === undefined || full > seconds ? seconds : full;
  const brimming = seconds - filling;

  const gone = -Math.expm1(-k * filling); // share of the first contents that the wind takes
  const weight = k === 0 ? filling : gone / k; // ∫ e^(−kt) dt
  out.held = brimming > 0 ? place.capacity : Math.min(place.capacity, start * (1 - gone) + inflow * weight);
  out.carriedOff = start * gone + inflow * Math.max(0, filling - weight) + k * place.capacity * brimming;
  out.overflow = spilled + (inflow - k * place.capacity) * brimming;
}
