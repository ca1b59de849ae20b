// Arguments that everything around the links answers: histories, driving, bay, units, beliefs. What reads text or whole files
// refuses with its own tests (tests/inputs); what takes seconds is asked with the numbers that it adds to a unit.
import * as sumpfall from "../../src/index.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { shipped, van } from "../emerge/van.ts";
import { asking, unasked, type Rows } from "./walk.ts";

const { bay, chain, driving, ensemble, lookback } = sumpfall;
const text = unasked("reads text or data: tests/inputs and tests/units spoil it");
const slow = unasked("takes seconds: its numbers are those of what it is made of");
const given = unasked("reads off what another function has made");

const seep = shipped("slow-seep");
const plan = { ...planOf(seep), span: 0 };
const cruise = { gear: 2, speed: 13, grade: 0.02, temperature: 360 };

export const rootRows: Rows<typeof sumpfall> = {
  readBuild: text,
  readCase: text,
  readVisit: text,
  drivenBy: given,
  visitDay: given,
  planOf: given,
  volumeOf: asking([1], (mass) => sumpfall.volumeOf(seep, mass)),
  dateOf: asking([86400], (clock) => sumpfall.dateOf(seep, clock)),
  simulate: asking(
    [0, 1e-3, 0, 1, 0.1, 0.005],
    (span, fillShort, weekday, dayOfYear, fine, finer) =>
      sumpfall.simulate({ ...plan, span, fillShort, weekday, dayOfYear, fine, finer }, () => false).events,
  ),
  fadeSweep: asking([cruise, 0.5], (at, time) => sumpfall.fadeSweep(van, at, [time])),
  margins: asking([van.build.ratedTurbineTorque], (ratedTurbineTorque) =>
    sumpfall.margins({ ...van, build: { ...van.build, ratedTurbineTorque } }),
  ),
  faultText: text,
  isCoded: given,
  originText: text,
};

const trace = sumpfall.driving.traceFrom({ name: "a trace", time: [0, 4, 8], speed: [0, 8, 0] });

export const drivingRows: Rows<typeof driving> = {
  clock: [7, 30],
  statistics: [trace],
  shareBeyond: [trace, 0.5],
  longestBeyond: [trace, 0.5],
  stretchesBeyond: [trace, 0.5],
  accelerationAt: [trace, 0.5],
  // A sample each 1e-300 s is possible, and never done.
  standingSamples: asking([1], (step) =>
    step > 0 && step < 1e-3 ? 0 : driving.standingSamples(trace, step),
  ),
  readTrace: text,
  mendTrace: asking([30, 2], (bridgeGaps, leadIn) =>
    driving.mendTrace({ name: "a trace", time: [0, 20], speed: [1, 5] }, { bridgeGaps, leadIn }),
  ),
  traceFrom: [{ name: "a trace", time: [0, 4, 8], speed: [0, 8, 0], grade: [0, 0, 0], lateral: [0, 0, 0] }],
  traceFromCsv: text,
  ticks: asking([1], (step) => (step < 1e-3 && step > 0 ? 0 : driving.ticks(trace, step))),
  weekOf: asking([3600, 0], (startsAt, day) => driving.weekOf([{ trace, startsAt, days: [day] }])),
  tripTime: given,
  dailyDriving: given,
  parcelRound: asking([1, driving.usualRound], (seed, options) =>
    options.duration < 1e5 ? driving.parcelRound(seed, options) : 0,
  ),
  taxiShift: asking([1, driving.usualShift], (seed, options) =>
    options.duration < 1e5 ? driving.taxiShift(seed, options) : 0,
  ),
};

export const bayRows: Rows<typeof bay> = {
  atTheLeak: asking([3600, 7200, 360, 1e-9], (age, calendar, temperature, flow) =>
    bay.atTheLeak(seep.unit, { age, calendar, temperature, flow }),
  ),
  bayCard: slow,
  bayCards: slow,
  cardText: given,
  coolerFlowTest: asking([1e-3], (shortage) => bay.coolerFlowTest(van, shortage)),
  timeIntoGear: asking([1e-3], (shortage) => bay.timeIntoGear(van, shortage, "drive", "hot")),
  launchTest: asking([1e-3], (shortage) => bay.launchTest(van, shortage)),
  levelChecks: slow,
  stickIdling: asking([1e-3, 353], (shortage, temperature) => bay.stickIdling(van, shortage, temperature)),
  linePressureTest: asking([1e-3], (shortage) => bay.linePressureTest(van, shortage, "drive")),
};

const road = { speed: 13, wish: 0.3, grade: 0.04, lateral: 0, ambient: 283 };
const newNow = () => chain.newNow(van.build);

export const chainRows: Rows<typeof chain> = {
  fresh: asking([360, 1e-3], (temperature, fillShort) => chain.fresh(van, temperature, fillShort)),
  instant: asking([road], (at) => {
    const state = chain.fresh(van, 360);
    state.gear = 2;
    const now = newNow();
    chain.fluidNow(van, state, now);
    return chain.instant(van, state, at, now);
  }),
  clutchesNow: asking([5], (slip) => {
    const [state, now] = [chain.fresh(van, 360), newNow()];
    chain.fluidNow(van, state, now);
    chain.clutchesNow(van, state, van.build.gears[0]!, slip, now);
    return now.holds;
  }),
  fluidNow: given,
  supplyNow: given,
  newNow: given,
  copyOf: given,
};

export const dutyRows: Rows<typeof sumpfall.duty> = {
  prepareDuty: slow,
  prepareWeek: slow,
  dutyHistory: slow,
  toldDates: slow,
};

const columns = [Float64Array.of(1, 2, 3), Float64Array.of(2, 1, 3)] as const;

export const ensembleRows: Rows<typeof ensemble> = {
  ailsFirst: given,
  curveAt: given,
  curveBands: given,
  ensemble: slow,
  eventBands: given,
  eventOf: given,
  keyOf: given,
  members: slow,
  pickFreeze: asking([8, 2, 1], (n, d, seed) => (n < 1e3 && d < 1e3 ? ensemble.pickFreeze(n, d, seed) : 0)),
  quantiles: [[1, 2, 3], [0.5]],
  rankInputs: given,
  scrambledHalton: asking([2, 1], (dimensions, seed) => {
    const out = new Float64Array(2);
    if (dimensions < 1e3) ensemble.scrambledHalton(dimensions, seed)(3, out);
    return out;
  }),
  sobolIndices: asking([columns[0], columns[1]], (a, b) => ensemble.sobolIndices(a, b, [a])),
  uncertain: text,
  valuesOf: given,
  varianceOf: given,
  varianceStudy: slow,
  withRanges: text,
};

const number = { law: "normal", middle: 2, spread: 0.5 } as const;
const bounded = { law: "log-uniform", low: 1, high: 5 } as const;
const values = [1, 2, 4];
const weights = [0.2, 0.5, 0.3];
const rising = lookback.sorted(values, weights);
const problem = { unknowns: [{ name: "x", belief: number }], logLikelihood: (x: Float64Array) => -x[0]! };
const exact = lookback.exactAnswer(problem, 4);

export const lookbackRows: Rows<typeof lookback> = {
  airOf: given,
  answerOf: given,
  lookBackHands: unasked("hires threads: it has no numbers of its own"),
  lookBack: slow,
  earlyAnswer: slow,
  comingLeaks: slow,
  delaysUntilHarm: given,
  explanationsOf: slow,
  checkBelief: asking([number, bounded], (one, other) => [
    lookback.checkBelief("one", one),
    lookback.checkBelief("other", other),
  ]),
  inLogarithm: given,
  valueAt: [bounded, 0.7],
  coordinateOf: [bounded, 2],
  coordinateAt: [number, 0.3],
  logDensity: [number, 1.5],
  shareBelow: [number, 1.5],
  reach: [number, 3],
  column: given,
  exactAnswer: asking([number, 4], (belief, panels) =>
    panels < 100
      ? lookback.exactAnswer({ ...problem, unknowns: [{ name: "x", belief }] }, panels).logEvidence
      : 0,
  ),
  exactQuantile: asking([0.3], (p) => lookback.exactQuantile(problem, exact, 0, p)),
  temperedAnswer: slow,
  findsLeak: ["walk round", 1e-8, { half: 1e-9, slope: 1.2, most: 0.9 }],
  effectiveSize: [weights],
  paretoSmoothed: [[-1, -2, -0.5, -3, -1, -2, -0.5, -3, -1, -2]],
  trustedShape: [100],
  varianceAfter: [values, weights, { foretold: [1, 2, 3], error: 0.5 }, 50],
  varianceAfterYesNo: [values, weights, [0.1, 0.5, 0.9]],
  sorted: [values, weights],
  quantile: asking([0.3], (p) => lookback.quantile(rising, p)),
  spreadOf: given,
  moments: [values, weights],
  dots: asking([20], (count) => lookback.dots(rising, count)),
  intervalScore: [1, 2, 1.5, 0.9],
  likelihood: [0.7],
  likelihoodWord: [0.7],
  outOfTwenty: [0.7],
  normalBelow: [0.5],
  normalQuantile: [0.3],
  logNormal: [1, 1.2, 0.5],
  logNormalBelow: [0.5],
  logNormalBetween: [-0.5, 0.5],
  measured: [1, 1.2, 0.5],
  moreThan: [1, 1.2, 0.5],
  lessThan: [1, 1.2, 0.5],
  within: [0.5, 2, 1.2, 0.5],
  counted: [3, 2.5],
  logGamma: [2.5],
  logAdd: [-1, -2],
  logSum: [[-1, -2]],
};

export const unitRows: Rows<typeof sumpfall.units> = {
  mm: [2],
  micrometres: [2],
  inches: [2],
  kilometres: [2],
  miles: [2],
  litres: [2],
  millilitres: [2],
  quarts: [2],
  kPa: [2],
  psi: [2],
  kmh: [2],
  mph: [2],
  rpm: [2],
  minutes: [2],
  hours: [2],
  days: [2],
  degC: [2],
  degF: [2],
  show: [2, "pressure", "US"],
  axis: ["pressure", "US"],
  exampleOf: text,
  given: text,
  parseQuantity: text,
  parseUnit: text,
  quantityFault: text,
  readAll: text,
  metres: text,
  metresDriven: text,
  squareMetres: text,
  cubicMetres: text,
  cubicMetresPerSecond: text,
  dropsPerMinute: text,
  kilograms: text,
  kilogramsPerCubicMetre: text,
  pascals: text,
  kelvins: text,
  temperatureDifference: text,
  seconds: text,
  perSecond: text,
  metresPerSecond: text,
  metresPerSecondSquared: text,
  radiansPerSecond: text,
  radians: text,
  squareMetresPerSecond: text,
  pascalSeconds: text,
  newtons: text,
  newtonMetres: text,
  watts: text,
  joules: text,
};
