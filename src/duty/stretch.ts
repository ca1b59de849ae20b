// Whole weeks with nothing dated in them, marched together by steps as long as season, loss and the leak's growth allow.

import { airOf, LONGEST_STEP, type March } from "./course.ts";
import { rateAt, whereItLoses, widthAt } from "./rate.ts";
import { byCalendar, muchInAWeek, walkWeek } from "./week.ts";

/** Most change of the air in a step [K], and most that is lost in one [kg]: more than a parabola follows. */
const AIR_STEP = 6;
const MOST_IN_A_STEP = 2;
/** What an opening lets out for its width changes by no more than this share in a step: column and pan run dry, air is drawn. */
const EVEN = 0.12;
/** The middle of a step is read again when the loss foreseen there moves its rate by more than this share. */
const NEAR = 2e-3;
/** An opening that widens by a larger share of what it comes to is followed by shorter steps, and a week in which the rate does is walked. */
const WIDER = 0.8;
const STEEP = 0.6;
/** A pit widens by a power of its age, steep at first and smooth all the way: for both. */
const STEEP_PIT = 0.93;
/** A rate that was not read. */
const UNKNOWN = -1;

/**
 * Marches weeks from one to another; returns the week reached: the last one, or the first one in which enough is lacking [kg]. Within a step the rate is how wide
 * the opening is, looked up every half week, times what an opening of that width lets out, a parabola through three rates. Each week's loss is by Simpson's rule,
 * which alone is 2e-4 off where the rate becomes 2.5 times as large in a week.
 */
export function stretch(march: March, from: number, until: number, enough: number): number {
  const { lost, added, rate, shortAtFirst, widths, leak, reading } = march;
  const growing = reading.grows ? leak : null;
  const calendar = leak !== null && byCalendar(leak);
  const steep = calendar ? STEEP_PIT : STEEP;
  const fluid = added[from]!;
  let week = from;
  // Where in the week it loses what it loses is known better once a rate was read.
  if (calendar && march.older === 0) march.older = march.middle;
  let slope = week === march.ratedIn ? rate[week]! : rateAt(march, week, lost[week]!, fluid);
  let per = growing === null ? slope : perWidth(slope, widthAt(march, growing, week));
  if (growing !== null) whereItLoses(march);
  rate[week] = slope;
  while (week < until && shortAtFirst + lost[week]! - fluid <= enough) {
    const start = lost[week]!;
    let step = longestStep(march, week, until, slope);
    slope = per * widths[0]!;
    let half = UNKNOWN;
    let full = UNKNOWN;
    while (step > 1) {
      const toHalf = summed(widths, step);
      half = rateAt(march, week + 0.5 * step, start + per * toHalf, fluid);
      const middle = perWidth(half, widths[step]!);
      if (full === UNKNOWN)
        full = rateAt(march, week + step, start + middle * summed(widths, 2 * step), fluid);
      const last = perWidth(full, widths[2 * step]!);
      if (
        full <= muchInAWeek &&
        step * half <= MOST_IN_A_STEP &&
        changes(per, middle) <= EVEN &&
        changes(per, last) <= EVEN
      ) {
        const mean = (5 * per + 8 * middle - last) / 12;
        if (Math.abs(mean - per) * changes(per, middle) > NEAR * per)
          half = rateAt(march, week + 0.5 * step, start + mean * toHalf, fluid);
        break;
      }
      full = step % 2 === 0 ? half : UNKNOWN;
      step >>= 1;
    }
    if (step === 1) {
      if (full === UNKNOWN) full = rateAt(march, week + 1, start + slope, fluid);
      if (changes(slope, full) > steep || Math.max(slope, full) > muchInAWeek) {
        walkWeek(march, week);
        week++;
        rate[week] = slope = full;
        per = perWidth(full, widths[2]!);
        continue;
      }
      half = rateAt(march, week + 0.5, start + 0.375 * slope + 0.125 * full, fluid);
    }
    week = stepOver(march, week, step, per, half, full, enough);
    per = perWidth(full, widths[2 * step]!);
    slope = full;
    if (growing !== null) whereItLoses(march);
  }
  return week;
}

/** A week that loses no more [kg] after the leak has opened in it is told by its end: of drawn seals within 0.2 g, within 0.5 g in a week of few trips. */
const LITTLE = 3e-3;

/** A week in which a leak of the circuit that grows while running opens and loses next to nothing: by the rate at its end and how the opening widens until then. Whether it was that little. */
export function littleAtFirst(march: March, week: number): boolean {
  const { lost, added, rate, reading, leak, weekTime, opensRunning } = march;
  if (leak === null || !reading.grows || reading.place < 0 || byCalendar(leak)) return false;
  const left = week + 1 - Math.max(0, opensRunning) / weekTime;
  if (!(left > FEW)) return false;
  const end = rateAt(march, week + 1, lost[week]!, added[week]!);
  const width = widthAt(march, leak, week + 1);
  if (!(end * left <= LITTLE && width > 0)) return false;
  const from = opensRunning / weekTime;
  const half = widthAt(march, leak, 0.5 * (from + week + 1) - march.older);
  const first = widthAt(march, leak, from - march.older);
  lost[week + 1] = lost[week]! + (end * left * (first + 4 * half + width)) / (6 * width);
  added[week + 1] = added[week]!;
  rate[week + 1] = end;
  march.ratedIn = week + 1;
  return true;
}

/** Fewer of a week's trips than this share are walked as quickly. */
const FEW = 0.25;

/** Fills in the weeks of a step, from what the opening lets out for its width at first and the rates halfway and at the end; ends it where enough is lacking. */
function stepOver(
  march: March,
  from: number,
  step: number,
  per: number,
  half: number,
  full: number,
  enough: number,
): number {
  const { lost, added, rate, shortAtFirst, widths, reading } = march;
  const fluid = added[from]!;
  const middle = perWidth(half, widths[step]!);
  const last = perWidth(full, widths[2 * step]!);
  const tilt = (4 * middle - 3 * per - last) / (2 * step);
  const bend = (per - 2 * middle + last) / (2 * step * step);
  const uneven = reading.grows ? march.uneven : 0;
  let before = per * widths[0]!;
  let week = from;
  for (let h = 1; week < from + step; h += 2) {
    const between = widths[h]! * (per + h * (tilt + h * bend));
    const after = widths[h + 1]! * (per + (h + 1) * (tilt + (h + 1) * bend));
    // A week loses in its trips and stands and not evenly: more or less, by how the rate bends.
    const more = 2 * uneven * (before - 2 * between + after);
    lost[week + 1] = lost[week]! + Math.max(0, (before + 4 * between + after) / 6 + more);
    added[week + 1] = fluid;
    rate[week + 1] = before = after;
    week++;
    if (shortAtFirst + lost[week]! - fluid > enough) break;
  }
  return week;
}

/** The longest step [weeks] that air, loss and the leak's growth allow; leaves how wide the opening is in each half week of it. */
function longestStep(march: March, week: number, until: number, slope: number): number {
  const { widths, leak, reading } = march;
  let step = Math.min(until - week, LONGEST_STEP);
  const air = airOf(march, week);
  while (
    step > 1 &&
    (2 * step * slope > MOST_IN_A_STEP || Math.abs(airOf(march, week + step) - air) > AIR_STEP)
  )
    step >>= 1;
  if (!reading.grows || leak === null) {
    widths.fill(1, 0, 2 * step + 1);
    return step;
  }
  const wider = byCalendar(leak) ? STEEP_PIT : WIDER;
  const first = widthAt(march, leak, week);
  let last = widthAt(march, leak, week + step);
  for (; step > 1 && changes(first, last) > wider; last = widthAt(march, leak, week + step)) step >>= 1;
  widths[0] = first;
  for (let h = 1; h < 2 * step; h++) widths[h] = widthAt(march, leak, week + 0.5 * h);
  widths[2 * step] = last;
  return step;
}

/** What an opening lets out for its width; one that is shut lets out nothing. */
const perWidth = (rate: number, width: number): number => (width > 0 ? rate / width : 0);

/** By how much a number changes, as a share of the larger. */
function changes(from: number, to: number): number {
  const more = Math.max(from, to);
  return more > 0 ? Math.abs(to - from) / more : 0;
}

/** The sum of widths over so many half weeks, by trapezes [weeks]. */
function summed(widths: Float64Array, count: number): number {
  let sum = -0.5 * (widths[0]! + widths[count]!);
  for (let h = 0; h <= count; h++) sum += widths[h]!;
  return 0.5 * sum;
}
