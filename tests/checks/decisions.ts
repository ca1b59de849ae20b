// Lives, replacement, looks, flushing: what a decision rests on, against worked problems and other programs.
import { isoCode, isoNumber } from "../../src/decisions/cleanliness.ts";
import { fittedLife, type LifeRecord } from "../../src/decisions/fitted-life.ts";
import {
  changesUntil,
  dirtAtChange,
  filterTakes,
  oldAfterChanges,
  oldAfterExchange,
  piecesAfter,
  steadyDirt,
  steadyPieces,
  timeUntilClean,
  volumesUntil,
} from "../../src/decisions/flushing.ts";
import {
  bestInterval,
  downtime,
  exponentialDelays,
  inspectionCost,
  neverLooking,
  shareThatFails,
  weibullDelays,
} from "../../src/decisions/inspection.ts";
import { failsFirst, lifeOfSet, noneFails, oneOrSet } from "../../src/decisions/joints.ts";
import {
  failedBy,
  failureDensity,
  hazard,
  lifeOfMean,
  meanLife,
  survivalFrom,
} from "../../src/decisions/life.ts";
import {
  blockedAtLeast,
  blockedByChance,
  flowLeft,
  flowLeftInLine,
  flowPastDepositInSlot,
  flowPastDepositInTube,
  meanPressureTimes,
  openAfterPieces,
  pressureTimes,
  tubePassage,
} from "../../src/decisions/plugging.ts";
import {
  bestRenewal,
  bestReplacement,
  costRate,
  costRateRepaired,
  runToFailure,
} from "../../src/decisions/replacement-age.ts";
import {
  causesBy,
  fatigueShareAt,
  meanLifeOfBoth,
  survivalOfBoth,
  survivalOfBothFrom,
} from "../../src/decisions/two-clocks.ts";
import type { Check } from "./check.ts";

const link = "deciding" as const;
type Kind = Check["kind"];

/** Rows of one source: claim, expected, got, relative tolerance: by the digits that the source tells. */
type Row = readonly [claim: string, expected: number, got: () => number, relative: number];
const rows = (kind: Kind, source: string, list: readonly Row[]): Check[] =>
  list.map(([claim, expected, got, relative]) => ({
    claim,
    link,
    source,
    kind,
    expected,
    got,
    tolerance: { relative },
  }));

// A life
const handbookLife = { shape: 1.5, scale: 5000 };
const handbook = "NIST/SEMATECH e-Handbook of Statistical Methods";

const tested: LifeRecord[] = [
  ...[54, 187, 216, 240, 244, 335, 361, 373, 375, 386].map((at) => ({ kind: "failed", at }) as const),
  ...Array.from({ length: 10 }, () => ({ kind: "running", at: 500 }) as const),
];
const mixed: LifeRecord[] = [
  ...[120, 150, 90].map((at) => ({ kind: "failed", at }) as const),
  ...[70, 110].map((by) => ({ kind: "found failed", by }) as const),
  ...(
    [
      [60, 100],
      [80, 130],
      [100, 160],
    ] as const
  ).map(([from, to]) => ({ kind: "failed between", from, to }) as const),
  ...[200, 200, 180].map((at) => ({ kind: "running", at }) as const),
];

// Joints: shape 3, scale 16 years, assumed
const joint = { shape: 3, scale: 16 };
const aged = (...ages: number[]) => ages.map((age) => ({ life: joint, age }));
const four = failsFirst(aged(4, 7, 10, 12), 2);
const prices = { part: 40, visit: 220, harm: 0 };
const choice = oneOrSet(aged(10, 10, 10), joint, 2, prices);
const harmful = oneOrSet(aged(10, 10, 10), joint, 2, { ...prices, harm: 350 });

// Two clocks: assumed
const twoClocks = (distancePerTime: number) => ({
  fatigue: { shape: 3, scale: 300_000 },
  corrosion: { shape: 2, scale: 14 },
  distancePerTime,
});

// Replacement
const barlow = "age replacement of Barlow and Proschan (1965)";
const best = (shape: number, failure: number) =>
  bestReplacement({ shape, scale: 1 }, { planned: 1, failure });
const lines = { shape: 3, scale: 160_000 };
const linePrices = { planned: 60, failure: 3500 };
const patched = { renewal: 1, repair: 0.2 };

// Looks: thousands of kilometres
const exponential = exponentialDelays(12);
const weibull = weibullDelays(lifeOfMean(12, 2));
const looks = { faults: 1 / 80, failure: 4200, found: 260, look: 35 };
const delayTime = "delay-time model of Christer and Waller (1984)";

const isoRows: readonly (readonly [number, number])[] = [
  [0.01, 0],
  [0.011, 1],
  [0.64, 6],
  [0.65, 7],
  [2.5, 8],
  [10, 10],
  [10.1, 11],
  [52, 13],
  [520, 16],
  [640, 16],
  [641, 17],
  [1300, 17],
  [1305, 18],
  [2500, 18],
  [4000, 19],
  [12_500, 21],
  [100_000, 24],
  [160_000, 24],
];

const litre = 1e-3;
const minute = 60;
const loop = { volume: 8 * litre, flow: (4 * litre) / minute, takes: filterTakes(10), comesIn: 0 };
const passages = blockedByChance(20, 0.15);
const thin = tubePassage(2e-3, 0.4, 20e3, { viscosity: 0.02, density: 850 });

export const checks: readonly Check[] = [
  // Life
  ...rows("recalled", `${handbook}, section 8.1.6.2`, [
    [
      "of a kind with shape 1.5 and scale 5000, 8.556 % have failed by 1000",
      0.08556,
      () => failedBy(handbookLife, 1000),
      1e-5,
    ],
    ["and 0.000123 of it fail in the hour then", 0.000123, () => failureDensity(handbookLife, 1000), 3e-3],
  ]),
  ...rows("computed", "law of Weibull (1951), evaluated by an independent program", [
    [
      "shape 1.5, scale 5000: failed by 1000, to twelve digits",
      0.08555935639278299,
      () => failedBy(handbookLife, 1000),
      1e-12,
    ],
    ["and the density there", 0.00012268508642966373, () => failureDensity(handbookLife, 1000), 1e-12],
    ["and the hazard there", 0.00013416407864998736, () => hazard(handbookLife, 1000), 1e-12],
  ]),

  // A life from records
  ...rows("published", `${handbook}, section 8.4.1.3`, [
    [
      "ten that failed by 386 h and ten good at 500 h have shape 1.7208",
      1.7208,
      () => fittedLife(tested).life.shape,
      3e-5,
    ],
    ["a likelihood of e^-75.135", -75.135, () => fittedLife(tested).logLikelihood, 7e-6],
    ["and a mean life of 540.737 h", 540.737, () => meanLife(fittedLife(tested).life), 1e-6],
  ]),
  {
    claim: "and scale 606.528",
    link,
    source: `${handbook}, section 8.4.1.3`,
    kind: "published",
    expected: 606.528,
    got: () => fittedLife(tested).life.scale,
    tolerance: { absolute: 5e-4 },
    because: "a fourth decimal is printed, a 0; two other programs have 606.52756, so the third is taken",
  },
  ...rows(
    "computed",
    "R 4.2.2 with survival 3.5-3, and scipy 1.17.1, on the hours of the handbook's section 8.4.1.3",
    [
      ["those twenty, to nine digits: shape", 1.720797261, () => fittedLife(tested).life.shape, 1e-8],
      ["scale", 606.527558, () => fittedLife(tested).life.scale, 1e-8],
      ["logarithm of the likelihood", -75.13461816, () => fittedLife(tested).logLikelihood, 1e-9],
      [
        "standard error of the logarithm of the scale",
        0.205943909,
        () => Math.sqrt(fittedLife(tested).covariance.lnScale),
        1e-6,
      ],
      [
        "standard error of that of the shape",
        0.2918127631,
        () => Math.sqrt(fittedLife(tested).covariance.lnShape),
        1e-6,
      ],
      [
        "their covariance, the shape's turned over",
        0.0271278424,
        () => -fittedLife(tested).covariance.both,
        1e-6,
      ],
      ["and the mean life", 540.7370255, () => meanLife(fittedLife(tested).life), 1e-8],
    ],
  ),
  ...rows(
    "computed",
    "R 4.2.2 with survival 3.5-3, and scipy 1.17.1, on eleven parts of four kinds of record",
    [
      [
        "failed, found failed, failed between looks, running: shape",
        1.869909515,
        () => fittedLife(mixed).life.shape,
        1e-8,
      ],
      ["their scale", 158.345339, () => fittedLife(mixed).life.scale, 1e-8],
      ["their logarithm of the likelihood", -27.08874932, () => fittedLife(mixed).logLikelihood, 1e-9],
      [
        "their variance of the logarithm of the scale",
        0.036119036,
        () => fittedLife(mixed).covariance.lnScale,
        1e-5,
      ],
      ["their variance of that of the shape", 0.121666776, () => fittedLife(mixed).covariance.lnShape, 1e-5],
      [
        "their covariance of both, the shape's turned over",
        0.002115273,
        () => -fittedLife(mixed).covariance.both,
        1e-5,
      ],
    ],
  ),

  // Joints
  ...rows(
    "computed",
    "series systems of Weibull lives, evaluated by an independent program from assumed lives and prices",
    [
      [
        "a joint of ten years, shape 3 and scale 16, holds for two more",
        0.8371647658485446,
        () => survivalFrom(joint, 10, 2),
        1e-12,
      ],
      ["four such all hold", 0.49118349701292313, () => noneFails(aged(10, 10, 10, 10), 2), 1e-12],
      ["three such and a new one", 0.5855777864671197, () => noneFails(aged(10, 10, 10, 0), 2), 1e-12],
      ["four new ones", 0.9922179382602437, () => noneFails(aged(0, 0, 0, 0), 2), 1e-12],
      [
        "four of one age are one with scale 10.08",
        10.079368399158986,
        () => lifeOfSet(joint, 4).scale,
        1e-12,
      ],
      ["one of them new: 367.75 with the first return", 367.74977551854886, () => choice.one, 1e-10],
      ["all four new: 382.02", 382.0233360523366, () => choice.set, 1e-10],
      ["the set is cheaper for parts under 34.50", 34.4961126225283, () => choice.tippingPart, 1e-10],
      ["where a return harms for 350 beside: one 512.80", 512.797550255057, () => harmful.one, 1e-10],
      ["and the set 384.75: the decision turns", 384.74705766125135, () => harmful.set, 1e-10],
    ],
  ),
  ...rows("computed", "competing risks of Weibull lives by quadrature, scipy 1.17.1", [
    ["joints of 4, 7, 10 and 12 years all hold for two more", 0.5728514151660928, () => four.none, 1e-12],
    ["the youngest fails first", 0.027921366, () => four.each[0]!, 2e-8],
    ["the second fails first", 0.07188773, () => four.each[1]!, 2e-8],
    ["the third fails first", 0.136436284, () => four.each[2]!, 2e-8],
    ["the oldest fails first", 0.190903205, () => four.each[3]!, 2e-8],
  ]),

  // Two clocks
  ...rows("computed", "fatigue and corrosion as competing risks by quadrature, scipy 1.17.1", [
    [
      "a line at 25 000 km a year: holds for ten years",
      0.33658391490620365,
      () => survivalOfBoth(twoClocks(25_000), 10),
      1e-12,
    ],
    ["has failed by fatigue", 0.333820491, () => causesBy(twoClocks(25_000), 10).fatigue, 1e-8],
    ["has failed by corrosion", 0.329595594, () => causesBy(twoClocks(25_000), 10).corrosion, 1e-8],
    ["lasts 8.51 years in the mean", 8.511598045, () => meanLifeOfBoth(twoClocks(25_000)), 1e-9],
    ["fails by fatigue, if at ten years", 0.629820051, () => fatigueShareAt(twoClocks(25_000), 10), 1e-8],
    [
      "holds for two more years then",
      0.5242502710296892,
      () => survivalOfBothFrom(twoClocks(25_000), 10, 2),
      1e-12,
    ],
    [
      "a line at 50 000 km a year: holds for ten years",
      0.005858663862156727,
      () => survivalOfBoth(twoClocks(50_000), 10),
      1e-12,
    ],
    ["at 50 000 it has failed by fatigue", 0.846904987, () => causesBy(twoClocks(50_000), 10).fatigue, 1e-8],
    [
      "at 50 000 it has failed by corrosion",
      0.147236349,
      () => causesBy(twoClocks(50_000), 10).corrosion,
      1e-8,
    ],
    ["at 50 000 it lasts 5.02 years in the mean", 5.018702501, () => meanLifeOfBoth(twoClocks(50_000)), 1e-9],
    [
      "at 50 000 it fails by fatigue, if at ten years",
      0.931558935,
      () => fatigueShareAt(twoClocks(50_000), 10),
      1e-8,
    ],
  ]),

  // Replacement before failure
  ...rows("computed", `${barlow}, worked out with mpmath 1.3.0`, [
    [
      "shape 2, failures at five times the price: replaced at 0.5107 of the scale",
      0.5106552242954465,
      () => best(2, 5).age!,
      1e-12,
    ],
    ["which costs 4.085", 4.085241794363571887, () => best(2, 5).costRate, 1e-12],
    ["shape 2, ten times: replaced at", 0.33645119125538827713, () => best(2, 10).age!, 1e-12],
    ["shape 2, ten times: costs", 6.0561214425969889883, () => best(2, 10).costRate, 1e-12],
    ["shape 2.5, five times: replaced at", 0.49304695759663410229, () => best(2.5, 5).age!, 1e-12],
    ["shape 2.5, five times: costs", 3.4620427387892685718, () => best(2.5, 5).costRate, 1e-12],
    ["shape 3, five times: replaced at", 0.50260958210255876997, () => best(3, 5).age!, 1e-12],
    ["shape 3, five times: costs", 3.0313967042557051802, () => best(3, 5).costRate, 1e-12],
    ["shape 3, ten times: replaced at", 0.38245553114297995835, () => best(3, 10).age!, 1e-12],
    ["shape 3, ten times: costs", 3.9493502991501906458, () => best(3, 10).costRate, 1e-12],
  ]),
  ...rows("computed", `${barlow}, evaluated by an independent program`, [
    [
      "shape 2, five times, replaced at half the scale: an error function",
      4.0860058001774915,
      () => costRate({ shape: 2, scale: 1 }, 0.5, { planned: 1, failure: 5 }),
      1e-12,
    ],
    [
      "shape 2, five times, run to failure",
      5.6418958354775635,
      () => runToFailure({ shape: 2, scale: 1 }, { planned: 1, failure: 5 }),
      1e-12,
    ],
    [
      "shape 3, ten times, run to failure",
      11.19846521722186,
      () => runToFailure({ shape: 3, scale: 1 }, { planned: 1, failure: 10 }),
      1e-12,
    ],
    [
      "a line set for 60 that burns for 3500: replaced after 32 946 km",
      32_945.699,
      () => bestReplacement(lines, linePrices).age!,
      1e-7,
    ],
    [
      "which costs 2.73 a thousand kilometres",
      0.0027347472983,
      () => bestReplacement(lines, linePrices).costRate,
      1e-10,
    ],
    ["and nine times as much run to failure", 0.0244966426627, () => runToFailure(lines, linePrices), 1e-10],
  ]),
  ...rows("published", "documentation of an open reliability library, optimal replacement time", [
    [
      "shape 2.5, scale 1000, five times: replaced at 493.19",
      493.19,
      () => bestReplacement({ shape: 2.5, scale: 1000 }, { planned: 1, failure: 5 }).age!,
      5e-4,
    ],
    [
      "which costs 0.0035",
      0.0035,
      () => bestReplacement({ shape: 2.5, scale: 1000 }, { planned: 1, failure: 5 }).costRate,
      0.0143,
    ],
  ]).map((check) => ({
    ...check,
    because: "its minimiser is 0.03 % off; the cost is printed to two digits",
  })),
  ...rows("computed", "minimal repair of Barlow and Hunter (1960), evaluated by an independent program", [
    [
      "patched for a fifth, shape 2.5: renewed at",
      1.6186445827673461,
      () => bestRenewal({ shape: 2.5, scale: 1 }, patched)!.age,
      1e-12,
    ],
    [
      "patched for a fifth, shape 2.5: costs",
      1.0296680842790198,
      () => costRateRepaired({ shape: 2.5, scale: 1 }, 1.6186445827673461, patched),
      1e-12,
    ],
  ]),

  // Looks
  ...rows("computed", `${delayTime}, exponential delays in closed form, by quadrature and simulated`, [
    [
      "a mean delay of 12: a quarter of it between looks, 11.5 % fail unseen",
      0.11520313228561951,
      () => shareThatFails(exponential, 3),
      1e-12,
    ],
    ["half of it between looks", 0.21306131942526685, () => shareThatFails(exponential, 6), 1e-12],
    ["all of it between looks", 0.36787944117144233, () => shareThatFails(exponential, 12), 1e-12],
    ["twice it between looks", 0.5676676416183064, () => shareThatFails(exponential, 24), 1e-12],
  ]),
  ...rows("computed", `${delayTime}, Weibull delays by scipy 1.17.1 and mpmath 1.3.0`, [
    [
      "few short delays (shape 2): a quarter of the mean between looks, 1.6 % fail unseen",
      0.016124294113,
      () => shareThatFails(weibull, 3),
      1e-9,
    ],
    ["shape 2: half of it between looks", 0.06176810214, () => shareThatFails(weibull, 6), 1e-9],
    ["shape 2: all of it between looks", 0.210091405444, () => shareThatFails(weibull, 12), 1e-9],
    ["shape 2: twice it between looks", 0.506094441092, () => shareThatFails(weibull, 24), 1e-9],
  ]),
  ...rows(
    "computed",
    `${delayTime}, extended to looks that miss, by quadrature (scipy 1.17.1) and simulated`,
    [
      [
        "looks that find seven in ten, half the mean delay apart, shape 2",
        0.18767177447,
        () => shareThatFails(weibull, 6, 0.7),
        1e-8,
      ],
      [
        "looks that find seven in ten, the mean delay apart, shape 2",
        0.40474405633,
        () => shareThatFails(weibull, 12, 0.7),
        1e-8,
      ],
    ],
  ),
  ...rows(
    "computed",
    `${delayTime}, least cost by a minimiser (scipy 1.17.1) and, where exponential, as the root of its slope`,
    [
      [
        "exponential, perfect looks for 35, burns for 4200: looked at each 4.695",
        4.6950147966,
        () => bestInterval(exponential, looks).interval!,
        1e-6,
      ],
      ["exponential, perfect: costs", 19.196645269801, () => bestInterval(exponential, looks).costRate, 1e-9],
      [
        "exponential, perfect: fail unseen",
        0.1724249682,
        () => bestInterval(exponential, looks).failing,
        1e-6,
      ],
      [
        "exponential, perfect: costs at 10",
        22.584754122768,
        () => inspectionCost(exponential, 10, looks),
        1e-9,
      ],
      [
        "exponential, perfect: costs at 16",
        27.48661928915,
        () => inspectionCost(exponential, 16, looks),
        1e-9,
      ],
      ["never looked at: costs", 52.5, () => neverLooking(exponential, looks), 1e-12],
      [
        "exponential, seven in ten found: looked at each",
        3.85043467,
        () => bestInterval(exponential, looks, 0.7).interval!,
        1e-6,
      ],
      [
        "exponential, seven in ten found: costs",
        23.894192101,
        () => bestInterval(exponential, looks, 0.7).costRate,
        1e-6,
      ],
      [
        "exponential, seven in ten found: costs at 10",
        29.10243824,
        () => inspectionCost(exponential, 10, looks, 0.7),
        1e-6,
      ],
      ["shape 2, perfect: looked at each", 6.03583241, () => bestInterval(weibull, looks).interval!, 1e-6],
      ["shape 2, perfect: costs", 12.125128275, () => bestInterval(weibull, looks).costRate, 1e-6],
      ["shape 2, perfect: costs at 10", 14.410573971, () => inspectionCost(weibull, 10, looks), 1e-6],
      [
        "shape 2, seven in ten found: looked at each",
        4.14966583,
        () => bestInterval(weibull, looks, 0.7).interval!,
        1e-6,
      ],
      [
        "shape 2, seven in ten found: costs",
        17.101116258,
        () => bestInterval(weibull, looks, 0.7).costRate,
        1e-6,
      ],
      [
        "shape 2, seven in ten found: costs at 10",
        23.533727229,
        () => inspectionCost(weibull, 10, looks, 0.7),
        1e-6,
      ],
    ],
  ),
  ...rows(
    "computed",
    `${delayTime}, downtime, evaluated by an independent program`,
    (
      [
        [1, 0.26218112404976607],
        [5, 0.0804447593555371],
        [10, 0.05861475177306942],
        [20, 0.052122958132883326],
      ] as const
    ).map(([interval, share]) => [
      `a unit looked at each ${interval}, faults 0.1, stood 0.5 for a failure and 0.35 for a look, stands for a share of the time`,
      share,
      () => downtime(exponentialDelays(6), interval, { faults: 0.1, failure: 0.5, look: 0.35 }),
      1e-12,
    ]),
  ),

  // A plugged cooler
  ...rows("computed", "binomial and occupancy laws, scipy 1.17.1", [
    ["of 20 passages each blocked with 15 %, three are in the mean", 3, () => passages.mean, 1e-10],
    ["their standard deviation", 1.5968719422671311, () => passages.deviation, 1e-10],
    ["none of them is", 0.038759531084514354, () => passages.probabilities[0]!, 1e-10],
    ["five or more are", 0.1701531537313461, () => blockedAtLeast(passages, 5), 1e-10],
    [
      "the same flow takes 1.188 times the pressure in the mean: more than at three blocked",
      1.1876187993970924,
      () => meanPressureTimes(passages),
      1e-10,
    ],
    [
      "25 pieces that land anywhere leave 12.85 of 30 passages open",
      12.854045539502156,
      () => openAfterPieces(30, 25).anywhere,
      1e-10,
    ],
    ["their standard deviation is 1.63", 1.632709766350054, () => openAfterPieces(30, 25).deviation, 1e-10],
    ["and five where they follow the flow", 5, () => openAfterPieces(30, 25).followingFlow, 1e-10],
  ]),
  ...rows("computed", "parallel laminar passages, evaluated by an independent program", [
    ["3 of 20 blocked: flow", 0.85, () => flowLeft(20, 3), 1e-10],
    ["10 of 20 blocked: flow", 0.5, () => flowLeft(20, 10), 1e-10],
    ["15 of 20 blocked: flow", 0.25, () => flowLeft(20, 15), 1e-10],
    ["3 of 20 blocked: pressure for the same flow", 1.1764705882, () => pressureTimes(20, 3), 1e-10],
    ["10 of 20 blocked: pressure for the same flow", 2, () => pressureTimes(20, 10), 1e-10],
    ["15 of 20 blocked: pressure for the same flow", 4, () => pressureTimes(20, 15), 1e-10],
    [
      "half of a cooler blocked behind a line that resists as much: two thirds flow",
      0.6666666667,
      () => flowLeftInLine(1e12, 1e12, 20, 10),
      1e-10,
    ],
    [
      "a tube of 2 mm and 0.4 m under 20 kPa passes 0.98 mL/s of 20 mPa s",
      0.9817477042468105e-6,
      () => thin.flow,
      1e-10,
    ],
    ["at 0.31 m/s", 0.3125, () => thin.velocity, 1e-10],
    ["and Re 27", 26.5625, () => thin.reynolds, 1e-10],
    ["twenty of them pass 1.18 L/min", (1.1780972450961726 * litre) / minute, () => 20 * thin.flow, 1e-10],
    [
      "0.1 mm on the wall of a tube of 2 mm leaves 66 % of the flow",
      0.6561,
      () => flowPastDepositInTube(0.1e-3, 2e-3),
      1e-10,
    ],
    [
      "or takes 1.52 times the pressure",
      1.5241579027587258,
      () => 1 / flowPastDepositInTube(0.1e-3, 2e-3),
      1e-10,
    ],
    ["a gap narrowed by a tenth passes 73 %", 0.729, () => flowPastDepositInSlot(0.05e-3, 1e-3), 1e-10],
    [
      "or takes 1.37 times the pressure, in a gap",
      1.371742112482853,
      () => 1 / flowPastDepositInSlot(0.05e-3, 1e-3),
      1e-10,
    ],
  ]),

  // Cleanliness
  ...rows(
    "published",
    "ISO 4406:1999, table of a filter catalogue's appendix and of a trade article",
    isoRows.map(([pieces, number]) => [
      `${pieces} pieces in a millilitre have number ${number}`,
      number,
      () => isoNumber(pieces),
      0,
    ]),
  ),
  ...rows("published", "ISO 4406:1999, table of a filter catalogue's appendix and of a trade article", [
    [
      "4000, 520 and 52 of 4, 6 and 14 µm: 19/16/13, its first part",
      19,
      () => Number(isoCode([4000, 520, 52]).split("/")[0]),
      0,
    ],
    ["and its second", 16, () => Number(isoCode([4000, 520, 52]).split("/")[1]), 0],
    ["and its third", 13, () => Number(isoCode([4000, 520, 52]).split("/")[2]), 0],
  ]),

  // Flushing
  ...rows("computed", "perfect mixing, evaluated by an independent program", [
    ["one volume exchanged leaves old", 0.36787944, () => oldAfterExchange(1), 2e-8],
    ["two volumes exchanged leave old", 0.13533528, () => oldAfterExchange(2), 4e-8],
    ["three volumes exchanged leave old", 0.04978707, () => oldAfterExchange(3), 4e-8],
    ["down to 1 % it takes 4.6 volumes", 4.605170186, () => volumesUntil(0.01), 1e-9],
    ["a pan that holds 40 %: old after one change", 0.6, () => oldAfterChanges(0.4, 1), 1e-12],
    ["old after two", 0.36, () => oldAfterChanges(0.4, 2), 1e-12],
    ["old after three", 0.216, () => oldAfterChanges(0.4, 3), 1e-12],
    ["old after four", 0.1296, () => oldAfterChanges(0.4, 4), 1e-12],
    ["a pan that holds 35 %: old after three", 0.274625, () => oldAfterChanges(0.35, 3), 1e-12],
    ["a pan that holds half: old after three", 0.125, () => oldAfterChanges(0.5, 3), 1e-12],
    [
      "nine tenths new by 40 % takes 4.51 changes",
      4.507575551943847,
      () => changesUntil(0.9, 0.4).exactly,
      1e-10,
    ],
    ["so five", 5, () => changesUntil(0.9, 0.4).whole, 0],
    ["95 % new by 40 % takes 5.86", 5.864491000800571, () => changesUntil(0.95, 0.4).exactly, 1e-10],
    ["so six", 6, () => changesUntil(0.95, 0.4).whole, 0],
    [
      "dirt of 10 for each interval, 40 % changed: 25 before, in the long run",
      25,
      () => steadyDirt(10, 0.4).before,
      1e-12,
    ],
    ["and 15 after", 15, () => steadyDirt(10, 0.4).after, 1e-12],
    ["19.6 before the third change, begun clean", 19.6, () => dirtAtChange(10, 0.4, 3).before, 1e-12],
    [
      "8 L through a filter of beta 10 at 4 L/min: left after five minutes",
      0.10539922456186433,
      () => piecesAfter(loop, 1, 5 * minute),
      1e-10,
    ],
    ["a tenth left after 5.12 min", 5.116855762208991 * minute, () => timeUntilClean(loop, 0.1), 1e-10],
    [
      "3600 pieces a minute leave one in each millilitre in the end",
      1e6,
      () => steadyPieces({ ...loop, comesIn: 3600 / minute }),
      1e-10,
    ],
  ]),
  ...rows("recalled", "ISO 16889, beta ratio", [
    ["beta 200 takes out 99.5 % in a pass", 0.995, () => filterTakes(200), 1e-10],
    ["beta 75 takes out 98.7 %", 0.9866666667, () => filterTakes(75), 1e-10],
  ]),
];
