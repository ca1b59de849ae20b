// Slips of shifts and gulps, a second or two long: what each element takes hangs little on the steps, and at half of them on a quarter as much.
import { describe, expect, test } from "vitest";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { ticks } from "../../src/driving/ticks.ts";
import { settle } from "../../src/history/settle.ts";
import { engageFromRest, noEngagement } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { fresh } from "../../src/physics/state.ts";
import { celsius, van } from "../emerge/van.ts";

const cut = ticks(parcelRound(3, { hardness: 1, hilliness: 0.6, duration: 600 }));
/** Seconds of it that are driven, and steps near air [s], fine enough to say nothing here. */
const DRIVEN = 300;
const NEAR_AIR = 0.005;

/** Slip heat of each clutch [J], the lock-up clutch last, of the hot van short of so much fluid [m³]. */
function driven(fillShort: number, finer: number): Float64Array {
  const unit = { ...van, leak: null };
  const walk = newWalk(unit, fresh(unit, celsius(80), fillShort), NEAR_AIR, finer);
  fluidNow(unit, walk.state, walk.now);
  const engagement = noEngagement();
  engageFromRest(walk, engagement);
  for (let i = 0; i < DRIVEN; i++)
    tick(walk, cut.dt[i]!, cut.speed[i]!, cut.grade[i]!, cut.lateral[i]!, engagement, () => true);
  settle(walk);
  return walk.slipEnergy;
}

const sum = (values: Float64Array) => values.reduce((all, value) => all + value, 0);
/** How much of the heat went elsewhere than with steps a tenth as long. */
const astray = (heat: Float64Array, finest: Float64Array) =>
  sum(heat.map((made, i) => Math.abs(made - finest[i]!))) / sum(finest);

// A clutch that fills presses from the moment on at which it is full, a second after the shift with all of the line's pressure: steps end there.
describe.each([2.4e-3, 2.6e-3, 2.8e-3, 3e-3])("%s m³ short", (fillShort) => {
  const finest = driven(fillShort, 0.002);

  test("a four-hundredth of the slip heat hangs on the steps, a thousandth at half of them", () => {
    expect(sum(finest)).toBeGreaterThan(50e3);
    expect(astray(driven(fillShort, 0.02), finest)).toBeLessThan(1 / 400);
    expect(astray(driven(fillShort, 0.01), finest)).toBeLessThan(1 / 1000);
  });
});
