// Cases with a hidden truth: a guess drawn from what is believed, driven trip by trip to a visit, and looked at with the errors of real looking.
import { coordinateAt, valueAt } from "../../src/chance/belief.ts";
import { normalQuantile } from "../../src/chance/normal.ts";
import { randomBits } from "../../src/chance/random.ts";
import { nedc } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { clock, weekOf, workdays } from "../../src/driving/pattern.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { ambientOn, simulate, type History } from "../../src/history/simulate.ts";
import { runningOf, wayOf } from "../../src/lookback/along.ts";
import { explanationsOf, type Explanation } from "../../src/lookback/causes.ts";
import { place } from "../../src/lookback/common.ts";
import { clocksOf, courseOf, planOfGuess, type Clocks, type Course } from "../../src/lookback/course.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { findsLeak } from "../../src/lookback/finding.ts";
import { guessOf } from "../../src/lookback/question.ts";
import { at, shownBy, type Shown } from "../../src/lookback/shown.ts";
import { expectedDrops, missingAt, seenAt, type Asked } from "../../src/lookback/terms.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { days, hole, leaking, van } from "../emerge/van.ts";

const litre = 1e-3;
/** Errors of reading a level and a gauge [m³], [Pa]. */
const LEVEL = 0.15 * litre;
const GAUGE = 8e3;

export interface Workshop {
  readonly visit: Visit;
  readonly prepared: Prepared;
}

/** The invented van on three kinds of trips, leaking at the supply line behind a shield: what a visit is but for its evidence. */
export function workshop(): Workshop {
  const week = weekOf([
    { trace: nedc, startsAt: clock(6, 30), days: workdays },
    { trace: parcelRound(1), startsAt: clock(11), days: workdays },
    { trace: nedc, startsAt: clock(17, 10), days: workdays },
  ]);
  const {
    opening: _,
    hiding: __,
    ...site
  } = leaking("supply-line", hole(1e-4), { lineAbove: 0.15e-3, columnHeight: 0.2 });
  const [dayOfYear, span] = [244, days(100)];
  const met = Array.from({ length: 120 }, (_, day) => ambientOn(van, dayOfYear + day));
  const visit: Visit = {
    name: "hidden",
    unit: van,
    week,
    site,
    shield: true,
    weekday: 0,
    dayOfYear,
    at: span,
    evidence: [],
    added: [],
  };
  const air = { coldest: Math.min(...met), warmest: Math.max(...met) };
  return { visit, prepared: prepareDuty(van, week, undefined, air)! };
}

/** A visit with what was seen, and the truth behind it. */
export interface Hidden {
  readonly visit: Visit;
  /** When the leak really opened [s]. */
  readonly opened: number;
  readonly law: string;
}

/** What really happened, for those who ask a course. */
function courseOfHistory({ trips, events, end }: History, { toPlan, fromPlan }: Clocks): Course {
  const lost = end.hidden + end.onRoad + end.onGround;
  const [clocks, losses] = [
    [0, ...trips.map((row) => row.clock), end.clock],
    [0, ...trips.map((row) => row.lost), lost],
  ];
  return {
    ranOut: false,
    over: () => Infinity,
    when: (name, clutch) =>
      fromPlan(
        events.find((event) => event.name === name && (clutch === undefined || event.clutch === clutch))
          ?.clock ?? Infinity,
      ),
    lostBy: (when) => along(clocks, losses, toPlan(when)),
    lostWhen: (mass) => (mass > lost ? Infinity : fromPlan(along(losses, clocks, mass))),
  };
}

/** A straight line through points that never fall, from the first to the last. */
function along(x: readonly number[], y: readonly number[], at: number): number {
  const i = x.findIndex((one) => one >= at);
  if (i <= 0) return i < 0 ? y.at(-1)! : y[0]!;
  const width = x[i]! - x[i - 1]!;
  const share = width > 0 ? (at - x[i - 1]!) / width : 1;
  return y[i - 1]! + (y[i]! - y[i - 1]!) * share;
}

/** Least fluid measured missing for a customer to come [m³]: a rule on what is seen, so the truth's belief stays what it is. */
const COMES = 0.5 * litre;
/** A truth that lacks less is not driven: its measured volume would hardly ever reach that [m³]. */
const HARDLY = 0.1 * litre;

/** The case of a seed: truths are drawn until one brings its customer in. */
export function hiddenCase({ visit: base, prepared }: Workshop, seed: number): Hidden {
  const explanations = explanationsOf(base).filter(({ cause }) => cause === "slow leak");
  for (let attempt = 0; ; attempt++) {
    const random = randomBits(seed, attempt);
    const visit: Visit = { ...base, at: days(40 + Math.floor(60 * random())) + clock(8, 30) };
    const explanation = explanations[Math.floor(random() * explanations.length)]!;
    const beliefs = explanationsOf(visit).find(({ law }) => law === explanation.law)!;
    const values = Float64Array.from(beliefs.unknowns, ({ belief }) =>
      valueAt(belief, coordinateAt(belief, random() + 2 ** -33)),
    );
    // "Full" was read off a stick with an error: those truths count that would have read just so.
    if (random() > Math.exp(-0.5 * (values[place.short]! / LEVEL) ** 2)) continue;
    const shown = shownBy(visit.unit, visit.site, [
      { name: "", kind: "line pressure", at: 0, pressure: 0, error: 1 },
    ]);
    const about = asked(
      visit,
      shown,
      beliefs,
      values,
      courseOf(visit, prepared, guessOf(visit, beliefs, values)),
    );
    if (about.course().ranOut || missingAt(about, visit.at) < HARDLY) continue;
    const guess = guessOf(visit, beliefs, values);
    const history = simulate(planOfGuess(visit, guess));
    if (history.endedBy !== "end of span") continue;
    const truth = asked(visit, shown, beliefs, values, courseOfHistory(history, clocksOf(visit, guess.use)));
    const seen = evidenceOf(truth, random);
    if (seen === null) continue;
    return { visit: { ...visit, evidence: seen }, opened: guess.opensAt, law: explanation.law! };
  }
}

function asked(
  visit: Visit,
  shown: Shown,
  explanation: Explanation,
  values: Float64Array,
  course: Course,
): Asked {
  return {
    ...guessOf(visit, explanation, values),
    visit,
    shown,
    learned: { trim: { step: 1, values: new Float64Array(2) }, fills: new Map() },
    course: () => course,
    drop: values[place.drop]!,
    runningBy: runningOf(visit),
    way: wayOf(visit),
    unseen: false,
    weakness: 1,
    ails: false,
  };
}

/** What is seen of a truth, each item with its own error; null where nobody would have come. */
function evidenceOf(truth: Asked, random: () => number): Evidence[] | null {
  const { visit, shown } = truth;
  const course = truth.course();
  const { at: now } = visit;
  const error = (deviation: number) => deviation * normalQuantile(random() * (1 - 2 ** -30) + 2 ** -33);
  const items: Evidence[] = [{ name: "known full", kind: "known full", at: 0, error: LEVEL }];
  const missing = missingAt(truth, now) + error(LEVEL);
  if (missing < COMES) return null;
  items.push({ name: "missing", kind: "fluid missing", at: now, volume: missing, error: LEVEL });
  if (random() < 0.7) {
    const item = {
      name: "drops",
      kind: "drops",
      at: now,
      count: 0,
      time: 120,
      moment: "idling hot",
    } as const;
    items.push({ ...item, count: poisson(expectedDrops(item, truth), random) });
  }
  const spot = course.when("first spot on the ground");
  if (random() < 0.6 && spot < now) {
    const told = spot + error(days(3));
    const half = days(4);
    items.push({
      name: "spot",
      kind: "first spot",
      when: { from: told - half, to: told + half, error: days(3) },
    });
  }
  const flare = course.when("first flare");
  if (random() < 0.5)
    items.push(
      flare < now
        ? {
            name: "flare",
            kind: "first symptom",
            symptom: "first flare",
            when: {
              from: flare - days(5) + error(days(2)),
              to: flare + days(5) + error(days(2)),
              error: days(2),
            },
          }
        : { name: "no flare", kind: "not felt", symptom: "first flare", until: now },
    );
  if (random() < 0.5) {
    const look = {
      name: "look",
      kind: "looked",
      at: Math.floor(random() * (now / 86400)) * 86400,
      look: "look underneath",
      seen: false,
    } as const;
    items.push({ ...look, seen: random() < findsLeak(look.look, seenAt(look, truth)) });
  }
  if (random() < 0.3)
    items.push({
      kind: "line pressure",
      at: now,
      pressure: at(shown.linePressure, missingAt(truth, now)) + error(GAUGE),
      name: "line pressure",
      error: GAUGE,
    });
  return items;
}

/** A count by its mean: arrivals, one exponential gap after another. */
function poisson(mean: number, random: () => number): number {
  let count = 0;
  for (let left = mean; (left += Math.log(1 - random())) > 0; count++);
  return count;
}
