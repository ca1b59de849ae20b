// A Weibull life fitted to a shop's records: parts that failed, that still run, that were found failed, that failed between two looks.
import { codedError, impossible, notNegative, positive } from "../errors.ts";
import type { WeibullLife } from "./life.ts";

/**
 * What is known of one part, by its age: it failed `at`; it was still good at its age now (`running`); it was found failed and may
 * have failed any time before; it was good at one look and had failed by the next. `since`: the age at which records of it begin,
 * where parts that failed before are not among them (0 when left out).
 */
export type LifeRecord = { readonly since?: number } & (
  | { readonly kind: "failed"; readonly at: number }
  | { readonly kind: "running"; readonly at: number }
  | { readonly kind: "found failed"; readonly by: number }
  | { readonly kind: "failed between"; readonly from: number; readonly to: number }
);

/** Variances and covariance of (ln scale, ln shape), from the curvature of the likelihood at its top; -covarianceWithInverse is that with ln(1/shape). */
export interface FitCovariance {
  readonly lnScale: number;
  readonly lnShape: number;
  readonly both: number;
}

export interface FittedLife {
  readonly life: WeibullLife;
  /** Logarithm of the likelihood at its top, densities with respect to age. */
  readonly logLikelihood: number;
  readonly covariance: FitCovariance;
  /** Records that tell of a failure, whenever it was; and whether they are fewer than five: the shape is then hardly known, and comes out too high. */
  readonly failures: number;
  readonly few: boolean;
}

/** Fewer failures than this leave the shape to chance. */
const ENOUGH_FAILURES = 5;

/** Sums over the records: the logarithm of the likelihood, its slopes and curvatures along (ln scale, ln shape). */
interface Top {
  value: number;
  slopeScale: number;
  slopeShape: number;
  scaleScale: number;
  scaleShape: number;
  shapeShape: number;
}

/** What an age has spent, x = (age/scale)^shape, with how it moves along both logarithms. */
function spentAt(age: number, lnScale: number, shape: number) {
  const u = shape * (Math.log(age) - lnScale);
  const x = Math.exp(u);
  return {
    u,
    x,
    scale: -shape * x,
    shape: x === 0 ? 0 : u * x,
    scaleScale: shape * shape * x,
    scaleShape: x === 0 ? 0 : -shape * x * (1 + u),
    shapeShape: x === 0 ? 0 : u * x * (1 + u),
  };
}

type Spent = ReturnType<typeof spentAt>;

/** Adds g(x) for a spent amount, by its slope and curvature in x. */
function add(top: Top, spent: Spent, value: number, slope: number, curvature: number): void {
  top.value += value;
  top.slopeScale += slope * spent.scale;
  top.slopeShape += slope * spent.shape;
  top.scaleScale += slope * spent.scaleScale + curvature * spent.scale * spent.scale;
  top.scaleShape += slope * spent.scaleShape + curvature * spent.scale * spent.shape;
  top.shapeShape += slope * spent.shapeShape + curvature * spent.shape * spent.shape;
}

/** ln(1 − e^−x) with slope and curvature in x. */
function failed(x: number): [number, number, number] {
  const over = Math.expm1(x);
  const slope = 1 / over;
  const value = x > Math.LN2 ? Math.log1p(-Math.exp(-x)) : Math.log(-Math.expm1(-x));
  return [value, slope, over === Infinity ? 0 : -slope * (1 + slope)];
}

function topAt(records: readonly LifeRecord[], lnScale: number, lnShape: number): Top {
  const shape = Math.exp(lnShape);
  const top: Top = { value: 0, slopeScale: 0, slopeShape: 0, scaleScale: 0, scaleShape: 0, shapeShape: 0 };
  for (const record of records) {
    if (record.since) {
      const before = spentAt(record.since, lnScale, shape);
      add(top, before, before.x, 1, 0);
    }
    if (record.kind === "failed") {
      const spent = spentAt(record.at, lnScale, shape);
      add(top, spent, -spent.x, -1, 0);
      top.value += lnShape + spent.u - Math.log(record.at);
      top.slopeScale -= shape;
      top.slopeShape += 1 + spent.u;
      top.scaleShape -= shape;
      top.shapeShape += spent.u;
    } else if (record.kind === "running") {
      if (record.at === 0) continue;
      const spent = spentAt(record.at, lnScale, shape);
      add(top, spent, -spent.x, -1, 0);
    } else {
      const by = spentAt(record.kind === "found failed" ? record.by : record.to, lnScale, shape);
      const from = record.kind === "found failed" ? (record.since ?? 0) : record.from;
      if (from === 0) {
        add(top, by, ...failed(by.x));
        continue;
      }
      const good = spentAt(from, lnScale, shape);
      add(top, good, -good.x, -1, 0);
      add(top, between(good, by), ...failed(by.x - good.x));
    }
  }
  return top;
}

/** The difference of two spent amounts moves as the difference of their moves. */
const between = (from: Spent, to: Spent): Spent => ({
  u: 0,
  x: to.x - from.x,
  scale: to.scale - from.scale,
  shape: to.shape - from.shape,
  scaleScale: to.scaleScale - from.scaleScale,
  scaleShape: to.scaleShape - from.scaleShape,
  shapeShape: to.shapeShape - from.shapeShape,
});

function checkRecords(records: readonly LifeRecord[]): number {
  let failures = 0;
  records.forEach((record, i) => {
    const name = (field: string) => `records[${i}].${field}`;
    const since = record.since ?? 0;
    notNegative(name("since"), since);
    const until = (field: string, age: number) => {
      if (age < since) impossible(name(field), age, "no less than the age since which it is recorded");
    };
    if (record.kind !== "running") failures++;
    if (record.kind === "found failed") {
      positive(name("by"), record.by);
      if (record.by <= since)
        impossible(name("by"), record.by, "more than the age since which it is recorded");
    } else if (record.kind === "failed between") {
      notNegative(name("from"), record.from);
      until("from", record.from);
      if (!(record.to > record.from && record.to < Infinity))
        impossible(name("to"), record.to, "a later age than that of the look before");
    } else {
      if (record.kind === "failed") positive(name("at"), record.at);
      else notNegative(name("at"), record.at);
      until("at", record.at);
    }
  });
  return failures;
}

function noFit(expected: string, given: string): never {
  throw codedError("impossible-input", [{ path: "records", expected, given, example: "" }]);
}

const noTop = (): never =>
  noFit("ages that some Weibull life fits best", "ages that ever more extreme shapes fit ever better");

const STEPS = 200;
/** A shape of e^±9, a scale of e^±700 are none: the likelihood rises on and on. */
const STEEPEST = 9;
const FURTHEST = 700;

/**
 * The Weibull life that makes records of parts of one kind likeliest, and how sure it is. Each part counts with the density at its
 * failure, the share that still holds, that has failed by then, or that fails between two looks; one that was recorded late, given
 * that it held until then. By Newton's steps on (ln scale, ln shape), halved until the likelihood rises. Distance and years are
 * fitted each for themselves: corrosion goes by the one, fatigue by the other.
 * Errors: records none of which tells of a failure; records that no finite shape fits best (all failed at one age, say).
 * Source: maximum likelihood with censored data, NIST/SEMATECH e-Handbook 8.4.1.3; covariance from the observed information (Fisher).
 */
export function fittedLife(records: readonly LifeRecord[]): FittedLife {
  const failures = checkRecords(records);
  if (failures === 0) noFit("one failure or more among them", "none");
  // Begun where the exponential law stands: all the time in use over the failures.
  const ages = records.map((record) =>
    record.kind === "found failed" ? record.by : record.kind === "failed between" ? record.to : record.at,
  );
  const oldest = ages.reduce((most, age) => Math.max(most, age), 0);
  let lnScale = Math.log(oldest) + Math.log(ages.reduce((sum, age) => sum + age / oldest, 0) / failures);
  let lnShape = 0;
  let top = topAt(records, lnScale, lnShape);
  for (let step = 0; ; step++) {
    const [byScale, byShape] = uphill(top);
    const toGain = byScale * top.slopeScale + byShape * top.slopeShape;
    const size = 1 + Math.abs(top.value);
    if (toGain < (step < STEPS ? 1e-21 : 1e-9) * size) break;
    let share = 1;
    let next = top;
    for (; share > 1e-12; share /= 2) {
      next = topAt(records, lnScale + share * byScale, lnShape + share * byShape);
      // As high, to rounding: near the top a whole step is as good in value and better in place.
      if (next.value >= top.value - 1e-14 * size) break;
    }
    if (!(share > 1e-12)) {
      // Nothing as high near by: the top to rounding, or the likelihood leaves the numbers here.
      if (!(toGain < 1e-9 * size)) noTop();
      break;
    }
    lnScale += share * byScale;
    lnShape += share * byShape;
    top = next;
    if (!(Math.abs(lnShape) < STEEPEST && Math.abs(lnScale) < FURTHEST && step <= STEPS)) noTop();
  }
  const determinant = top.scaleScale * top.shapeShape - top.scaleShape * top.scaleShape;
  if (!(determinant > 0 && top.scaleScale < 0)) noTop();
  return {
    life: { scale: Math.exp(lnScale), shape: Math.exp(lnShape) },
    logLikelihood: top.value,
    covariance: {
      lnScale: -top.shapeShape / determinant,
      lnShape: -top.scaleScale / determinant,
      both: top.scaleShape / determinant,
    },
    failures,
    few: failures < ENOUGH_FAILURES,
  };
}

/** Longest step along a logarithm. */
const STRIDE = 1;

/** Newton's step where the likelihood is a hill, else one that climbs; none longer than the stride. */
function uphill({ slopeScale, slopeShape, scaleScale, scaleShape, shapeShape }: Top): [number, number] {
  const b = -scaleShape;
  let [a, c] = [-scaleScale, -shapeShape];
  // The smaller of the two curvatures; where it is not a hill's, both are raised by as much as makes it one.
  const middle = 0.5 * (a + c);
  const least = middle - Math.hypot(0.5 * (a - c), b);
  const floor = 1e-12 * (Math.abs(middle) + Math.hypot(0.5 * (a - c), b));
  if (least < floor) {
    const lift = Math.abs(least) + Math.max(floor, Math.hypot(slopeScale, slopeShape));
    a += lift;
    c += lift;
  }
  const determinant = a * c - b * b;
  let steps: [number, number] = [
    (c * slopeScale - b * slopeShape) / determinant,
    (a * slopeShape - b * slopeScale) / determinant,
  ];
  const longest = Math.max(Math.abs(steps[0]), Math.abs(steps[1]));
  if (longest > STRIDE) steps = [(STRIDE * steps[0]) / longest, (STRIDE * steps[1]) / longest];
  return steps;
}
