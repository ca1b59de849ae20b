// The invented van's own road load.
import type { Vehicle } from "../../src/physics/load/road.ts";

export const van: Vehicle = {
  mass: 2300,
  dragArea: 1.15,
  rolling: 0.01,
  tyreRadius: 0.38,
  rotating: 1.05,
  airDensity: 1.2,
};
