// The unit as the bay looks at it: level, short of fluid by a known amount, at a temperature that is held meanwhile.

import { impossible } from "../errors.ts";
import { idleInNeutral } from "../history/idle.ts";
import { stand } from "../history/parked.ts";
import { FINE, FINER, newWalk, type Walk } from "../history/walk.ts";
import type { Unit } from "../physics/build.ts";
import { fluidNow } from "../physics/chain.ts";
import { fresh, storedEnergy } from "../physics/state.ts";
import { panVolume } from "../physics/sump/holdup.ts";

/** Fluid temperature at which the bay calls a unit hot [K]: inside the windows of factory manuals, 70 to 93 °C. */
export const HOT = 353.15;
/** By then the fluid in flight and the gas in the suction passage of an idling unit no longer change [s]. */
const SETTLED = 60;

/**
 * A unit on level ground that has idled in neutral at `temperature` [K] until nothing changed any more. `shortage` is the
 * fluid that it lacks [m³ at fill temperature]: 0 for correct, negative for overfull. Beside hot fluid runs warm coolant,
 * beside fluid that is not yet hot coolant as warm as the fluid. In steps `coarser` times as long as a drive's, which do for what has
 * come to rest. Throws "impossible-input" when nothing would be left.
 */
export function idling(unit: Unit, shortage: number, temperature: number, coarser = 1): Walk {
  const { build } = unit;
  if (!(shortage < build.fill)) impossible("shortage", shortage, "less than the unit's fill, in m³");
  const walk = newWalk(unit, fresh(unit, temperature, shortage), FINE * coarser, FINER * coarser);
  walk.road.ambient = Math.min(temperature, unit.surroundings.meanTemperature);
  if (temperature >= HOT) walk.state.coolant = build.heat.coolantWarm;
  fluidNow(unit, walk.state, walk.now);
  idleInNeutral(walk, SETTLED, build.engine.idleSpeed, () => holdAt(walk, temperature));
  fluidNow(unit, walk.state, walk.now);
  return walk;
}

/** The same unit, hot, after its engine has been off for `seconds` in air of the temperature [K]. */
export function stoodFor(unit: Unit, shortage: number, seconds: number, air: number): Walk {
  return standing(idling(unit, shortage, HOT), seconds, air);
}

/** The unit of a walk after its engine has been off for `seconds` in air of the temperature [K]; the walk stays as it is. */
export function standing({ unit, state }: Walk, seconds: number, air: number): Walk {
  const walk = newWalk(unit, structuredClone(state));
  walk.road.ambient = air;
  fluidNow(unit, walk.state, walk.now);
  stand(walk, seconds, () => true);
  fluidNow(unit, walk.state, walk.now);
  return walk;
}

/** Puts the fluid back to a temperature [K]; a step's callback that lets the walk go on. */
export function holdAt({ unit, state }: Walk, temperature: number): boolean {
  state.energy = storedEnergy(unit.build, unit.fluid.density15, state.mass, temperature);
  return true;
}

/** Fluid in the pan at this moment [m³]. */
export function inThePan({ state, now }: Walk): number {
  const { converter, lines, passages, inFlight } = state;
  return panVolume(state.mass / now.density, converter, lines, passages, inFlight);
}

/** The unit with reverse in the place of its first gear and the regulator's pressures as they are in reverse. */
export function inReverse(unit: Unit): Unit {
  const { build } = unit;
  const { base, perTorque, reverseFactor } = build.regulator;
  const raised = { ...build.regulator, base: base * reverseFactor, perTorque: perTorque * reverseFactor };
  return { ...unit, build: { ...build, gears: [build.reverse], regulator: raised } };
}
