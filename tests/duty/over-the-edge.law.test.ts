// A trip that runs over the edge of a plan's week: running time goes on through it.
import { describe, expect, it } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { clock, weekOf } from "../../src/driving/pattern.ts";
import { lostAtMidnights } from "../../src/duty/midnights.ts";
import { marched } from "../../src/duty/marched.ts";
import { begin, clockAt, newMarch, runningAt, WEEK } from "../../src/duty/course.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { celsius, days, hole, leaking, plan, van } from "../emerge/van.ts";

/** Sunday night at ten to twelve, for nearly twenty minutes, and a Wednesday. */
const week = weekOf([
  { trace: nedc, startsAt: clock(23, 50), days: [6] },
  { trace: nedc, startsAt: clock(7), days: [2] },
]);
const asked = plan(van, week, celsius(12), { span: days(60), weekday: 0 });
const prepared = prepareLoss(van, week, celsius(12));
const march = newMarch(prepared, asked);
begin(march, asked);

describe("from a Monday's midnight on, with a trip that began on Sunday", () => {
  it("running time does not jump at the edge, nor at any other second", () => {
    // Also in weeks before the plan's second 0, from which an older leak is counted.
    for (const edge of [3 * WEEK, -2 * WEEK]) {
      for (let second = -900; second < 900; second += 10) {
        const step = runningAt(march, edge + second + 10) - runningAt(march, edge + second);
        expect(step).toBeGreaterThanOrEqual(0);
        expect(step).toBeLessThanOrEqual(10 + 1e-6);
      }
      expect(runningAt(march, edge + 1e-3) - runningAt(march, edge - 1e-3)).toBeCloseTo(2e-3, 9);
    }
  });

  it("running time of the moment at which the engine has run so long is that again", () => {
    // What ends with a trip ends then, not days later when the next one starts.
    const wednesday = march.timeBefore[1]!;
    expect(clockAt(march, wednesday)).toBeCloseTo(days(2) + clock(7) + wednesday, 6);
    expect(clockAt(march, 2 * march.weekTime)).toBeCloseTo(
      WEEK + march.startsAt[1]! + march.weekTime - wednesday,
      6,
    );
    for (let running = 5; running < 4 * march.weekTime; running += 97)
      expect(runningAt(march, clockAt(march, running))).toBeCloseTo(running, 6);
  });

  it("what is lost by midnight leaves out what that trip loses after it", () => {
    const leak = leaking("supply-line", hole(0.16e-3));
    const { march: leaks } = marched(prepared, plan({ ...van, leak }, week, celsius(12), { span: days(21) }));
    const [midnight, whole] = [lostAtMidnights(leaks, 2)[2]!, leaks.lost[2]!];
    // Half of one of four trips, each of which loses about as much; nothing runs out of this leak in a stand.
    expect((whole - midnight) / whole).toBeGreaterThan(0.08);
    expect((whole - midnight) / whole).toBeLessThan(0.17);
  });
});
