import { nedc, nedcExtraUrban, nedcUrban } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { dailyDriving, weekOf } from "../../src/driving/pattern.ts";
import { roundBuilder } from "../../src/driving/round-builder.ts";
import {
  accelerationAt,
  longestBeyond,
  shareBeyond,
  standingSamples,
  statistics,
  stretchesBeyond,
} from "../../src/driving/statistics.ts";
import { type Trace } from "../../src/driving/trace.ts";
import { gravity as g } from "../../src/physics/load/road.ts";
import { type Check } from "./check.ts";

const [kmh, mph, foot, mile] = [1 / 3.6, 0.44704, 0.3048, 1609.344];

const regulation =
  "UN Regulation 83, annex 4, test cycle, summary of the urban cycle (text in a clause archive)";
const policy = "transportpolicy.net, light-duty New European Driving Cycle";
const cycles = "dieselnet.com, ECE 15 + EUDC / NEDC, table of parameters";
const builders = "engine developer's page on the driving cycle";
const ownStatistics = "cycle statistics from 1 s samples, NumPy 2.4 and Node 20";
const survey = "AAA Foundation, American Driving Survey 2022, summary";
const positioned =
  "48 vehicle-days of open 1 Hz positions from a regional travel survey, 2007, evaluated in NumPy 2.4";

/** Largest sideways acceleration felt on a level bend of a radius at a speed. */
function sideways(radius: number, speed: number): number {
  const road = roundBuilder();
  road.stretch({ length: 0, cruise: speed, exit: speed, launch: 1, braking: 1, grade: 0 });
  road.turn(radius, 3, 1, 0);
  return Math.max(...road.trace("bend").lateral);
}

// Share of moving time in which parcel rounds accelerate beyond a threshold, over ten seeds.
const launches = (threshold: number) => {
  let [beyond, moving] = [0, 0];
  for (let seed = 1; seed <= 10; seed++) {
    const round = parcelRound(seed);
    const { duration, idleShare } = statistics(round);
    beyond += shareBeyond(round, threshold) * duration;
    moving += duration * (1 - idleShare);
  }
  return beyond / moving;
};

// The survey's mean trip, 24.7 min and 12.3 mi, seventeen times a week (2.44 a day).
const meanTrip: Trace = {
  name: "mean trip",
  time: Float64Array.of(0, 10, 24.7 * 60 - 10, 24.7 * 60),
  speed: Float64Array.of(0, 1, 1, 0).map((v) => (v * 12.3 * mile) / (24.7 * 60 - 10)),
  grade: new Float64Array(4),
  lateral: new Float64Array(4),
};
const surveyWeek = () =>
  dailyDriving(
    weekOf([
      { trace: meanTrip, startsAt: 27000, days: [0, 1, 2, 3, 4, 5, 6] },
      { trace: meanTrip, startsAt: 63000, days: [0, 1, 2, 3, 4, 5, 6] },
      { trace: meanTrip, startsAt: 43200, days: [2, 5, 6] },
    ]),
  );

const rows: readonly Omit<Check, "link">[] = [
  {
    claim: "the urban part is 1013 m long",
    source: regulation,
    kind: "published",
    expected: 1013,
    got: () => statistics(nedcUrban).distance,
    tolerance: { relative: 2e-3 },
    because: "the printed distance is theoretical; its own breakpoints give 1014.6 m",
  },
  {
    claim: "the urban part idles for 60 s",
    source: regulation,
    kind: "published",
    expected: 60,
    got: () => statistics(nedcUrban).idleShare * 195,
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "the urban part accelerates for 36 s",
    source: regulation,
    kind: "published",
    expected: 36,
    got: () => shareBeyond(nedcUrban, 0) * 195,
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "the urban part slows down for 25 s and 9 s, and for 2 s in a gear change",
    source: regulation,
    kind: "published",
    expected: 36,
    got: () => shareBeyond(nedcUrban, -1e-9) * 195,
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "the urban part averages 18.7 km/h",
    source: policy,
    kind: "published",
    expected: 18.7,
    got: () => statistics(nedcUrban).meanSpeed / kmh,
    tolerance: { absolute: 0.05 },
  },
  {
    claim: "the whole cycle is 11.007 km long",
    source: policy,
    kind: "published",
    expected: 11007,
    got: () => statistics(nedc).distance,
    tolerance: { relative: 1e-3 },
    because: "it counts the urban part at its theoretical 1013 m",
  },
  {
    claim: "the extra-urban part is 6.9549 km long",
    source: cycles,
    kind: "published",
    expected: 6954.9,
    got: () => statistics(nedcExtraUrban).distance,
    tolerance: { absolute: 0.05 },
  },
  {
    claim: "the extra-urban part averages 62.59 km/h",
    source: cycles,
    kind: "published",
    expected: 62.59,
    got: () => statistics(nedcExtraUrban).meanSpeed / kmh,
    tolerance: { absolute: 0.005 },
  },
  {
    claim: "the extra-urban part averages 69.36 km/h while it moves",
    source: cycles,
    kind: "published",
    expected: 69.36,
    got: () => statistics(nedcExtraUrban).meanMovingSpeed / kmh,
    tolerance: { relative: 3e-3 },
    because: "the table counts 39 s of standing samples where the standing lasts 40 s: 1 s in 361",
  },
  {
    claim: "the whole cycle averages 33.6 km/h",
    source: builders,
    kind: "published",
    expected: 33.6,
    got: () => statistics(nedc).meanSpeed / kmh,
    tolerance: { absolute: 0.05 },
  },
  {
    claim: "the hardest launch is 1.04 m/s2",
    source: builders,
    kind: "published",
    expected: 1.04,
    got: () => statistics(nedc).maxAcceleration,
    tolerance: { absolute: 0.005 },
  },
  {
    claim: "and lasts 4 s",
    source: builders,
    kind: "published",
    expected: 4,
    got: () => longestBeyond(nedc, 1.03),
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "14.07 % of the cycle accelerates above 0.05 g",
    source: ownStatistics,
    kind: "computed",
    expected: 0.14068,
    got: () => shareBeyond(nedc, 0.05 * g),
    tolerance: { absolute: 5e-6 },
  },
  {
    claim: "15.09 % of the cycle brakes harder than 0.05 g",
    source: ownStatistics,
    kind: "computed",
    expected: 0.15085,
    got: () => shareBeyond(nedc, -0.05 * g),
    tolerance: { absolute: 5e-6 },
  },
  {
    claim: "the longest braking above 0.1 g lasts 18 s",
    source: ownStatistics,
    kind: "computed",
    expected: 18,
    got: () => longestBeyond(nedc, -0.1 * g),
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "the cycle stops 13 times",
    source: ownStatistics,
    kind: "computed",
    expected: 13,
    got: () => statistics(nedc).stops,
    tolerance: { absolute: 0 },
  },
  {
    claim: "the cycle stands for 23.73 % of its time",
    source: ownStatistics,
    kind: "computed",
    expected: 0.237288,
    got: () => statistics(nedc).idleShare,
    tolerance: { absolute: 5e-7 },
  },
  {
    claim: "24.8942 % of the cycle's samples, one a second, stand",
    source: ownStatistics,
    kind: "computed",
    expected: 24.8942,
    got: () => (100 * standingSamples(nedc).standing) / standingSamples(nedc).samples,
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "its accelerations have the root mean square 0.4387 m/s2",
    source: ownStatistics,
    kind: "computed",
    expected: 0.4387,
    got: () => statistics(nedc).rmsAcceleration,
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "and 0.5023 m/s2 while it moves",
    source: ownStatistics,
    kind: "computed",
    expected: 0.5023,
    got: () => statistics(nedc).rmsMovingAcceleration,
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "its relative positive acceleration is 0.1114 m/s2",
    source: ownStatistics,
    kind: "computed",
    expected: 0.1114,
    got: () => statistics(nedc).relativePositiveAcceleration,
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "one in twenty seconds brakes by 0.873 m/s2 or harder",
    source: ownStatistics,
    kind: "computed",
    expected: -0.873,
    got: () => accelerationAt(nedc, 0.05),
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "19 of 20 seconds accelerate by 0.8333 m/s2 or less",
    source: ownStatistics,
    kind: "computed",
    expected: 0.8333,
    got: () => accelerationAt(nedc, 0.95),
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "half the time it does not change its speed",
    source: ownStatistics,
    kind: "computed",
    expected: 0,
    got: () => accelerationAt(nedc, 0.5, "size"),
    tolerance: { absolute: 0 },
  },
  {
    claim: "nine of ten seconds change it by 0.8373 m/s2 or less",
    source: ownStatistics,
    kind: "computed",
    expected: 0.8373,
    got: () => accelerationAt(nedc, 0.9, "size"),
    tolerance: { absolute: 0.005 },
    because: "there it is interpolated between two seconds, here it is one of them (0.8333)",
  },
  {
    claim: "95 of a hundred by 0.9259 m/s2",
    source: ownStatistics,
    kind: "computed",
    expected: 0.9259,
    got: () => accelerationAt(nedc, 0.95, "size"),
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "99 of a hundred by 1.0417 m/s2",
    source: ownStatistics,
    kind: "computed",
    expected: 1.0417,
    got: () => accelerationAt(nedc, 0.99, "size"),
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "it launches above 0.1 g four times",
    source: ownStatistics,
    kind: "computed",
    expected: 4,
    got: () => stretchesBeyond(nedc, 0.1 * g).count,
    tolerance: { absolute: 0 },
  },
  {
    claim: "for 4.0 s on the mean",
    source: ownStatistics,
    kind: "computed",
    expected: 4.0,
    got: () => stretchesBeyond(nedc, 0.1 * g).mean,
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "and brakes above 0.1 g once",
    source: ownStatistics,
    kind: "computed",
    expected: 1,
    got: () => stretchesBeyond(nedc, -0.1 * g).count,
    tolerance: { absolute: 0 },
  },
  {
    claim: "at 70 mph on the least radius, 1814.8 ft, bank and friction of 0.08 + 0.10 carry the turn",
    source: "solved highway exercise: least radius for 70 mph, e = 8 %, f = 0.10",
    kind: "published",
    expected: 0.18,
    got: () => sideways(1814.8 * foot, 70 * mph) / g,
    tolerance: { relative: 0.005 },
    because: "the design formula rounds 14.95 to 15",
  },
  {
    claim: "a quarter turn of 12 m at 18 km/h is felt as 0.2124 g",
    source: "v squared over R g, NumPy 2.4",
    kind: "computed",
    expected: 0.2124,
    got: () => sideways(12, 18 * kmh) / g,
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "seventeen mean trips a week are 60.2 min of driving a day",
    source: survey,
    kind: "published",
    expected: 60.2,
    got: () => surveyWeek().drivingTime / 60,
    tolerance: { absolute: 0.5 },
    because: "17 trips in 7 days are 2.43 a day; the survey has 2.44",
  },
  {
    claim: "and 30.1 mi",
    source: survey,
    kind: "published",
    expected: 30.1,
    got: () => surveyWeek().distance / mile,
    tolerance: { absolute: 0.3 },
    because: "17 trips in 7 days are 2.43 a day; the survey has 2.44, and the mean trip is rounded to 0.1 mi",
  },
  {
    claim: "parcel rounds launch above 0.1 g about as often as vehicles do: 5.1 % of moving time",
    source: positioned,
    kind: "computed",
    expected: 0.051,
    got: () => launches(0.1 * g),
    tolerance: { absolute: 0.035 },
    because:
      "a delivery round starts more often than mixed driving, US06 as a hard day reaches 0.105 of all time",
  },
  {
    claim: "and above 0.15 g: 1.7 %",
    source: positioned,
    kind: "computed",
    expected: 0.017,
    got: () => launches(0.15 * g),
    tolerance: { absolute: 0.02 },
    because:
      "a delivery round starts more often than mixed driving, US06 as a hard day reaches 0.082 of all time",
  },
];

export const checks: readonly Check[] = rows.map((row) => ({ ...row, link: "load" }));
