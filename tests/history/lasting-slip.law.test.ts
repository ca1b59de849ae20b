// A slip that lasts is looked at up to once a second: heat, plate and lining come out as with looks a tenth as long.
import { describe, expect, test } from "vitest";
import { ticks } from "../../src/driving/ticks.ts";
import { settle } from "../../src/history/settle.ts";
import { engageFromRest, noEngagement } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { fresh } from "../../src/physics/state.ts";
import { celsius, trace, van } from "../emerge/van.ts";

const launch = Array.from({ length: 12 }, (_, i) => [i + 1, 1.2 * (i + 1)] as const);
const on = Array.from({ length: 80 }, (_, i) => [13 + i, 14.4] as const);
const away = trace("away and on", [[0, 0], ...launch, ...on]);

/** The van, short of so much fluid [m³] and its linings charred to a share, on that drive: slip heat [J], plate [K] and char of the clutch that slips most, metres driven, longest look at a slip and how long it slipped [s]. */
function driven(fillShort: number, charred: number, finer: number) {
  const unit = { ...van, leak: null };
  const walk = newWalk(unit, fresh(unit, celsius(60), fillShort), 2.5 * finer, finer);
  const { state, slipEnergy } = walk;
  state.char.fill(charred);
  fluidNow(unit, state, walk.now);
  const cut = ticks(away);
  const engagement = noEngagement();
  engageFromRest(walk, engagement);
  let [longest, looked, slipped] = [0, state.clock, 0];
  for (let i = 0; i < cut.count; i++)
    tick(walk, cut.dt[i]!, cut.speed[i]!, cut.grade[i]!, cut.lateral[i]!, engagement, () => {
      if (state.slipping) {
        longest = Math.max(longest, state.clock - looked);
        slipped += state.clock - looked;
      }
      looked = state.clock;
      return true;
    });
  settle(walk);
  const heat = Math.max(...slipEnergy);
  const most = slipEnergy.indexOf(heat);
  return {
    heat,
    all: slipEnergy.reduce((sum, made) => sum + made, 0),
    plate: state.plate[most]!,
    char: state.char[most]!,
    metres: state.distance,
    longest,
    slipped,
  };
}

// The first two seconds are looked at as closely as any slip; of what follows, looks of a second leave some thousandths.
describe.each([
  [0, 0.8],
  [0, 0.88],
  [0, 0.9],
  [1e-3, 0.8],
  [3.3e-3, 0.8],
])("%s m³ short, charred to %s", (fillShort, charred) => {
  const [usual, finest] = [driven(fillShort, charred, 0.02), driven(fillShort, charred, 0.002)];

  test("it slips all the while and is looked at in steps of up to a second", () => {
    expect(usual.slipped).toBeGreaterThan(80);
    expect(usual.longest).toBeGreaterThan(0.7);
    expect(finest.longest).toBeLessThan(0.11);
  });

  test("its heat is that of looks a tenth as long to a three-hundredth, the plate to 1 K, char to a five-thousandth, the way to a five-hundredth", () => {
    expect(Math.abs(usual.heat / finest.heat - 1)).toBeLessThan(1 / 300);
    expect(Math.abs(usual.all / finest.all - 1)).toBeLessThan(1 / 300);
    expect(Math.abs(usual.plate - finest.plate)).toBeLessThan(1);
    expect(Math.abs(usual.char - finest.char)).toBeLessThan(2e-4);
    expect(Math.abs(usual.metres / finest.metres - 1)).toBeLessThan(1 / 500);
  });
});
