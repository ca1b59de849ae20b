// The unit part of mathjs, with the units of the trade that it lacks.
// mathjs has "drop" as a volume of 0.05 mL; here drops are counted, since their size depends on the fluid and the tip.

import { create, UnitDependencies, type Unit } from "mathjs";

const { Unit: units } = create(UnitDependencies);

units.createUnitSingle("rpm", "1 cycle / min");
units.createUnitSingle("rev", "1 cycle");
units.createUnitSingle("mph", "1 mi / h");
units.createUnitSingle("kph", "1 km / h");
units.createUnitSingle("kmh", "1 km / h");
units.createUnitSingle("Nm", "1 N m");
// All pressures here are above the air's, which is what a gauge shows.
units.createUnitSingle("psig", "1 psi");
units.createUnitSingle("St", "1 cm^2 / s");
units.createUnitSingle("cSt", "1 mm^2 / s");
units.createUnitSingle("thou", "0.001 in");
units.createUnitSingle("gn", "9.80665 m / s^2");
units.createUnitSingle("dripcount", { definition: "" });

/** Text that mathjs reads as number and unit; throws mathjs's own error when it cannot. */
export function parseUnit(text: string): Unit {
  return units.parse(text);
}
