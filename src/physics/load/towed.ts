// A trailer behind the vehicle: what the road asks of both together.
import { impossible, notNegative } from "../../errors.ts";
import { checkVehicle, type Vehicle } from "./road.ts";

/** Mass with load [kg], drag area that it adds [m²], rolling resistance coefficient, and the factor on its mass for its wheels. */
export interface Trailer {
  readonly mass: number;
  readonly dragArea: number;
  readonly rolling: number;
  readonly rotating: number;
}

/**
 * Vehicle and trailer as one vehicle: masses and drag areas add, rolling coefficient and rotating factor are the means by mass,
 * so that `roadForce` of it is the sum of both at every speed, acceleration and grade. A trailer of no mass leaves the vehicle as
 * it is but for its drag. Source: two bodies on one road, Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 4.
 */
export function coupled(vehicle: Vehicle, { mass, dragArea, rolling, rotating }: Trailer): Vehicle {
  checkVehicle(vehicle);
  notNegative("trailer.mass", mass, "kg");
  notNegative("trailer.dragArea", dragArea, "m²");
  notNegative("trailer.rolling", rolling);
  if (!(rotating >= 1 && rotating < Infinity)) impossible("trailer.rotating", rotating, "1 or more");
  const whole = vehicle.mass + mass;
  return {
    ...vehicle,
    mass: whole,
    dragArea: vehicle.dragArea + dragArea,
    rolling: (vehicle.mass * vehicle.rolling + mass * rolling) / whole,
    rotating: (vehicle.mass * vehicle.rotating + mass * rotating) / whole,
  };
}
