// What was seen, said back in the reader's units.

import type { Evidence, When } from "../../src/lookback/evidence.ts";
import type { ReadVisit } from "../../src/inputs/visit.ts";
import type { Tell } from "../report/said.ts";
import { dayIn, momentIn } from "./moments.ts";

const DAY = 86400;

/** One item in a line. */
export function itemWords(item: Evidence, read: ReadVisit, tell: Tell): string {
  const on = (at: number) => (at >= read.clock.at ? "at the visit" : `on ${dayIn(read, at)}`);
  switch (item.kind) {
    case "fluid missing":
      return `${tell(item.volume, "volume")} missing, right to ${tell(item.error, "volume")}, ${on(item.at)}`;
    case "fluid drained":
      return `${tell(item.volume, "volume")} drained while ${tell(item.stays, "volume")} stayed, ${on(item.at)}`;
    case "dipstick":
      return `the dipstick at ${tell(item.temperature, "temperature")} stood at ${item.position.toFixed(1)} (0 low mark, 1 full), ${on(item.at)}`;
    case "off the dipstick":
      return `the dipstick at ${tell(item.temperature, "temperature")} was dry, ${on(item.at)}`;
    case "drops":
      return `${item.count} drops in ${minutes(item.time)}, ${item.moment === "parked" ? "engine off" : "idling hot"}, ${on(item.at)}`;
    case "first spot":
      return `first spot on the ground ${whenWords(item.when, read, tell)}`;
    case "first symptom":
      return `"${symptomWords[item.symptom] ?? item.symptom}" first felt ${whenWords(item.when, read, tell)}`;
    case "not felt":
      return `"${symptomWords[item.symptom] ?? item.symptom}" not felt until ${item.until >= read.clock.at ? "the visit" : dayIn(read, item.until)}`;
    case "known full":
      return `full, right to ${tell(item.error, "volume")}, ${on(item.at)}`;
    case "looked":
      return `${item.look} ${on(item.at)}: ${item.seen ? "wet" : "nothing seen"}`;
    case "line pressure":
      return `line pressure ${tell(item.pressure, "pressure")}, right to ${tell(item.error, "pressure")}, ${on(item.at)}`;
    case "cooler flow":
      return `cooler return ${tell(item.flow, "flow")}, right to ${tell(item.error, "flow")}, ${on(item.at)}`;
    case "sediment":
      return `the pan ${on(item.at)}: ${item.amount}`;
    case "teardown":
      return `opened ${on(item.at)}: the ${item.clutch} ${item.burnt ? "burnt" : "not burnt"}`;
    case "learned trim":
      return `learned trim ${tell(item.pressure, "pressure")}, ${on(item.at)}`;
    case "learned fill":
      return `learned fill of the ${item.clutch} ${(1000 * item.time).toFixed(0)} ms, ${on(item.at)}`;
    case "fluid in the coolant":
      return `${item.found ? "fluid" : "no fluid"} in the coolant ${on(item.at)}`;
  }
}

const symptomWords: Readonly<Record<string, string>> = {
  "slow engagement, cold": "slow into gear, cold",
  "slow engagement, hot": "slow into gear, hot",
  "first flare": "flare",
  "first sustained slip": "slips",
  "lock-up slipping": "lock-up slips",
  "fluid too hot": "runs hot",
  "vehicle falls behind": "falls behind",
  "no drive": "does not move",
  "first gulp of air": "whines",
};

const minutes = (seconds: number) =>
  seconds < 60
    ? `${seconds} s`
    : seconds < 600
      ? `${Number((seconds / 60).toFixed(1))} min`
      : seconds < 7200
        ? `${Math.round(seconds / 60)} min`
        : `${Number((seconds / 3600).toFixed(1))} h`;

/** As an odometer is read: without its tenths. Distances that are no whole miles or kilometres are rounded in the reader's own unit. */
const byOdometer = (metres: number, tell: Tell): string =>
  tell(metres, "distance").replace(/^-?[\d.]+/, (number) => String(Math.max(1, Math.round(Number(number)))));

function whenWords({ from, to, error, of }: When, read: ReadVisit, tell: Tell): string {
  const { clock } = read;
  // About a moment is a narrow span with an error: both together are what was told.
  const narrow = to - from < error * 1.1;
  const both = narrow ? Math.hypot(error, (to - from) / Math.sqrt(12)) : error;
  const hours = Math.round(both / 60) < DAY / 60;
  const miles = (by: number) =>
    `${byOdometer((clock.odometer ?? 0) + by, tell)}${clock.odometer === null ? " after the last full" : ""}`;
  const on = (at: number) => (of !== undefined ? miles(at) : hours ? momentIn(read, at) : dayIn(read, at));
  const right = `, right to ${of !== undefined ? byOdometer(both, tell) : hours ? minutes(both) : `${Math.round(both / DAY)} ${Math.round(both / DAY) === 1 ? "day" : "days"}`}`;
  if (from === -Infinity) return `by ${on(to)}${right}`;
  if (to === Infinity) return `not yet by ${on(from)}${right}`;
  if (narrow) return `about ${on(0.5 * (from + to))}${right}`;
  return `between ${on(from)} and ${to >= (of ?? clock.at) ? "the visit" : on(to)}${right}`;
}
