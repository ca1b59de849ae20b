// What a leak loses in a week about a moment, by averages: trips through the opening as it then is, stands by what they begin with.

import type { Leak } from "../physics/build.ts";
import { airOf, WEEK, type March } from "./course.ts";
import { takeAge, takeOpening, weekRunning, widthOf } from "./flow.ts";
import { takeAir, takeLevel } from "./reading.ts";
import { weekStanding } from "./stands.ts";
import { byCalendar } from "./week.ts";

/** Loss per week [kg] at a moment [weeks] with so much lost and added. */
export function rateAt(march: March, week: number, lost: number, added: number): number {
  const { prepared, reading, leak, perStand, order } = march;
  if (leak === null) return 0;
  takeAir(reading, airOf(march, week - 0.5 + march.middle));
  const lacking = march.shortAtFirst + lost - added;
  takeLevel(reading, lacking);
  takeAge(reading, prepared.unit, week);
  openAt(march, leak, week);
  march.ran = weekRunning(reading, prepared, leak);
  // A stand goes by what it begins with: on the way of the mean that was half of its loss before.
  takeLevel(reading, lacking - (0.5 * march.stood) / order.length);
  march.stood = weekStanding(reading, prepared, leak, perStand);
  return march.ran + march.stood;
}

/** Takes the opening at a moment [weeks]: that of a leak as old as it is where a week about that moment loses what it loses. */
function openAt(march: March, leak: Leak, week: number): void {
  const { reading, weekTime, opensRunning, older } = march;
  takeOpening(
    reading,
    leak,
    Math.max(0, (week + older) * weekTime - opensRunning),
    openFor(march, week + older),
  );
}

/**
 * Where a week loses what it loses, by the rate that was read last: by how much later than in its middle on the mean, and how much less or more spread than
 * evenly. By the clock for a pit, which grows by the calendar, else by what runs.
 */
export function whereItLoses(march: March): void {
  const { leak, perStand, ran, stood, lies } = march;
  if (leak === null || !(ran + stood > 0)) return;
  const { trip, tripSquare, stands, standSquares } = byCalendar(leak) ? lies.clock : lies.running;
  let sum = ran * trip;
  let square = ran * tripSquare;
  for (let s = 0; s < stands.length; s++) {
    sum += perStand[s]! * stands[s]!;
    square += perStand[s]! * standSquares[s]!;
  }
  const mean = sum / (ran + stood);
  march.older = mean - 0.5;
  march.uneven = square / (ran + stood) - mean * mean - 1 / 12;
}

const openFor = ({ opensAt }: March, week: number): number => Math.max(0, week * WEEK - opensAt);

/** How wide the opening is about a moment [weeks], but for a factor; level and the fluid's age as they were taken last. */
export function widthAt(march: March, leak: Leak, week: number): number {
  openAt(march, leak, week);
  return widthOf(march.reading);
}
