// Every sentence of the page that could be false, with what makes it true.

import { slipWindow } from "../../../src/physics/clutch/slip.ts";
import { slipHeat } from "../../../src/plots/slip-heat.ts";
import type { History } from "../../../src/history/simulate.ts";
import type { EventName } from "../../../src/history/watch.ts";
import type { FadeRow } from "../../../src/history/fade.ts";
import type { Claim } from "../parts/claim.ts";
import { places, rise, warming } from "../../fade-marks.ts";
import { benchAtFirst, clutch, onBench, van as invention } from "./bench.ts";
import { fades, uphill } from "./fades.ts";
import { eventOf } from "./story.ts";
import { atFirst, historyOf } from "./van.ts";

const bench = () => onBench(benchAtFirst);
const window = () => slipWindow(bench().clutch, bench().torque, bench().friction);
const between = (share: number) => window().kiss + share * (window().lock - window().kiss);

/** Where the heat on the falling line is greatest, looked for in a thousand steps. */
function worst(data = bench()): { readonly pressure: number; readonly heat: number } {
  const { kiss, lock } = slipWindow(data.clutch, data.torque, data.friction);
  let best = { pressure: kiss, heat: 0 };
  for (let i = 0; i <= 1000; i++) {
    const pressure = kiss + ((lock - kiss) * i) / 1000;
    const heat = slipHeat(data, pressure).falling;
    if (heat > best.heat) best = { pressure, heat };
  }
  return best;
}

export const ends = {
  released: {
    says: "Up to the *kiss* pressure, at which the plates just touch, a clutch carries nothing and makes no heat.",
    holds: () => [0, 0.5, 1].every((share) => slipHeat(bench(), share * window().kiss).flat === 0),
  },
  applied: {
    says: "From the *lock* pressure up it carries all that is asked, without slip, and makes no heat either.",
    holds: () =>
      [1.0001, 1.5, 3].every((share) =>
        Object.values(slipHeat(bench(), share * window().lock)).every((heat) => heat === 0),
      ),
  },
} satisfies Record<string, Claim>;

export const inBetween = {
  both: {
    says: "Between kiss and lock there are torque and slip at once, and so there is heat at every pressure.",
    holds: () =>
      [0.01, 0.25, 0.5, 0.75, 0.99].every((share) => slipHeat(bench(), between(share)).falling > 0),
  },
  halfway: {
    says: "On an engine line that falls straight to nothing it is worst halfway from kiss to lock, and above three quarters of the worst over the whole middle half of the window.",
    holds: () =>
      Math.abs(worst().pressure - between(0.5)) < 0.002 * between(1) &&
      [0.2501, 0.4, 0.6, 0.7499].every(
        (share) => slipHeat(bench(), between(share)).falling > 0.75 * worst().heat,
      ),
  },
  cliff: {
    says: "On a flat line with a limiter it is worst just below lock: there the clutch drops from its hottest to none at all.",
    holds: () => {
      const shares = [0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 0.9999];
      const rising = shares.map((share) => slipHeat(bench(), between(share)).flat);
      return (
        rising.every((heat, i) => i === 0 || heat > rising[i - 1]!) &&
        slipHeat(bench(), between(1.0001)).flat === 0
      );
    },
  },
  sameWorst: {
    says: "A stronger spring or a better lining moves the window, not the worst heat in it: that follows from engine and output alone.",
    holds: () => {
      const { friction } = clutch;
      const [one, stronger, better] = [
        worst(),
        worst(onBench({ ...benchAtFirst, spring: 2 * clutch.spring })),
        worst(onBench(benchAtFirst, { ...friction, base: 1.4 * friction.base })),
      ];
      return [stronger, better].every(
        ({ heat, pressure }) =>
          Math.abs(heat / one.heat - 1) < 1e-4 && Math.abs(pressure / one.pressure - 1) > 0.05,
      );
    },
  },
} satisfies Record<string, Claim>;

const once = <T>(compute: () => T): (() => T) => {
  let kept: { value: T } | undefined;
  return () => (kept ??= { value: compute() }).value;
};
const first = once(() => historyOf(atFirst));
/** Running time from the first gulp of air to the first sustained slip [s]. */
function gulpToSlip(history: History): number {
  const [gulp, slip] = [eventOf(history, "first gulp of air"), eventOf(history, "first sustained slip")];
  return (slip?.running ?? Number.NaN) - (gulp?.running ?? Number.NaN);
}
const parted = once(() => historyOf({ ...atFirst, hole: 7e-3, days: 4 }));
/** Time in which the line pressure last went from all but its set point to a fifth of it before a moment [s]. */
function goneIn({ closeUps, events }: History, about: EventName): number {
  const moment = events.find(({ name }) => name === about)!.clock;
  const looks = closeUps.find((closeUp) => closeUp.about === about)!.looks;
  const share = ({ linePressure, setPoint }: (typeof looks)[number]) => linePressure / setPoint;
  const fallen = looks.findIndex((look) => look.clock > moment - 5 && share(look) < 0.2);
  const last = looks.slice(0, fallen).findLastIndex((look) => share(look) > 0.97);
  return looks[fallen]!.clock - looks[last]!.clock;
}
const swept = once(() => fades([0.1, 20, 60, 1800, 3600]));
const heatOf = (kind: FadeRow["kind"], time: number) =>
  swept().find((row) => row.kind === kind && row.time === time)!.energy;

export const fading = {
  valve: {
    says: "A pressure that goes in a tenth of a second, as when a valve shuts, and then stays away costs the clutch less than 37 foot-pounds (50 joules), which warm its steel plates by less than half a degree Fahrenheit (a quarter of a kelvin).",
    holds: () => heatOf("falls once", 0.1) < 50 && 50 / warming(invention, uphill.gear) < 0.25 / rise,
  },
  hour: {
    says: "The same pressure going over an hour costs it more than a hundred thousand times as much.",
    holds: () => heatOf("falls once", 3600) > 1e5 * heatOf("falls once", 0.1),
  },
  double: {
    says: "Once it is slow, twice the time is twice the heat.",
    holds: () => Math.abs(heatOf("falls once", 3600) / heatOf("falls once", 1800) - 2) < 0.1,
  },
  gulps: {
    says: "A pressure that comes and goes burns as surely: twenty seconds of it make more heat than one fall that takes twenty seconds, and so does a minute.",
    holds: () => [20, 60].every((time) => heatOf("comes and goes", time) > heatOf("falls once", time)),
  },
  cause: {
    says: "Which of these it is follows from the leak: from the first gulp of air to the first sustained slip, the van further down takes a minute or two when a line parts and hours through a hole as fine as a bristle.",
    holds: () => gulpToSlip(parted()) < 180 && gulpToSlip(first()) > 2 * 3600,
  },
  parts: {
    says: "When a line parts and the pump draws little but air, the pressure goes in a third of a second or so: in more than a tenth of one and less than a whole.",
    holds: () => {
      const [mark] = places.filter(({ says }) => says === "a line parts").map(({ time }) => time);
      const time = goneIn(parted(), "first sustained slip");
      return [time, mark!].every((seconds) => seconds > 0.1 && seconds < 1);
    },
  },
} satisfies Record<string, Claim>;

const before = (history: History, ...names: readonly Parameters<typeof eventOf>[1][]) => {
  const clocks = names.map((name) => eventOf(history, name)?.clock ?? Number.NaN);
  return clocks.every((clock, i) => (i === 0 ? clock >= 0 : clock > clocks[i - 1]!));
};
/** The same hole for four days, in the supply line and in the pan: what is lost [kg]. */
const lostFrom = (place: "supply-line" | "pan") =>
  historyOf({ ...atFirst, place, days: 4 }).trips.at(-1)!.lost;

export const van = {
  order: {
    says: "A spot on the ground comes first, then the stick: the level is under the low mark before the pump draws its first air, and air comes before the first sustained slip.",
    holds: () =>
      before(
        first(),
        "first spot on the ground",
        "level below the low mark",
        "first gulp of air",
        "first sustained slip",
        "no drive",
      ),
  },
  underway: {
    says: "The first air comes on the move, when a brake, a bend or a launch tilts the fluid away from the pickup, not at a standstill.",
    holds: () => {
      const { events, closeUps } = first();
      const gulp = events.find(({ name }) => name === "first gulp of air")!;
      const looks = closeUps.find(({ about }) => about === "first gulp of air")!.looks;
      return looks.filter(({ clock }) => Math.abs(clock - gulp.clock) < 2).some(({ speed }) => speed > 1);
    },
  },
  late: {
    says: "More than half of the slip heat of the whole history comes in the last tenth of its running time.",
    holds: () => {
      const { trips } = first();
      const end = trips.at(-1)!.running;
      const sum = (rows: typeof trips) => rows.reduce((total, { slipEnergy }) => total + slipEnergy, 0);
      return sum(trips.filter(({ running }) => running > 0.9 * end)) > 0.5 * sum(trips);
    },
  },
  pressureDrives: {
    says: "The same hole in the pan loses less in the same days than in the supply line, where the pump's pressure stands behind it.",
    holds: () => lostFrom("pan") < lostFrom("supply-line"),
  },
  books: {
    says: "All fluid is accounted for: what is lost and what is left make up what was filled in, to a billionth.",
    holds: () => Object.values(first().closure).every((gap) => gap < 1e-9),
  },
} satisfies Record<string, Claim>;

export const claims: readonly Claim[] = [ends, inBetween, fading, van].flatMap((group) =>
  Object.values(group),
);
