// From the pan through the inlet to the balanced line: what the pump draws decides the pressure it draws by.

import type { Build } from "./build.ts";
import type { Now } from "./now.ts";
import { inletLimit, inletPressure, vapourPressure } from "./supply/inlet.ts";
import { displaced } from "./supply/pump.ts";
import { balance } from "./supply/regulator.ts";

/** The inlet's pressure is settled within so many turns, or when the gas it leaves no longer changes by this share. */
const INLET_TURNS = 4;
const SAME_INLET = 1e-3;

/**
 * Balances the line at a turn rate of the pump [rad/s], with the pressure that the inlet leaves: at all that the pump displaces when the
 * spill goes to the pan, at what comes out of the pan when spill and slip go round behind the inlet. That flow is the last look's, which
 * goes with the turn rate while nothing spills, asked again where it matters.
 */
export function drawAndBalance(build: Build, turn: number, now: Now): void {
  const { lineInput: input, line, viscosity, density } = now;
  const toInlet = build.regulator.spill === "inlet";
  const all = displaced(build.pump, turn);
  const drawn = line.spill > 0 || input.turn === 0 ? line.drawn : (line.drawn * turn) / input.turn;
  let flow = toInlet && drawn < all ? drawn : all;
  let pressure = inletPressure(build.inlet, flow, viscosity, density);
  let inlet = pressure > vapourPressure ? pressure : vapourPressure;
  input.turn = turn;
  input.inletLimit = Infinity;
  for (let i = 0; toInlet && i < INLET_TURNS; i++) {
    input.inlet = inlet;
    balance(input, line);
    flow = line.drawn;
    pressure = inletPressure(build.inlet, flow, viscosity, density);
    inlet = pressure > vapourPressure ? pressure : vapourPressure;
    if (input.gas * Math.abs(inlet - input.inlet) < SAME_INLET * input.inlet) break;
  }
  if (toInlet && pressure >= vapourPressure) return;
  input.inlet = inlet;
  // More than the inlet can pass: the pump fills only so far.
  if (pressure < vapourPressure) input.inletLimit = inletLimit(build.inlet, viscosity, density);
  balance(input, line);
}
