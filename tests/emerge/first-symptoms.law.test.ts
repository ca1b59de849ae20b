// First symptoms come under tilt and load, cold before hot, long before they come level and steady.
import { describe, expect, it, test } from "vitest";
import { holdAt, idling } from "../../src/bay/ready.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { simulate } from "../../src/history/simulate.ts";
import { tick } from "../../src/history/tick.ts";
import type { Walk } from "../../src/history/walk.ts";
import { gravity as g } from "../../src/physics/load/road.ts";
import type { Unit } from "../../src/physics/build.ts";
import { celsius, days, hole, leaking, named, plan, rounds, van } from "./van.ts";

/** Rows of seconds, speed at their end [m/s], grade, lateral acceleration [m/s²]; driven tick by tick. */
type Drive = readonly (readonly [seconds: number, speed: number, grade: number, lateral: number])[];

const idle: Drive = [[40, 0, 0, 0]];
/** Half a minute of even speed: the first ten seconds bring it there and are not looked at. */
const cruise: Drive = [[30, 14, 0, 0]];
const tilted: Record<string, Drive> = {
  "a launch": [
    [4, 10, 0, 0],
    [4, 10, 0, 0],
  ],
  "a turn": [
    [10, 8, 0, 0],
    [4, 8, 0, -0.3 * g],
    [4, 8, 0, 0],
  ],
  "a hill": [
    [10, 10, 0.08, 0],
    [10, 10, 0.08, 0],
  ],
};
const stop: Drive = [
  [10, 14, 0, 0],
  [4.7, 0, 0, 0],
  [4, 0, 0, 0],
];

/** Whether a drive shows the symptom, with the fluid held at a temperature [K] and so much missing [m³]. */
function shows(
  drive: Drive,
  sick: (walk: Walk) => boolean,
  temperature: number,
  missing: number,
  unit: Unit,
): boolean {
  const walk = idling(unit, missing, temperature);
  const engagement = noEngagement();
  let seen = false;
  if (drive === cruise) {
    for (let s = 1; s <= 10; s++) tick(walk, 1, 1.4 * s, 0, 0, engagement, () => holdAt(walk, temperature));
  }
  for (const [seconds, speed, grade, lateral] of drive) {
    const from = walk.scheduled;
    const ticks = Math.ceil(seconds);
    for (let i = 1; i <= ticks && !seen; i++) {
      tick(walk, seconds / ticks, from + ((speed - from) * i) / ticks, grade, lateral, engagement, () => {
        seen ||= sick(walk);
        return holdAt(walk, temperature);
      });
    }
  }
  return seen;
}

/** The van with its pickup's mouth off the middle: so far along [m], and as far to the right. */
function withMouth(along: number): Unit {
  const { sump } = van.build;
  const pickup = { ...sump.pickup, x: sump.pan.length / 2 + along, y: sump.pan.width / 2 - 0.05 };
  return { ...van, build: { ...van.build, sump: { ...sump, pickup } } };
}
const mouthForward = withMouth(0.07);
const mouthRearward = withMouth(-0.07);

const gulps = ({ state }: Walk) => state.gas > 0.1;
const sags = ({ now }: Walk) => now.line.linePressure < 0.97 * now.setPoint;

/** Least missing fluid [m³] that shows the symptom, within a twentieth of a litre. */
function missingAt(
  drive: Drive,
  sick: (walk: Walk) => boolean,
  temperature: number,
  unit = mouthForward,
): number {
  let [none, shown] = [0, 6.4e-3];
  while (shown - none > 0.05e-3) {
    const middle = (none + shown) / 2;
    if (shows(drive, sick, temperature, middle, unit)) shown = middle;
    else none = middle;
  }
  return shown;
}

const cold = celsius(-5);
const hot = celsius(80);
const level = Math.min(missingAt(idle, gulps, hot), missingAt(cruise, gulps, hot));

describe("air", () => {
  const found = Object.entries(tilted).map(
    ([name, drive]) => [name, missingAt(drive, gulps, hot), missingAt(drive, gulps, cold)] as const,
  );

  test.each(found)("reaches the pump in %s long before it does on the level", (_, whenHot) => {
    expect(whenHot).toBeLessThan(0.9 * level);
  });

  test.each(found)("reaches the pump in %s sooner cold than hot", (_, whenHot, whenCold) => {
    expect(whenCold).toBeLessThan(whenHot - 0.1e-3);
  });

  it("first of all in a cold launch, turn or hill, with less than half missing of what level driving needs", () => {
    expect(Math.min(...found.map(([, , whenCold]) => whenCold))).toBeLessThan(0.5 * level);
  });
});

describe("where the mouth sits decides which comes first", () => {
  const launch = tilted["a launch"]!;
  it("a launch when it lies in front", () => {
    expect(missingAt(launch, gulps, hot)).toBeLessThan(missingAt(stop, gulps, hot) - 0.3e-3);
  });
  it("a stop when it lies behind", () => {
    expect(missingAt(stop, gulps, hot, mouthRearward)).toBeLessThan(
      missingAt(launch, gulps, hot, mouthRearward) - 0.3e-3,
    );
  });
});

describe("pressure", () => {
  it("sags in a cold launch, and in a hot one, before it does at hot idle", () => {
    const launch = tilted["a launch"]!;
    const still = missingAt(idle, sags, hot);
    const whenHot = missingAt(launch, sags, hot);
    expect(whenHot).toBeLessThan(still - 0.2e-3);
    expect(missingAt(launch, sags, cold)).toBeLessThan(whenHot - 0.1e-3);
  });
});

describe("in a history", () => {
  const leak = leaking("supply-line", hole(0.2e-3));
  const week = rounds([8, 13], { hardness: 1, hilliness: 1, duration: 1800 });
  const history = simulate(plan({ ...mouthForward, leak }, week, celsius(0), { span: days(10) }));

  it("the first gulp comes with far less missing than level driving would need", () => {
    const gulp = named(history, "first gulp of air")!;
    const missing = gulp.lost / van.fluid.density15;
    expect(missing).toBeGreaterThan(0);
    expect(missing).toBeLessThan(0.75 * level);
  });

  it("and hours of running before the first sustained slip", () => {
    const between =
      named(history, "first sustained slip")!.running - named(history, "first gulp of air")!.running;
    expect(between).toBeGreaterThan(3600);
  });
});

test("a line that parts at a standstill skips all this: from the first gulp to no drive within ten minutes", () => {
  const leak = leaking("supply-line", hole(8e-3));
  const week = rounds([8], { hardness: 1, hilliness: 1, duration: 1800 });
  const history = simulate(
    plan({ ...van, leak }, week, celsius(10), { opens: { after: 8 * 3600 }, span: days(2) }),
  );
  expect(history.endedBy).toBe("no drive");
  const gulp = named(history, "first gulp of air")!;
  expect(named(history, "no drive")!.running - gulp.running).toBeLessThan(600);
});
