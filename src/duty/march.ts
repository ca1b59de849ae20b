// The loss from week to week. Whole weeks are marched together, by steps as long as growth and season allow; a week in which the leak
// opens, parts or is topped up is walked trip by trip.

import type { Plan } from "../history/simulate.ts";
import { airOf, partsAt, WEEK, type March } from "./course.ts";
import { takeAge, takeOpening, weekRunning } from "./flow.ts";
import { takeAir, takeLevel } from "./reading.ts";
import { fullMass } from "./snapshot.ts";
import { weekStanding } from "./stands.ts";
import { eachLoses, growthOfAWeek, muchInAWeek, walkWeek } from "./week.ts";

/** Longest step [weeks], and most change of the air in one [K]. */
const LONGEST_STEP = 4;
const AIR_STEP = 2;
/** A week in which the rate grows by a larger share of what it comes to is walked; below that Simpson's rule is within a thousandth of the week's loss. */
const STEEP = 0.6;

/** Loss per week [kg] at a moment [weeks] with so much lost and added. */
function rateAt(march: March, week: number, lost: number, added: number): number {
  const { prepared, reading, leak, weekTime } = march;
  if (leak === null) return 0;
  takeAir(reading, airOf(march, week - 0.5 + march.middle));
  const lacking = march.shortAtFirst + lost - added;
  takeLevel(reading, lacking);
  takeAge(reading, prepared.unit, week);
  const age = Math.max(0, (week + march.older) * weekTime - march.opensRunning);
  takeOpening(reading, leak, age, openFor(march, week + march.middle));
  const running = weekRunning(reading, prepared, leak);
  // A pit grows by the calendar, in stands too.
  if (leak.opening.kind === "pit") takeOpening(reading, leak, age, openFor(march, week + march.standing));
  // A stand goes by what it begins with: on the way of the mean that was half of its loss before.
  takeLevel(reading, lacking - (0.5 * march.stood) / march.order.length);
  march.stood = weekStanding(reading, prepared, leak);
  return running + march.stood;
}

/** Openings that grow as long as the engine runs. */
const growsRunning: readonly string[] = ["seal", "crack", "rub"];

/**
 * By how much a leak that grows while running is older than in the middle of a week's running, where it loses what it loses [weeks of running]: in the middle of each
 * trip, and before it in the stand. Its rate was read.
 */
function olderThanMiddle(march: March): number {
  const { prepared, leak, order, timeBefore, weekTime, perKind, perStand } = march;
  if (leak === null || !growsRunning.includes(leak.opening.kind)) return 0;
  const { kinds, occurrences } = prepared;
  eachLoses(march, leak);
  let [lost, older] = [0, 0];
  for (let i = 0; i < order.length; i++) {
    const { kind, standKind } = occurrences[order[i]!]!;
    const [driving, standing] = [perKind[kind]!, perStand[standKind]!];
    lost += driving + standing;
    older += (driving + standing) * timeBefore[i]! + 0.5 * driving * kinds[kind]!.time;
  }
  return lost > 0 ? older / lost / weekTime - 0.5 : 0;
}

const openFor = ({ opensAt }: March, week: number): number => Math.max(0, week * WEEK - opensAt);

/** Marches on until so much is lacking [kg] or the span is over; returns the week in which it stopped. */
export function marchOn(march: March, enough: number): number {
  const { plan, lost, added, rate, weeks } = march;
  lost[0] = 0;
  added[0] = 0;
  rate[0] = 0;
  const most = fullMass(march.prepared.unit);
  const { opensIn } = march;
  const partsIn = Math.floor(partsAt(march) / WEEK);
  let week = 0;
  while (week < weeks) {
    const entry = nextEntry(plan, week * WEEK);
    const next = Math.min(
      weeks,
      week <= opensIn ? opensIn : Infinity,
      week <= partsIn ? partsIn : Infinity,
      Math.floor(entry / WEEK),
    );
    if (next > week) {
      if (week <= opensIn) {
        for (; week < next; week++) {
          lost[week + 1] = 0;
          added[week + 1] = added[week]!;
          rate[week + 1] = 0;
        }
      } else week = stretch(march, week, next, enough);
    } else {
      walkWeek(march, week);
      week++;
    }
    if (march.shortAtFirst + lost[week]! - added[week]! > Math.min(enough, most)) break;
  }
  return week;
}

function nextEntry({ topUps }: Plan, from: number): number {
  let next = Infinity;
  for (let i = 0; i < topUps.length; i++)
    if (topUps[i]!.at >= from && topUps[i]!.at < next) next = topUps[i]!.at;
  return next;
}

/** Whole weeks with nothing dated in them, by Simpson's rule with a cubic between; returns the week reached. */
function stretch(march: March, from: number, until: number, enough: number): number {
  const { lost, added, rate, shortAtFirst } = march;
  const fluid = added[from]!;
  let week = from;
  let slope = rateAt(march, week, lost[week]!, fluid);
  march.older = olderThanMiddle(march);
  rate[week] = slope;
  let step = 1;
  while (week < until) {
    const start = lost[week]!;
    if (shortAtFirst + start - fluid > enough) break;
    const air = airOf(march, week);
    step = Math.min(step, until - week, LONGEST_STEP);
    while (step > 1 && Math.abs(airOf(march, week + step) - air) > AIR_STEP) step >>= 1;
    for (;;) {
      const full = rateAt(march, week + step, start + step * slope, fluid);
      const change = Math.abs(full - slope) / Math.max(full, slope, 1e-12);
      if (step > 1 && (change > growthOfAWeek || full > muchInAWeek)) {
        step >>= 1;
        continue;
      }
      if (change > STEEP || Math.max(slope, full) > muchInAWeek) {
        walkWeek(march, week);
        week++;
        rate[week] = slope = full;
        break;
      }
      // What is lost hardly changes the rate, so a foreseen loss will do in the middle and at the end.
      const half = rateAt(march, week + 0.5 * step, start + step * (0.375 * slope + 0.125 * full), fluid);
      const grown = start + (step / 6) * (slope + 4 * half + full);
      for (let w = 1; w <= step; w++) {
        const s = w / step;
        const p = s * s * (3 - 2 * s);
        const q = s * (1 - s);
        lost[week + w] = start + (grown - start) * p + step * q * ((1 - s) * slope - s * full);
        added[week + w] = fluid;
        rate[week + w] = slope + (full - slope) * s;
      }
      week += step;
      slope = full;
      if (change < 0.5 * growthOfAWeek) step *= 2;
      break;
    }
  }
  return week;
}
