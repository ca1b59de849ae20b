// Arguments that the laws of deciding answer.
import * as laws from "../../src/names/decisions.ts";
import { van } from "../emerge/van.ts";
import { asking, type Rows } from "./walk.ts";
import { prices } from "../decisions/prices.ts";

const life = { scale: 16, shape: 3 };
const joints = [
  { life, age: 4 },
  { life, age: 0 },
];
const line = {
  fatigue: { scale: 3e5, shape: 3 },
  corrosion: { scale: 14, shape: 2 },
  distancePerTime: 25_000,
  exposure: 1.2,
};
const records: readonly laws.LifeRecord[] = [
  { kind: "failed", at: 120 },
  { kind: "failed", at: 150, since: 20 },
  { kind: "found failed", by: 110 },
  { kind: "failed between", from: 80, to: 130 },
  { kind: "running", at: 200 },
];
const sample = { kind: "sample", delays: [3, 9, 20] } as const;
const looks = { faults: 0.0125, failure: 4200, found: 260, look: 35 };
const stands = { faults: 0.1, failure: 0.5, look: 0.35 };
const replaced = { planned: 60, failure: 3500 };
const loop = { volume: 8e-3, flow: 6e-5, takes: 0.9, comesIn: 60 };
const oil = { viscosity: 0.02, density: 850 };
const chance = laws.blockedByChance(5, 0.15);
const ruined = { clutches: true, lockUp: false, burnt: true };
const cases = [
  { ...ruined, share: 0.25 },
  { clutches: false, lockUp: true, burnt: false, share: 0.75 },
];

/** Every way in which delays are told: a sample, and both laws. */
const told = (mean: number, shape: number, ask: (delays: laws.Delays) => unknown) =>
  [laws.exponentialDelays(mean), laws.weibullDelays({ scale: mean, shape }), sample].map(ask);

export const decisionRows: Rows<typeof laws> = {
  survival: [life, 10],
  survivalFrom: [life, 10, 2],
  failedBy: [life, 10],
  failureDensity: [life, 10],
  hazard: [life, 10],
  spent: [life, 10],
  spentBetween: [life, 10, 2],
  ageByWhich: [life, 0.1],
  meanLife: [life],
  lifeOfMean: [12, 2],
  usedUpTo: [life, 10],
  meanRemaining: [life, 10],
  noneFails: [joints, 2],
  someFails: [joints, 2],
  failsFirst: [joints, 2],
  lifeOfSet: [life, 4],
  oneOrSet: [joints, life, 2, { part: 40, visit: 220, harm: 350 }],
  survivalOfBoth: [line, 10],
  survivalOfBothFrom: [line, 10, 2],
  causesBy: [line, 10],
  fatigueShareAt: [line, 10],
  meanLifeOfBoth: [line],
  fittedLife: asking([records], (given) => laws.fittedLife(given)),
  costRate: [life, 10, replaced],
  runToFailure: [life, replaced],
  bestReplacement: [life, replaced],
  costRateRepaired: [life, 10, { renewal: 1, repair: 0.2 }],
  bestRenewal: [life, { renewal: 1, repair: 0.2 }],
  exponentialDelays: asking([12, 5], (mean, delay) => laws.stillWaiting(laws.exponentialDelays(mean), delay)),
  weibullDelays: asking([life, 5], (given, delay) => laws.stillWaiting(laws.weibullDelays(given), delay)),
  stillWaiting: [sample, 5],
  shareThatFails: asking([12, 2, 6, 0.7], (mean, shape, interval, finds) =>
    told(mean, shape, (delays) => laws.shareThatFails(delays, interval, finds)),
  ),
  inspectionCost: [sample, 6, looks, 0.7],
  neverLooking: [sample, looks],
  bestInterval: asking([12, 2, looks, 0.7], (mean, shape, prices, finds) =>
    told(mean, shape, (delays) => laws.bestInterval(delays, prices, finds)),
  ),
  downtime: [sample, 6, stands, 0.7],
  oldAfterExchange: [2],
  volumesUntil: [0.01],
  oldAfterChanges: [0.4, 3],
  oldAfterFillingFirst: [0.4, 3],
  oldAfterRemovingFirst: [0.4, 3],
  changesUntil: [0.9, 0.4],
  steadyDirt: [10, 0.4],
  dirtAtChange: [10, 0.4, 3],
  filterTakes: [75],
  piecesAfter: [loop, 1e6, 300],
  steadyPieces: [loop],
  timeUntilClean: [loop, 0.1],
  flowLeft: [20, 3],
  pressureTimes: [20, 3],
  flowLeftInLine: [1e12, 1e12, 20, 3],
  blockedByChance: [20, 0.15],
  blockedAtLeast: asking([20, 0.15, 5], (n, p, least) =>
    laws.blockedAtLeast(laws.blockedByChance(n, p), least),
  ),
  meanPressureTimes: [chance],
  openAfterPieces: [30, 25],
  tubePassage: [2e-3, 0.4, 2e4, oil],
  slotPassage: [1e-2, 1e-3, 0.4, 2e4, oil],
  flowPastDepositInTube: [1e-4, 2e-3],
  flowPastDepositInSlot: [1e-4, 2e-3],
  isoNumber: [52],
  isoCode: [
    [4000, 520, 52],
    [400, 52, 6],
  ],
  goneWith: [ruined],
  chancesOf: [cases],
  wayCosts: [cases, prices, { chance: 0.3, burns: 0.6 }],
  laterLeakCost: [prices, 0.6],
  refills: [van.build, van.fluid, 293.15],
};
